/**
 * What the form of the find page asks for: read from it and from the address, and put back into both.
 *
 * @packageDocumentation
 */

import { defined } from '../values/defined.ts';
import { typedHex } from './typed-hex.ts';

/** Words, the values chosen of each filter, and a colour to be near to. */
export interface Question {
  readonly words: string;
  readonly filters: Readonly<Record<string, readonly string[]>>;
  /** `#rrggbb` */
  readonly near?: string;
}

export function questionOf(form: HTMLFormElement): Question {
  const filters: Record<string, string[]> = {};
  let words = '';
  let near: string | undefined;
  for (const [name, value] of new FormData(form)) {
    if (typeof value !== 'string') continue;
    if (name === 'q') words = value.trim();
    else if (name === 'near') near = typedHex(value);
    else if (value !== '') filters[name] = [...(filters[name] ?? []), value];
  }
  return { words, filters, ...defined({ near }) };
}

/** Whether a filter is chosen besides the kind of thing. */
export function isNarrowed({ filters }: Question): boolean {
  return Object.keys(filters).some((name) => name !== 'kind');
}

/** The query of an address: colours are what is asked for where it names no kind. */
export function queryOf({ words, filters, near }: Question): string {
  const query = new URLSearchParams();
  if (words !== '') query.set('q', words);
  if (near !== undefined) query.set('near', near.slice(1));
  for (const [name, values] of Object.entries(filters)) {
    if (name === 'kind' && values[0] === 'colour') continue;
    for (const value of values) query.append(name, value);
  }
  if (filters.kind === undefined) query.set('kind', 'all');
  return query.toString();
}

/** Puts what an address asks for into the form. */
export function askFor(form: HTMLFormElement, query: URLSearchParams): void {
  form.querySelector<HTMLInputElement>('[name="q"]')!.value = query.get('q') ?? '';
  const near = form.querySelector<HTMLInputElement>('[name="near"]')!;
  near.value = typedHex(query.get('near') ?? '') ?? '';
  for (const box of form.querySelectorAll<HTMLInputElement>('[type="checkbox"]')) {
    box.checked = query.getAll(box.name).includes(box.value);
    if (box.checked) box.closest('details')?.setAttribute('open', '');
  }
  const kind = query.get('kind') === 'all' ? '' : 'colour';
  for (const radio of form.querySelectorAll<HTMLInputElement>('[type="radio"]')) radio.checked = radio.value === kind;
}
