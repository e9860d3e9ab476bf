import { type CupState, concentrations, total } from '../cup/ledger.ts';
import { BAND_COUNT } from '../optics/spectrum.ts';
import type { CupShelf } from './cup-model.ts';

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
export function likeness(one: Contents, other: Contents, shelf: CupShelf): number {
  let common = 0;
  let all = 0;
  for (const name of new Set([...Object.keys(one), ...Object.keys(other)])) {
    const effect = effectOf(name, shelf);
    const [here = 0, there = 0] = [one[name], other[name]];
    common += effect * Math.max(0, Math.min(here, there));
    all += effect * Math.max(0, here, there);
  }
  return all > 0 ? common / all : 1;
}

function effectOf(name: string, shelf: CupShelf): number {
  const { constants } = shelf(name);
  if (!constants) return 0;
  let sum = 0;
  for (let band = 0; band < BAND_COUNT; band++) sum += constants.absorption[band]! + constants.scattering[band]!;
  return sum;
}
