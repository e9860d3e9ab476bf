/**
 * 19 artist paints of published K and S as materials of known truth (Artist Paint Spectral Database, R. S. Berns, Rochester
 * Institute of Technology): only ratios between the paints carry meaning there, so that they are scaled to an S of 2.5 per mm
 * for the white at a dose of 1.
 */

import { appearance } from '../../src/optics/appearance.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { type MixturePart, mixtureConstants, type OpticalConstants } from '../../src/optics/mixture.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { plasticConstants } from '../../src/optics/plastic.ts';
import { referenceRows } from './reference.ts';

export interface Paint {
  readonly name: string;
  readonly constants: OpticalConstants;
}

/** The paints. */
export function paints(): Paint[] {
  const rows = referenceRows('artist_paint_ks.csv').slice(1);
  const spectrum = (name: string, quantity: string): Float64Array => {
    const row = rows.find((cells) => cells[0] === name && cells[2] === quantity)!;
    return Float64Array.from(row.slice(3, 39), Number);
  };
  const names = [...new Set(rows.map((row) => row[0]!))];
  const whitest = Math.max(...names.map((name) => spectrum(name, 'S')[17]!));
  const scaled = (values: Float64Array): Float64Array => values.map((value) => (2.5 * value) / whitest);
  return names.map((name) => ({
    name,
    constants: { absorption: scaled(spectrum(name, 'K')), scattering: scaled(spectrum(name, 'S')) },
  }));
}

/** A mix in clear plastic at 8 mm, over both backings. */
export function look(parts: readonly MixturePart[], thickness = 8): ReturnType<typeof appearance> {
  return appearance(mixtureConstants(plasticConstants('clear'), parts), { thickness, optics: USUAL_OPTICS });
}

/** ΔE00 over white and over black between mixes by the true constants and by those found, sorted. */
export function errorsOf(
  mixes: readonly (readonly { readonly of: number; readonly dose: number }[])[],
  truth: readonly Paint[],
  found: readonly OpticalConstants[],
): number[] {
  return mixes
    .flatMap((mix) => {
      const of = (constants: (i: number) => OpticalConstants): ReturnType<typeof look> =>
        look(mix.map(({ of: i, dose }) => ({ constants: constants(i), concentration: dose })));
      const right = of((i) => truth[i]!.constants);
      const guess = of((i) => found[i]!);
      return [deltaE00(right.overWhite.lab, guess.overWhite.lab), deltaE00(right.overBlack.lab, guess.overBlack.lab)];
    })
    .sort((x, y) => x - y);
}

/** Every pair of paints at three ratios. */
export function pairs(count: number): { of: number; dose: number }[][] {
  const mixes: { of: number; dose: number }[][] = [];
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < i; j++) {
      for (const [one, other] of [
        [0.1, 0.1],
        [0.5, 0.1],
        [0.1, 0.5],
      ] as const) {
        mixes.push([
          { of: i, dose: one },
          { of: j, dose: other },
        ]);
      }
    }
  }
  return mixes;
}

/** The value that a share of sorted numbers is below. */
export function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
}
