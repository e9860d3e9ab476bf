import { NO_PATH, USUAL_OPTICS } from '../../optics/optical-model.ts';
import { PATTERNS } from '../../patterns/patterns.ts';
import { genericPlastic } from '../../picture/generic-plastic.ts';
import type { PicturedBait, PicturedCup, PicturedSide } from '../../picture/pictured-bait.ts';
import { usualMold } from '../../shapes/usual-mold.ts';
import { STREAK_THICKNESS } from '../../tables/patterns.ts';
import type { Appearance } from '../model/colours.ts';
import type { RecipeLook } from '../model/recipe.ts';

/**
 * What a look-only recipe is pictured from: its published colours, its pattern and its shape alone. Its plastic is one that has such colours, its
 * mold the usual one, and its flake is in the colours.
 */
export function picturedLook({ id, pattern, shape, body, thin, other }: RecipeLook): PicturedBait {
  const mold = usualMold(shape);
  const { beside, second, thin: thinOf } = PATTERNS[pattern];
  const plastic = ({ overWhite, overBlack }: Appearance, mm: number): PicturedCup => ({
    ...genericPlastic({ overWhite: overWhite.lab, overBlack: overBlack.lab }, mm),
    flakes: [],
  });
  const alone = (cup: number): PicturedSide => ({
    pattern: 'solid',
    cups: [{ cup, share: 1 }],
    from: 'near',
    taught: [],
  });
  const bait = {
    seed: id,
    mold,
    optics: { backings: USUAL_OPTICS.backings, path: NO_PATH },
    streakMm: STREAK_THICKNESS,
  };
  const first = plastic(body, mold.bodyMm);
  if (beside && other !== undefined && second !== undefined) {
    const cups = [
      { cup: 0, share: 1 - second.share },
      { cup: 1, share: second.share },
    ];
    return {
      ...bait,
      cups: [first, plastic(other, mold.bodyMm)],
      near: { pattern, cups, from: 'near', taught: [] },
    };
  }
  if (other !== undefined)
    return { ...bait, cups: [first, plastic(other, mold.bodyMm)], near: alone(0), far: alone(1) };
  // What its thin part is made of alone lies round the rest.
  if (thinOf !== 'body' && thin !== undefined)
    return { ...bait, cups: [first, plastic(thin, mold.thinMm)], near: { ...alone(0), thinCup: 1 } };
  return { ...bait, cups: [first], near: alone(0) };
}
