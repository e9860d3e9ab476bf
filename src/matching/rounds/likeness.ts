import { amountOf, type CupState, concentrations, total } from '../../cup/ledger.ts';
import { BAND_COUNT } from '../../optics/spectrum.ts';
import type { MaterialOf } from '../mix/cup-model.ts';

/** What is in a cup, by material: plastics as fractions, the rest in g per ml of plastic. */
export type Contents = Readonly<Record<string, number>>;

/** Contents of a cup; of an empty one, nothing. */
export function contentsOf(cup: CupState): Contents {
  const plasticMl = total(cup.plastics);
  if (!(plasticMl > 0)) return {};
  const plastics = Object.entries(cup.plastics).map(([name, ml]): [string, number] => [name, ml / plasticMl]);
  return { ...concentrations(cup), ...Object.fromEntries(plastics) };
}

/**
 * How alike two cups are in what they are made of, from 0, no material in common, to 1, the same doses: the part of all that takes up
 * or throws back light, K and S summed over the bands, that they have in common (M. Ružička's index of likeness, citation from memory).
 *
 * By materials and not by colour, since what a model is off by lies with the materials.
 */
export function likeness(one: Contents, other: Contents, shelf: MaterialOf): number {
  const names = [...new Set([...Object.keys(one), ...Object.keys(other)])];
  const doses = (contents: Contents): Float64Array => Float64Array.from(names, (name) => amountOf(contents, name));
  const effects = Float64Array.from(names, (name) => effectOf(name, shelf));
  return likenessOf(doses(one), doses(other), effects);
}

/** The same of doses in the same order, with what a unit of each takes up or throws back. */
export function likenessOf(one: Float64Array, other: Float64Array, effects: Float64Array): number {
  let common = 0;
  let all = 0;
  for (let i = 0; i < effects.length; i++) {
    const [here, there] = [Math.max(0, one[i]!), Math.max(0, other[i]!)];
    common += effects[i]! * Math.min(here, there);
    all += effects[i]! * Math.max(here, there);
  }
  return all > 0 ? common / all : 1;
}

/** What a unit of a material takes up or throws back: K and S summed over the bands. */
export function effectOf(name: string, shelf: MaterialOf): number {
  const { constants } = shelf(name);
  if (!constants) return 0;
  let sum = 0;
  for (let band = 0; band < BAND_COUNT; band++) sum += constants.absorption[band]! + constants.scattering[band]!;
  return sum;
}
