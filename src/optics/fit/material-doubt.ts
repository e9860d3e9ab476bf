/**
 * What a joint fit leaves open of one material.
 */
import { type ConstantsDoubt, THEORY_DOUBT } from '../../tables/constants-doubt.ts';
import { DOUBT_SHAPES } from '../constants-doubt.ts';
import type { FittedMaterials } from './fit-materials.ts';
import { posteriorCovariance } from './material-posterior.ts';

/**
 * Doubt about K and S of a material of the fit: how surely its films tell level, slope and bend of each. How these depend on
 * one another is left out, which errs to the wide side.
 *
 * Throws: RangeError if the fit has no such material.
 */
export function materialDoubt({ materials, posterior, options }: FittedMaterials, name: string): ConstantsDoubt {
  const index = [...materials.keys()].indexOf(name);
  if (index < 0)
    throw new RangeError(`No material ${name} in the fit; give one of ${[...materials.keys()].join(', ')}`);
  const bands = options.wavelengths.length;
  const deviation = (quantity: 0 | 1, shape: (x: number) => number): number => {
    const values = Float64Array.from({ length: bands }, (_, band) => shape((2 * band) / (bands - 1) - 1));
    const square = values.reduce((sum, value) => sum + value * value, 0);
    const gradient = new Float64Array(posterior.factor.rows.length);
    gradient.set(
      values.map((value) => value / square),
      posterior.begins[index]! + quantity * bands,
    );
    return Math.hypot(Math.sqrt(posteriorCovariance(posterior, [gradient])[0]!), THEORY_DOUBT);
  };
  return {
    absorption: DOUBT_SHAPES.map((shape) => deviation(0, shape)),
    scattering: DOUBT_SHAPES.map((shape) => deviation(1, shape)),
  };
}
