import { type CupState, concentrations, total } from '../../cup/ledger.ts';
import type { LookedLayer } from '../../learning/learning-data.ts';

/**
 * A cup as a layer that somebody looked through.
 *
 * @param colours whether a material of that name does anything to a colour; what does not is left out
 */
export function lookedLayer(cup: CupState, thicknessMm: number, colours: (material: string) => boolean): LookedLayer {
  const plasticMl = total(cup.plastics);
  const contents = concentrations(cup);
  return {
    plastics: inOrder(cup.plastics).map((id) => [id, kept(cup.plastics[id]! / plasticMl)]),
    contents: inOrder(contents)
      .filter(colours)
      .map((id) => [id, kept(contents[id]!)]),
    thicknessMm,
  };
}

const inOrder = (amounts: Readonly<Record<string, number>>): readonly string[] =>
  Object.keys(amounts)
    .filter((id) => amounts[id]! > 0)
    .sort();

// Six digits, far finer than anybody measures.
const kept = (value: number): number => Number(value.toPrecision(6));
