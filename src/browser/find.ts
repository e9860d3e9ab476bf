/**
 * The find page over the search index: words and filters in, rows out. The address keeps the question, so it can be shared.
 *
 * @packageDocumentation
 */
import { type FoundThing, foundRow } from '../render/find-view.ts';
import { html } from '../render/html.ts';
import { counted } from '../render/words.ts';
import { afterPause } from './page-data.ts';

/** What is used of the search library. */
interface SearchLibrary {
  options(options: { readonly baseUrl?: string; readonly ranking?: object }): Promise<void>;
  init(): Promise<void>;
  search(
    words: string | null,
    options: { readonly filters: object; readonly sort?: Readonly<Record<string, 'asc' | 'desc'>> },
  ): Promise<{ readonly results: readonly { data(): Promise<FoundPage> }[] }>;
}

interface FoundPage {
  readonly url: string;
  readonly raw_url?: string;
  readonly meta: Readonly<Record<string, string>>;
}

const PAGE = 40;
const root = document.documentElement.dataset.root ?? './';

/** What the form asks for. */
interface Question {
  readonly words: string;
  readonly filters: Readonly<Record<string, readonly string[]>>;
}

function questionOf(form: HTMLFormElement): Question {
  const filters: Record<string, string[]> = {};
  let words = '';
  for (const [name, value] of new FormData(form)) {
    if (typeof value !== 'string') continue;
    if (name === 'q') words = value.trim();
    else if (value !== '') filters[name] = [...(filters[name] ?? []), value];
  }
  return { words, filters };
}

/** Values of one filter are alternatives, filters narrow one another. */
function pagefindFilters({ filters }: Question): object {
  return Object.fromEntries(
    Object.entries(filters).map(([name, values]) => [name, values.length === 1 ? values[0] : { any: values }]),
  );
}

function addressOf({ words, filters }: Question): string {
  const query = new URLSearchParams();
  if (words !== '') query.set('q', words);
  for (const [name, values] of Object.entries(filters)) {
    if (name === 'kind' && values[0] === 'colour') continue;
    for (const value of values) query.append(name, value);
  }
  if (filters.kind === undefined) query.set('kind', 'all');
  const text = query.toString();
  return text === '' ? location.pathname : `${location.pathname}?${text}`;
}

function readAddress(form: HTMLFormElement): void {
  const query = new URLSearchParams(location.search);
  const words = form.querySelector<HTMLInputElement>('[name="q"]')!;
  words.value = query.get('q') ?? '';
  for (const box of form.querySelectorAll<HTMLInputElement>('[type="checkbox"]')) {
    box.checked = query.getAll(box.name).includes(box.value);
    if (box.checked) box.closest('details')?.setAttribute('open', '');
  }
  const kind = query.get('kind') === 'all' ? '' : 'colour';
  for (const radio of form.querySelectorAll<HTMLInputElement>('[type="radio"]')) radio.checked = radio.value === kind;
}

function foundThing({ meta, raw_url, url }: FoundPage): FoundThing {
  return {
    href: root + (raw_url ?? url).replace(/^\//, ''),
    title: meta.title ?? '',
    about: meta.about ?? '',
    ...(meta.white === undefined ? {} : { white: meta.white }),
    ...(meta.black === undefined ? {} : { black: meta.black }),
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
  let pending: readonly { data(): Promise<FoundPage> }[] = [];

  const chosen = (): void => {
    for (const facet of form.querySelectorAll<HTMLElement>('[data-facet]')) {
      const names = [...facet.querySelectorAll<HTMLInputElement>(':checked')].map(({ value }) => value);
      facet.querySelector('[data-chosen]')!.textContent = names.join(', ');
    }
    const number = form.querySelectorAll('[data-facet] :checked').length;
    form.querySelector('[data-chosen-count]')!.textContent = number === 0 ? '' : `(${number} chosen)`;
  };
  const showMore = async (): Promise<void> => {
    const question = asked;
    const pages = await Promise.all(pending.slice(0, PAGE).map((result) => result.data()));
    if (question !== asked) return;
    pending = pending.slice(PAGE);
    const rows = html`${pages.map((page) => foundRow(foundThing(page)))}`.toString();
    results.querySelector('ul')!.insertAdjacentHTML('beforeend', rows);
    more.hidden = pending.length === 0;
  };
  const search = async (): Promise<void> => {
    const question = questionOf(form);
    const number = ++asked;
    history.replaceState(null, '', addressOf(question));
    chosen();
    const narrowed = Object.keys(question.filters).some((name) => name !== 'kind');
    if (question.words === '' && !narrowed && question.filters.kind !== undefined) {
      results.innerHTML = whole.results;
      status.textContent = whole.status;
      more.hidden = true;
      return;
    }
    const sort = question.words === '' ? { sort: { title: 'asc' } as const } : {};
    const found = await library.search(question.words === '' ? null : question.words, {
      filters: pagefindFilters(question),
      ...sort,
    });
    if (number !== asked) return;
    pending = found.results;
    const thing = question.filters.kind === undefined ? 'page' : 'colour';
    const says =
      pending.length === 0
        ? `No ${thing} like that. Take out a word or a filter.`
        : `${counted(pending.length, thing)} found.`;
    results.innerHTML = html`<ul class="found-list"></ul>`.toString();
    await showMore();
    // Said once the rows are there, so that who hears it can go on to them.
    if (number === asked) status.textContent = says;
  };

  const later = afterPause(() => void search());
  form.addEventListener('input', later);
  form.addEventListener('reset', () => window.setTimeout(() => void search(), 0));
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    void search();
  });
  more.addEventListener('click', () => void showMore());
  readAddress(form);
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
      status.textContent = `The search could not be loaded; here are all colours by hue. (${String(error)})`;
  });
}
