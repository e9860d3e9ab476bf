/**
 * Colours in front matter: of a screen, of an instrument, and of a target measured band by band.
 *
 * @packageDocumentation
 */

import { colorsNamed } from 'culori/fn';
import type { z } from 'zod';
import { LIGHTS, type Light } from '../tables/lights.ts';
import { defined } from '../values/defined.ts';
import type { Read } from './field-fault.ts';
import { asItIs, field, isReread, shown } from './fields.ts';
import type { Written } from './write-front-matter.ts';

/** A colour as `#rrggbb`, in lower case. */
export const colour: z.ZodType<string> = field<string>('field/colour', readColour, asItIs);

function readColour(input: unknown): Read<string> {
  const text = typeof input === 'string' || typeof input === 'number' ? String(input).replace(/[“”„‘’\s]/g, '') : '';
  if (text === input && /^#[0-9a-f]{6}$/i.test(text)) return { value: text.toLowerCase() };
  if (input === null) {
    return {
      fault: {
        found: 'nothing',
        expected: 'a colour such as `"#d9c48f"`',
        why: 'YAML reads an unquoted # as the start of a comment',
        fix: 'write the colour in quotes',
      },
    };
  }
  const named = namedColour(text);
  if (named !== undefined) {
    return {
      fault: {
        found: shown(input),
        expected: 'a colour such as `"#d9c48f"`',
        why: `a name can mean many colours; on a screen, \`${text.toLowerCase()}\` is ${named}`,
        fix: `write \`"${named}"\` if that is yours, or take yours from a photo on the Match page`,
      },
    };
  }
  const bare = /^#?([0-9a-f]{6})$/i.exec(text)?.[1] ?? /^#?([0-9a-f]{3})$/i.exec(text)?.[1]?.replace(/./g, '$&$&');
  return {
    fault: {
      found: shown(input),
      expected: 'a colour such as `"#d9c48f"`',
      why: 'a colour is # and six digits or letters a to f',
      ...(isReread(input) ? { asWritten: true } : {}),
      ...(bare ? { fix: `write \`"#${bare.toLowerCase()}"\`` } : {}),
    },
  };
}

/** What a screen shows by the name of a colour, as `#rrggbb`. Source: CSS Color Module Level 4, section 6.1, as culori has it. */
function namedColour(name: string): string | undefined {
  const value = Object.hasOwn(colorsNamed, name.toLowerCase())
    ? colorsNamed[name.toLowerCase() as keyof typeof colorsNamed]
    : undefined;
  return value === undefined ? undefined : `#${value.toString(16).padStart(6, '0')}`;
}

const USUAL_LIGHT = 'D65';

type Triple = readonly [number, number, number];

/** A colour as it was seen: on a screen, or by an instrument (2° observer) under a light; Y of white is 100. */
export type SeenColour =
  | string
  | { readonly lab: Triple; readonly light: Light }
  | { readonly xyz: Triple; readonly light: Light };

/** `"#d9c48f"`, or `{ lab: [80.1, 0.9, 29.4], light: D50 }`, or `xyz` in its place; unset, the light is D65. */
export const seenColour: z.ZodType<SeenColour> = field<SeenColour>('field/colour', readSeenColour, seenColourFields);

function readSeenColour(input: unknown): Read<SeenColour> {
  if (typeof input !== 'object' || input === null) return readColour(input);
  const { lab, xyz, light = USUAL_LIGHT, ...others } = input as Record<string, unknown>;
  const expected =
    'a colour such as `"#d9c48f"`, or what an instrument says, such as `{ lab: [80.1, 0.9, 29.4], light: D65 }`';
  const [stranger] = Object.keys(others);
  if (stranger !== undefined) return { fault: { found: `\`${stranger}\` in a colour`, expected } };
  const known = LIGHTS.find((name) => name === light);
  if (known === undefined) {
    return {
      fault: { found: `light ${shown(light)}`, expected: `one of ${LIGHTS.map((name) => `\`${name}\``).join(', ')}` },
    };
  }
  if (xyz === undefined && isTriple(lab, [0, -200, -200], [110, 200, 200])) return { value: { lab, light: known } };
  if (lab === undefined && isTriple(xyz, [0, 0, 0], [130, 110, 130])) return { value: { xyz, light: known } };
  return {
    fault: {
      found:
        lab !== undefined && xyz !== undefined
          ? '`lab` and `xyz` together'
          : 'a colour whose three numbers are not there or out of range',
      expected,
      why: 'L is 0 to 100; X, Y and Z are on the scale where Y of white is 100',
    },
  };
}

/** A colour that was seen, as a file has it. */
function seenColourFields(colour: SeenColour): Written {
  if (typeof colour === 'string') return colour;
  const { light, ...measured } = colour;
  return { ...measured, ...(light === USUAL_LIGHT ? {} : { light }) };
}

function isTriple(value: unknown, least: Triple, most: Triple): value is Triple {
  return (
    Array.isArray(value) &&
    value.length === 3 &&
    value.every((each, i) => typeof each === 'number' && each >= least[i]! && each <= most[i]!)
  );
}

/** A reflectance as an instrument measured it. */
export interface MeasuredReflectance {
  /** Percent, one for each wavelength. */
  readonly reflectance: readonly number[];
  /** First wavelength, and from each to the next: nm. */
  readonly from: number;
  readonly step: number;
  /** Whether the gloss of the surface is in it. */
  readonly gloss: 'included' | 'excluded';
}

/** A colour of a target: as it was seen, or measured band by band, so that it is known under any light. */
export type TargetColour = SeenColour | MeasuredReflectance;

export function isMeasured(colour: TargetColour): colour is MeasuredReflectance {
  return typeof colour === 'object' && 'reflectance' in colour;
}

/** The light that the eye goes by, nm: a reflectance that leaves out more than its ends has no colour. */
const [FIRST_NEEDED, LAST_NEEDED] = [400, 700];
const EXAMPLE = '`{ reflectance: [8.1, 8.4, …], from: 400, step: 10, gloss: included }`, in percent';

const targetColour = (view: 'white' | 'black'): z.ZodType<TargetColour> =>
  field<TargetColour>(
    'field/colour',
    (input) =>
      typeof input === 'object' && input !== null && 'reflectance' in input
        ? readReflectance(input, view)
        : readSeenColour(input),
    (value) => (isMeasured(value) ? { ...value } : seenColourFields(value)),
  );

/** As `seenColour`, or `{ reflectance: […], from: 400, step: 10, gloss: excluded }` with these defaults but for the first. */
export const targetOverWhite: z.ZodType<TargetColour> = targetColour('white');
export const targetOverBlack: z.ZodType<TargetColour> = targetColour('black');

function readReflectance(input: object, view: 'white' | 'black'): Read<MeasuredReflectance> {
  const {
    reflectance,
    from = FIRST_NEEDED,
    step = 10,
    gloss = 'excluded',
    ...others
  } = input as Record<string, unknown>;
  const refuse = (found: string, why?: string, fix?: string): Read<MeasuredReflectance> => ({
    fault: { found, expected: EXAMPLE, ...defined({ why, fix }) },
  });
  const [stranger] = Object.keys(others);
  if (stranger !== undefined) return refuse(`\`${stranger}\` in a reflectance`);
  if (gloss !== 'included' && gloss !== 'excluded') return refuse(`gloss ${shown(gloss)}`);
  if (!(typeof from === 'number' && typeof step === 'number' && step >= 1 && step <= 20)) {
    return refuse(
      'a reflectance without its wavelengths',
      '`from` is the first wavelength in nm, `step` the way to the next, 1 to 20',
    );
  }
  if (
    !Array.isArray(reflectance) ||
    !reflectance.every((each) => typeof each === 'number' && each >= 0 && each <= 120)
  ) {
    return refuse('a reflectance that is not a list of numbers from 0 to 120');
  }
  const last = from + (reflectance.length - 1) * step;
  if (!(from >= 300 && from <= FIRST_NEEDED && last >= LAST_NEEDED && last <= 1100)) {
    return refuse(
      `${reflectance.length} reflectances from ${from} to ${last} nm`,
      `a colour takes all bands from ${FIRST_NEEDED} to ${LAST_NEEDED} nm`,
    );
  }
  // Beside the gloss, which alone is 4 %, black over black can be darker than 1 %.
  if (Math.max(...reflectance) <= 1 && (view === 'white' || gloss === 'included')) {
    return refuse('a reflectance of 1 % at most', 'it looks as if it were written from 0 to 1', 'multiply each by 100');
  }
  return { value: { reflectance, from, step, gloss } };
}
