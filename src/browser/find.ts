/**
 * The find page over the search index: words and filters in, rows out. The address keeps the question, so it can be shared.
 *
 * @packageDocumentation
 */

import { findsAllOf } from '../render/find-filters.ts';
import { foundRow } from '../render/find-view.ts';
import { html } from '../render/html.ts';
import type { NearColour } from '../render/near-colours.ts';
import type { TileSources } from '../render/small-bait.ts';
import { counted } from '../render/words.ts';
import { defined } from '../values/defined.ts';
import { offersInstead, offersView } from './find-offers.ts';
import { showCounts } from './live-counts.ts';
import { listenToNearField, showNearField } from './near-field.ts';
import { vocabularyOf } from './near-words.ts';
import { CLOSE, closeEnough, type NearThing } from './nearest-first.ts';
import { afterPause, pageData } from './page-data.ts';
import { askFor, isNarrowed, type Question, queryOf, questionOf } from './question.ts';
import { type Found, openSearch, type SiteSearch } from './site-search.ts';
import { withoutSmallWords } from './small-words.ts';

const PAGE = 40;
const root = document.documentElement.dataset.root ?? './';

/** How many colours come near to one, and how many more there are. */
function nearestSays(nearest: readonly NearThing[], near: string): string {
  const close = nearest.filter(({ deltaE }) => deltaE <= CLOSE).length;
  if (close === 0) return `No colour found within ΔE ${CLOSE} of ${near}. These come closest.`;
  const farther = nearest.length - close;
  return `${counted(close, 'colour')} found, closest to ${near} first.${farther === 0 ? '' : ` ${farther} more are farther off than ΔE ${CLOSE}.`}`;
}

function picturesIn(results: HTMLElement): ReadonlyMap<string, TileSources> {
  return new Map(
    [...results.querySelectorAll<HTMLImageElement>('.small-bait')].map((bait) => [
      bait.closest('a')!.getAttribute('href')!,
      { src: bait.getAttribute('src')!, srcset: bait.srcset },
    ]),
  );
}

/** The page while it is used: one question at a time, and what was found for it so far. */
class FindPage {
  private readonly form: HTMLFormElement;
  private readonly results: HTMLElement;
  private readonly status: HTMLElement;
  private readonly more: HTMLButtonElement;
  private readonly facets: readonly HTMLElement[];
  /** What stands there before anything is asked: all colours. */
  private readonly whole: { readonly results: string; readonly status: string };
  /** The words of what can be found: the list of all colours, and the filters with the names of materials and molds. */
  private readonly vocabulary: ReturnType<typeof vocabularyOf>;
  /** Of each colour in the list of all, by the address of its page. */
  private readonly pictures: ReadonlyMap<string, TileSources>;
  private readonly library: SiteSearch;
  /** Number of the last question: an answer to one before it comes too late. */
  private asked = 0;
  private pending: Found = [];

  constructor(panel: HTMLElement, library: SiteSearch) {
    this.library = library;
    this.form = panel.querySelector<HTMLFormElement>('form')!;
    this.results = panel.querySelector<HTMLElement>('[data-results]')!;
    this.status = panel.querySelector<HTMLElement>('[data-count]')!;
    this.more = panel.querySelector<HTMLButtonElement>('[data-more]')!;
    this.facets = [...this.form.querySelectorAll<HTMLElement>('[data-facet]')];
    this.whole = { results: this.results.innerHTML, status: this.status.textContent ?? '' };
    this.pictures = picturesIn(this.results);
    this.vocabulary = vocabularyOf([
      ...[...this.results.querySelectorAll('.found-name, .found-about')].map(({ textContent }) => textContent ?? ''),
      ...[...this.form.querySelectorAll<HTMLInputElement>('[type="checkbox"]')].map(({ value }) => value),
    ]);
  }

