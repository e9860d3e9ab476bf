import type { z } from 'zod';
import { field, shown } from './fields.ts';

/** A day as `2026-03-14`. */
export const date: z.ZodType<string> = field<string>('field/date', (input) => {
  const text = typeof input === 'string' ? input.trim() : '';
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  const day = match && new Date(`${text}T00:00:00Z`);
  if (day && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text)) return { value: text };
  const fix = dateFix(text);
  return {
    fault: {
      found: shown(input),
      expected: 'a day of the calendar such as `2026-03-14`',
      why: match ? 'the calendar has no such day' : 'the year comes first, then month and day in two digits each',
      ...(fix === undefined ? {} : { fix }),
    },
  };
});

/** The days that another way of writing a date may mean, as an edit. */
function dateFix(text: string): string | undefined {
  const [, first, sign, second, third] = /^(\d{1,4})\s?([./-])\s?(\d{1,2})\2\s?(\d{1,4})\.?$/.exec(text) ?? [];
  if (first === undefined || second === undefined || third === undefined) return undefined;
  const day = (year: string, month: string, inMonth: string): string[] => {
    const written = `${year}-${month.padStart(2, '0')}-${inMonth.padStart(2, '0')}`;
    const at = new Date(`${written}T00:00:00Z`);
    return year.length === 4 && !Number.isNaN(at.getTime()) && at.toISOString().startsWith(written)
      ? [`\`${written}\``]
      : [];
  };
  // With points the day comes first; with strokes or hyphens either may.
  const days =
    first.length === 4
      ? day(first, second, third)
      : [...new Set([...day(third, second, first), ...(sign === '.' ? [] : day(third, first, second))])];
  return days.length === 0 ? undefined : `write ${days.join(' or ')}`;
}
