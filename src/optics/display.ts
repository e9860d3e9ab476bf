/**
 * Between colours and the screen: sRGB hex values in and out, mapped into the gamut where a screen can't show the colour.
 *
 * Source: IEC 61966-2-1:1999 for sRGB; gamut mapping as in CSS Color 4 (chroma reduced in OKLCh until the colour differs
 * little from its clipped self).
 */
import { formatHex, modeLrgb, modeOklab, modeOklch, modeRgb, modeXyz65, toGamut, useMode } from 'culori/fn';
import type { Light } from '../tables/lights.ts';
import { SRGB_WHITE } from '../tables/srgb.ts';
import { adaptTristimulus } from './adaptation.ts';
import { type LabD65, labFromTristimulus, tristimulusFromLab } from './cielab.ts';
import { type Tristimulus, tristimulus, whitePoint } from './tristimulus.ts';

/** A colour for the screen. */
export interface DisplayColour {
  /** `#rrggbb`, lower case. */
  readonly hex: string;
  /** Whether the screen can't show the colour, and a nearby one stands for it. */
  readonly mapped: boolean;
}

/** Red, green and blue of sRGB's primaries in linear light; 1 is white. */
export interface LinearRgb {
  readonly r: number;
  readonly g: number;
  readonly b: number;
}

useMode(modeXyz65);
const linearFrom = useMode(modeLrgb);
useMode(modeOklab);
useMode(modeOklch);
const rgbFrom = useMode(modeRgb);
const xyzFrom = useMode(modeXyz65);
const intoGamut = toGamut('rgb', 'oklch');

// The white of sRGB is D65 with its chromaticity rounded; that of this book is D65 summed over 36 bands. They are one light,
// so the ratios X/Xn, Y/Yn, Z/Zn carry over, and a perfect reflector is #ffffff.
const D65 = whitePoint('D65');
const SCALE_X = SRGB_WHITE.x / SRGB_WHITE.y / D65.X;
const SCALE_Z = (1 - SRGB_WHITE.x - SRGB_WHITE.y) / SRGB_WHITE.y / D65.Z;

function screenXyz({ X, Y, Z }: Tristimulus): { mode: 'xyz65'; x: number; y: number; z: number } {
  return { mode: 'xyz65', x: X * SCALE_X, y: Y, z: Z * SCALE_Z };
}

/** Outside the gamut by less than this, in linear or coded RGB, is rounding. */
const ROUNDING = 1e-4;

/**
 * The screen's colour for tristimulus values, adapted to the screen's white if the light is another than D65.
 *
 * Throws: RangeError if a value is not finite.
 *
 * @example hexFromTristimulus(whitePoint('D65')) // { hex: '#ffffff', mapped: false }
 */
export function hexFromTristimulus(XYZ: Tristimulus, light: Light = 'D65'): DisplayColour {
  const { X, Y, Z } = light === 'D65' ? XYZ : adaptTristimulus(XYZ, whitePoint(light), D65);
  if (!(Number.isFinite(X) && Number.isFinite(Y) && Number.isFinite(Z))) {
    throw new RangeError(`Tristimulus values are ${X}, ${Y}, ${Z}; give finite numbers`);
  }
  const colour = screenXyz({ X, Y, Z });
  const { r, g, b } = rgbFrom(colour);
  const mapped = Math.min(r, g, b) < -ROUNDING || Math.max(r, g, b) > 1 + ROUNDING;
  return { hex: formatHex(mapped ? intoGamut(colour) : { mode: 'rgb', r, g, b }), mapped };
}

/**
 * How much of a light the screen can show without one of its primaries running over, 0..1: what is lit by it, times this, keeps its
 * hue. Of daylight all, of a saturated orange about a half.
 *
 * Throws: RangeError if a value is not finite.
 *
 * @example brightestShown(whitePoint('D65')) // 1
 */
