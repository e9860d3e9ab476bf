import type { CupState } from '../../cup/ledger.ts';
import { isOpticalFault } from '../../optics/fault.ts';
import { fromColourAndKind, type MaterialKind } from '../../optics/from-colour-and-kind.ts';
import { additionProblem } from '../mix/addition-problem.ts';
import type { ModelCorrection } from '../rounds/correct-model.ts';
import { refineDoses } from '../search/refine-doses.ts';
import type { TargetPart } from '../target/target-part.ts';
import type { MatchMaterial } from './match-material.ts';
import type { AdditionLimits } from './usable-materials.ts';

/** A kind of material that is not on the shelf and would help. */
export interface MissingKind {
  /** "something that scatters: a white or a white pearl", "a blue dye" */
  readonly words: string;
  /** ΔE00 that would be left with it. */
  readonly deltaE: number;
}

/** Kinds that are tried, each by a typical colour. Convention of this book. */
const KINDS: readonly (readonly [id: string, words: string, kind: MaterialKind, colour: string])[] = [
  ['~white', 'something that scatters: a white or a white pearl', 'white', '#f2f1ed'],
  ['~black', 'something that darkens: a black', 'pigment', '#151515'],
  ['~yellow-dye', 'a yellow dye', 'dye', '#e6c22f'],
  ['~orange-dye', 'an orange dye', 'dye', '#dd7f2a'],
  ['~red-dye', 'a red dye', 'dye', '#c03038'],
  ['~violet-dye', 'a violet dye', 'dye', '#7a4aa0'],
  ['~blue-dye', 'a blue dye', 'dye', '#2c66b0'],
  ['~green-dye', 'a green dye', 'dye', '#2f8a4c'],
  ['~yellow-pigment', 'a yellow pigment (it colours and thickens)', 'pigment', '#e3bf3a'],
  ['~red-pigment', 'a red pigment (it colours and thickens)', 'pigment', '#b23a36'],
  ['~blue-pigment', 'a blue pigment (it colours and thickens)', 'pigment', '#3a63a6'],
  ['~green-pigment', 'a green pigment (it colours and thickens)', 'pigment', '#3d8451'],
];

// What is left must fall to this part, or by so much ΔE00, for a new bottle to be worth a word.
const WORTH_PART = 0.75;
const WORTH = 1;
const MOST_TOGETHER = 2;

/**
 * Kinds of material that would bring a cup nearer to a target than anything on the shelf does: one, or two together, best first.
 *
 * @param best materials of the best that the shelf can do
 * @param deltaE ΔE00 that it leaves
 */
export function missingKinds(
  cup: CupState,
  target: TargetPart,
  shelf: ReadonlyMap<string, MatchMaterial>,
  correction: ModelCorrection,
  limits: AdditionLimits,
  best: readonly string[],
  deltaE: number,
): readonly MissingKind[] {
  const ideals = idealMaterials();
  const problem = additionProblem(
    cup,
    target,
    new Map([...shelf, ...ideals.map(([material]) => [material.id, material] as const)]),
    correction,
    limits,
  );
  const { mix, ingredients } = problem;
  const place = (id: string): number => ingredients.findIndex(({ material }) => material.id === id);
  let set = best.map(place).filter((j) => j >= 0);
  let left = deltaE;
  const missing: MissingKind[] = [];
  for (let round = 0; round < MOST_TOGETHER; round++) {
    const tried = ideals.flatMap(([{ id }, words]) => {
      const j = place(id);
      if (j < 0 || set.includes(j)) return [];
      const start = new Float64Array(mix.count);
      for (const each of [...set, j]) start[each] = 0.05 * mix.most[each]!;
      const { doses } = refineDoses(mix, [...set, j], start);
      return doses[j]! > 0 ? [{ j, words, deltaE: mix.worst(doses) }] : [];
    });
    const [first] = tried.sort((one, other) => one.deltaE - other.deltaE);
    if (!first || !(first.deltaE < WORTH_PART * left || first.deltaE < left - WORTH)) break;
    missing.push({ words: first.words, deltaE: first.deltaE });
    set = [...set, first.j];
    left = first.deltaE;
  }
  return missing;
}

let made: readonly (readonly [MatchMaterial, string])[] | undefined;

function idealMaterials(): readonly (readonly [MatchMaterial, string])[] {
  made ??= KINDS.flatMap(([id, words, kind, colour]) => {
    const result = fromColourAndKind({ colour, kind });
    if (isOpticalFault(result)) return [];
    const { constants, expectedDeltaE } = result;
    return [
      [{ id, title: words, kind: 'colorant', density: 1, gramsPerMl: 1, constants, expectedDeltaE }, words] as const,
    ];
  });
  return made;
}
