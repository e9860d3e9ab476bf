/**
 * The fields of a look: what somebody has seen, how sure of it they are, and how it was looked at.
 *
 * @packageDocumentation
 */
import { z } from 'zod';
import { targetOverBlack, targetOverWhite } from './colour-fields.ts';
import { length, share, text, words } from './fields.ts';
import { positive } from './number-fields.ts';
import { photo } from './photo-field.ts';

/** How long after the pour it was looked at: hot plastic is clearer and darker than it will be, and gloss dulls overnight. */
const AFTER = ['hot', '10 min', 'next day'] as const;

/** How sure of a colour somebody is, and how they looked at it: of a target as of a round. */
export const HOW_SURE = {
  /** ΔE00 that nine in ten looks of this kind stay within. Default: see `lookDoubt`. */
  doubt: positive.exactOptional(),
  after: z.enum(AFTER).exactOptional(),
  wet: z.boolean().exactOptional(),
  /** What took the photo. */
  camera: words.exactOptional(),
};

export const LOOK_FIELDS = {
  'over-white': targetOverWhite.exactOptional(),
  'over-black': targetOverBlack.exactOptional(),
  ...HOW_SURE,
  /** The same of the contrast ratio. Left out: nobody knows. */
  'contrast-doubt': share.exactOptional(),
  note: text.exactOptional(),
  photo: photo.exactOptional(),
  /** It was looked at again, and stands. */
  checked: z.boolean().exactOptional(),
  /** Thickness of what was looked at. Default: the body of the mold. */
  thickness: length.exactOptional(),
};
