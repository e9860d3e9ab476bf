import { CAMERA_SD } from '../tables/material-priors.ts';
import type { ShelfState } from './shelf-state.ts';

/** No look is surer than half of what its maker says, whatever a camera does to all of its photos alike. Convention of this book. */
const LEAST_BESIDE = 0.5;

/**
 * A maker's doubt of a photo is about the truth: what the camera does to all of its photos alike is in it. Where the camera is named, that part
 * is an unknown of its own, and this is what is left beside it. Not for what is learned from: a camera would take up what the theory is off by.
 *
 * @param axisSd ΔE00, one standard deviation along an axis
 *
 * @example axisSdBesideBias(1) // 0.8
 */
export function axisSdBesideBias(axisSd: number): number {
  return Math.sqrt(Math.max(axisSd * axisSd - CAMERA_SD * CAMERA_SD, (LEAST_BESIDE * axisSd) ** 2));
}

/**
 * What is to be stated of the mean of several photos, ΔE00 along an axis, where of one alone the doubt is known.
 *
 * @param isBesideBias whether that is what is left beside the camera's part
 */
export function statedDoubt(
  axisSd: number,
  { isBesideBias, looks }: { readonly isBesideBias: boolean; readonly looks: number },
): number {
  const beside = isBesideBias ? axisSd : axisSdBesideBias(axisSd);
  return Math.min(Math.hypot(CAMERA_SD, beside / Math.sqrt(looks)), isBesideBias ? Number.POSITIVE_INFINITY : axisSd);
}

/** What a camera is believed to add to every colour, ΔE00 along each axis; nought of one that has made none of the looks, and where none is named. */
export function biasOf({ unknowns, theta }: ShelfState, camera: string | undefined): readonly [number, number, number] {
  const at = camera === undefined ? undefined : unknowns.cameras.get(camera);
  return at === undefined
    ? [0, 0, 0]
    : [CAMERA_SD * theta[at]!, CAMERA_SD * theta[at + 1]!, CAMERA_SD * theta[at + 2]!];
}

/** Adds to a covariance of two views what a camera does to both alike, as long as nothing is known of it. */
export function addUnknownBias(covariance: Float64Array): void {
  for (let i = 0; i < 6; i++) for (let j = i % 3; j < 6; j += 3) covariance[6 * i + j]! += CAMERA_SD * CAMERA_SD;
}
