import type { TwoViews } from '../../optics/cup-body.ts';
import type { Ingredient } from '../measure/measure-doses.ts';
import type { Beliefs, BelievedCup } from './beliefs.ts';
import type { CupContents } from './cup-contents.ts';

/**
 * What the model is believed to be off by in a cup with doses of the ingredients, as `MixProblem` counts them: a few looks near the cup
 * as it is asked about say it, and less of it holds as the doses lead away from those.
 *
 * @param contents of the near layer before anything is added
 */
export function offsetsNear(
  belief: Beliefs,
  asked: BelievedCup,
  { contents }: CupContents,
  ingredients: readonly Ingredient[],
): (doses: Float64Array, model: TwoViews) => TwoViews {
  // Asked for at every step of a search: names are numbers here.
  const candidates = ingredients.map(({ material: { id }, letsDown }) => (letsDown ? undefined : id));
  const names = [...new Set([...contents.map(([name]) => name), ...candidates.flatMap((name) => name ?? [])])];
  const place = new Map(names.map((name, at) => [name, at]));
  const base = new Float64Array(names.length);
  for (const [name, dose] of contents) base[place.get(name)!] = dose;
  const places = candidates.map((name) => (name === undefined ? -1 : place.get(name)!));
  const letsDown = ingredients.findIndex((each) => each.letsDown);
  const near = belief.near(asked, names);
  const mixed = new Float64Array(names.length);
  return (doses, model) => {
    const left = 1 - (letsDown < 0 ? 0 : doses[letsDown]!);
    for (let i = 0; i < mixed.length; i++) mixed[i] = left * base[i]!;
    for (let j = 0; j < places.length; j++) if (places[j]! >= 0) mixed[places[j]!]! += Math.max(0, doses[j]!);
    return near.at(mixed, model);
  };
}
