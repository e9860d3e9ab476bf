/** What learning takes of one processor, in seconds. Run by `npm run bench learning`. */

import { fitTheta } from '../../src/learning/fit-theta.ts';
import { ShelfEquations } from '../../src/learning/normal-equations.ts';
import { shelfProblem } from '../../src/learning/shelf-problem.ts';
import { simulatedBook } from '../learning/simulated-book.ts';

function seconds<T>(work: () => T): { readonly took: number; readonly value: T } {
  const before = process.cpuUsage();
  const value = work();
  const { user, system } = process.cpuUsage(before);
  return { took: (user + system) / 1e6, value };
}

export function main(): void {
  for (let i = 0; i < 3; i++) {
    const { data, truth } = simulatedBook({ seed: 1 + i, materials: 40, recipes: 100, rounds: 3 });
    const { took: ready, value: problem } = seconds(() => shelfProblem(data));
    const equations = new ShelfEquations(problem);
    const { took: one } = seconds(() => equations.at(new Float64Array(problem.unknowns.count), true));
    const { took: slopes } = seconds(() => equations.at(new Float64Array(problem.unknowns.count), false));
    const { took, value: theta } = seconds(() => fitTheta(equations, new Float64Array(problem.unknowns.count)));
    const again = seconds(() => fitTheta(equations, truth));
    const apart = Math.max(...theta.map((v, k) => Math.abs(v - again.value[k]!)));
    console.log(ready, one, slopes, took, again.took, apart, problem.unknowns.count);
  }
}
main();
