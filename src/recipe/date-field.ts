import type { z } from 'zod';
import { asItIs, field, shown } from './fields.ts';

// Plastisol is younger than this; from memory, no source.
const EARLIEST = '1900-01-01';

/** A day as `2026-03-14`, since 1900. */
export const date: z.ZodType<string> = field<string>(
  'field/date',
  (input) => {
    const text = typeof input === 'string' ? input.trim() : '';
    const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
    const day = match && new Date(`${text}T00:00:00Z`);
    const isDay = day && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
    if (isDay && text >= EARLIEST) return { value: text };
    // A dash of another length is pasted from a text, and looks the same.
    const better = dateFix(text.replace(/\p{Pd}/gu, '-'));
    return {
      fault: {
        found: shown(input),
        expected: 'a day of the calendar such as `2026-03-14`',
        why: isDay
          ? 'nobody poured soft plastic then'
          : match
            ? 'the calendar has no such day'
            : 'the year comes first, then month and day in two digits each',
        ...better,
      },
    };
  },
  asItIs,
);

/** English names of months begin with these letters. */
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/** A day, if the calendar has it. */
function day(year: string, month: string, inMonth: string): readonly string[] {
  const written = `${year}-${month.padStart(2, '0')}-${inMonth.padStart(2, '0')}`;
  const at = new Date(`${written}T00:00:00Z`);
  return year.length === 4 && written >= EARLIEST && !Number.isNaN(at.getTime()) && at.toISOString().startsWith(written)
    ? [written]
    : [];
}

/** The days that another way of writing a date may mean, as an edit. */
function dateFix(text: string): { readonly why?: string; readonly fix: string } {
  const days = daysMeant(text);
  if (days.length > 0) return { fix: `write ${days.map((each) => `\`${each}\``).join(' or ')}` };
  const [, month, inMonth] = monthAndDay(text) ?? [];
  if (month !== undefined && inMonth !== undefined) {
    return { why: 'the year is missing', fix: `write the year, and then \`-${month}-${inMonth}\`` };
  }
  return { fix: 'correct it, or remove the line' };
}

function daysMeant(text: string): readonly string[] {
  const [, year] = /(?:^|[\s,])(\d{4})(?:$|[\s,])/.exec(text) ?? [];
  const [, month, inMonth] = monthAndDay(text.replace(/(?:^|[\s,]+)\d{4}(?=$|[\s,])/, ' ').trim()) ?? [];
  if (year !== undefined && month !== undefined && inMonth !== undefined) return day(year, month, inMonth);
  const [, first, sign, second, third] = /^(\d{1,4})\s?([./-])\s?(\d{1,2})\2\s?(\d{1,4})\.?$/.exec(text) ?? [];
  if (first === undefined || second === undefined || third === undefined) return [];
  if (first.length === 4) {
    const straight = day(first, second, third);
    // After a year the month comes first, unless there is none of that number: then the two were exchanged.
    return straight.length > 0 ? straight : day(first, third, second);
  }
  const fullYear = third.length === 2 ? `20${third}` : third;
  // With points the day comes first; with strokes or hyphens either may.
  return [...new Set([...day(fullYear, second, first), ...(sign === '.' ? [] : day(fullYear, first, second))])];
}

/** `March 20` or `20th of March` as its whole text, month and day in two digits each; undefined for anything else. */
function monthAndDay(text: string): readonly [string, string, string] | undefined {
  const [, before, word = '', after] =
    /^(?:(\d{1,2})(?:st|nd|rd|th|\.)?(?: of)?\s+)?([a-z]{3,9})\.?(?:\s+(\d{1,2})(?:st|nd|rd|th)?)?\s*,?$/i.exec(text) ??
    [];
  const month = MONTHS.indexOf(word.slice(0, 3).toLowerCase()) + 1;
  const inMonth = before ?? after;
  if (month === 0 || inMonth === undefined || (before !== undefined && after !== undefined)) return undefined;
  return [text, String(month).padStart(2, '0'), inMonth.padStart(2, '0')];
}
