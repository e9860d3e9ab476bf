import { expect, test } from 'vitest';
import { deltaE00 } from '../../../src/optics/delta-e00.ts';
import { labFromLinear } from '../../../src/optics/display.ts';
import { bodyOf } from '../../../src/photo/bait/body-colour.ts';
import { zoneFlakes } from '../../../src/photo/flake/zone-flakes.ts';
import { drawnZone } from './drawn-zone.ts';

type Rgb = readonly [number, number, number];

const GREEN: Rgb = [0.1, 0.2, 0.05];
const GOLD: Rgb = [0.75, 0.55, 0.12];
const AMBER: Rgb = [0.4, 0.2, 0.03];
const RED: Rgb = [0.5, 0.06, 0.05];
const BLUE: Rgb = [0.05, 0.1, 0.4];
const SILVER: Rgb = [0.72, 0.72, 0.72];
const PEARL: Rgb = [0.7, 0.68, 0.6];
const BLACK: Rgb = [0.02, 0.02, 0.02];

const THICK_MM = 6;
const DEPTHS = 7;

/** Coverage of a photo by that of the book: flake at even depths, of which a part e^(−depth / reach) shows, and which counts by its ΔE00. */
function ratio(body: Rgb, face: Rgb, across: number, reachMm: number): number {
  const kinds = Array.from({ length: DEPTHS }, (_, i) => {
    const shows = Math.exp((-THICK_MM * (DEPTHS - i - 0.5)) / DEPTHS / reachMm);
    const at = (channel: 0 | 1 | 2): number => body[channel] + (face[channel] - body[channel]) * shows;
    return { across, wanted: 0.02, colour: [at(0), at(1), at(2)] as const, glitter: 0.1 };
  });
  const zone = drawnZone(body, kinds, { perMm: 20, seed: 5 });
  const lab = ([r, g, b]: Rgb) => labFromLinear({ r, g, b });
  const standsOut = (colour: Rgb): number => deltaE00(lab(colour), lab(body)) / deltaE00(lab(face), lab(body));
  const seen = zone.covered.reduce((sum, share, i) => sum + share * standsOut(kinds[i]!.colour), 0);
  const found = zoneFlakes(zone.patch, bodyOf(zone.patch)).kinds.reduce((sum, { coverage }) => sum + coverage, 0);
  return found / seen;
}

test.each([
  ['gold in green', GREEN, GOLD, [1, 1.3], [1.1, 1.75]],
  ['silver in blue', BLUE, SILVER, [1, 1.3], [1.1, 1.75]],
  ['red in amber', AMBER, RED, [1, 1.3], [1.1, 1.75]],
  ['black in pearl', PEARL, BLACK, [1.8, 2.5], [2.5, 4.5]],
] as const)(
  '%s: how many times seen coverage a photo tells, in clear and in hazy plastic',
  (_, body, face, clear, hazy) => {
    for (const across of [0.4, 0.9])
      for (const [reach, [least, most]] of [
        [10, clear],
        [3, hazy],
      ] as const) {
        const times = ratio(body, face, across, reach);
        expect(times, `${across} mm, ${reach}`).toBeGreaterThan(least);
        expect(times, `${across} mm, ${reach}`).toBeLessThan(most);
      }
  },
);
