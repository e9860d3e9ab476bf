import type { Chance } from './chance.ts';
import { usualDose } from './products.ts';
import { plainCup, type TrueCup } from './true-cup.ts';
import type { Bottle, World } from './world.ts';

/** An amount of a material as it is noted, g. */
export interface Noted {
  readonly bottle: Bottle;
  readonly grams: number;
}

const LEAST_DOSE = 0.1;

/** Two to four bottles at a tenth to all of their usual doses, even in the logarithm, for so many ml. */
export function randomMixture(bottles: readonly Bottle[], plasticMl: number, chance: Chance): readonly Noted[] {
  return chance.some(bottles, 2 + Math.floor(3 * chance.uniform())).map((bottle) => ({
    bottle,
    grams: plasticMl * usualDose(bottle.product) * LEAST_DOSE ** chance.uniform(),
  }));
}

/** A mixture as it would be, were every amount exact. */
export function exactCup(mixture: readonly Noted[], plasticMl: number): TrueCup {
  const each = mixture.map(
    ({ bottle, grams }) => [bottle.product.id, grams * bottle.strength * bottle.measure] as const,
  );
  return { ...plainCup(plasticMl), grams: Object.fromEntries(each) };
}

/** A target's mixture: on the shelf, or with one bottle at least that is not on it. */
export function targetMixture(world: World, offShelf: boolean, plasticMl: number, chance: Chance): TrueCup {
  const chosen = offShelf
    ? [
        ...randomMixture(chance.some(world.others, 1), plasticMl, chance),
        ...randomMixture(world.shelf, plasticMl, chance).slice(0, 2),
      ]
    : randomMixture(world.shelf, plasticMl, chance);
  return exactCup(chosen, plasticMl);
}
