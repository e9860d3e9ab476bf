import { deltaE00 } from '../../optics/delta-e00.ts';
import { hexFromLab, labFromHex } from '../../optics/display.ts';
import type { Lab } from '../model/colours.ts';

const BLACK: Lab = { L: 0, a: 0, b: 0 };
const WHITE: Lab = { L: 100, a: 0, b: 0 };
/** Halvings of the way: far below a step of a screen. */
const HALVINGS = 24;
/** Of the screen's colours around the one on the way, that of the right difference is taken. */
const STEPS = [-1, 0, 1] as const;

/**
 * A colour of the same hue that is so far from another: what a difference of that size looks like there. It lies on the way to black of
 * a light colour, to white of a dark one, where a screen shows all of the way.
 *
 * @param hex `#rrggbb`
 * @param deltaE ΔE00, from 0; where no colour of that way is so far, the end of it is taken
 * @returns `#rrggbb`
 */
export function colourApart(hex: string, deltaE: number): string {
  const lab = labFromHex(hex);
  const end = lab.L > 50 ? BLACK : WHITE;
  const at = (way: number): Lab => ({
    L: lab.L + way * (end.L - lab.L),
    a: lab.a + way * (end.a - lab.a),
    b: lab.b + way * (end.b - lab.b),
  });
  let [near, far] = [0, 1];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (near + far) / 2;
    if (deltaE00(lab, at(middle)) < deltaE) near = middle;
    else far = middle;
  }
  const amiss = (shown: string): number => Math.abs(deltaE00(lab, labFromHex(shown)) - deltaE);
  return around(hexFromLab(at(far)).hex).reduce((best, each) => (amiss(each) < amiss(best) ? each : best));
}

/** A colour of the screen, first, and its neighbours. */
function around(hex: string): readonly string[] {
  const channels = [1, 3, 5].map((start) => Number.parseInt(hex.slice(start, start + 2), 16));
  const [reds, greens, blues] = channels.map((value) =>
    STEPS.map((step) =>
      Math.min(255, Math.max(0, value + step))
        .toString(16)
        .padStart(2, '0'),
    ),
  );
  return [hex, ...reds!.flatMap((r) => greens!.flatMap((g) => blues!.map((b) => `#${r}${g}${b}`)))];
}
