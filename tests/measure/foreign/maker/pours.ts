import type { LoggedAmount } from '../book/log-text.ts';
import { pairDifference, type SeenPair } from '../physics/eye.ts';
import type { Chance } from '../world/chance.ts';
import { bottle, plainCup, poured, type TrueCup, trueLook, withAmount, withPlastic } from '../world/true-cup.ts';
import type { World } from '../world/world.ts';
import { performed, type Slip } from './slips.ts';
import type { ToDo } from './what-to-do.ts';

/** A cup as it really is, and as it would be if the log told the truth; the two are one as long as nothing slips. */
export interface MakersCup {
  readonly real: TrueCup;
  readonly asLogged: TrueCup;
  /** Slips that are still in it. */
  readonly slips: readonly Slip[];
}

/** ml that a test pour takes. */
export const POUR_ML = 14;

/** A cup of plain plastic. */
export function freshCup(plasticMl: number): MakersCup {
  return { real: plainCup(plasticMl), asLogged: plainCup(plasticMl), slips: [] };
}

/** A cup after a step: what was done to it, and with `careless` what went wrong with that. */
export function afterStep(
  cup: MakersCup,
  { newCupMl, thinMl = 0, add }: ToDo,
  world: World,
  chance: Chance,
  careless: boolean,
): MakersCup {
  const begun = newCupMl === undefined ? cup : freshCup(newCupMl);
  const start = { ...begun, real: withPlastic(begun.real, thinMl), asLogged: withPlastic(begun.asLogged, thinMl) };
  const { amounts, slips } = careless
    ? performed(add, start.real.plasticMl, world, chance)
    : { amounts: add, slips: [] };
  // Without a slip, hand and eye are off alike in both.
  const real = withAll(start.real, amounts, world, chance);
  const asLogged = slips.length === 0 && start.slips.length === 0 ? real : withAll(start.asLogged, add, world, chance);
  return { real, asLogged, slips: [...start.slips, ...slips] };
}

/** A cup after a test pour. */
export function afterPour({ real, asLogged, slips }: MakersCup, world: World): MakersCup {
  return { real: poured(real, POUR_ML, world), asLogged: poured(asLogged, POUR_ML, world), slips };
}

/** How far a cup is from what its log says, ΔE00 between what is really seen of both. */
export function slipSize({ real, asLogged, slips }: MakersCup, world: World): number {
  return slips.length === 0 ? 0 : pairDifference(trueLook(real, world), trueLook(asLogged, world));
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
