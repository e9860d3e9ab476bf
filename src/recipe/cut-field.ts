import { z } from 'zod';
import type { FieldFault } from './field-fault.ts';
import { asItIs, asText, field, fields, shown } from './fields.ts';
import { reference } from './reference-field.ts';

// One part in one is the bottle itself; of one in a thousand a drop would be nothing that anybody sees. Conventions of this book.
const LEAST = 2;
const MOST = 1000;

/** One part in how many, in all: 10 of one drop with nine of what it is cut with. */
const oneIn: z.ZodType<number> = field<number>(
  'field/value',
  (input) => {
    if (typeof input === 'number' && input >= LEAST && input <= MOST) return { value: input };
    const parts = partsMeant(input);
    return {
      fault: {
        found: shown(input),
        expected: `a number from ${LEAST} to ${MOST}: 10 is one part of the bottle in ten parts in all`,
        ...(parts === undefined ? { fix: 'correct the number' } : { edits: [{ text: String(parts) }] }),
      },
    };
  },
  asItIs,
);

/** The parts in all where a share stands in their place: `1:9`, `1 in 10`, `10%`, 0.1. */
function partsMeant(input: unknown): number | undefined {
  const text = asText(input).trim();
  const ratio = /^1 ?(:|\/|in|to|\+) ?(\d{1,4})$/i.exec(text);
  if (ratio) return ['in', '/'].includes(ratio[1]!.toLowerCase()) ? Number(ratio[2]) : Number(ratio[2]) + 1;
  const percent = /^(\d+(?:\.\d+)?) ?%$/.exec(text);
  const share = percent ? Number(percent[1]) / 100 : Number(text);
  return share > 0 && share < 1 ? Number((1 / share).toPrecision(4)) : undefined;
}

/** A dilution of a bottle. */
export const cut = fields({
  /** The colorant. */
  of: reference,
  /** The plastic or liquid additive that it is cut with. */
  with: reference,
  'one-in': oneIn,
});

/** What a file with a `cut` has beside it; all else is what it is made of has in its own. */
const BESIDE_CUT: ReadonlySet<string> = new Set(['title', 'cut', 'drop']);

/**
 * Takes a file with a `look`, or with a `cut` and nothing that follows from what is cut; refuses any other.
 *
 * @param colorant the schema of the fields, each of which may be left out but for the title
 */
export function lookOrCut<Shape extends z.ZodRawShape>(
  colorant: z.ZodObject<Shape, z.core.$strict>,
): z.ZodObject<Shape, z.core.$strict> {
  const check = z.check<z.output<z.ZodObject<Shape, z.core.$strict>>>(({ value, issues }) => {
    const data: unknown = value;
    if (typeof data !== 'object' || data === null || Array.isArray(data)) return;
    if (!('cut' in data)) {
      if (!('look' in data))
        issues.push({ code: 'invalid_type', expected: 'object', path: ['look'], input: undefined });
      return;
    }
    for (const name of Object.keys(data)) {
      if (BESIDE_CUT.has(name) || !Object.hasOwn(colorant.shape, name)) continue;
      const fault: FieldFault = {
        code: 'material/cut-beside',
        found: `\`${name}\` beside \`cut\``,
        expected: 'no more than `title`, `cut` and `drop`',
        why: 'a cut is no more than its two parts: all else is in their files',
        fix: `remove \`${name}\`, or write it in the file of what is cut`,
      };
      issues.push({ code: 'custom', message: 'refused', path: [name], params: { ...fault }, input: data });
    }
  });
  // What is missing is told with all other faults of the file, as a field that must be there is.
  check._zod.def.when = () => true;
  return colorant.check(check);
}