  async start(): Promise<void> {
    const { form, results, more } = this;
    const later = afterPause(() => void this.search());
    form.addEventListener('input', () => {
      this.busy();
      later();
    });
    listenToNearField(form, () => void this.search());
    form.addEventListener('reset', () => window.setTimeout(() => void this.search(), 0));
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      void this.search();
    });
    results.addEventListener('click', (event) => this.takeOffer(event.target as Element));
    more.addEventListener('click', () => void this.untilShown(this.asked, this.showMore()));
    askFor(form, new URLSearchParams(location.search));
    // Beside the results there is room for the filters; above them they would push the results off a phone.
    form.querySelector<HTMLDetailsElement>('[data-narrow]')!.open = window.matchMedia('(min-width: 60rem)').matches;
    form.querySelector<HTMLFieldSetElement>('[data-fields]')!.disabled = false;
    this.showChosen();
    if (location.search !== '') await this.search();
  }

  private async search(): Promise<void> {
    const question = questionOf(this.form);
    const number = ++this.asked;
    const query = queryOf(question);
    history.replaceState(null, '', query === '' ? location.pathname : `${location.pathname}?${query}`);
    this.showChosen();
    await this.untilShown(number, Promise.all([this.answer(question, number), this.count(question, number)]));
  }

  private async answer(question: Question, number: number): Promise<void> {
    const { near } = question;
    if (near === undefined && question.words === '' && !isNarrowed(question) && question.filters.kind !== undefined) {
      this.results.innerHTML = this.whole.results;
      this.status.textContent = this.whole.status;
      this.more.hidden = true;
      return;
    }
    const nearest = near === undefined ? undefined : await this.library.askNear(question, near);
    const found = nearest?.map((thing) => async () => thing) ?? (await this.library.ask(question));
    if (number !== this.asked) return;
    this.pending = found;
    const count = found.length;
    const thing = near === undefined && question.filters.kind === undefined ? 'page' : 'colour';
    const offers = await offersInstead(
      { ...question, words: withoutSmallWords(question.words) },
      count,
      this.vocabulary,
      async (other) => (await this.library.ask(other)).length,
    );
    if (number !== this.asked) return;
    const says =
      count > 0
        ? nearest === undefined
          ? `${counted(count, thing)} found.`
          : nearestSays(nearest, near!)
        : `Nothing found.${offers.length === 0 ? ' Remove a word or a filter.' : ''}`;
    this.results.innerHTML = html`${offersView(offers)}<ul class="found-list"></ul>`.toString();
    await this.showMore(nearest && closeEnough(nearest));
    // Said once the rows are there, so that who hears it can go on to them.
    if (number === this.asked) this.status.textContent = says;
  }

  private async showMore(most: number = PAGE): Promise<void> {
    const question = this.asked;
    const things = await Promise.all(this.pending.slice(0, most).map((thing) => thing()));
    if (question !== this.asked) return;
    this.pending = this.pending.slice(most);
    const rows =
      html`${things.map((thing) => foundRow({ ...thing, ...defined({ picture: this.pictures.get(thing.href) }) }))}`.toString();
    this.results.querySelector('.found-list')!.insertAdjacentHTML('beforeend', rows);
    this.more.hidden = this.pending.length === 0;
  }

  private async count(question: Question, number: number): Promise<void> {
    const counts = await this.library.counts(
      question,
      this.facets.map(({ dataset }) => dataset.facet!),
    );
    if (number === this.asked) showCounts(this.form, counts);
  }

  private showChosen(): void {
    for (const facet of this.facets) {
      const names = [...facet.querySelectorAll<HTMLInputElement>(':checked')].map(({ value }) => value);
      facet.querySelector('[data-chosen]')!.textContent = names.join(
        findsAllOf(facet.dataset.facet!) ? ' and ' : ' or ',
      );
    }
    const number = this.form.querySelectorAll('[data-facet] :checked').length;
    this.form.querySelector('[data-chosen-count]')!.textContent = number === 0 ? '' : `(${number} chosen)`;
    showNearField(this.form);
  }

  private takeOffer(pressed: Element): void {
    const offered = pressed.closest<HTMLElement>('[data-ask]')?.dataset.ask;
    if (offered === undefined) return;
    askFor(this.form, new URLSearchParams(offered));
    // The button goes with the answer; who has it under their finger goes on from the words.
    this.form.querySelector<HTMLInputElement>('[name="q"]')!.focus();
    void this.search();
  }

  private busy(): void {
    this.results.setAttribute('aria-busy', 'true');
  }

  private async untilShown(number: number, work: Promise<unknown>): Promise<void> {
    this.busy();
    try {
      await work;
    } catch (error) {
      if (number === this.asked)
        this.status.textContent = `Search didn’t answer. Change a word to try again. (${String(error)})`;
    } finally {
      if (number === this.asked) this.results.removeAttribute('aria-busy');
    }
  }
}

async function start(panel: HTMLElement, folder: string): Promise<void> {
  const colours = (pageData<readonly NearColour[]>('[data-near-colours]') ?? []).map((colour) => ({
    ...colour,
    href: root + colour.href,
  }));
  await new FindPage(panel, await openSearch(root, folder, colours)).start();
}

const panel = document.querySelector<HTMLElement>('[data-find]');
const folder = panel?.dataset.pagefind;
if (panel !== null && folder !== undefined) {
  start(panel, folder).catch((error: unknown) => {
    // The list of all colours stays; only the search is missing.
    panel.querySelector('form')!.hidden = true;
    const status = panel.querySelector<HTMLElement>('[data-count]');
    if (status !== null)
      status.textContent = `Search couldn’t be loaded; here are all the colours by hue. (${String(error)})`;
  });
}
