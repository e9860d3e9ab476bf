import type { CupState } from './ledger.ts';

/** What lies on the shelf of a bench, °C. Common practice, no source. */
export const ROOM = 20;

/** What plastisol is poured at where nobody has said, °C. Common practice, no source: 150 to 177, usually 165. */
export const USUAL_POURING = 165;

/** Below this plastisol has not fused through, °C, where its pouring range is not known. Common practice, no source: 155 to 175. */
export const FUSED = 160;

/** How warm a material can be made, and how warm it makes. */
export interface WarmedMaterial {
  /** g/ml */
  readonly density: number;
  /** Absent for what is not dropped: powder, flake, salt. */
  readonly gramsPerDrop?: number;
}

// A gram of salt, powder or film takes about half the heat of one of plastic or of a liquid. Common practice, no source.
const OF_SOLID = 0.5;

/**
 * Temperature of a cup once something has been stirred into it, °C: the mean, by what each weighs, solids at half.
 *
 * 35 ml of the same plastic at 20 °C into 140 ml at 170 °C are at 140 °C.
 *
 * @param celsius the cup's
 * @param added °C is `room`'s
 */
export function temperatureAfter(
  cup: CupState,
  celsius: number,
  added: CupState,
  shelf: (id: string) => WarmedMaterial,
  room = ROOM,
): number {
  const warm = plasticGrams(cup, shelf);
  const cold = plasticGrams(added, shelf);
  return warm + cold > 0 ? (warm * celsius + cold * room) / (warm + cold) : celsius;
}

/** Grams of plastic that take as much heat. */
function plasticGrams({ plastics, materials }: CupState, shelf: (id: string) => WarmedMaterial): number {
  let grams = 0;
  for (const id in plastics) grams += plastics[id]! * shelf(id).density;
  for (const id in materials) grams += materials[id]! * (shelf(id).gramsPerDrop === undefined ? OF_SOLID : 1);
  return grams;
}
