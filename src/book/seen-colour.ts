import { labFromTristimulus } from '../optics/cielab.ts';
import { hexFromLab } from '../optics/display.ts';
import { labByDaylight, type StatedColour } from '../optics/stated-colour.ts';
import { whitePoint } from '../optics/tristimulus.ts';
import type { SeenColour } from '../recipe/fields.ts';
import { keptSeen } from './looks.ts';
import type { Seen } from './model.ts';

/** A colour of a file as the optics takes it. */
export function statedColour(colour: SeenColour): StatedColour {
  if (typeof colour === 'string') return colour;
  const { light } = colour;
  if ('lab' in colour) return { lab: inLab(colour.lab), light };
  const [X, Y, Z] = colour.xyz;
  return { lab: labFromTristimulus({ X: X / 100, Y: Y / 100, Z: Z / 100 }, whitePoint(light)), light };
}

/** A colour of a file as it looks by daylight. */
export function seenByDaylight(colour: SeenColour): Seen {
  const lab = labByDaylight(statedColour(colour));
  return typeof colour === 'string' ? { lab, hex: colour, mapped: false } : keptSeen({ lab, ...hexFromLab(lab) });
}

const inLab = ([L, a, b]: readonly [number, number, number]): { L: number; a: number; b: number } => ({ L, a, b });
