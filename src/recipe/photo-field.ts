import { z } from 'zod';
import { fields, shortOrLong, text, words } from './fields.ts';

/** A photo, by the name of its file. */
interface PhotoField {
  readonly file: string;
  readonly caption?: string;
}

/** A file in `photos/`, by itself or with a caption. */
export const photo: z.ZodType<PhotoField> = shortOrLong<PhotoField, PhotoField>(
  z.codec(words, z.custom<PhotoField>(), { decode: (file) => ({ file }), encode: ({ file }) => file }),
  fields({ file: words, caption: text.exactOptional() }),
  ({ caption }) => caption !== undefined,
);
