/**
 * A colour as a maker has it: from a screen, or from an instrument with its light.
 */

import type { Light } from '../tables/lights.ts';
import { adaptTristimulus } from './adaptation.ts';
import { type Lab, type LabD65, labFromTristimulus, tristimulusFromLab } from './cielab.ts';
import { isHex, labFromHex } from './display.ts';
import type { Spectrum } from './spectrum.ts';
import { whitePoint } from './tristimulus.ts';
import { reflectanceFromHex, reflectanceFromTristimulus } from './upsampling.ts';

/** `#rrggbb`, or CIELAB (2° observer) relative to the white of a light. */
export type StatedColour = string | { readonly lab: Lab; readonly light: Light };

/** Whether it is a colour: six hexadecimal digits, or finite numbers with L not below 0. */
export function isColour(colour: StatedColour): boolean {
  if (typeof colour === 'string') return isHex(colour);
  const { L, a, b } = colour.lab;
  return L >= 0 && [L, a, b].every(Number.isFinite);
}

/** CIELAB and the light that it is under; a screen's colour is under D65. */
export function seenUnder(colour: StatedColour): { readonly lab: Lab; readonly light: Light } {
  return typeof colour === 'string' ? { lab: labFromHex(colour), light: 'D65' } : colour;
}

/** As it looks by daylight to an eye used to that: exact under D65, else by chromatic adaptation (Bradford). */
export function labByDaylight(colour: StatedColour): LabD65 {
  const { lab, light } = seenUnder(colour);
  return light === 'D65' ? lab : labFromTristimulus(daylightTristimulus(lab, light));
}

/** A smooth reflectance of about this colour. */
export function reflectanceOfColour(colour: StatedColour): Spectrum {
  if (typeof colour === 'string') return reflectanceFromHex(colour);
  return reflectanceFromTristimulus(daylightTristimulus(colour.lab, colour.light));
}

function daylightTristimulus(lab: Lab, light: Light): ReturnType<typeof tristimulusFromLab> {
  const white = whitePoint(light);
  return adaptTristimulus(tristimulusFromLab(lab, white), white, whitePoint('D65'));
}
