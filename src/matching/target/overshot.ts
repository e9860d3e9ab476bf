import { deltaE00Parts } from '../../optics/delta-e00.ts';
import type { SeenViews, TargetPart } from './target-part.ts';
import type { Verdict } from './verdict.ts';

/**
 * Whether there is too much of something in a cup: it is too thick, too strong or too dark; or off in hue alone, which too much of one
 * material makes, too.
 */
export function isOvershot(now: Verdict, views: SeenViews, target: TargetPart): boolean {
  const { lightness, strength, thickness } = now;
  const [seen, wanted] =
    views.overWhite === undefined ? [views.overBlack!, target.overBlack!] : [views.overWhite, target.overWhite];
  const { dL, dC } = deltaE00Parts(wanted, seen);
  const isThick = (thickness?.contrast ?? 0) > (thickness?.target ?? 0);
  const off = [
    { part: thickness, isTooMuch: isThick },
    { part: lightness, isTooMuch: dL < 0 },
    { part: strength, isTooMuch: dC > 0 },
  ].filter(({ part }) => part?.within === false);
  return off.length === 0 || off.some(({ isTooMuch }) => isTooMuch);
}
