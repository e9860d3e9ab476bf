import type { LoggedAmount } from '../book/log-text.ts';
import { pairDifference, type SeenPair } from '../physics/eye.ts';
import type { Chance } from '../world/chance.ts';
import { bottle, plainCup, poured, type TrueCup, trueLook, withAmount, withPlastic } from '../world/true-cup.ts';
import type { World } from '../world/world.ts';
import { performed, type SizedSlip } from './slips.ts';
import type { ToDo } from './what-to-do.ts';

/** A cup as it really is. */
export interface MakersCup {
  readonly real: TrueCup;
  /** What went wrong with the last step. */
  readonly slips: readonly SizedSlip[];
  /** Something in it is not as it is logged. */
  readonly isFaulty: boolean;
}

/** ml that a test pour takes. */
export const POUR_ML = 14;

/** A cup of plain plastic. */
export function freshCup(plasticMl: number): MakersCup {
  return { real: plainCup(plasticMl), slips: [], isFaulty: false };
}

/** A cup after a step: what was done to it, and if the maker is careless what went wrong with that. */
export function afterStep(
  cup: MakersCup,
  { newCupMl, thinMl = 0, add }: ToDo,
  world: World,
  chance: Chance,
  isCareless: boolean,
): MakersCup {
  const begun = newCupMl === undefined ? cup : freshCup(newCupMl);
  const start = withPlastic(begun.real, thinMl);
  if (!isCareless) return { ...begun, real: withAll(start, add, world, chance), slips: [] };
  const { amounts, slips } = performed(add, start.plasticMl, world, chance);
  const real = withAll(start, amounts, world, chance);
  if (slips.length === 0) return { ...begun, real, slips: [] };
  const asLogged = withAll(start, add, world, chance);
  const size = pairDifference(trueLook(real, world), trueLook(asLogged, world));
  return { real, slips: slips.map((slip) => ({ ...slip, size })), isFaulty: true };
}

/** A cup after a test pour. */
export function afterPour(cup: MakersCup, world: World): MakersCup {
  return { ...cup, real: poured(cup.real, POUR_ML, world) };
}

/** What is really seen of a cup. */
export function lookOf({ real }: MakersCup, world: World): SeenPair {
  return trueLook(real, world);
}

function withAll(cup: TrueCup, amounts: readonly LoggedAmount[], world: World, chance: Chance): TrueCup {
  return amounts.reduce(
    (filled, { material, grams, text }) =>
      withAmount(filled, bottle(world, material), grams, text.endsWith(' g'), chance),
    cup,
  );
}
