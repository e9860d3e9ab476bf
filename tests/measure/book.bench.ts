/**
 * How the time to compile a book grows with its recipes, in seconds of a processor. Run by `npm run bench book`.
 */
import { compileBook } from '../../src/book/compile-book.ts';
import { generatedBook } from './generated-book.ts';

const [FEW, MANY] = [150, 600];

/** Seconds of a processor that something takes. */
function seconds(work: () => void): number {
  const before = process.cpuUsage();
  work();
  return process.cpuUsage(before).user / 1e6;
}

/** Prints the ratios. */
export function main(): void {
  const [few, many] = [generatedBook(FEW), generatedBook(MANY)];
  compileBook(generatedBook(30));
  const growth = seconds(() => compileBook(many)) / seconds(() => compileBook(few));
  console.log(
    `book: ${MANY / FEW} times as many recipes take ${growth.toFixed(1)} times as long to compile (${MANY} against ${FEW})`,
  );
}

main();
