import type { CupState } from '../../cup/ledger.ts';
import { scaleAmounts } from '../../cup/ledger.ts';
import type { Beliefs } from '../../matching/belief/beliefs.ts';
import { steadiedBench } from '../../matching/belief/steadied-bench.ts';
import type { AskedWith, CupAsked, TriedRound } from '../../matching/cup-question.ts';
import type { MatchMaterial } from '../../matching/shelf/match-material.ts';
import { seenWith } from '../../matching/target/seen-with.ts';
import { settledViews, type TargetPart } from '../../matching/target/target-part.ts';
import type { Lab } from '../../optics/cielab.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { hasTwoSides, PATTERNS } from '../../patterns/patterns.ts';
import { MIDDLE } from '../../patterns/place.ts';
import { defined } from '../../values/defined.ts';
import { viewsOfLook } from '../cups/seen-colour.ts';
import { keyOfCup } from '../learning/cup-keys.ts';
import type { Cup } from '../model/cup.ts';
import type { BaitLook } from '../model/looks.ts';
import type { Recipe } from '../model/recipe.ts';
import type { Target } from '../model/target.ts';
import type { Settings } from '../model.ts';
import { cupLimits } from './cup-limits.ts';

type PartsOf = Pick<Target, 'parts' | 'apart'>;
type CupsOf = Pick<Recipe, 'cups' | 'pattern' | 'seen'>;

/** The part of a target that a cup is for: the one of its name, or the only one where the cup is the only one. */
export function partFor(target: Pick<Target, 'parts'>, cup: string, cups: number): TargetPart | undefined {
  const part =
    target.parts.find(({ name }) => name === cup) ??
    (target.parts.length === 1 && cups === 1 ? target.parts[0] : undefined);
  return (
    part &&
    settledViews({
      name: part.name,
      overWhite: part.overWhite.lab,
      ...defined({ overBlack: part.overBlack?.lab, reflectance: part.reflectance }),
      thicknessMm: part.thicknessMm,
      ...seenWith(part.doubt, part.cameraNumber),
    })
  );
}

/** A part of a target with its colours as matching takes them. */
export function labsOfPart<Part extends Target['parts'][number]>({
  overWhite,
  overBlack,
  ...part
}: Part): Omit<Part, 'overWhite' | 'overBlack'> & { readonly overWhite: Lab; readonly overBlack?: Lab } {
  return { ...part, overWhite: overWhite.lab, ...(overBlack && { overBlack: overBlack.lab }) };
}

/**
 * Whether the parts of a target are the two sides of a finished bait. That is what a maker holds in the hand, so it is the rule: each
 * side is seen with the other one behind it, through the whole thickness. A target that was cut open says `apart: true`, and then each
 * part is its cup alone; so is every part of a target with more than two.
 */
export function seenWhole({ parts, apart }: PartsOf): boolean {
  return parts.length === 2 && !apart;
}

/**
 * A cup of a recipe as it is asked about; undefined where no part of the target is for it.
 *
 * Of a target that was seen whole (see `seenWhole`), the cup is judged as the finished bait would show it, with the recipe's other cup,
 * as that one is now, behind it. A test pour is one cup alone, at the thickness of the mold's body.
 *
 * @param bodyMm thickness of a test pour
 */
export function askedCup(
  recipe: CupsOf & Pick<Recipe, 'id'>,
  cup: Cup,
  target: PartsOf,
  bodyMm: number,
): CupAsked | undefined {
  const part = partFor(target, cup.name, recipe.cups.length);
  if (!part) return undefined;
  const other = otherSide(recipe, cup, target);
  const flakes = target.parts.find(({ name }) => name === part.name)?.flakes;
  return {
    ...defined({ flakes }),
    key: keyOfCup(recipe.id, cup),
    start: cupOf(cup, cup.startMl),
    rounds: triedRounds(cup, other && { looks: recipe.seen ?? [], cup: other.cup }),
    part,
    bodyMm,
    startMl: cup.startMl,
    heats: cup.heats,
    other: other && {
      cup: cupOf(other.cup, other.cup.startMl),
      share: other.part,
    },
  };
}

/** What a cup of a book is brought to its target with. */
export function askedWith(
  {
    materials,
    optics,
    belief,
    before,
    settings,
  }: {
    readonly materials: readonly MatchMaterial[];
    readonly optics: OpticalModel;
    readonly belief: Beliefs;
    readonly before?: AskedWith['before'];
    readonly settings: Settings;
  },
  { tolerance, effect }: Pick<Target, 'tolerance' | 'effect'>,
  inStock = false,
): AskedWith {
  return {
    shelf: materials,
    optics,
    belief,
    bench: steadiedBench(settings, belief, materials),
    tolerance,
    limits: cupLimits(settings, { inStock, effect }),
    ...defined({ before }),
  };
}

/** The other side of a bait that is seen whole, with the looks at the bait. */
interface SeenWith {
  readonly looks: readonly BaitLook[];
  readonly cup: Cup;
}

/**
 * The rounds of a cup as matching takes them, each with the look that it is judged by: that at its side of the finished bait, which needs
 * no model to be set beside the target, before one at the cup by itself.
 */
export function triedRounds({ name, rounds }: Pick<Cup, 'name' | 'rounds'>, whole?: SeenWith): readonly TriedRound[] {
  return rounds.map(({ number, cup, left, seen: [alone], unlogged }) => {
    const bait = whole && wholeLook(name, number, whole);
    const judged = bait?.look ?? alone;
    const { thicknessMm, after, wet, checked } = judged ?? {};
    const how = defined({ thicknessMm, after, wet, checked });
    return {
      number,
      cup,
      left,
      how,
      ...defined({ seen: viewsOfLook(judged), axisSd: judged?.doubt?.axisSd, unlogged, behind: bait?.behind }),
    };
  });
}

/** The last look at a side of a finished bait that was poured after a round of its cup, with the other cup as it was then. */
function wholeLook(
  name: string,
  round: number,
  { looks, cup }: SeenWith,
): { readonly look: BaitLook; readonly behind: CupState } | undefined {
  const of = ({ rounds = [] }: BaitLook, each: string): number | undefined =>
    rounds.find((poured) => poured.cup === each)?.number;
  const look = looks.findLast(
    (each) => each.side === name && of(each, name) === round && viewsOfLook(each) !== undefined,
  );
  const behind = look && cup.rounds.find(({ number }) => number === of(look, cup.name))?.cup;
  return behind && { look, behind };
}

/** A cup of so many ml of plastic, as it is after its last round. */
export function cupOf({ plastics, contents }: Pick<Cup, 'plastics' | 'contents'>, plasticMl: number): CupState {
  return {
    plastics: Object.fromEntries(plastics.map(({ material, fraction }) => [material, fraction * plasticMl])),
    materials: scaleAmounts(
      Object.fromEntries(contents.map(({ material, gramsPerMl }) => [material, gramsPerMl])),
      plasticMl,
    ),
  };
}

/** The cup behind another in a bait that is seen whole, and its part of the thickness; undefined where the sides are not a cup each. */
function otherSide(
  { cups, pattern }: CupsOf,
  cup: Cup,
  target: PartsOf,
): { readonly cup: Cup; readonly part: number } | undefined {
  if (!seenWhole(target) || !hasTwoSides(pattern)) return undefined;
  const shares = cups.map(({ share }) => share);
  const runs = PATTERNS[pattern].through(shares, MIDDLE).map(({ cup: index, part }) => ({ cup: cups[index]!, part }));
  return runs.length === 2 ? runs.find((run) => run.cup.name !== cup.name) : undefined;
}
