import type { CupState } from '../../cup/ledger.ts';
import { isOpticalFault } from '../../optics/fault.ts';
import { type ColouringKind, fromColourAndKind } from '../../optics/from-colour-and-kind.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { required } from '../../values/required.ts';
import { type AdditionProblem, additionProblem } from '../mix/addition-problem.ts';
import { refineDoses } from '../search/refine-doses.ts';
import type { TargetPart } from '../target/target-part.ts';
import type { MatchMaterial, SeenShelf } from './match-material.ts';
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

/** What the limit of bottles keeps from being used: materials of the shelf that would bring it nearer. */
export interface Hindered {
  readonly titles: readonly string[];
  /** Materials in all, with those. */
  readonly bottles: number;
  /** ΔE00 that would be left. */
  readonly deltaE: number;
}

/** What would bring a cup nearer than what was found. */
export interface WouldHelp {
  /** One kind of material, or two together, best first, that the shelf lacks. */
  readonly missing: readonly MissingKind[];
  /** What it has, and more of which may not be used; absent where that would not help. */
  readonly hindered?: Hindered;
}

// What is left must fall to this part, or by so much ΔE00, for a new bottle to be worth a word.
const WORTH_PART = 0.75;
const WORTH = 1;
const MOST_TOGETHER = 2;

/**
 * What would bring a cup nearer to a target than the best that was found: first more bottles of the shelf, where only a limit of
 * bottles keeps them out, then kinds of material that the shelf lacks.
 *
 * By the model alone, for what is not there was never looked at. The last argument is that best, by its materials, and what counts as right.
 */
export function wouldHelp(
  cup: CupState,
  target: TargetPart,
  { shelf, optics }: SeenShelf,
  limits: AdditionLimits,
  { ids, tolerance }: { readonly ids: readonly string[]; readonly tolerance: number },
): WouldHelp {
  const ideals = new Map(idealMaterials(optics).map(([material, kind]) => [material.id, { material, kind }]));
  const all = new Map([...shelf, ...[...ideals].map(([id, { material }]) => [id, material] as const)]);
  const problem = additionProblem(cup, target, { shelf: all, optics }, limits);
  const start = bestOf(problem, indexesOf(problem, ids));
  const onShelf = problem.ingredients.flatMap(({ material, letsDown }, j) =>
    letsDown || ideals.has(material.id) ? [] : [j],
  );
  const lacking = problem.ingredients.flatMap(({ material }, j) => (ideals.has(material.id) ? [j] : []));
  const fromShelf = withMore(problem, onShelf, start, tolerance);
  const withKinds = withMore(problem, lacking, fromShelf.at(-1) ?? start, tolerance);
  const last = fromShelf.at(-1);
  return {
    missing: withKinds.map(({ added, deltaE: left }) => ({
      kind: required(ideals, problem.ingredients[added]!.material.id).kind,
      deltaE: left,
    })),
    ...(last && {
      hindered: {
        titles: fromShelf.map(({ added }) => problem.ingredients[added]!.material.title),
        bottles: last.set.filter((j) => !problem.ingredients[j]!.letsDown).length,
        deltaE: last.deltaE,
      },
    }),
  };
}

/** Materials by their places in a problem, and the ΔE00 that they leave. */
interface Best {
  readonly set: readonly number[];
  readonly deltaE: number;
}

/** What a set comes to where nobody has to measure it. */
function bestOf({ mix }: AdditionProblem, set: readonly number[]): Best {
  const doses = new Float64Array(mix.count);
  for (const each of set) doses[each] = START * mix.most[each]!;
  return { set, deltaE: mix.worst(refineDoses(mix, set, doses).doses) };
}

// Doses that a refinement begins with, as a part of the most.
const START = 0.05;

function indexesOf({ ingredients }: AdditionProblem, ids: readonly string[]): readonly number[] {
  return ids.map((id) => ingredients.findIndex(({ material }) => material.id === id)).filter((j) => j >= 0);
}

/** Each that is worth adding to what is there, one after the other, the one that helps most first, until it is right. */
function withMore(
  { mix }: AdditionProblem,
  candidates: readonly number[],
  start: Best,
  tolerance: number,
): readonly (Best & { readonly added: number })[] {
  const found: (Best & { readonly added: number })[] = [];
  for (let round = 0; round < MOST_TOGETHER; round++) {
    const { set, deltaE: left } = found.at(-1) ?? start;
    if (left <= tolerance) break;
    const tried = candidates.flatMap((added) => {
      if (set.includes(added)) return [];
      const together = [...set, added];
      const doses = new Float64Array(mix.count);
      for (const each of together) doses[each] = START * mix.most[each]!;
      const refined = refineDoses(mix, together, doses).doses;
      return refined[added]! > 0 ? [{ set: together, added, deltaE: mix.worst(refined) }] : [];
    });
    const [first] = tried.sort((one, other) => one.deltaE - other.deltaE);
    if (!first || !(first.deltaE < WORTH_PART * left || first.deltaE < left - WORTH)) break;
    found.push(first);
  }
  return found;
}

type Ideals = readonly (readonly [MatchMaterial, LackedKind])[];

let made: { readonly optics: OpticalModel; readonly ideals: Ideals } | undefined;

function idealMaterials(optics: OpticalModel): Ideals {
  if (made?.optics === optics) return made.ideals;
  const ideals = (Object.keys(TYPICAL) as LackedKind[]).flatMap((lacked) => {
    const [kind, colour] = TYPICAL[lacked];
    const result = fromColourAndKind({ colour, kind, optics });
    if (isOpticalFault(result)) return [];
    const { constants, expectedDeltaE } = result;
    // No file of a shelf has such a name.
    const id = `~${lacked}`;
    return [
      [{ id, title: id, kind: 'colorant', density: 1, gramsPerMl: 1, constants, expectedDeltaE }, lacked] as const,
    ];
  });
  made = { optics, ideals };
  return ideals;
}
