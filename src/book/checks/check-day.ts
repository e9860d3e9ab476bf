import type { Thing } from '../../recipe/read-thing.ts';
import type { Report } from '../report.ts';

const DAY_MS = 24 * 60 * 60 * 1000;

/**
 * Reports a recipe or chip that was made on a day to come. A warning: what is built does not depend on the day, nor on a clock that is wrong.
 *
 * @param today `2026-03-14`; the day after it is let pass, since it has begun elsewhere
 */
export function checkDay(recipe: Thing<'recipe' | 'chip'>, today: string, report: Report): void {
  const { made } = recipe.fields;
  if (made === undefined) return;
  const tomorrow = new Date(Date.parse(`${today}T00:00:00Z`) + DAY_MS).toISOString().slice(0, 10);
  if (made <= tomorrow) return;
  const meant = exchanged(made).filter(
    (day) => day <= tomorrow && day >= `${Number(today.slice(0, 4)) - LOOKING_BACK}`,
  );
  report.add('field/day-to-come', recipe, ['made'], {
    found: `\`${made}\``,
    expected: `a day that is not after ${today}`,
    why: 'nothing was made on it yet',
    fix: meant.length === 1 ? `write \`${meant[0]}\`` : 'correct the year',
  });
}

// Years in which a bait of this book may have been made, where two digits are exchanged.
const LOOKING_BACK = 30;

/** Days with two neighbouring digits of the year exchanged. */
function exchanged(day: string): readonly string[] {
  const days = [0, 1, 2].map((at) => day.slice(0, at) + day[at + 1] + day[at] + day.slice(at + 2));
  return [...new Set(days)].filter(
    (each) => each !== day && new Date(`${each}T00:00:00Z`).toISOString().startsWith(each),
  );
}
