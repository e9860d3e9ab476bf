import type { PageContext } from './page.ts';

/** The page that a server shows for whatever is missing, at any depth. */
export const NOT_FOUND = '404.html';

/**
 * Prefix that leads from a page to the root of the book: `../../` for `colours/alder-smoke/`, `./` for the root itself.
 * The page for what is missing is shown at any depth, so its prefix is the path of the book's address, or `/`.
 */
export function rootPrefix({ url, book }: Pick<PageContext, 'url' | 'book'>): string {
  if (url === NOT_FOUND) return book.address === undefined ? '/' : new URL(book.address).pathname;
  const depth = url.split('/').length - 1;
  return depth === 0 ? './' : '../'.repeat(depth);
}

/** Link from a page to a path from the root. */
export function link(context: Pick<PageContext, 'url' | 'book'>, path: string): string {
  return rootPrefix(context) + path;
}

/** The first page of several has the path of all. */
const numbered = (path: string, number: number): string => (number === 1 ? path : `${path}${number}/`);

/** Sides of the icons of a home screen, px: the first where Apple’s look for it. Common practice, no source. */
export const ICON_SIZES = [180, 192, 512] as const;

type IconSize = (typeof ICON_SIZES)[number];

/** Paths of the pages, from the root. */
export const paths = {
  home: '',
  hue: (hue: string): string => `#${hueAnchor(hue)}`,
  recipe: (id: string): string => `colours/${id}/`,
  card: (id: string): string => `colours/${id}/card/`,
  smallCard: (id: string): string => `colours/${id}/card-4x6/`,
  recipeData: (id: string): string => `colours/${id}/recipe.json`,
  recipeSource: (id: string): string => `colours/${id}/${id}.md`,
  testChip: (id: string): string => `colours/${id}/test-chip.svg`,
  sharedPicture: 'shared.jpg',
  targetPicture: (id: string): string => `targets/${id}/shared.jpg`,
  icon: (size: IconSize): string => `icon-${size}.png`,
  manifest: 'manifest.webmanifest',
  /** The script that keeps what was opened. It stands above all that it keeps, as browsers ask. */
  offline: 'offline.js',
  cards: 'cards/',
  sheetA4: (number: number): string => numbered('cards/a4/', number),
  sheetLetter: (number: number): string => numbered('cards/letter/', number),
  labels: 'labels/',
  measuringCard: 'measuring-card/',
  measuringCardSheet: (kind: string, paper: string): string => `measuring-card/${kind}-${paper}/`,
  photograph: 'photograph/',
  shelf: 'shelf/',
  material: (id: string): string => `shelf/${id}/`,
  molds: 'molds/',
  mold: (id: string): string => `molds/${id}/`,
  target: (id: string): string => `targets/${id}/`,
  families: 'families/',
  family: (id: string): string => `families/${id}/`,
  foreword: 'foreword/',
  find: 'find/',
  plan: 'plan/',
  match: 'match/',
  learned: 'match/learned.js',
  plannerShelf: 'plan/shelf.js',
  care: 'care/',
  /** What to do when something went wrong, on the page Care. */
  firstAid: (id: string): string => `care/#${id}`,
  method: 'method/',
  manuals: 'manual/',
  manual: (name: string): string => `manual/${name}/`,
  bookData: 'book.json',
  notices: 'notices.txt',
} as const;

/** Id of a hue family's heading on the home page. */
export function hueAnchor(hue: string): string {
  return `hue-${hue.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`;
}
