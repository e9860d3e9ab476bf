/**
 * Where a look's error is measured: at the colour that theta gives it. The colour that was seen errs itself, and a metric taken there errs with
 * it: the vaguer looks are, the more they would all seem off the same way, and a camera would be blamed for that.
 *
 * @packageDocumentation
 */
import { localMetric } from '../optics/local-metric.ts';
import type { SeenView } from './composition-views.ts';
import type { SeenBlock, SeenColour, ShelfProblem } from './shelf-problem.ts';
import { type ShelfState, shelfState } from './shelf-state.ts';

/** The problem with the metrics of all looks and labels at the colours that a theta gives them. */
export function withModelMetrics(problem: ShelfProblem, theta: Float64Array): ShelfProblem {
  const state = shelfState(problem.unknowns, theta);
  return {
    ...problem,
    cups: problem.cups.map((block) => measuredAt(block, problem, state)),
    labels: problem.labels.map((block) => measuredAt(block, problem, state)),
  };
}

function measuredAt<T extends SeenBlock>(block: T, { looker }: ShelfProblem, state: ShelfState): T {
  const items = block.items.map((item) => {
    const { composition, white, black } = item;
    const views = looker.views(composition, state, { white: white !== undefined, black: black !== undefined });
    return {
      ...item,
      ...(white ? { white: measured(white, views.white!) } : {}),
      ...(black ? { black: measured(black, views.black!) } : {}),
    };
  });
  return { ...block, items };
}

function measured(colour: SeenColour, { lab }: SeenView): SeenColour {
  return { ...colour, metric: localMetric(lab) };
}
