import type { Mold } from '../../book/model/shelf.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { lengthText } from '../../units/length-text.ts';
import { required } from '../../values/required.ts';
import { assumptionText } from '../../words/assumption.ts';
import { bookIndex } from '../book-index.ts';
import { colourEntry } from '../colour-entry.ts';
import { document } from '../document.ts';
import { shelfNote } from '../edition-mark.ts';
import { type Html, html } from '../html.ts';
import { labelLine } from '../label-line.ts';
import { link, paths } from '../links.ts';
import { notesHtml, notesText } from '../notes.ts';
import type { PageContext, PageKind } from '../page.ts';
import { photoFigures } from '../photo.ts';
import { shortDescription } from '../short-description.ts';
import { baitOutline } from '../swatch/bait-outline.ts';
import { tile } from '../tile.ts';
import { counted, sentence, volumeText } from '../words.ts';

/** A volume of one bait: two digits below ten, as molds are stated. */
function small(context: PageContext, ml: number): string {
  return context.book.settings.volume === 'ml' ? `${Number(ml.toFixed(2))} ml` : volumeText(ml, context.book.settings);
}

function percent(part: number): string {
  return `${formatDecimal(100 * part, 2)} %`;
}

/** All molds. */
export const moldsPage: PageKind = {
  kind: 'molds',
  items: () => [''],
  url: () => paths.molds,
  render: (context) =>
    document(context, {
      title: 'Molds',
      description: `The molds of ${context.book.title}, with their cavity volumes and the colours poured in them.`,
      part: paths.molds,
      main: html`<h1>Molds</h1><ul class="molds">${context.book.molds.map(
        (mold) =>
          html`<li><a href="${link(context, paths.mold(mold.id))}"><span class="mold-outline">${baitOutline(mold)}</span><span class="mold-name">${mold.title}</span></a><span class="shelf-words">${mold.shape}${mold.lengthMm === undefined ? '' : `, ${lengthText(mold.lengthMm, context.book.settings)} long`}, ${counted(mold.usedIn.length, 'colour')}; ${counted(mold.cavities, 'cavity', 'cavities')} of ${small(context, mold.cavityMl)}, a full pour ${volumeText(mold.cavities * mold.cavityMl + mold.sprueMl, context.book.settings)}</span></li>`,
      )}</ul>${context.book.molds.length === 0 ? html`<p>The book has no molds yet.</p>` : ''}`,
    }),
};

/** A mold's page. */
export const moldPage: PageKind = {
  kind: 'mold',
  items: (book) => book.molds.map(({ id }) => id),
  url: paths.mold,
  render: (context, id) => {
    const mold = required(bookIndex(context.book).molds, id);
    return document(context, {
      title: mold.title,
      description:
        shortDescription(notesText(mold.notes)) ||
        `${mold.title}: cavities, volumes, thickness, and the colours poured in it.`,
      part: paths.molds,
      main: html`<article class="mold">
<header class="label"><h1>${mold.title}</h1>${labelLine([html`<a href="${link(context, paths.molds)}">Molds</a>`, mold.shape])}${shelfNote(mold)}</header>
<div class="mold-plate">${baitOutline(mold)}</div>
<div class="columns"><div class="column-main">
${mold.notes.trim() === '' ? '' : html`<div class="notes">${notesHtml(context, mold.notes)}</div>`}
${photoFigures(context, mold.photos, `Photo of ${mold.title}`)}
${colours(context, mold)}
</div><aside class="column-side" aria-label="Particulars">${properties(context, mold)}</aside></div>
</article>`,
    });
  },
};

function colours(context: PageContext, mold: Mold): Html {
  if (mold.usedIn.length === 0)
    return html`<p>No colour in the book uses this mold yet; you can plan any of them for it.</p>`;
  const tiles = mold.usedIn.flatMap((id) => {
    const entry = colourEntry(context.book, id);
    return entry === undefined ? [] : [tile(context, entry)];
  });
  return html`<section class="part" aria-labelledby="colours"><h2 id="colours">Colours for this mold</h2><ul class="wall">${tiles}</ul>${fullPours(context, mold)}</section>`;
}

/** The way to a plan that fills this mold once with each of its colours. */
function fullPours(context: PageContext, { id, cavities, usedIn }: Mold): Html {
  const planned = usedIn.filter((each) => colourEntry(context.book, each)?.recipe !== undefined);
  if (planned.length === 0) return html``;
  const lines = new URLSearchParams(planned.map((each) => ['line', `${each}.${id}.${cavities}`]));
  return html`<p class="after-wall"><a href="${link(context, paths.plan)}?${lines.toString()}">What a full pour of ${planned.length === 1 ? 'it' : 'each'} takes</a></p>`;
}

function properties(context: PageContext, mold: Mold): Html {
  const {
    cavities,
    cavityMl,
    sprueMl,
    bodyMm,
    thinMm,
    thinPart,
    gateMm,
    lengthMm,
    method,
    manifold,
    rejects,
    bag,
    assumptions,
  } = mold;
  const length = (mm: number): string => lengthText(mm, context.book.settings);
  const facts: readonly (readonly [string, string])[] = [
    ['Cavities', String(cavities)],
    ['One bait', small(context, cavityMl)],
    ['A full pour', small(context, cavities * cavityMl + sprueMl)],
    ['Sprue', small(context, sprueMl)],
    ['Body', `${length(bodyMm)} thick`],
    [sentence(thinPart), `${length(thinMm)} thick`],
    ...(gateMm === undefined ? [] : [['Gate', `${length(gateMm)} wide`] as const]),
    ...(lengthMm === undefined ? [] : [['Length', length(lengthMm)] as const]),
    ...(method === undefined ? [] : [['Filled', method] as const]),
    ...(manifold === undefined ? [] : [['Manifold', `gives the first cup ${percent(manifold)}`] as const]),
    ...(rejects === undefined ? [] : [['Thrown away', `${percent(rejects)} of the baits`] as const]),
    ...(bag === undefined ? [] : [['Bag', counted(bag, 'bait')] as const]),
  ];
  return html`<section aria-labelledby="properties"><h2 id="properties">Properties</h2><dl class="facts stacked">${facts.map(([name, value]) => html`<div><dt>${name}</dt><dd>${value}</dd></div>`)}</dl></section>${
    assumptions.length === 0
      ? ''
      : html`<section aria-labelledby="assumed"><h2 id="assumed">Assumed</h2><ul class="fine">${assumptions.map((assumed) => html`<li>${sentence(assumptionText(assumed))}</li>`)}</ul></section>`
  }`;
}
