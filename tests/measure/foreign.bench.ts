/**
 * The foreign bench: books that are kept by makers of another world, put to the proof against what is really in their cups.
 *
 * Light in that world goes by physics that share no code and no assumption with this book's (`foreign/physics`); the shelf's labels are of
 * products from which the maker's own bottles differ (`foreign/world`). The books are Markdown, compiled in process; every 20th question is
 * asked once more by the real command. Each match is gone through as a maker would (`foreign/maker/course.ts`). The table
 * (`foreign/report/rows.ts`) says what is to be reached, what came, and in which range it lies for 80 % of books drawn again.
 *
 * Seeds 1 to 6 are there to tune by, 101 to 112 to report: no figure of a seed that somebody has tuned by is reported.
 *
 *     npm run bench foreign                                  everything that is not there yet, then the table
 *     npm run bench foreign -- --quick                       2 books of 15 recipes
 *     npm run bench foreign -- --condition half,hex --seed 3 those books
 *     npm run bench foreign -- --report                      the table of what is there
 *
 * Results are kept below `node_modules/.cache` for this very state of the program, or under a `--label`; a run that was broken off goes on.
 */
import { Cached, labelOfProgram } from './foreign/cached.ts';
import { conditionNamed } from './foreign/conditions.ts';
import { readOptions } from './foreign/options.ts';
import { tableOf } from './foreign/report/table.ts';
import { runBook } from './foreign/run-book.ts';
import { runJobs } from './foreign/run-jobs.ts';

/** Keeps the books that were asked for, and prints the table. */
export async function main([part, ...line]: readonly string[]): Promise<void> {
  // Among all benchmarks only what is there is told: this one takes an hour or two.
  const asked = readOptions(part === undefined ? ['--report'] : line);
  const label = asked.label ?? labelOfProgram();
  const cached = new Cached(label);
  const missing = asked.jobs.filter(({ condition, seed, recipes }) => !cached.has(condition, seed, recipes));
  if (asked.isOne) {
    for (const { condition, seed, recipes } of missing)
      cached.keep(await runBook({ ...conditionNamed(condition), recipes }, seed));
    return;
  }
  if (missing.length > 0) {
    console.log(`${missing.length} books to keep; results go to ${cached.folder}`);
    const failed = await runJobs(missing, asked.atOnce, label);
    if (failed.length > 0) process.exitCode = 1;
  }
  console.log(tableOf(cached.all()).join('\n'));
}

await main(process.argv.slice(2));
