import type { Lab } from '../optics/cielab.ts';
import { isClipped } from '../optics/clipped.ts';
import { hexFromLab } from '../optics/display.ts';
import type { PhotoMeasured } from './photo-measured.ts';

/** A colour as a file has it: `#rrggbb`, or Lab under D65 where a screen can't show it. */
export type WrittenColour = string | { readonly lab: readonly [number, number, number] };

/** What a photo tells of a look (at a round, a chip or a target), by the names that a file has for it. */
export interface PhotoFields {
  readonly 'over-white'?: WrittenColour;
  readonly 'over-black'?: WrittenColour;
  /** ΔE00 that nine in ten are within. */
  readonly doubt: number;
  /** The same of the contrast ratio, `4 %`. */
  readonly 'contrast-doubt'?: string;
  /** What took it: what its photos are always off by is learned. */
  readonly camera: string;
}

/** A kind of flake as a target has it. */
export interface WrittenFlake {
  readonly colour: string;
  /** `0.91 mm` */
  readonly size: string;
  /** `6 %` */
  readonly coverage: string;
}

/** What a photo tells, as a file has it. */
export function photoFields(
  { overWhite, overBlack, doubt, contrast }: Pick<PhotoMeasured, 'overWhite' | 'overBlack' | 'doubt' | 'contrast'>,
  camera: string,
): PhotoFields {
  return {
    ...(overWhite ? { 'over-white': writtenColour(overWhite) } : {}),
    ...(overBlack ? { 'over-black': writtenColour(overBlack) } : {}),
    doubt: twoDigits(doubt.bound),
    ...(contrast ? { 'contrast-doubt': percent(contrast.bound) } : {}),
    camera,
  };
}

/** The flake that a photo shows, as a target has it; undefined where it shows none. */
export function flakeFields({ flakes }: Pick<PhotoMeasured, 'flakes'>): readonly WrittenFlake[] | undefined {
  if (flakes === undefined || flakes.length === 0) return undefined;
  return flakes.map(({ lab, sizeMm, coverage }) => ({
    colour: hexFromLab(lab).hex,
    size: `${twoDigits(sizeMm)} mm`,
    coverage: percent(coverage),
  }));
}

/** A colour that a hex loses something of is written as Lab: beyond what a screen shows, and at the end of it. */
export function writtenColour(lab: Lab): WrittenColour {
  const { hex, mapped } = hexFromLab(lab);
  if (!mapped && !isClipped(hex)) return hex;
  return { lab: [oneDecimal(lab.L), oneDecimal(lab.a), oneDecimal(lab.b)] };
}

const oneDecimal = (value: number): number => Number(value.toFixed(1)) + 0;
const twoDigits = (value: number): number => Number(value.toPrecision(2));
const percent = (share: number): string => `${twoDigits(100 * share)} %`;
