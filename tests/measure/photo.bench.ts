/**
 * How well photos of baits on the measuring card are measured: real photos of colour charts first, then simulated ones, whose truth is known.
 *
 * Simulated photos (`tests/photo/simulated`) share nothing with what measures them but the card as it is printed; each set is taken in
 * another way (`photo-sets.ts` there). Figures stand beside what is to be reached (`photo/goals.ts`). They flatter: real charts come out
 * worse, and readers are told of those.
 *
 *     npm run bench photo                              what is not there yet, then the table
 *     npm run bench photo -- --photos 6                at most so many of each set
 *     npm run bench photo -- --set b2,ideal --seed 2,4 those photos
 *     npm run bench photo -- --tune                    odd seeds, which may be tuned by
 *     npm run bench photo -- --report                  the table of what is there
 *
 * Results are kept below `node_modules/.cache` for this very state of the program, or under a `--label`; a run that was broken off goes on.
 */
import { KeptResults } from './photo/kept-results.ts';
import { readOptions } from './photo/options.ts';
import { realChartLines } from './photo/real-charts.ts';
import { runJob } from './photo/run-job.ts';
import { tableOf } from './photo/table.ts';

/** Measures the photos that were asked for, and prints the table. */
export async function main([part, ...line]: readonly string[]): Promise<void> {
  console.log(realChartLines().join('\n'));
  // Among all benchmarks only what is there is told: this one takes minutes.
  const asked = readOptions(part === undefined ? ['--report'] : line);
  const kept = new KeptResults(asked.label);
  const keyOf = ({ set, seed }: { set: string; seed: number }): string => `${set}-${String(seed).padStart(3, '0')}`;
  const missing = asked.jobs.filter((job) => !kept.has(keyOf(job)));
  if (missing.length > 0) console.log(`${missing.length} photos to take; results go to ${kept.folder}`);
  for (const job of missing) kept.keep(keyOf(job), await runJob(job));
  const wanted = new Set(asked.jobs.map(({ seed }) => seed));
  const results = kept.all().filter(({ seed }) => asked.jobs.length === 0 || wanted.has(seed));
  console.log(tableOf(results).join('\n'));
}

await main(process.argv.slice(2));
