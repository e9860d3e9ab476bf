/**
 * The kinds of value that front matter holds, as zod schemas which explain themselves in a diagnostic's words.
 *
 * @packageDocumentation
 */

import { z } from 'zod';
import type { DiagnosticCode } from '../diagnostics/catalogue.ts';
import { nearestName } from '../diagnostics/nearest-name.ts';
import { celsius, fraction, grams, millilitres, millimetres, minutes } from '../units/convert.ts';
import { writeFix } from '../units/edit.ts';
import { parseDose, parseQuantity } from '../units/parse-quantity.ts';
import { isFault, type Quantity, type QuantityFault, type Rate } from '../units/quantity.ts';
import type { Dimension } from '../units/unit.ts';
import {
  writtenDose,
  writtenDuration,
  writtenLength,
  writtenMass,
  writtenQuantity,
  writtenShare,
  writtenTemperature,
  writtenVolume,
} from '../units/written-quantity.ts';
import { defined } from '../values/defined.ts';
import type { Read, ReadFault } from './field-fault.ts';
import { settled } from './settled.ts';
import type { Written } from './write-front-matter.ts';

/** A value as it is shown in a message. */
export function shown(input: unknown): string {
  if (input === undefined || input === null || input === '') return 'nothing';
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'object') return 'nested fields';
  const text = String(input);
  return `\`${text.length > 60 ? `${text.slice(0, 57)}…` : text}\``;
}

/**
 * A schema from a function that reads one value or says what is wrong with it. Of its edits those are offered that it reads itself.
 *
 * @param write the inverse: what is read as this value
 */
export function field<T>(
  code: DiagnosticCode,
  read: (input: unknown) => Read<T>,
  write: (value: T) => Written,
): z.ZodType<T> {
  return z.codec(z.unknown(), z.custom<T>(), {
    decode: (input, { issues }) => {
      const result = read(input);
      if ('value' in result) return result.value;
      const { edits: _, otherwise: __, ...fault } = settled(result.fault, read);
      const found = fault.found === 'nothing' ? shown(input) : fault.found;
      issues.push({ code: 'custom', message: 'refused', input, params: { code, ...fault, found } });
      return z.NEVER;
    },
    // Of an optional field that is not there, zod asks as well.
    encode: (value: T | undefined) => (value === undefined ? undefined : write(value)),
  });
}

/** Of a value that is written as it is read. */
export const asItIs = <T extends Written>(value: T): T => value;

/** Fields that may be there and no others; the names that may be are kept for the message about one that may not. */
export function fields<Shape extends z.ZodRawShape>(shape: Shape): z.ZodObject<Shape, z.core.$strict> {
  return z.strictObject(shape, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? JSON.stringify(Object.keys(shape)) : undefined),
  });
}

/**
 * One schema for a value written short (text or number), another for one written out (nested fields), as each is read.
 *
 * @param isLong whether a value is written out
 */
export function shortOrLong<A, B>(
  short: z.ZodType<A>,
  long: z.ZodType<B>,
  isLong: (value: A | B) => boolean,
): z.ZodType<A | B> {
  return z.codec(z.unknown(), z.custom<A | B>(), {
    decode: (input, { issues }) => {
      const result = (typeof input === 'object' && input !== null ? long : short).safeParse(input);
      if (result.success) return result.data;
      issues.push(...(result.error.issues as typeof issues));
      return z.NEVER;
    },
    encode: (value: A | B | undefined) =>
      value === undefined ? undefined : isLong(value) ? long.encode(value as B) : short.encode(value as A),
  });
}

/** One value or a list of them, as a list. */
export function oneOrMore<T>(item: z.ZodType<T>): z.ZodType<readonly T[]> {
  return z.codec(z.unknown(), z.array(item).min(1).readonly(), {
    decode: (input) => (Array.isArray(input) ? input : [input]),
    encode: (items: readonly unknown[] | undefined) => (items?.length === 1 ? items[0] : items),
  });
}

/** What YAML makes of plain words that look like a number: 1.1 of `1.10`. */
export const isReread = (input: unknown): boolean => typeof input === 'number' || typeof input === 'boolean';

