import type { PhotoContrast } from '../photo/photo-measured.ts';
import { hidesText } from './difference.ts';

/**
 * How much of what is behind it a bait hides, and how sure that is.
 *
 * @example photoHidesText({ ratio: 0.44, bound: 0.03 }) // 'hides 44 %, nine in ten within 3 %'
 */
export function photoHidesText({ ratio, bound }: PhotoContrast): string {
  return `hides ${hidesText(ratio)}, nine in ten within ${Math.max(1, Math.round(100 * bound))} %`;
}
