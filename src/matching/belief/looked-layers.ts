/**
 * Cups as belief is asked about them: what is in them, and how they lie in what is looked at.
 *
 * @packageDocumentation
 */
import { type CupState, concentrations, total } from '../../cup/ledger.ts';
import type { LookedLayer } from '../../learning/learning-data.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { Ingredient } from '../measure/measure-doses.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import type { TargetPart } from '../target/target-part.ts';
import type { BelievedCup } from './beliefs.ts';
import type { CupContents } from './cup-contents.ts';

type Shelf = ReadonlyMap<string, Pick<MatchMaterial, 'constants' | 'flake'>>;

/** What is in a cup, without what is not seen, such as salt; of an empty one, nothing. */
export function contentsOf(cup: CupState, shelf: Shelf): CupContents {
  const plasticMl = total(cup.plastics);
  if (!(plasticMl > 0)) return { plastics: [], contents: [] };
  return {
    plastics: Object.entries(cup.plastics).map(([name, ml]) => [name, ml / plasticMl]),
    contents: Object.entries(concentrations(cup)).filter(([name, dose]) => dose > 0 && isSeen(name, shelf)),
  };
}

function isSeen(name: string, shelf: Shelf): boolean {
  const { constants, flake } = required(shelf, name);
  return constants !== undefined || flake !== undefined;
}

/** What is in a cup with doses of the ingredients that go into it, as `MixProblem` counts them. */
export function contentsWith(
  { plastics, contents }: CupContents,
  ingredients: readonly Ingredient[],
  doses: Float64Array,
  index: number,
): CupContents {
  const letsDown = ingredients.findIndex((each) => each.letsDown && each.cup === index);
  const added = letsDown < 0 ? 0 : doses[letsDown]!;
  const shares = new Map(plastics.map(([name, share]) => [name, (1 - added) * share]));
  if (added > 0) add(shares, ingredients[letsDown]!.material.id, added);
  const amounts = new Map(contents.map(([name, dose]) => [name, (1 - added) * dose]));
  for (const [j, { material, cup, letsDown: isPlastic }] of ingredients.entries())
    if (cup === index && !isPlastic && doses[j]! > 0) add(amounts, material.id, doses[j]!);
  return { plastics: [...shares], contents: [...amounts] };
}

function add(amounts: Map<string, number>, name: string, more: number): void {
  amounts.set(name, (amounts.get(name) ?? 0) + more);
}

/** The cups of a bait as a part of a target was seen: in its layers, and with its camera. */
export function askedAs(cups: readonly CupContents[], index: number, part: SeenPart): BelievedCup {
  const { camera } = part;
  return { layers: lookedLayers(cups, index, part), ...defined({ camera }) };
}

type SeenPart = Pick<TargetPart, 'thicknessMm' | 'behind' | 'camera'>;

/**
 * The layers in which a part of a target is seen, near one first, where these are the cups of the bait: as `bodyLayers`.
 */
function lookedLayers(
  cups: readonly CupContents[],
  index: number,
  { thicknessMm, behind }: Pick<TargetPart, 'thicknessMm' | 'behind'>,
): readonly LookedLayer[] {
  if (cups.length > 1) return [cups[index]!, cups[1 - index]!].map((cup) => ({ ...cup, thicknessMm: thicknessMm / 2 }));
  const [near] = cups as readonly [CupContents];
  if (!behind) return [{ ...near, thicknessMm }];
  return [
    { ...near, thicknessMm: (1 - behind.share) * thicknessMm },
    { ...behind.contents, thicknessMm: behind.share * thicknessMm },
  ];
}
