import { defined } from '../../values/defined.ts';
import type { WorkAmount, WorkHeat, WorkStep } from './work.ts';

/** Steps of a match that a recipe's file writes as one, in the order that it reads them in: new-cup, reheat, plastic, add, pour, seen, heat. */
export interface FileStep {
  newCup?: true;
  reheat?: true;
  plasticMl?: number;
  add?: readonly WorkAmount[];
  pourMl?: number;
  see?: Extract<WorkStep, { do: 'see' }>;
  heat?: Omit<WorkHeat, 'again'>;
}

/** A log as a recipe's file writes it. */
export function fileSteps(steps: readonly WorkStep[]): readonly FileStep[] {
  const log = new FileLog();
  for (const step of steps) log.take(step);
  return log.steps;
}

class FileLog {
  readonly steps: FileStep[] = [];
  /** The first step with something that went in since the last pour, look or heat: it goes in with the next heat. */
  private fresh: FileStep | undefined;
  /** All that is in the cup went in with its melt. */
  private isFirst = true;

  take(step: WorkStep): void {
    switch (step.do) {
      case 'new-cup':
        this.steps.push({ newCup: true });
        this.fresh = undefined;
        this.isFirst = true;
        break;
      case 'plastic':
        this.put(
          ({ plasticMl, add, pourMl, see, heat }) =>
            plasticMl === undefined && !add && pourMl === undefined && !see && !heat,
        ).plasticMl = step.ml;
        break;
      case 'add':
        this.put(({ add, pourMl, see, heat }) => !add && pourMl === undefined && !see && !heat).add = step.amounts;
        break;
      case 'heat':
        this.heat(step);
        break;
      case 'pour':
        this.into(({ pourMl, see }) => pourMl === undefined && !see).pourMl = step.ml;
        this.settle();
        break;
      case 'see':
        this.into(({ see }) => !see).see = step;
        this.settle();
        break;
    }
  }

  private heat({ celsius, again = 0, heldMinutes }: WorkHeat): void {
    for (let turn = 0; turn < again; turn++) {
      if (turn === 0 && this.fresh) this.fresh.reheat = true;
      else this.steps.push({ reheat: true });
      this.settle();
    }
    if (celsius === undefined && heldMinutes === undefined) return;
    this.into(({ pourMl, see, heat }) => pourMl === undefined && !see && !heat).heat = defined({
      celsius,
      heldMinutes,
    });
  }

  private settle(): void {
    this.fresh = undefined;
    this.isFirst = false;
  }

  private put(fits: (step: FileStep) => boolean): FileStep {
    const step = this.into(fits);
    if (!this.isFirst) this.fresh ??= step;
    return step;
  }

  /** Only into a step that has nothing yet which comes after it. */
  private into(fits: (step: FileStep) => boolean): FileStep {
    const last = this.steps.at(-1);
    if (last && fits(last)) return last;
    const next: FileStep = {};
    this.steps.push(next);
    return next;
  }
}
