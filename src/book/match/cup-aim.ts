import type { CupState } from '../../cup/ledger.ts';
import { baseOfCup, type CupBase } from '../../matching/mix/cup-model.ts';
import { correctModel, type Observation } from '../../matching/rounds/correct-model.ts';
import { type MatchMaterial, withStrengths } from '../../matching/shelf/match-material.ts';
import { type SeenViews, settledViews, type TargetPart } from '../../matching/target/target-part.ts';
import { bodyViews, layersViews, type TwoViews } from '../../optics/cup-body.ts';
import type { Light } from '../../optics/tristimulus.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { Cup, Lab, Recipe, Target } from '../model.ts';
import { cupState, observationsOf } from './cup-states.ts';

/** What a cup is to show, and how a test pour of it is compared with that. */
export interface CupAim {
  readonly part: TargetPart;
  /** Whether a test pour is seen otherwise than the target was: at another thickness, or without the other cup behind it. */
  readonly moved: 'thickness' | 'laminate' | undefined;
  /** The cup in some state as the target was seen, by the model as the rounds have corrected it; unset, by daylight. */
  views(state: CupState, light?: Light): TwoViews;
  /** What was seen of a test pour, as the target was seen: moved by what the corrected model says that makes. */
  asTarget(seen: SeenViews, state: CupState): SeenViews;
}

/** The other cup of a finished bait. */
export interface OtherSide {
  readonly cup: CupState;
  readonly rounds: readonly Observation[];
  /** Its part of the bait's thickness, above 0 and below 1. */
  readonly share: number;
}

type PartsOf = Pick<Target, 'parts' | 'apart'>;
type CupsOf = Pick<Recipe, 'cups' | 'pattern'>;

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
    })
  );
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
 * What a cup of a recipe is to show; undefined where no part of the target is for it.
 *
 * Of a target that was seen whole (see `seenWhole`), the cup is judged as the finished bait would show it, with the recipe's other cup,
 * as that one is now, behind it. A test pour is one cup alone, at the thickness of the mold's body: what was seen of it is moved by the
 * difference that the model makes between that and the bait.
 *
 * @param bodyMm thickness of a test pour
 */
export function cupAim(
  recipe: CupsOf,
  cup: Cup,
  target: PartsOf,
  { shelf, bodyMm }: { readonly shelf: ReadonlyMap<string, MatchMaterial>; readonly bodyMm: number },
): CupAim | undefined {
  const found = partFor(target, cup.name, recipe.cups.length);
  if (!found) return undefined;
  const other = otherSide(recipe, cup, target);
  return aimAt(
    found,
    observationsOf(cup, bodyMm),
    { shelf, bodyMm },
    other && {
      cup: cupState(other, 100, other.contents),
      rounds: observationsOf(other, bodyMm),
      share: other.share / (cup.share + other.share),
    },
  );
}

/**
 * What a cup is to show of a part of a target, given its rounds, and of a side of a finished bait the other cup as that one is now.
 *
 * @param bodyMm thickness of a test pour
 */
export function aimAt(
  found: TargetPart,
  rounds: readonly Observation[],
  { shelf, bodyMm }: { readonly shelf: ReadonlyMap<string, MatchMaterial>; readonly bodyMm: number },
  other?: OtherSide,
): CupAim {
  const corrected = (seen: readonly Observation[]): ((state: CupState) => CupBase) => {
    const { strengths } = correctModel(seen, (name) => required(shelf, name));
    const known = withStrengths(shelf, strengths);
    return (state) => baseOfCup(state, (name) => required(known, name));
  };
  const base = corrected(rounds);
  const behind = other && { ...corrected(other.rounds)(other.cup), share: other.share };
  const part: TargetPart = behind ? { ...found, behind } : found;
  const views = (state: CupState, light?: Light): TwoViews => {
    const { mix, flakes } = base(state);
    const near = { ...mix, flakes };
    if (!behind) return layersViews([{ ...near, thickness: part.thicknessMm }], light);
    return layersViews(
      [
        { ...near, thickness: (1 - behind.share) * part.thicknessMm },
        { ...behind.mix, flakes: behind.flakes, thickness: behind.share * part.thicknessMm },
      ],
      light,
    );
  };
  const moved = behind ? 'laminate' : Math.abs(part.thicknessMm - bodyMm) > 0.01 ? 'thickness' : undefined;
  return {
    part,
    moved,
    views,
    asTarget(seen, state) {
      if (moved === undefined) return seen;
      const { mix, flakes } = base(state);
      const here = bodyViews({ ...mix, flakes }, bodyMm);
      const there = views(state);
      const overWhite = shifted(seen.overWhite, here.overWhite, there.overWhite);
      const black = shifted(seen.overBlack, here.overBlack, there.overBlack);
      // What is added up of looking and of two predictions must not end up lighter over black.
      const overBlack = black && { ...black, L: Math.min(black.L, overWhite?.L ?? 100) };
      return defined({ overWhite, overBlack });
    },
  };
}

function otherSide({ cups, pattern }: CupsOf, cup: Cup, target: PartsOf): Cup | undefined {
  if (pattern !== 'laminate' || cups.length !== 2 || !seenWhole(target)) return undefined;
  return cups.find((each) => each.name !== cup.name);
}

/** A colour that was seen, moved by the difference between two that were computed. */
export function shifted(lab: Lab | undefined, from: Lab, to: Lab): Lab | undefined {
  return (
    lab && {
      L: Math.min(Math.max(100, lab.L), Math.max(0, lab.L + to.L - from.L)),
      a: lab.a + to.a - from.a,
      b: lab.b + to.b - from.b,
    }
  );
}
