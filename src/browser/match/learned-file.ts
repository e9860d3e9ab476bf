/**
 * What a match asks for once a cup is to be judged: what the book's looks have taught, and the program that works out what to add.
 *
 * @packageDocumentation
 */
import type { PackedShelf } from '../../learning/packed-shelf.ts';
import { LEARNED_AS } from '../../render/learned-name.ts';
import { SOLVER_AS, type Solver } from './solver.ts';

/** All that a cup is judged with. */
export interface Judging {
  readonly packed: PackedShelf;
  readonly solver: Solver;
}

type Left = { readonly [LEARNED_AS]?: PackedShelf; readonly [SOLVER_AS]?: Solver };

/** Files beside the page. Scripts, since a page that is opened from a disk can load nothing else. */
export class LearnedFile {
  private readonly learned: string;
  private readonly solver: readonly string[];
  private loading: Promise<Judging> | undefined;

  /** @param solver in the order in which they must run */
  constructor(learned: string, solver: readonly string[]) {
    this.learned = learned;
    this.solver = solver;
  }

  /** What they hold; loaded once. Rejects where it cannot be loaded, and tries again when it is asked again. */
  load(): Promise<Judging> {
    this.loading ??= this.loaded().catch((fault) => {
      this.loading = undefined;
      throw fault;
    });
    return this.loading;
  }

  private async loaded(): Promise<Judging> {
    // Scripts that are put in together run in their order.
    await Promise.all([...this.solver, this.learned].map(scriptRun));
    const { [LEARNED_AS]: packed, [SOLVER_AS]: solver } = window as Left;
    if (!packed || !solver) throw new Error('what a cup is judged with cannot be loaded');
    return { packed, solver };
  }
}

function scriptRun(path: string): Promise<void> {
  return new Promise((resolve) => {
    const script = document.createElement('script');
    const settle = (): void => {
      script.remove();
      resolve();
    };
    script.addEventListener('load', settle);
    script.addEventListener('error', settle);
    script.async = false;
    script.src = path;
    document.head.append(script);
  });
}
