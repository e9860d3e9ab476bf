import type { Lab } from '../optics/cielab.ts';
import { inverseMetric, localMetric } from '../optics/local-metric.ts';
import { CAMERA_SD } from '../tables/material-priors.ts';
import type { BeliefParts } from './belief-parts.ts';
import { VIEW_AXES } from './linear-views.ts';

/** Colours as one camera shows them. */
export interface CameraColours {
  readonly overWhite: Lab;
  readonly overBlack?: Lab;
  /** ΔE00 along each of three axes, one standard deviation: of all that may be off, the camera's bias among it. */
  readonly axisSd: number;
}

/** Of how vague a look is, at most so much is the bias of its camera, in squares: light and hand err as well. Convention of this book. */
const MOST_OF_BIAS = 0.5;

/**
 * Colours without what their camera is believed to be off by, and how vague they are then: no more than before.
 *
 * A camera with which nothing was seen leaves them as they are.
 */
export function withoutBias(
  { state: { unknowns, theta }, doubt }: BeliefParts,
  colours: CameraColours,
  camera: string,
): CameraColours {
  const at = unknowns.cameras.get(camera);
  if (at === undefined) return colours;
  const { inverse, count } = doubt();
  const bias = [0, 1, 2].map((axis) => CAMERA_SD * theta[at + axis]!);
  const known = (lab: Lab): Lab => {
    const back = inverseMetric(localMetric(lab));
    const [x, y, z] = bias as [number, number, number];
    return {
      L: lab.L - back[0]! * x - back[1]! * y - back[2]! * z,
      a: lab.a - back[4]! * y - back[5]! * z,
      b: lab.b - back[8]! * z,
    };
  };
  let left = 0;
  for (let axis = at; axis < at + VIEW_AXES; axis++)
    left += (CAMERA_SD ** 2 * inverse[axis * count + axis]!) / VIEW_AXES;
  const variance = colours.axisSd ** 2;
  const biased = Math.min(MOST_OF_BIAS * variance, CAMERA_SD ** 2);
  return {
    overWhite: known(colours.overWhite),
    ...(colours.overBlack ? { overBlack: known(colours.overBlack) } : {}),
    axisSd: Math.sqrt(Math.min(variance, variance - biased + left)),
  };
}
