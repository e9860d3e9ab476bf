/**
 * How the time to compile a book grows with its recipes, and how much of it an edit takes when the last compile is remembered. Seconds of a
 * processor, as ratios. Run by `npm run bench book`.
 */
import { compileBook } from '../../src/book/compile-book.ts';
import { CompileMemory } from '../../src/book/compile-memory.ts';
import { median } from '../../src/book/median.ts';

import { generatedBook, idOf } from './generated-book.ts';

const [FEW, MANY] = [250, 1000];
const EDITS = 9;

/** Seconds of a processor that something takes, collecting garbage included. */
function seconds(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

/** Prints the ratios. */
export function main(): void {
  const [few, many] = [generatedBook(FEW), generatedBook(MANY)];
  compileBook(generatedBook(30));
  const whole = seconds(() => compileBook(few));
  const memory = new CompileMemory();
  const first = seconds(() => compileBook(many, { memory }));
  console.log(`book: ${MANY / FEW} times as many recipes take ${(first / whole).toFixed(1)} times as long to compile`);
  // The last one, of which nothing comes.
  const path = `colours/${idOf(MANY - 1)}.md`;
  const edits = Array.from({ length: EDITS }, (_, index) => {
    const edited = many.map((source) =>
      source.path === path ? { path, text: source.text.replace(/\d+ drops/, `${index + 3} drops`) } : { ...source },
    );
    return seconds(() => compileBook(edited, { memory }));
  });
  const edit = median(edits);
  console.log(
    `book: after an edit of one recipe of ${MANY} a compile takes ${(100 * (edit / first)).toFixed(1)} % of that of all (${edit.toFixed(2)} s of a processor against ${first.toFixed(1)} s)`,
  );
}

main();
