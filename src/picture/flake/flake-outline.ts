import type { PicturedFlake } from '../pictured-bait.ts';

/** A flake's outline: what lies between pairs of parallel edges. */
export interface FlakeOutline {
  /** Direction across each pair, in the flake's plane, and half of the distance between its edges, mm. */
  readonly cos: readonly number[];
  readonly sin: readonly number[];
  readonly halfMm: readonly number[];
  readonly areaMm2: number;
  /** Longest side or diagonal, from the middle, mm: nothing of it lies further out. */
  readonly reachMm: number;
  /** How high it stands on its edge, mm. */
  readonly longestMm: number;
}

/** A round flake is drawn with ten edges, of its area. */
const ROUND_PAIRS = 5;
/** Its edges' distance from the middle, as a part of its diameter: n tan(π/n) h² = π/4 with n edges. */
const ROUND = Math.sqrt(Math.PI / 4 / (2 * ROUND_PAIRS * Math.tan(Math.PI / (2 * ROUND_PAIRS))));

/**
 * @example flakeOutline({ outline: 'square', acrossMm: 2 }).areaMm2 // 4
 */
export function flakeOutline({
  outline,
  acrossMm,
  longMm = acrossMm,
}: Pick<PicturedFlake, 'outline' | 'acrossMm' | 'longMm'>): FlakeOutline {
  const half = acrossMm / 2;
  switch (outline) {
    case 'hexagon':
      return regular(3, half);
    case 'square':
      return regular(2, half);
    case 'round':
      return regular(ROUND_PAIRS, acrossMm * ROUND);
    case 'strip':
      return {
        ...directions(2),
        halfMm: [longMm / 2, half],
        areaMm2: longMm * acrossMm,
        reachMm: Math.hypot(longMm, acrossMm) / 2,
        longestMm: longMm,
      };
  }
}

function directions(pairs: number): Pick<FlakeOutline, 'cos' | 'sin'> {
  const angles = Array.from({ length: pairs }, (_, pair) => (pair * Math.PI) / pairs);
  return { cos: angles.map(Math.cos), sin: angles.map(Math.sin) };
}

/** A regular outline with so many pairs of edges, so far from its middle. */
function regular(pairs: number, halfMm: number): FlakeOutline {
  const quarter = Math.PI / (2 * pairs);
  return {
    ...directions(pairs),
    halfMm: Array.from({ length: pairs }, () => halfMm),
    areaMm2: 2 * pairs * halfMm * halfMm * Math.tan(quarter),
    reachMm: halfMm / Math.cos(quarter),
    longestMm: 2 * halfMm,
  };
}
