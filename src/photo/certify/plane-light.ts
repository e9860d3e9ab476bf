import type { Place } from '../../measuring-card/measuring-card.ts';
import { solveLinear } from '../../optics/linear-system.ts';
import { byChannel, type Channel } from '../channels.ts';
import type { LinearRgb } from '../pixels.ts';

/** The light of bare paper at a place. */
export interface LitPlace {
  readonly place: Place;
  readonly light: LinearRgb;
}

/**
 * Light that falls off evenly: ln of each channel is a plane through places where it is known, by least squares. It may be asked beside the
 * card as well, where a field of a higher degree would run away.
 *
 * Throws: RangeError if the places lie on a line, or are less than three.
 */
export function planeLight(lit: readonly LitPlace[]): (place: Place) => LinearRgb {
  const planes = byChannel((channel) => planeOf(lit, channel));
  return ({ x, y }) =>
    byChannel((channel) => {
      const [level, across, down] = planes[channel];
      return Math.exp(level + across * x + down * y);
    });
}

function planeOf(lit: readonly LitPlace[], channel: Channel): readonly [level: number, across: number, down: number] {
  const A = new Float64Array(9);
  const b = new Float64Array(3);
  for (const { place, light } of lit) {
    const row = [1, place.x, place.y];
    for (const [i, one] of row.entries()) {
      b[i]! += one * Math.log(light[channel]);
      for (const [j, other] of row.entries()) A[3 * i + j]! += one * other;
    }
  }
  if (!solveLinear(A, b) || b.some((value) => !Number.isFinite(value)))
    throw new RangeError(`${lit.length} places of paper fix no plane; give three that don't lie on a line`);
  return [b[0]!, b[1]!, b[2]!];
}
