/**
 * Labels for the bags, on sheets.
 *
 * @packageDocumentation
 */

import type { Book } from '../../book/model.ts';
import { required } from '../../values/required.ts';
import { baitPicture } from '../bait-picture.ts';
import { document } from '../document.ts';
import { type Html, html } from '../html.ts';
import { LABEL_SHEETS, type LabelSheet, labelsOn } from '../label/label-sheet.ts';
import { isLarge } from '../label/label-type.ts';
import { labelWords } from '../label/label-words.ts';
import { bagLabel } from '../label/view.ts';
import { link, paths } from '../links.ts';
import type { PageContext, PageKind } from '../page.ts';
import { PRINT_AT_SIZE, sheetBar } from '../print-bar.ts';
import { counted } from '../words.ts';

const SHEETS = new Map(LABEL_SHEETS.map((sheet) => [sheet.path, sheet]));

/** Labels of every colour: a page for each size. */
export const labelsPage: PageKind = {
  kind: 'labels',
  items: () => [...SHEETS.keys()],
  url: (path) => paths.labels + path,
  render: (context, path) => {
    const { book } = context;
    const sheet = required(SHEETS, path);
    const count = labelsOn(sheet);
    const sheets = Array.from({ length: Math.ceil(book.recipes.length / count) }, (_, index) =>
      book.recipes.slice(index * count, (index + 1) * count),
    );
    const { size, paper } = sheet;
    const on = `${count} to ${paper === 'A4' ? 'an A4' : 'a Letter'} sheet`;
    return document(context, {
      title: `Bag labels, ${size} on ${paper}`,
      description: `Labels for the bags of ${book.title}, ${size}, ${on}.`,
      part: paths.cards,
      scripts: ['print', 'labels'],
      paper: 'paper',
      main: html`<h1 class="print-title">Bag labels, ${size}</h1>${sheetBar(
        context,
        sheets.length,
        html`${on[0]!.toUpperCase()}${on.slice(1)}, <span role="status" data-sheets>${counted(sheets.length, 'sheet')}</span>. ${PRINT_AT_SIZE} ${isLarge(sheet) ? '' : 'Ingredients are printed only where they all fit: a larger label holds more.'}`,
      )}${sheets.length === 0 ? '' : [otherSizes(context, sheet), labelChoice(book, count)]}<div class="papers">${sheets.map(
        (recipes) =>
          html`<div class="sheet sheet-labels sheet-${paper === 'A4' ? 'a4' : 'letter'} labels-${sheet.name}">${recipes.map((recipe) => bagLabel(labelWords(book, recipe), sheet, baitPicture(context, recipe, isLarge(sheet) ? 'card' : 'label', { first: true })))}</div>`,
      )}</div>`,
    });
  },
};

/** The sizes of labels, this one without a link. */
function otherSizes(context: PageContext, here: LabelSheet): Html {
  const on = (paper: LabelSheet['paper']): Html => {
    const sizes = LABEL_SHEETS.filter((sheet) => sheet.paper === paper).map((sheet) =>
      sheet === here
        ? html`<li><a href="${link(context, paths.labels + sheet.path)}" aria-current="page">${sheet.size}</a></li>`
        : html`<li><a href="${link(context, paths.labels + sheet.path)}">${sheet.size}</a></li>`,
    );
    return html`<li>${paper}: <ul class="label-sizes">${sizes}</ul></li>`;
  };
  return html`<nav class="label-papers" aria-label="Sizes of labels"><ul class="label-sizes">${on('A4')}${on('Letter')}</ul></nav>`;
}

/** Links to the labels of every size. */
export function labelLinks(context: PageContext): Html {
  return html`${LABEL_SHEETS.map((sheet) => html`<li><a href="${link(context, paths.labels + sheet.path)}">Bag labels of ${sheet.size} on ${sheet.paper}, ${labelsOn(sheet)} to a sheet</a></li>`)}`;
}

/** Most labels of one colour: 40 to 70 sheets. Convention of this book. */
const MOST = 999;

/** Date and lot of all labels, and how many there are of each colour; a script lays the sheets anew. */
function labelChoice({ recipes }: Book, perSheet: number): Html {
  return html`<div class="label-choice" data-labels="${perSheet}" hidden><p class="label-fields"><label>Poured <input data-of="poured" type="text" maxlength="14" autocomplete="off"></label> <label>Lot <input data-of="lot" type="text" maxlength="14" autocomplete="off"></label> <span class="fine">On every label; leave them empty to write by hand.</span></p><details><summary>Choose colours and how many</summary><p><button class="quiet" type="button" data-each="0">None</button> <button class="quiet" type="button" data-each="1">One of each</button></p><ul class="label-choices">${recipes.map(({ id, title }) => html`<li><label for="n-${id}">${title}</label><input id="n-${id}" type="number" inputmode="numeric" min="0" max="${MOST}" step="1" value="1" autocomplete="off"></li>`)}</ul></details></div>`;
}
