import type { Lab } from '../optics/cielab.ts';
import { hexFromLab } from '../optics/display.ts';
import { absorptionOverWhite } from '../optics/from-colour-and-kind.ts';
import { effectiveDepth, layerOver } from '../optics/kubelka-munk.ts';
import { BESIDE_GLOSS, surfaceInward } from '../optics/surface.ts';
import { reflectanceFromHex } from '../optics/upsampling.ts';
import { BLACK_BACKING, WHITE_BACKING } from '../tables/backings.ts';
import type { PicturedCup } from './pictured-bait.ts';

/** S per mm that hides every card behind a bait. */
const HIDING = 40;

const HALVINGS = 40;

/**
 * Plastic that looks so over white and over black where it is so thick, mm, whatever it is really made of: K′ and S′ per mm.
 *
 * Met over white in every band that plastic can have, and as near as may be over black.
 */
export function genericPlastic(
  { overWhite, overBlack }: { readonly overWhite: Lab; readonly overBlack: Lab },
  mm: number,
): Omit<PicturedCup, 'flakes'> {
  const inside = (lab: Lab): readonly number[] =>
    Array.from(reflectanceFromHex(hexFromLab(lab).hex), (R) => surfaceInward(R, BESIDE_GLOSS));
  const [white, black] = [inside(overWhite), inside(overBlack)];
  const bands = white.map((R, band) => {
    const absorption = (S: number): number => absorptionOverWhite(R, S, mm, WHITE_BACKING);
    const shown = (S: number): number => {
      const K = absorption(S);
      return layerOver(K, S, effectiveDepth(K, S, mm), BLACK_BACKING);
    };
    let [low, high] = [0, HIDING];
    for (let step = 0; step < HALVINGS; step++) {
      const middle = (low + high) / 2;
      if (shown(middle) < black[band]!) low = middle;
      else high = middle;
    }
    const scattering = (low + high) / 2;
    return { absorption: absorption(scattering), scattering };
  });
  return {
    absorption: bands.map(({ absorption }) => absorption),
    scattering: bands.map(({ scattering }) => scattering),
  };
}