/** Text that is not empty, of so many letters at most; a number as it is written, `1.10`. */
export function textUpTo(most: number): z.ZodType<string> {
  return field<string>(
    'field/type',
    (input) => {
      const written = typeof input === 'string' ? input.trim() : '';
      if (written === '')
        return { fault: { found: shown(input), expected: 'text', ...(isReread(input) ? { asWritten: true } : {}) } };
      if (written.length <= most) return { value: written };
      return {
        fault: {
          code: 'field/too-long',
          found: `text of ${written.length} letters`,
          expected: `at most ${most}`,
          why: 'it has one line of a page',
          fix: 'shorten it, and put the rest into the notes',
        },
      };
    },
    asItIs,
  );
}

/** A sentence or two: a note, a caption. As long as the Match page lets one be. */
export const text: z.ZodType<string> = textUpTo(2000);
/** What a page is called. As long as the Match page lets one be, with what it calls the target of it. */
export const title: z.ZodType<string> = textUpTo(320);
/** A word or a few: a tag, a part of a bait, the name of a file. */
export const words: z.ZodType<string> = textUpTo(255);

/** A quantity's fault with the unit that was most likely meant. */
export function explained({ unknownUnit, bounds, edits: told = [], ...fault }: QuantityFault): ReadFault {
  // One letter is as near to any other.
  const nearest =
    unknownUnit && !/^\p{L}$/u.test(unknownUnit.spelling)
      ? nearestName(unknownUnit.spelling, unknownUnit.allowed)
      : undefined;
  const edits =
    unknownUnit && nearest !== undefined
      ? [{ text: `${unknownUnit.number} ${nearest}${unknownUnit.after ?? ''}` }]
      : told;
  const fix = bounds === undefined ? writeFix(edits, fault.otherwise) : 'correct the number or the unit';
  return {
    ...fault,
    ...(edits.length === 0 ? {} : { edits }),
    ...defined({ nearest, fix }),
  };
}

function measured(
  dimension: Dimension,
  size: (quantity: Quantity) => number,
  write: (size: number) => string,
): z.ZodType<number> {
  const read = (input: unknown): Read<number> => {
    const quantity = parseQuantity(asText(input), [dimension]);
    return isFault(quantity) ? { fault: explained(quantity) } : { value: size(quantity) };
  };
  return field('field/quantity', read, write);
}

/** A plain value as text; nothing of a list or of nested fields. */
export const asText = (input: unknown): string => (typeof input === 'object' ? '' : String(input));

/** A volume, in millilitres. */
export const volume: z.ZodType<number> = measured('volume', millilitres, writtenVolume);
/** A mass, in grams. */
export const mass: z.ZodType<number> = measured('mass', grams, writtenMass);
// Droppers give some 0.02 to 0.1 ml; common practice, no source. A spout may give more.
const MOST_DROP_ML = 1;

/** The volume of one drop, in millilitres. */
export const dropSize: z.ZodType<number> = field<number>(
  'field/quantity',
  (input) => {
    const quantity = parseQuantity(asText(input), ['volume']);
    if (isFault(quantity))
      return { fault: { ...explained(quantity), expected: 'the size of a drop such as `0.05 ml`' } };
    const value = millilitres(quantity);
    if (value <= MOST_DROP_ML) return { value };
    return {
      fault: {
        found: shown(input),
        expected: `the size of one drop, up to ${MOST_DROP_ML} ml, such as \`0.05 ml\``,
        why: 'all that is counted in drops is worked out with it',
        fix: 'write how much one drop is, or remove the line: then a usual drop is taken',
      },
    };
  },
  writtenVolume,
);

/** A length, in millimetres. */
export const length: z.ZodType<number> = measured('length', millimetres, writtenLength);
// Flake is sold from 0.008 to 0.125 in (3.2 mm), and strips a few times as long; common practice, no source.
const MOST_FLAKE_MM = 25;
// The finest glitter is of some thousandths of an inch; from memory, no source.
const LEAST_THOUSANDTHS = 2;

