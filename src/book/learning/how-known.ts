import { type CupState, total } from '../../cup/ledger.ts';
import type { BelievedCup } from '../../learning/asked-views.ts';
import type { LookedLayer, TaughtLook } from '../../learning/learning-data.ts';
import { TIERS, type Tier } from '../../optics/material-constants.ts';
import { required } from '../../values/required.ts';
import type { Known } from '../model/known.ts';
import type { BookEye } from './book-eye.ts';

/** What is asked of a material to say how its colour is known. */
export interface KnownMaterial {
  readonly tier: Tier;
  readonly constants?: unknown;
  readonly flake?: unknown;
}

/**
 * How the colour of something is known.
 *
 * @param cups what it is made of
 * @param shelf all that is in them
 */
export function howKnown(
  asked: BelievedCup,
  cups: readonly CupState[],
  shelf: ReadonlyMap<string, KnownMaterial>,
  eye: BookEye,
): Known {
  if (asked.cup !== undefined && eye.looksAt(asked.cup).some((look) => isOf(look, asked))) return { how: 'seen' };
  const { colouring, flakes } = colouringIn(cups, shelf);
  const isUnseen = (id: string): boolean => eye.looksWith(id).size === 0;
  const beside = flakes.some(isUnseen) ? ({ flakeByFace: true } as const) : {};
  const looks = colouring.map((id) => eye.looksWith(id));
  if (looks.length > 0 && looks.every(({ size }) => size > 0))
    return { how: 'learned', looks: new Set(looks.flatMap((keys) => [...keys])).size, ...beside };
  const tiers = colouring.filter(isUnseen).map((id) => TIERS.indexOf(required(shelf, id).tier));
  return { how: TIERS[Math.max(...tiers)]!, ...beside };
}

/** What colours some cups, with the flake beside it; flake itself where nothing else does, or else the plastics. */
function colouringIn(
  cups: readonly CupState[],
  shelf: ReadonlyMap<string, KnownMaterial>,
): { readonly colouring: readonly string[]; readonly flakes: readonly string[] } {
  const inCups = cups.flatMap((cup) => Object.keys(cup.materials).filter((id) => cup.materials[id]! > 0));
  const materials = [...new Set(inCups)].sort();
  const colouring = materials.filter((id) => required(shelf, id).constants !== undefined);
  const flakes = materials.filter((id) => required(shelf, id).flake !== undefined);
  if (colouring.length > 0) return { colouring, flakes };
  if (flakes.length > 0) return { colouring: flakes, flakes: [] };
  const plastics = cups.flatMap((cup) => (total(cup.plastics) > 0 ? Object.keys(cup.plastics) : []));
  return { colouring: [...new Set(plastics)].sort(), flakes: [] };
}

/** Whether a look was at just that: what is poured or let down after it is another colour. */
function isOf(look: TaughtLook, { layers, streaks }: BelievedCup): boolean {
  return (
    (look.streaks === undefined) === (streaks === undefined) &&
    look.layers.length === layers.length &&
    look.layers.every((layer, index) => isAlike(layer, layers[index]!))
  );
}

/** As nearly alike as amounts can be told apart that were kept with six digits. */
const ALIKE = 1e-4;

function isAlike(one: LookedLayer, other: LookedLayer): boolean {
  return isAlikeIn(one.plastics, other.plastics) && isAlikeIn(one.contents, other.contents);
}

function isAlikeIn(one: LookedLayer['contents'], other: LookedLayer['contents']): boolean {
  const amounts = new Map(other);
  return one.length === other.length && one.every(([id, amount]) => isClose(amount, amounts.get(id)));
}

function isClose(one: number, other: number | undefined): boolean {
  return other !== undefined && Math.abs(one - other) <= ALIKE * Math.max(one, other);
}
