import type { CupHeats } from '../../cup/heats.ts';
import { type HeatsBorne, isWorn } from '../../cup/heats-borne.ts';
import type { CupState } from '../../cup/ledger.ts';
import { FUSED, temperatureAfter, USUAL_POURING } from '../../cup/temperature-after.ts';
import { sharedRange } from '../../units/shared-range.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';

/** A material that would bear more than it does. */
export interface WornMaterial {
  readonly material: string;
  readonly title: string;
  /** How many heats it would have had. */
  readonly heats: number;
  readonly bears: HeatsBorne;
}

/** What an addition does to the heat of a cup. */
export interface AdditionHeat {
  /** Which heat of the cup comes next. */
  readonly heat: number;
  /** Whether it costs that heat: surely, since the cup has cooled or falls below where it pours, only if it has cooled, or not. */
  readonly costs: 'cooled' | 'falls' | 'if-cooled' | 'no';
  /** What cold plastic or powder brings a hot cup down to, °C, from where, and at how much it pours at least; absent where it is a few degrees. */
  readonly falls?: { readonly from: number; readonly to: number; readonly pours: number };
  /** What would have borne too many heats with that one. */
  readonly worn: readonly WornMaterial[];
}

// Less than that nobody reads off a cup, °C. Convention of this book.
const WORTH_TELLING = 4;

/**
 * What an addition at room temperature does to a cup that has been heated so often.
 *
 * A hot cup has the temperature that was noted last, or the middle of its pouring range.
 */
export function additionHeat(
  cup: CupState,
  heats: CupHeats,
  added: CupState,
  shelf: ReadonlyMap<string, MatchMaterial>,
): AdditionHeat {
  const working = sharedRange(Object.keys(cup.plastics).map((id) => required(shelf, id).working));
  const pours = working?.from ?? FUSED;
  const from = Math.max(pours, heats.heatedTo ?? (working ? (working.from + working.to) / 2 : USUAL_POURING));
  const to = temperatureAfter(cup, from, added, (id) => required(shelf, id));
  const falls = heats.cooled !== true && from - to >= WORTH_TELLING ? { from, to, pours } : undefined;
  const costs =
    heats.cooled === true
      ? 'cooled'
      : falls !== undefined && to < pours
        ? 'falls'
        : heats.cooled === false
          ? 'no'
          : 'if-cooled';
  return {
    heat: heats.heats + 1,
    costs,
    ...defined({ falls }),
    worn: costs === 'no' ? [] : wornAfter(heats, shelf),
  };
}

function wornAfter({ borne }: CupHeats, shelf: ReadonlyMap<string, MatchMaterial>): readonly WornMaterial[] {
  return Object.keys(borne)
    .sort()
    .flatMap((id): readonly WornMaterial[] => {
      const { title, bears } = required(shelf, id);
      const heats = borne[id]! + 1;
      return bears !== undefined && isWorn(heats, bears) ? [{ material: id, title, heats, bears }] : [];
    });
}

/** Whether an addition takes something past what its maker says it bears, or such materials surely do. */
export function wearsOut(proposal: { readonly heat?: AdditionHeat } | undefined): boolean {
  return (proposal?.heat?.worn.length ?? 0) > 0;
}
