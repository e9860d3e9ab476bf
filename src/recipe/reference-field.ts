import type { z } from 'zod';
import { SLUG } from '../values/slug.ts';
import { bareName } from './bare-name.ts';
import { asItIs, field, isReread, shown } from './fields.ts';
import { slugOf } from './source.ts';

/** The name of another file of the book. */
export const reference: z.ZodType<string> = field<string>(
  'field/value',
  (input) => {
    if (typeof input === 'string' && SLUG.test(input)) return { value: input };
    const name = typeof input === 'string' ? bareName(input) : '';
    const slug = name.includes('/') ? '' : slugOf(name);
    return {
      fault: {
        found: shown(input),
        expected: 'the name of a file, without its folder and `.md`',
        why: 'names are lower-case letters, digits and single hyphens',
        ...(isReread(input) ? { asWritten: true } : {}),
        ...(slug === '' ? {} : { name: { written: name, slug, before: '' } }),
      },
    };
  },
  asItIs,
);
