/**
 * Labels for the bags, on sheets.
 *
 * @packageDocumentation
 */

import type { Appearance } from '../../book/model/colours.ts';
import type { Recipe } from '../../book/model/recipe.ts';
import type { Book } from '../../book/model.ts';
import { PATTERNS } from '../../patterns/patterns.ts';
import { required } from '../../values/required.ts';
import { bookIndex } from '../book-index.ts';
import { document } from '../document.ts';
import { type Html, html } from '../html.ts';
import { paths } from '../links.ts';
import type { PageKind } from '../page.ts';
import { PRINT_AT_SIZE, sheetBar } from '../print-bar.ts';
import { chips } from '../swatch/chip.ts';
import { counted, sentence } from '../words.ts';

/** A sheet of labels; the style sheet knows it by the end of its name. */
interface LabelSheet {
  readonly name: 'labels' | 'labels-letter';
  /** Labels of a sheet. */
  readonly count: number;
  readonly paper: 'A4' | 'Letter';
  readonly size: string;
  readonly url: string;
}

function labelPage({ name, count, paper, size, url }: LabelSheet): PageKind {
  return {
    kind: name,
    items: () => [''],
    url: () => url,
    render: (context) => {
      const { book } = context;
      const sheets = Array.from({ length: Math.ceil(book.recipes.length / count) }, (_, index) =>
        book.recipes.slice(index * count, (index + 1) * count),
      );
      const on = `${count} to ${paper === 'A4' ? 'an A4' : 'a Letter'} sheet`;
      return document(context, {
        title: `Bag labels, ${paper}`,
        description: `Labels for the bags of ${book.title}, ${on}.`,
        part: paths.cards,
        scripts: ['print', 'labels'],
        paper: 'paper',
        main: html`<h1 class="print-title">Bag labels on ${paper}</h1>${sheetBar(
          context,
          sheets.length,
          html`${size}, ${on}, <span role="status" data-sheets>${counted(sheets.length, 'sheet')}</span>. ${PRINT_AT_SIZE}`,
        )}${sheets.length === 0 ? '' : labelChoice(book, count)}<div class="papers">${sheets.map((recipes) => html`<div class="sheet sheet-${name}">${recipes.map((recipe) => bagLabel(book, recipe))}</div>`)}</div>`,
      });
    },
  };
}

/** 3 across and 8 down. A size in which sheets of labels are sold: common practice, no source. */
export const A4_LABELS: LabelSheet = {
  name: 'labels',
  count: 24,
  paper: 'A4',
  size: '70 × 37 mm',
  url: paths.labels,
};
export const labelsPage: PageKind = labelPage(A4_LABELS);

/** 2 across and 7 down, 3/16 in between the two and 5/6 in above. A size in which sheets of labels are sold: common practice, no source. */
export const LETTER_LABELS: LabelSheet = {
  name: 'labels-letter',
  count: 14,
  paper: 'Letter',
  size: '4 × 1 1/3 in',
  url: paths.labelsLetter,
};
export const labelsLetterPage: PageKind = labelPage(LETTER_LABELS);

/** Most labels of one colour: 40 to 70 sheets. Convention of this book. */
const MOST = 999;

/** How many labels of each colour; a script lays the sheets anew. */
function labelChoice({ recipes }: Book, perSheet: number): Html {
  return html`<div class="label-choice" data-labels="${perSheet}" hidden><details><summary>Choose colours and how many</summary><p><button class="quiet" type="button" data-each="0">None</button> <button class="quiet" type="button" data-each="1">One of each</button></p><ul class="label-choices">${recipes.map(({ id, title }) => html`<li><label for="n-${id}">${title}</label><input id="n-${id}" type="number" inputmode="numeric" min="0" max="${MOST}" step="1" value="1" autocomplete="off"></li>`)}</ul></details></div>`;
}

/** What a label shows: where cups lie side by side each of them, else the sides and the thin part. */
function labelLooks({ pattern, cups, body, other, thin }: Recipe): readonly Appearance[] {
  return PATTERNS[pattern].beside ? cups.map((cup) => cup.body) : [body, ...(other === undefined ? [] : [other]), thin];
}

function bagLabel(book: Book, recipe: Recipe): Html {
  const { title, pattern } = recipe;
  const mold = required(bookIndex(book).molds, recipe.mold);
  const long = title.length > 26 ? ' long' : '';
  return html`<article class="bag-label"><div class="bag-chip">${chips(
    labelLooks(recipe).map(({ overWhite, overBlack }) => ({ overWhite: overWhite.hex, overBlack: overBlack.hex })),
    '',
  )}</div><div class="bag-words"><h2 class="bag-title${long}">${title}</h2><p>${mold.title}${mold.bag === undefined ? '' : `, bag\u00a0of\u00a0${mold.bag}`}</p><p>${sentence(pattern)}</p><p class="bag-date">Poured</p></div></article>`;
}
