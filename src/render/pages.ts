/**
 * All pages and files of a book, for the shells that write them.
 *
 * @packageDocumentation
 */

import { FILES as FILE_KINDS } from './data-files.ts';
import type { FileKind, PageKind } from './page.ts';
import { sheetA4Page, sheetLetterPage } from './pages/card-sheets.ts';
import { cardsPage, recipeCardPage, recipeSmallCardPage } from './pages/cards.ts';
import { carePage } from './pages/care.ts';
import { familiesPage, familyPage } from './pages/families.ts';
import { findPage } from './pages/find.ts';
import { homePage } from './pages/home.ts';
import { labelsPage } from './pages/labels.ts';
import { manualPage, manualTextPage } from './pages/manual.ts';
import { matchPage } from './pages/match.ts';
import { measuringCardPage } from './pages/measuring-card.ts';
import { measuringCardSheets } from './pages/measuring-card-sheets.ts';
import { methodPage } from './pages/method.ts';
import { moldPage, moldsPage } from './pages/molds.ts';
import { photographPage } from './pages/photograph.ts';
import { planPage } from './pages/plan.ts';
import { recipePage } from './pages/recipe.ts';
import { materialPage, shelfPage } from './pages/shelf.ts';
import { targetPage } from './pages/target.ts';
import { forewordPage, notFoundPage } from './pages/texts.ts';

export { familyGraph } from './lineage-picture.ts';
export { searchRecords } from './search-records.ts';

/** Every kind of page. */
export const PAGES: readonly PageKind[] = [
  homePage,
  recipePage,
  recipeCardPage,
  recipeSmallCardPage,
  cardsPage,
  sheetA4Page,
  sheetLetterPage,
  labelsPage,
  measuringCardPage,
  ...measuringCardSheets,
  shelfPage,
  materialPage,
  moldsPage,
  moldPage,
  targetPage,
  familiesPage,
  familyPage,
  forewordPage,
  findPage,
  planPage,
  matchPage,
  photographPage,
  methodPage,
  carePage,
  manualPage,
  manualTextPage,
  notFoundPage,
];

/** Every kind of file beside the pages. */
export const FILES: readonly FileKind[] = FILE_KINDS;