export function brightestShown(light: Tristimulus): number {
  const { r, g, b } = linearFrom(screenXyz(light));
  const most = Math.max(r, g, b);
  if (!Number.isFinite(most)) throw new RangeError('A light has a value that is not finite; give finite numbers');
  return most > 1 ? 1 / most : 1;
}

/**
 * The screen's colour for CIELAB.
 *
 * Throws: RangeError if a value is not finite.
 *
 * @example hexFromLab({ L: 50, a: 0, b: 0 }) // { hex: '#777777', mapped: false }
 */
export function hexFromLab(lab: LabD65): DisplayColour {
  return hexFromTristimulus(tristimulusFromLab(lab));
}

/**
 * The screen's colour for a reflectance under a light.
 *
 * Throws: RangeError if R has not 36 bands, or there is no such light.
 *
 * @example hexOf(constantSpectrum(1)) // { hex: '#ffffff', mapped: false }
 */
export function hexOf(R: ArrayLike<number>, light: Light = 'D65'): DisplayColour {
  return hexFromTristimulus(tristimulus(R, light), light);
}

/**
 * Tristimulus values, under D65, of `#rgb` or `#rrggbb`.
 *
 * Throws: RangeError if the text is anything else.
 *
 * @example tristimulusFromHex('#ffffff').Y // 1
 */
export function tristimulusFromHex(hex: string): Tristimulus {
  const { x, y, z } = xyzFrom(rgbFromHex(hex));
  return { X: x / SCALE_X, Y: y, Z: z / SCALE_Z };
}

/**
 * CIELAB, relative to D65, of red, green and blue in linear light. Values outside 0..1 are colours that a screen cannot show, and stay such.
 *
 * @example labFromLinear({ r: 1, g: 1, b: 1 }) // { L: 100, a: 0, b: 0 }, to 4 digits
 */
export function labFromLinear({ r, g, b }: LinearRgb): LabD65 {
  const { x, y, z } = xyzFrom({ mode: 'lrgb', r, g, b });
  return labFromTristimulus({ X: x / SCALE_X, Y: y, Z: z / SCALE_Z });
}

/**
 * Red, green and blue in linear light of CIELAB relative to D65; outside 0..1 where a screen cannot show the colour.
 *
 * @example linearFromLab({ L: 100, a: 0, b: 0 }) // { r: 1, g: 1, b: 1 }, to 4 digits
 */
export function linearFromLab(lab: LabD65): LinearRgb {
  return linearFromTristimulus(tristimulusFromLab(lab));
}

/**
 * Red, green and blue in linear light of tristimulus values under D65; outside 0..1 where a screen cannot show the colour.
 *
 * @example linearFromTristimulus(whitePoint('D65')) // { r: 1, g: 1, b: 1 }, to 4 digits
 */
export function linearFromTristimulus(XYZ: Tristimulus): LinearRgb {
  const { r, g, b } = linearFrom(screenXyz(XYZ));
  return { r, g, b };
}

/**
 * CIELAB, relative to D65, of `#rgb` or `#rrggbb`.
 *
 * Throws: RangeError if the text is anything else.
 *
 * @example labFromHex('#777777').L // 50.034, to 3 decimals
 */
export function labFromHex(hex: string): LabD65 {
  return labFromTristimulus(tristimulusFromHex(hex));
}

/**
 * Whether a text is a colour that `tristimulusFromHex` takes.
 *
 * @example isHex('#d9c48f') // true
 */
export function isHex(text: string): boolean {
  return /^#(?:[0-9a-f]{3}|[0-9a-f]{6})$/i.test(text);
}

function rgbFromHex(hex: string): { mode: 'rgb'; r: number; g: number; b: number } {
  if (!isHex(hex)) throw new RangeError(`Unexpected colour ${hex}; give # and six hexadecimal digits`);
  const digits = hex.length === 4 ? [...hex.slice(1)].map((digit) => digit + digit).join('') : hex.slice(1);
  const channel = (i: number): number => Number.parseInt(digits.slice(2 * i, 2 * i + 2), 16) / 255;
  return { mode: 'rgb', r: channel(0), g: channel(1), b: channel(2) };
}
