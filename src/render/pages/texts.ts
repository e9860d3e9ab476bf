/**
 * Pages that are text: the foreword, and what a server shows for a page that is not there.
 *
 * @packageDocumentation
 */
import { scaleText } from '../../units/scale-step.ts';
import { document } from '../document.ts';
import { html } from '../html.ts';
import { link, NOT_FOUND, paths } from '../links.ts';
import { notesHtml } from '../notes.ts';
import type { PageKind } from '../page.ts';
import { counted, listText } from '../words.ts';

export const forewordPage: PageKind = {
  kind: 'foreword',
  items: () => [''],
  url: () => paths.foreword,
  render: (context) => {
    const { title, maker, foreword, settings } = context.book;
    const { spoons, scaleGrams, drops, loss, fill, tolerance } = settings;
    const tools = [
      ...(drops ? ['drop by drop'] : []),
      ...(spoons.length > 0 ? [`with spoons of ${listText(spoons.map(({ name }) => name))}`] : []),
      ...(scaleGrams === undefined ? [] : [`on a scale that shows ${scaleText(scaleGrams, scaleGrams)}`]),
    ];
    return document(context, {
      title: 'Foreword',
      description: `What ${title} is, and how to read it.`,
      part: paths.foreword,
      main: html`<article class="text"><h1>Foreword</h1>${maker === undefined ? '' : html`<p class="label-line">${maker}</p>`}
${foreword.trim() === '' ? html`<p>The maker wrote no foreword.</p>` : html`<div class="notes">${notesHtml(context, foreword)}</div>`}
<h2>How to read the numbers</h2>
<p>Amounts are what is really in the cup after every round, not the notes added up. Batches here are measured ${listText(tools)}; ${Math.round(loss * 100)} % is added for losses, and a cup is filled to ${Math.round(fill * 100)} %.</p>
<p>Colours are computed from how each material absorbs and scatters light, at the bait’s thickness, over a white and a black card. ΔE (CIEDE2000) says how different two colours look: below 1 hardly anyone sees it, and here up to ${tolerance} counts as the same colour. How much a bait hides compares the light that comes back over black and over white: 0 % is clear, 100 % hides everything.</p>
<p>Each colour says how it is known. <em>Measured</em> means from spectra of its materials, <em>photographed</em> from photos of test chips over white and black, <em>estimated</em> that some of its materials are known by one colour and their kind alone.</p></article>`,
    });
  },
};

export const notFoundPage: PageKind = {
  kind: 'not-found',
  items: () => [''],
  url: () => NOT_FOUND,
  render: (context) => {
    const { recipes, looks } = context.book;
    const count = recipes.length + looks.length;
    return document(context, {
      title: 'Not in the book',
      description: 'There is no such page in the book.',
      main: html`<article class="text"><h1>Not in the book</h1><p class="lead">There is no page at this address. The colour may have been renamed, or taken out of the book.</p><p><a href="${link(context, paths.home)}">${count === 0 ? 'The first page' : `All ${counted(count, 'colour')}`}</a>, or <a href="${link(context, paths.find)}">find one</a>.</p></article>`,
    });
  },
};
