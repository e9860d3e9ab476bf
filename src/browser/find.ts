/**
 * The find page over the search index: words and filters in, rows out. The address keeps the question, so it can be shared.
 *
 * @packageDocumentation
 */

import { type FoundThing, foundRow } from '../render/find-view.ts';
import { html } from '../render/html.ts';
import type { NearColour } from '../render/near-colours.ts';
import { counted } from '../render/words.ts';
import { defined } from '../values/defined.ts';
import { offersInstead, offersView } from './find-offers.ts';
import { type Counts, countsBeside, showCounts } from './live-counts.ts';
import { listenToNearField, showNearField } from './near-field.ts';
import { vocabularyOf } from './near-words.ts';
import { nearestFirst } from './nearest-first.ts';
import { afterPause, pageData } from './page-data.ts';
import { askFor, isNarrowed, type Question, queryOf, questionOf } from './question.ts';
import { withoutSmallWords } from './small-words.ts';

/** What is used of the search library. */
interface SearchLibrary {
  options(options: { readonly baseUrl?: string; readonly ranking?: object }): Promise<void>;
  init(): Promise<void>;
  /** Loads the values of all filters: without them a search counts only those that it narrows by. */
  filters(): Promise<unknown>;
  search(
    words: string | null,
    options: { readonly filters: object; readonly sort?: Readonly<Record<string, 'asc' | 'desc'>> },
  ): Promise<{ readonly results: readonly { data(): Promise<FoundPage> }[]; readonly filters: Counts }>;
}

interface FoundPage {
  readonly url: string;
  readonly raw_url?: string;
  readonly meta: Readonly<Record<string, string>>;
}

const PAGE = 40;
const root = document.documentElement.dataset.root ?? './';

/** Values of one filter are alternatives, filters narrow one another. */
function pagefindFilters({ filters }: Question): object {
  return Object.fromEntries(
    Object.entries(filters).map(([name, values]) => [name, values.length === 1 ? values[0] : { any: values }]),
  );
}

