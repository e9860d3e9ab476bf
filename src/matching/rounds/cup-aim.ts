import type { CupState } from '../../cup/ledger.ts';
import type { Lab } from '../../optics/cielab.ts';
import { layersViews, type TwoViews } from '../../optics/cup-body.ts';
import type { Light } from '../../tables/lights.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { BelievedCup } from '../belief/beliefs.ts';
import { askedAs, contentsOf } from '../belief/looked-layers.ts';
import { baseOfCup, type CupBase } from '../mix/cup-model.ts';
import type { SeenShelf } from '../shelf/match-material.ts';
import type { SeenViews, TargetPart } from '../target/target-part.ts';

/** What a cup is to show, and how a test pour of it is compared with that. */
export interface CupAim {
  readonly part: TargetPart;
  /** Whether a test pour is seen otherwise than the target was: at another thickness, or without the other cup behind it. Unset: as thick as the body. */
  moved(thicknessMm?: number): 'thickness' | 'laminate' | undefined;
  /** The cup in some state as the target was seen, as belief is asked about it. */
  asked(state: CupState): BelievedCup;
  /** The cup in some state as the target was seen, by the model alone; unset, by daylight. */
  views(state: CupState, light?: Light): TwoViews;
  /**
   * What was seen of a test pour, as the target was seen: moved by what the model says that makes.
   *
   * @param thicknessMm unset: as thick as the body
   * @param behind the other cup as it was, where a finished bait was looked at; unset: the cup was poured by itself
   */
  asTarget(seen: SeenViews, state: CupState, thicknessMm?: number, behind?: CupState): SeenViews;
}

/** The other cup of a finished bait. */
export interface OtherSide {
  readonly cup: CupState;
  /** Its part of the bait's thickness, above 0 and below 1. */
  readonly share: number;
}

/**
 * What a cup is to show of a part of a target, and of a side of a finished bait the other cup as that one is now.
 *
 * @param bodyMm thickness of a test pour
 * @param key name of the cup among the looks
 */
export function aimAt(
  found: TargetPart,
  { shelf, optics, bodyMm, key }: SeenShelf & { readonly bodyMm: number; readonly key?: string | undefined },
  other?: OtherSide,
): CupAim {
  const base = (state: CupState): CupBase => baseOfCup(state, (name) => required(shelf, name), optics);
  const behind = other && { ...base(other.cup), contents: contentsOf(other.cup, shelf), share: other.share };
  const part: TargetPart = behind ? { ...found, behind } : found;
  const layers = (state: CupState, far: (CupBase & { readonly share: number }) | undefined, thicknessMm: number) => {
    const { mix, flakes } = base(state);
    const near = { ...mix, flakes };
    return far
      ? [
          { ...near, thickness: (1 - far.share) * thicknessMm },
          { ...far.mix, flakes: far.flakes, thickness: far.share * thicknessMm },
        ]
      : [{ ...near, thickness: thicknessMm }];
  };
  const views = (state: CupState, light?: Light): TwoViews =>
    layersViews(layers(state, behind, part.thicknessMm), optics, light);
  const moved = (thicknessMm = bodyMm): ReturnType<CupAim['moved']> =>
    behind ? 'laminate' : Math.abs(part.thicknessMm - thicknessMm) > 0.01 ? 'thickness' : undefined;
  return {
    part,
    moved,
    asked: (state) => ({ ...askedAs([contentsOf(state, shelf)], 0, part), ...defined({ cup: key }) }),
    views,
    asTarget(seen, state, thicknessMm = bodyMm, seenBehind) {
      if (moved(thicknessMm) === undefined) return seen;
      // Since a finished bait was looked at, the other cup may have become another.
      const far = behind && seenBehind && { ...base(seenBehind), share: behind.share };
      const here = layersViews(layers(state, far, thicknessMm), optics);
      const there = views(state);
      const overWhite = shifted(seen.overWhite, here.overWhite, there.overWhite);
      const black = shifted(seen.overBlack, here.overBlack, there.overBlack);
      // What is added up of looking and of two predictions must not end up lighter over black.
      const overBlack = black && { ...black, L: Math.min(black.L, overWhite?.L ?? 100) };
      return defined({ overWhite, overBlack });
    },
  };
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
