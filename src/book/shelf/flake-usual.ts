import { FLAKE_BULK, FLAKE_LOAD } from '../../tables/material-defaults.ts';
import { MM_PER_INCH } from '../../units/unit.ts';

/** Mass of a level millilitre of flake where nobody has weighed one, g: between the sizes of the table by their logarithm, beyond them as at its ends. */
export function usualFlakeBulk(longestMm: number): number {
  const inches = longestMm / MM_PER_INCH;
  const above = FLAKE_BULK.findIndex((row) => row.inches >= inches);
  const [first, last] = [FLAKE_BULK[0], FLAKE_BULK.at(-1)!];
  if (above <= 0) return (above === 0 ? first : last).gramsPerMl;
  const [low, high] = [FLAKE_BULK[above - 1]!, FLAKE_BULK[above]!];
  const part = Math.log(inches / low.inches) / Math.log(high.inches / low.inches);
  // More digits than anybody weighs would stand in every amount.
  return Number((low.gramsPerMl + part * (high.gramsPerMl - low.gramsPerMl)).toFixed(2));
}

/**
 * Ordinary load of a flake, g per ml of plastic.
 *
 * @param gramsPerMl mass of a level millilitre of it
 */
export function usualFlakeLoad(acrossMm: number, gramsPerMl: number): number {
  return FLAKE_LOAD.mlPerMl * (acrossMm / MM_PER_INCH / FLAKE_LOAD.inches) ** FLAKE_LOAD.power * gramsPerMl;
}