function foundThing({ meta, raw_url, url }: FoundPage): FoundThing {
  return {
    href: root + (raw_url ?? url).replace(/^\//, ''),
    title: meta.title ?? '',
    about: meta.about ?? '',
    ...defined({ white: meta.white, black: meta.black }),
  };
}

async function start(panel: HTMLElement, folder: string): Promise<void> {
  const form = panel.querySelector<HTMLFormElement>('form')!;
  const results = panel.querySelector<HTMLElement>('[data-results]')!;
  const status = panel.querySelector<HTMLElement>('[data-count]')!;
  const more = panel.querySelector<HTMLButtonElement>('[data-more]')!;
  const whole = { results: results.innerHTML, status: status.textContent ?? '' };
  const library = (await import(new URL(`${folder}pagefind.js`, document.baseURI).href)) as SearchLibrary;
  await library.options({ baseUrl: '/' });
  await library.init();

  let asked = 0;
  let pending: readonly (() => Promise<FoundThing>)[] = [];
  const colours = (pageData<readonly NearColour[]>('[data-near-colours]') ?? []).map((colour) => ({
    ...colour,
    href: root + colour.href,
  }));

  // The words of what can be found: the list of all colours, and the filters with the names of materials and molds.
  const vocabulary = vocabularyOf([
    ...[...results.querySelectorAll('.found-name, .found-about')].map(({ textContent }) => textContent ?? ''),
    ...[...form.querySelectorAll<HTMLInputElement>('[type="checkbox"]')].map(({ value }) => value),
  ]);
  const searchFor = (question: Question): ReturnType<SearchLibrary['search']> => {
    const words = withoutSmallWords(question.words);
    const sort = words === '' ? { sort: { title: 'asc' } as const } : {};
    return library.search(words === '' ? null : words, {
      filters: pagefindFilters(question),
      ...sort,
    });
  };
  const ask = async (question: Question): Promise<typeof pending> =>
    (await searchFor(question)).results.map((result) => async () => foundThing(await result.data()));
  /** The colours that a question finds, the nearest to the wanted one first. */
  const askNear = async (question: Question, near: string): Promise<typeof pending> => {
    const all = question.words === '' && !isNarrowed(question);
    const found = all ? undefined : await Promise.all((await ask(question)).map((thing) => thing()));
    const hrefs = found && new Set(found.map(({ href }) => href));
    const asked = hrefs ? colours.filter(({ href }) => hrefs.has(href)) : colours;
    return nearestFirst(asked, near).map((thing) => async () => thing);
  };
  const facets = [...form.querySelectorAll<HTMLElement>('[data-facet]')].map(({ dataset }) => dataset.facet!);
  const count = async (question: Question, number: number): Promise<void> => {
    await library.filters();
    const counts = await countsBeside(question, facets, async (other) => (await searchFor(other)).filters);
    if (number === asked) showCounts(form, counts);
  };

  const chosen = (): void => {
    for (const facet of form.querySelectorAll<HTMLElement>('[data-facet]')) {
      const names = [...facet.querySelectorAll<HTMLInputElement>(':checked')].map(({ value }) => value);
      facet.querySelector('[data-chosen]')!.textContent = names.join(', ');
    }
    const number = form.querySelectorAll('[data-facet] :checked').length;
    form.querySelector('[data-chosen-count]')!.textContent = number === 0 ? '' : `(${number} chosen)`;
    showNearField(form);
  };
  const showMore = async (): Promise<void> => {
    const question = asked;
    const things = await Promise.all(pending.slice(0, PAGE).map((thing) => thing()));
    if (question !== asked) return;
    pending = pending.slice(PAGE);
    const rows = html`${things.map(foundRow)}`.toString();
    results.querySelector('.found-list')!.insertAdjacentHTML('beforeend', rows);
    more.hidden = pending.length === 0;
  };
  const answer = async (question: Question, number: number): Promise<void> => {
    const { near } = question;
    if (near === undefined && question.words === '' && !isNarrowed(question) && question.filters.kind !== undefined) {
      results.innerHTML = whole.results;
      status.textContent = whole.status;
      more.hidden = true;
      return;
    }
    const found = near === undefined ? await ask(question) : await askNear(question, near);
    if (number !== asked) return;
    pending = found;
    const thing = near === undefined && question.filters.kind === undefined ? 'page' : 'colour';
    const offers = await offersInstead(
      { ...question, words: withoutSmallWords(question.words) },
      pending.length,
      vocabulary,
      async (other) => (await ask(other)).length,
    );
    if (number !== asked) return;
    const says =
      pending.length > 0
        ? `${counted(pending.length, thing)} found${near === undefined ? '' : `, closest to ${near} first`}.`
        : `Nothing found.${offers.length === 0 ? ' Remove a word or a filter.' : ''}`;
    results.innerHTML = html`${offersView(offers)}<ul class="found-list"></ul>`.toString();
    await showMore();
    // Said once the rows are there, so that who hears it can go on to them.
    if (number === asked) status.textContent = says;
  };
  const busy = (): void => results.setAttribute('aria-busy', 'true');
  const untilShown = async (number: number, work: Promise<unknown>): Promise<void> => {
    busy();
    try {
      await work;
    } catch (error) {
      if (number === asked) status.textContent = `Search didn’t answer. Change a word to try again. (${String(error)})`;
    } finally {
      if (number === asked) results.removeAttribute('aria-busy');
    }
  };
  const search = async (): Promise<void> => {
    const question = questionOf(form);
    const number = ++asked;
    const query = queryOf(question);
    history.replaceState(null, '', query === '' ? location.pathname : `${location.pathname}?${query}`);
    chosen();
    await untilShown(number, Promise.all([answer(question, number), count(question, number)]));
  };

  const later = afterPause(() => void search());
  form.addEventListener('input', () => {
    busy();
    later();
  });
  listenToNearField(form, () => void search());
  form.addEventListener('reset', () => window.setTimeout(() => void search(), 0));
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    void search();
  });
  results.addEventListener('click', (event) => {
    const offered = (event.target as Element).closest<HTMLElement>('[data-ask]')?.dataset.ask;
    if (offered === undefined) return;
    askFor(form, new URLSearchParams(offered));
    // The button goes with the answer; who has it under their finger goes on from the words.
    form.querySelector<HTMLInputElement>('[name="q"]')!.focus();
    void search();
  });
  more.addEventListener('click', () => void untilShown(asked, showMore()));
  askFor(form, new URLSearchParams(location.search));
  // Beside the results there is room for the filters; above them they would push the results off a phone.
  form.querySelector<HTMLDetailsElement>('[data-narrow]')!.open = window.matchMedia('(min-width: 60rem)').matches;
  form.hidden = false;
  chosen();
  if (location.search !== '') await search();
}

const panel = document.querySelector<HTMLElement>('[data-find]');
const folder = panel?.dataset.pagefind;
if (panel !== null && folder !== undefined) {
  start(panel, folder).catch((error: unknown) => {
    // The list of all colours stays; only the search is missing.
    const status = panel.querySelector<HTMLElement>('[data-count]');
    if (status !== null)
      status.textContent = `Search couldn’t be loaded; here are all the colours by hue. (${String(error)})`;
  });
}
