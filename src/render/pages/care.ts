import { CAUTIONS, type CautionGroup } from '../../words/cautions.ts';
import { FIRST_AID, type FirstAid } from '../../words/first-aid.ts';
import { document } from '../document.ts';
import { type Html, html } from '../html.ts';
import { paths } from '../links.ts';
import type { PageContext, PageKind } from '../page.ts';

function firstAidOf({ id, title, steps }: FirstAid): Html {
  return html`<section class="first-aid" aria-labelledby="${id}"><h3 id="${id}">${title}</h3><ol>${steps.map((step) => html`<li>${step}</li>`)}</ol></section>`;
}

function groupOf({ title, cautions }: CautionGroup, { book }: PageContext): Html {
  return html`<h2>${title}</h2>
<dl class="care-list">${cautions.map(({ id, name, text }) => html`<div id="${id}"><dt>${name}</dt><dd>${typeof text === 'string' ? text : text(book.settings)}</dd></div>`)}</dl>`;
}

/** First aid, and then the cautions: who was burnt looks for one thing only. */
export const carePage: PageKind = {
  kind: 'care',
  items: () => [''],
  url: () => paths.care,
  render: (context) =>
    document(context, {
      title: 'Care',
      description:
        'First aid for burns, smoke and fumes, and the cautions for heating vinyl plastic: air, heat, microwave, injector, dust, storage, scrap.',
      part: paths.care,
      main: html`<article class="text care"><h1>Care</h1>
<h2 class="care-first">When it goes wrong</h2>
<div class="first-aids">${FIRST_AID.map(firstAidOf)}</div>
<p class="lead">The supplier’s data sheet comes first, then your local codes, and with a burn a doctor. All of this page is common practice, written down from memory and without a source: a start, and no more.</p>
${CAUTIONS.map((group) => groupOf(group, context))}</article>`,
    }),
};
