/**
 * A round bait's cut: a disc of radius 1, from −1 to 1.
 *
 * @packageDocumentation
 */

/**
 * Part of a disc's area before a chord.
 *
 * @param place −1..1
 * @example discBefore(0) // 0.5
 */
export function discBefore(place: number): number {
  const at = Math.min(1, Math.max(-1, place));
  return 0.5 + (Math.asin(at) + at * Math.sqrt(1 - at * at)) / Math.PI;
}

/** The chord before which a part of a disc's area lies, −1..1; found by halving. The inverse of `discBefore`. */
export function discPlace(part: number): number {
  let [low, high] = [-1, 1];
  for (let step = 0; step < 50; step++) {
    const place = (low + high) / 2;
    if (discBefore(place) < part) low = place;
    else high = place;
  }
  return (low + high) / 2;
}

/** Half of a disc's height at a place across it. */
export function discHalf(place: number): number {
  return Math.sqrt(Math.max(0, 1 - place * place));
}
