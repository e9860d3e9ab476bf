import { type SeenViews, viewsOfLabs } from '../../matching/target/target-part.ts';
import { colourOf } from '../../optics/appearance.ts';
import { type LabD65, labFromTristimulus } from '../../optics/cielab.ts';
import { hexFromLab } from '../../optics/display.ts';
import { mapSpectrum, resampleSpectrum, type Spectrum } from '../../optics/spectrum.ts';
import { labByDaylight, type StatedColour } from '../../optics/stated-colour.ts';
import { whitePoint } from '../../optics/tristimulus.ts';
import {
  isMeasured,
  type MeasuredReflectance,
  type SeenColour,
  type TargetColour,
} from '../../recipe/colour-fields.ts';
import { SURFACE_K1 } from '../../tables/surface.ts';
import type { Colour } from '../model/colours.ts';
import type { Look } from '../model/looks.ts';

/** A colour of a file as the optics takes it. */
export function statedColour(colour: SeenColour): StatedColour {
  if (typeof colour === 'string') return colour;
  const { light } = colour;
  if ('lab' in colour) return { lab: inLab(colour.lab), light };
  const [X, Y, Z] = colour.xyz;
  return { lab: labFromTristimulus({ X: X / 100, Y: Y / 100, Z: Z / 100 }, whitePoint(light)), light };
}

/** A reflectance of a file on the bands of the book, 0..1, as one looks at it: beside the gloss. */
export function reflectanceBesideGloss({ reflectance, from, step, gloss }: MeasuredReflectance): Spectrum {
  const bands = resampleSpectrum(
    reflectance.map((_, index) => from + index * step),
    reflectance,
  );
  const glossy = gloss === 'included' ? SURFACE_K1 : 0;
  return mapSpectrum(bands, (percent) => Math.min(1, Math.max(0, percent / 100 - glossy)));
}

/** A colour of a file as it looks by daylight: as it was measured, whatever of it a screen can show. */
export function seenByDaylight(colour: TargetColour): Colour {
  if (isMeasured(colour)) return measured(colourOf(reflectanceBesideGloss(colour)).lab);
  const lab = labByDaylight(statedColour(colour));
  return typeof colour === 'string' ? { lab, hex: colour, mapped: false } : measured(lab);
}

/** A look of the book, as matching takes it; undefined where no colour was noted. */
export function viewsOfLook({ overWhite, overBlack }: Look = {}): SeenViews | undefined {
  return viewsOfLabs(overWhite?.lab, overBlack?.lab);
}

/** To four decimals, more than any instrument says; adapted to daylight the darkest can come out a hair below black. */
function measured({ L, a, b }: LabD65): Colour {
  const kept = (value: number): number => Number(value.toFixed(4));
  const lab = { L: Math.max(0, kept(L)), a: kept(a), b: kept(b) };
  return { lab, ...hexFromLab(lab) };
}

const inLab = ([L, a, b]: readonly [number, number, number]): { L: number; a: number; b: number } => ({ L, a, b });
