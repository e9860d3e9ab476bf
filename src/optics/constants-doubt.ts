/**
 * How far K and S of a material may be off, as a few independent changes, each of the size of one standard deviation.
 */
import { type ConstantsDoubt, TIER_DOUBT, USUAL_RESIDUAL } from '../tables/constants-doubt.ts';
import type { OpticalConstants } from './mixture.ts';

/** A constant, a slope and a bend over the spectrum, each within -1 and 1, of a place from -1 (shortest wave) to 1 (longest). */
export const DOUBT_SHAPES: readonly ((x: number) => number)[] = [() => 1, (x) => x, (x) => (3 * x * x - 1) / 2];

/** A thing as it may also be: a change by a standard deviation up, and the same down. */
export interface DoubtfulWay<Thing> {
  readonly up: Thing;
  readonly down: Thing;
}

// A deviation of ln K by 4 is a factor of 50: of chips that are missed by more than that nothing is known. Convention of this book.
const MOST_WIDENED = 10;

/**
 * The doubt about a material that rests on chips or on a colour and its kind.
 *
 * @param residual root mean square ΔE00 between its chips and what is found from them
 */
export function tierDoubt(tier: keyof typeof TIER_DOUBT, residual: number): ConstantsDoubt {
  const wider = tier === 'photographed' ? Math.min(MOST_WIDENED, Math.max(1, residual / USUAL_RESIDUAL)) : 1;
  const widened = (deviations: readonly number[]): readonly number[] => deviations.map((each) => each * wider);
  const { absorption, scattering } = TIER_DOUBT[tier];
  return { absorption: widened(absorption), scattering: widened(scattering) };
}

/** The six ways in which K and S may be otherwise, one for each deviation. Shape: K and S of any grid, evenly spaced. */
export function doubtfulConstants(
  constants: OpticalConstants,
  doubt: ConstantsDoubt,
): readonly DoubtfulWay<OpticalConstants>[] {
  return (['absorption', 'scattering'] as const).flatMap((quantity) =>
    DOUBT_SHAPES.map((shape, index) => {
      const last = constants[quantity].length - 1;
      const moved = (sign: number): OpticalConstants => ({
        absorption: constants.absorption,
        scattering: constants.scattering,
        [quantity]: Float64Array.from(
          constants[quantity],
          (value, band) => value * Math.exp(sign * doubt[quantity][index]! * shape((2 * band) / last - 1)),
        ),
      });
      return { up: moved(1), down: moved(-1) };
    }),
  );
}
