import type { AnyLook } from '../../cup/any-look.ts';

/** How far something has settled: the next day it is what it will be, and just poured it is clearer and darker. */
const UNSETTLED: Readonly<Record<NonNullable<AnyLook['after']>, number>> = { 'next day': 0, '10 min': 2, hot: 3 };
const NOT_SAID = 1;

/**
 * Looks at one pour, the one that the cup is judged by first, the others in their order. That is one with a colour; of several what has
 * settled most; dry rather than wet; then as thick as the bait as may be; the last of those.
 */
export function judgedFirst<L extends AnyLook>(looks: readonly L[], bodyMm: number): readonly L[] {
  const judged = looks.reduce<L | undefined>((best, look) => {
    if (best === undefined) return look;
    const [one, other] = [rank(best, bodyMm), rank(look, bodyMm)];
    const at = one.findIndex((value, index) => Math.abs(value - other[index]!) > ROUNDING);
    return at < 0 || other[at]! < one[at]! ? look : best;
  }, undefined);
  return judged === undefined ? [] : [judged, ...looks.filter((look) => look !== judged)];
}

const ROUNDING = 1e-9;

function rank({ overWhite, overBlack, after, wet, thicknessMm }: AnyLook, bodyMm: number): readonly number[] {
  const hasColour = overWhite !== undefined || overBlack !== undefined;
  return [
    hasColour ? 0 : 1,
    after === undefined ? NOT_SAID : UNSETTLED[after],
    wet ? 1 : 0,
    Math.abs((thicknessMm ?? bodyMm) - bodyMm),
  ];
}
