/**
 * The counts beside the choices of the find page: what each would find with all that is asked already.
 *
 * @packageDocumentation
 */
import { findsAllOf } from '../render/find-filters.ts';
import type { Question } from './question.ts';

/** How many each value of each filter finds. */
export type Counts = Readonly<Record<string, Readonly<Record<string, number>>>>;

/**
 * Counts of each filter's values. Where they are alternatives, its own choices don't count against it.
 *
 * @param countsOf what the library counts for a question
 */
export async function countsBeside(
  question: Question,
  filters: readonly string[],
  countsOf: (question: Question) => Promise<Counts>,
): Promise<Counts> {
  const all = await countsOf(question);
  const entries = filters.map(async (name) => {
    if (question.filters[name] === undefined || findsAllOf(name)) return [name, all[name] ?? {}] as const;
    const { [name]: _own, ...others } = question.filters;
    return [name, (await countsOf({ ...question, filters: others }))[name] ?? {}] as const;
  });
  return Object.fromEntries(await Promise.all(entries));
}

/** Writes the counts into the form, and marks what would find nothing. */
export function showCounts(form: HTMLFormElement, counts: Counts): void {
  for (const box of form.querySelectorAll<HTMLInputElement>('[data-facet] [type="checkbox"]')) {
    const count = counts[box.name]?.[box.value] ?? 0;
    const item = box.closest('li')!;
    item.querySelector('.count')!.textContent = String(count);
    item.classList.toggle('finds-none', count === 0 && !box.checked);
  }
}
