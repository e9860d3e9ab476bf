/**
 * The search index of the site, asked by words and filters.
 *
 * @packageDocumentation
 */
import { findsAllOf } from '../render/find-filters.ts';
import type { FoundThing } from '../render/find-view.ts';
import type { NearColour } from '../render/near-colours.ts';
import { defined } from '../values/defined.ts';
import { type Counts, countsBeside } from './live-counts.ts';
import { type NearThing, nearestFirst } from './nearest-first.ts';
import { isNarrowed, type Question } from './question.ts';
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

/** Values of one filter are alternatives, or all asked for; filters narrow one another. */
function pagefindFilters({ filters }: Question): object {
  return Object.fromEntries(
    Object.entries(filters).map(([name, values]) => [
      name,
      values.length === 1 ? values[0] : findsAllOf(name) ? { all: values } : { any: values },
    ]),
  );
}

function foundThing(root: string, { meta, raw_url, url }: FoundPage): FoundThing {
  return {
    href: root + (raw_url ?? url).replace(/^\//, ''),
    title: meta.title ?? '',
    about: meta.about ?? '',
    ...defined({ white: meta.white, black: meta.black }),
  };
}

/** What a question finds, each loaded when it is wanted. */
export type Found = readonly (() => Promise<FoundThing>)[];

/** The search of a site. */
export interface SiteSearch {
  /** The best first, or by title where no words are asked for. */
  ask(question: Question): Promise<Found>;
  /** The colours that a question finds, the nearest to the wanted one first. */
  askNear(question: Question, near: string): Promise<readonly NearThing[]>;
  /** How many would be found with each value of each filter. */
  counts(question: Question, facets: readonly string[]): ReturnType<typeof countsBeside>;
}

/**
 * Loads the search.
 *
 * @param root what leads from the page to the root of the site
 * @param folder of the search index
 * @param colours all that can be near to a wanted one
 */
export async function openSearch(root: string, folder: string, colours: readonly NearColour[]): Promise<SiteSearch> {
  const library = (await import(new URL(`${folder}pagefind.js`, document.baseURI).href)) as SearchLibrary;
  await library.options({ baseUrl: '/' });
  await library.init();
  const searchFor = (question: Question): ReturnType<SearchLibrary['search']> => {
    const words = withoutSmallWords(question.words);
    const sort = words === '' ? { sort: { title: 'asc' } as const } : {};
    return library.search(words === '' ? null : words, { filters: pagefindFilters(question), ...sort });
  };
  const ask = async (question: Question): Promise<Found> =>
    (await searchFor(question)).results.map((result) => async () => foundThing(root, await result.data()));
  return {
    ask,
    askNear: async (question, near) => {
      const all = question.words === '' && !isNarrowed(question);
      const found = all ? undefined : await Promise.all((await ask(question)).map((thing) => thing()));
      const hrefs = found && new Set(found.map(({ href }) => href));
      const asked = hrefs ? colours.filter(({ href }) => hrefs.has(href)) : colours;
      return nearestFirst(asked, near);
    },
    counts: async (question, facets) => {
      await library.filters();
      return countsBeside(question, facets, async (other) => (await searchFor(other)).filters);
    },
  };
}
