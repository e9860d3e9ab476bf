import type { Mix } from '../mix/mix.ts';
import type { FoundDoses } from '../search/find-doses.ts';
import type { MatchBench } from '../shelf/match-bench.ts';
import { type Ingredient, type MeasuredDoses, measureDoses } from './measure-doses.ts';

/** What exact doses are with these tools; each is measured once. Undefined where nothing of it can be measured. */
export type Measuring = (exact: FoundDoses) => MeasuredDoses | undefined;

/** Measures exact doses for cups that hold so much plastic before, ml. */
export function measuring(
  { mix, ingredients }: { readonly mix: Mix; readonly ingredients: readonly Ingredient[] },
  plasticMl: readonly number[],
  bench: MatchBench,
): Measuring {
  const known = new Map<FoundDoses, MeasuredDoses>();
  return (exact) => {
    const measured = known.get(exact) ?? measureDoses(mix, ingredients, exact.set, exact.doses, plasticMl, bench);
    known.set(exact, measured);
    return measured.ingredients.length === 0 ? undefined : measured;
  };
}
