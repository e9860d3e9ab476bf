/**
 * What learning takes of one processor, in seconds: the shelf of a book whose colours come from this book's own physics. Run by
 * `npm run bench learning`.
 */
import { fitTheta } from '../../src/learning/fit-theta.ts';
import { learn } from '../../src/learning/learn.ts';
import { learnNearly } from '../../src/learning/learn-nearly.ts';
import type { LearningData } from '../../src/learning/learning-data.ts';
import { logFaults } from '../../src/learning/log-faults.ts';
import { ShelfEquations } from '../../src/learning/normal-equations.ts';
import { shelfProblem } from '../../src/learning/shelf-problem.ts';
import { startFromLabels } from '../../src/learning/start-from-labels.ts';
import { simulatedBook } from '../learning/simulated-book.ts';

/** Seconds of a processor that some work takes: the least of three, which other work on the machine disturbs least. */
function seconds(work: () => unknown): string {
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 3; round++) {
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    least = Math.min(least, (user + system) / 1e6);
  }
  return least.toFixed(2);
}

function fitAlone(data: LearningData): void {
  const problem = shelfProblem(data);
  fitTheta(new ShelfEquations(problem), startFromLabels(problem));
}

/** Every twentieth recipe with a false log: what was noted first is there four times as much as was noted. */
function withFaults(data: LearningData): LearningData {
  const looks = data.looks.map((look) => {
    if (Number(look.cup.slice(1, 5)) % 20 !== 7) return look;
    const layers = look.layers.map((layer) => ({
      ...layer,
      contents: layer.contents.map(([id, dose], i) => [id, i === 0 ? 4 * dose : dose] as const),
    }));
    return { ...look, layers };
  });
  return { ...data, looks };
}

/** Prints the seconds. */
export function main(): void {
  const { data } = simulatedBook({ seed: 1, materials: 40, recipes: 100, rounds: 3 });
  console.log(`40 materials, 300 looks: fit ${seconds(() => fitAlone(data))} s (wanted 0.5)`);
  console.log(
    `  with weights ${seconds(() => learn(data))} s, with false logs ${seconds(() => learn(withFaults(data)))} s, those found besides ${seconds(() => logFaults(learn(withFaults(data))))} s (wanted 2)`,
  );
  const before = learn({ ...data, looks: data.looks.slice(1) });
  console.log(`  one look more, nearly ${seconds(() => learnNearly(data, before))} s (wanted 0.3)`);
  const large = simulatedBook({ seed: 2, materials: 40, recipes: 1700, rounds: 3 }).data;
  const looks = large.looks.slice(0, 5000);
  console.log(`40 materials, 5,000 looks: ${seconds(() => learn({ ...large, looks }))} s (wanted 5)`);
}

main();
