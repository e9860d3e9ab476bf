import type { CupState } from '../../cup/ledger.ts';
import { isOpticalFault } from '../../optics/fault.ts';
import { type ColouringKind, fromColourAndKind } from '../../optics/from-colour-and-kind.ts';
import { additionProblem } from '../mix/addition-problem.ts';
import type { ModelCorrection } from '../rounds/correct-model.ts';
import { refineDoses } from '../search/refine-doses.ts';
import type { TargetPart } from '../target/target-part.ts';
import type { MatchMaterial } from './match-material.ts';
import type { AdditionLimits } from './usable-materials.ts';

/** Kinds of material that a shelf may lack. */
export type LackedKind =
  | 'white'
  | 'black'
  | 'yellow-dye'
  | 'orange-dye'
  | 'red-dye'
  | 'violet-dye'
  | 'blue-dye'
  | 'green-dye'
  | 'yellow-pigment'
  | 'red-pigment'
  | 'blue-pigment'
  | 'green-pigment';

/** A kind of material that is not on the shelf and would help. */
export interface MissingKind {
  readonly kind: LackedKind;
  /** ΔE00 that would be left with it. */
  readonly deltaE: number;
}

/** What is tried of each kind: a typical colour. Convention of this book. */
const TYPICAL: Readonly<Record<LackedKind, readonly [kind: ColouringKind, colour: string]>> = {
  white: ['white', '#f2f1ed'],
  black: ['pigment', '#151515'],
  'yellow-dye': ['dye', '#e6c22f'],
  'orange-dye': ['dye', '#dd7f2a'],
  'red-dye': ['dye', '#c03038'],
  'violet-dye': ['dye', '#7a4aa0'],
  'blue-dye': ['dye', '#2c66b0'],
  'green-dye': ['dye', '#2f8a4c'],
  'yellow-pigment': ['pigment', '#e3bf3a'],
  'red-pigment': ['pigment', '#b23a36'],
  'blue-pigment': ['pigment', '#3a63a6'],
  'green-pigment': ['pigment', '#3d8451'],
};

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
    const tried = ideals.flatMap(([{ id }, kind]) => {
      const j = place(id);
      if (j < 0 || set.includes(j)) return [];
      const start = new Float64Array(mix.count);
      for (const each of [...set, j]) start[each] = 0.05 * mix.most[each]!;
      const { doses } = refineDoses(mix, [...set, j], start);
      return doses[j]! > 0 ? [{ j, kind, deltaE: mix.worst(doses) }] : [];
    });
    const [first] = tried.sort((one, other) => one.deltaE - other.deltaE);
    if (!first || !(first.deltaE < WORTH_PART * left || first.deltaE < left - WORTH)) break;
    missing.push({ kind: first.kind, deltaE: first.deltaE });
    set = [...set, first.j];
    left = first.deltaE;
  }
  return missing;
}

let made: readonly (readonly [MatchMaterial, LackedKind])[] | undefined;

function idealMaterials(): readonly (readonly [MatchMaterial, LackedKind])[] {
  made ??= (Object.keys(TYPICAL) as LackedKind[]).flatMap((lacked) => {
    const [kind, colour] = TYPICAL[lacked];
    const result = fromColourAndKind({ colour, kind });
    if (isOpticalFault(result)) return [];
    const { constants, expectedDeltaE } = result;
    // No file of a shelf has such a name.
    const id = `~${lacked}`;
    return [
      [{ id, title: id, kind: 'colorant', density: 1, gramsPerMl: 1, constants, expectedDeltaE }, lacked] as const,
    ];
  });
  return made;
}
