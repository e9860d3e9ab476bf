import type { z } from 'zod';
import type { Edit } from '../units/edit.ts';
import { inFigures } from '../units/in-figures.ts';
import { LONGEST_AMOUNT } from '../units/parse-quantity.ts';
import { PLAIN_NUMBER_WHY, plainNumberEdits, programmedEdits } from '../units/plain-number.ts';
import { plainDecimal } from '../units/written-quantity.ts';
import { asItIs, asText, field, shown } from './fields.ts';

// Loose powders begin at some hundredths of a g/ml, and metals end at 23 (osmium, from memory).
const LEAST_DENSITY = 0.01;
const MOST_DENSITY = 25;

/** A density such as `1.1 g/ml`, in g/ml. */
export const density: z.ZodType<number> = field<number>(
  'field/quantity',
  (input) => {
    const written = asText(input).trim();
    const match = /^(\d+(?:\.\d+)?|\.\d+)\s*g\s*\/\s*(?:ml|cm3|cm³)$/i.exec(written);
    const value = Number(match?.[1]);
    if (!match || value === 0) {
      const expected = 'a density such as `1.1 g/ml`';
      const plain = written.length > LONGEST_AMOUNT ? undefined : plainNumberEdits(written);
      if (plain !== undefined) return { fault: { found: shown(input), expected, why: PLAIN_NUMBER_WHY, edits: plain } };
      const number = /^\d*\.?\d+$/.exec(written)?.[0];
      const edits = Number(number) > 0 ? { edits: [{ text: `${number} g/ml` }] } : {};
      return { fault: { found: shown(input), expected, ...edits } };
    }
    if (value >= LEAST_DENSITY && value <= MOST_DENSITY) return { value };
    return {
      fault: {
        found: shown(input),
        expected: `a density from ${LEAST_DENSITY} to ${MOST_DENSITY} g/ml`,
        why: 'no material is lighter as a powder, or heavier as a solid',
        fix: 'correct the number',
      },
    };
  },
  (value) => `${plainDecimal(value)} g/ml`,
);

// More baits than this are no batch of one maker: convention of this book.
const MOST_COUNTED = 1_000_000;

/** A whole number from `least` up to a million. */
export function wholeNumber(least: number): z.ZodType<number> {
  return field<number>(
    'field/type',
    (input) =>
      typeof input === 'number' && Number.isInteger(input) && input >= least && input <= MOST_COUNTED
        ? { value: input }
        : {
            fault: {
              found: shown(input),
              expected: `a whole number from ${least} to ${MOST_COUNTED}`,
              ...writtenNumber(input, /^\d+$/),
            },
          },
    asItIs,
  );
}

// Nothing is melted so often: convention of this book.
const MOST_HEATS = 50;

/** How many heats something bears: `3 heats`, or the number alone. */
export const heats: z.ZodType<number> = field<number>(
  'field/quantity',
  (input) => {
    const [, digits = '', counted = 'heats'] = /^(\d{1,4})(?:\s+(heats?|reheats?))?$/i.exec(asText(input).trim()) ?? [];
    const number = Number(digits);
    const expected = 'a number of heats such as `3 heats`, the one in which it goes in included';
    if (digits === '' || number === 0 || number > MOST_HEATS) {
      const edits = heatsMeant(asText(input).trim());
      return { fault: { found: shown(input), expected, ...(edits && { edits }) } };
    }
    if (!/^re/i.test(counted)) return { value: number };
    const edits = [{ text: writtenHeats(number + 1) }];
    return { fault: { found: shown(input), expected, why: 'the melt is a heat, too', edits } };
  },
  writtenHeats,
);

function writtenHeats(number: number): string {
  return `${number} heat${number === 1 ? '' : 's'}`;
}

/** Heats whose number is a word, or the fewer of two: a supplier's `2 to 3 heats` promises two. */
function heatsMeant(written: string): readonly Edit[] | undefined {
  const [, fewest, most] = /^(\d{1,2})\s*(?:\p{Pd}|to|or)\s*(\d{1,2})(?:\s+heats?)?$/iu.exec(written) ?? [];
  if (Number(fewest) > 0 && Number(fewest) < Number(most)) return [{ text: writtenHeats(Number(fewest)) }];
  const counted = Number(inFigures(/^([a-z]+)(?:\s+heats?)?$/i.exec(written)?.[1] ?? ''));
  return counted > 0 ? [{ text: writtenHeats(counted) }] : undefined;
}

const MOST_POSITIVE = 1e9;

/** A number above zero, at most a thousand million. */
export const positive: z.ZodType<number> = field<number>(
  'field/type',
  (input) =>
    typeof input === 'number' && input > 0 && input <= MOST_POSITIVE
      ? { value: input }
      : {
          fault: {
            found: shown(input),
            expected:
              typeof input === 'number' && input > MOST_POSITIVE ? `at most ${MOST_POSITIVE}` : 'a number above zero',
            ...writtenNumber(input),
          },
        },
  asItIs,
);

// What stands about a number may be a currency or what is counted, and nothing that makes another number of it.
const WRITTEN_NUMBER =
  /^((?:[^\d.,½⅓⅔¼¾⅛⅜⅝⅞/⁄−–-]|\. )*)([.,]?\d(?:[\d.,_'’ \u00a0\u202f]*\d)?)\s*([^\d½⅓⅔¼¾⅛⅜⅝⅞/⁄]*)$/;
const MULTIPLIES = /^(?:k|m|mio|million|thousand|hundred|dozen)\b/i;

/** A number that stands in a text, with a decimal comma, gaps or a unit that does not belong there. */
function writtenNumber(input: unknown, form = /^/): { why?: string; edits?: readonly Edit[] } {
  if (typeof input !== 'string' || input.length > LONGEST_AMOUNT) return {};
  const programmed = programmedEdits(input);
  if (programmed) return { why: PLAIN_NUMBER_WHY, edits: programmed.filter(({ text }) => form.test(text)) };
  const [, , number, after = ''] = WRITTEN_NUMBER.exec(input) ?? [];
  if (number === undefined || MULTIPLIES.test(after)) return {};
  return {
    why: 'only a number goes here, with a point before its decimals',
    edits: (plainNumberEdits(number) ?? [{ text: number }]).filter(({ text }) => form.test(text)),
  };
}