/** A size of a flake, in millimetres. */
export const flakeSize: z.ZodType<number> = field<number>(
  'field/quantity',
  (input) => {
    const quantity = parseQuantity(asText(input), ['length']);
    if (isFault(quantity)) return { fault: { ...explained(quantity), expected: 'a size such as `0.040 in`, `1 mm`' } };
    const value = millimetres(quantity);
    if (value <= MOST_FLAKE_MM) return { value };
    const thousandths = quantity.unit === 'in' && quantity.amount >= LEAST_THOUSANDTHS && quantity.amount < 1000;
    return {
      fault: {
        found: shown(input),
        expected: `a size up to ${MOST_FLAKE_MM} mm, such as \`0.040 in\``,
        why: 'flake is sold from 0.008 to 0.125 in across flats',
        ...(thousandths && {
          edits: [{ text: `${Number((quantity.amount / 1000).toPrecision(6))} in`, when: 'thousandths are meant' }],
        }),
      },
    };
  },
  writtenLength,
);
/** A temperature, in degrees Celsius. */
export const temperature: z.ZodType<number> = measured('temperature', celsius, writtenTemperature);
/** A time, in minutes. */
export const duration: z.ZodType<number> = measured('duration', minutes, writtenDuration);
const SHARE_WHY = 'a share is in per cent';

/** The per cent meant by so many in so many, or by both parts of the whole: `1 in 10`, `40/60`. */
function ratioMeant(text: string): number | undefined {
  const [, first, sign = '', second] = /^(\d{1,4})\s*(in|(?:out )?of|\/|:)\s*(\d{1,4})$/i.exec(text) ?? [];
  const [part, other] = [Number(first), Number(second)];
  if (first === undefined || part === 0) return undefined;
  if (!/[a-z]/i.test(sign)) return part + other === 100 ? part : undefined;
  return part <= other ? Number(((100 * part) / other).toPrecision(4)) : undefined;
}

/** A share such as `40%`, as a fraction of 1 from 0 to `most`. */
const shareUpTo = (most: number): z.ZodType<number> =>
  field<number>(
    'field/quantity',
    (input) => {
      const quantity = parseQuantity(asText(input), ['part']);
      const expected = 'a share such as `40%`';
      const meant = ratioMeant(asText(input).trim());
      if (meant !== undefined) {
        return { fault: { found: shown(input), expected, why: SHARE_WHY, edits: [{ text: `${meant}%` }] } };
      }
      if (isFault(quantity)) {
        const { unknownUnit } = quantity;
        // A share has one unit alone: the others that measure parts are not offered.
        if (unknownUnit) {
          const edits = [{ text: `${unknownUnit.number}%` }];
          return { fault: { found: shown(input), expected, why: SHARE_WHY, edits } };
        }
        return { fault: { ...explained(quantity), expected } };
      }
      if (quantity.unit !== '%') {
        const why = `${quantity.unit} counts a dose in plastic, not a part of a whole`;
        return { fault: { found: shown(input), expected, why, edits: [{ text: `${quantity.amount}%` }] } };
      }
      const value = fraction(quantity);
      return value <= most ? { value } : { fault: { found: shown(input), expected: `at most ${most * 100}%` } };
    },
    writtenShare,
  );

export const share = shareUpTo(1);

/** Of what is made, a part that is thrown away: more than half is a slip. Convention of this book. */
export const rejectedShare = shareUpTo(0.5);

/** What is expected of a dose where there is no cup. */
export const DOSE_IN_PLASTIC =
  'a dose per volume of plastic, or a share of it, such as `22 drops per 100 ml`, `22 drops per 4 fl oz` or `1 %`';

/** A dose: an amount for the cup, or per volume of plastic. */
export const dose: z.ZodType<Quantity | Rate> = field<Quantity | Rate>(
  'field/quantity',
  (input) => {
    const parsed = parseDose(asText(input));
    return isFault(parsed) ? { fault: explained(parsed) } : { value: parsed };
  },
  writtenDose,
);

/** A dose where there is no cup that an amount could be for: an empty one is told to be a rate, or a share. */
export const doseInPlastic: z.ZodType<Quantity | Rate> = field<Quantity | Rate>(
  'field/quantity',
  (input) => {
    const parsed = parseDose(asText(input));
    return isFault(parsed) ? { fault: { ...explained(parsed), expected: DOSE_IN_PLASTIC } } : { value: parsed };
  },
  writtenDose,
);

/** An amount counted in one of the given dimensions, as it was written. */
export function quantity(...dimensions: readonly Dimension[]): z.ZodType<Quantity> {
  return field<Quantity>(
    'field/quantity',
    (input) => {
      const parsed = parseQuantity(asText(input), dimensions);
      return isFault(parsed) ? { fault: explained(parsed) } : { value: parsed };
    },
    writtenQuantity,
  );
}
