import { methodExamples } from '../../book/method/method-examples.ts';
import { document } from '../document.ts';
import { html } from '../html.ts';
import { paths } from '../links.ts';
import { flakePart, layersPart, mixingPart } from '../method/cups.ts';
import { learningPart } from '../method/learning.ts';
import { limitsPart } from '../method/limits.ts';
import type { MethodPart } from '../method/method-part.ts';
import { lightPart, thicknessPart } from '../method/plastic.ts';
import { sourcesPart } from '../method/sources.ts';
import { lightsPart, waterPart } from '../method/surroundings.ts';
import { knownPart, surePart } from '../method/trust.ts';
import type { PageKind } from '../page.ts';

/** How the colours come about, in plain words, with pictures computed from the book's own shelf. */
export const methodPage: PageKind = {
  kind: 'method',
  items: () => [''],
  url: () => paths.method,
  render: (context) => {
    const { book } = context;
    const examples = methodExamples(book);
    const parts: readonly MethodPart[] = [
      lightPart(examples),
      thicknessPart(examples, book.optics),
      mixingPart(examples),
      layersPart(examples),
      flakePart(examples),
      knownPart(book),
      surePart(context),
      learningPart(context, examples),
      lightsPart(context),
      waterPart(examples, context.book.settings),
      limitsPart(context),
      sourcesPart(),
    ];
    return document(context, {
      title: 'How the colour is computed',
      description:
        'From what light does in plastic to the colour of a bait: mixing, thickness, layers, flake, lights, water, and how certain it is.',
      part: paths.method,
      main: html`<article class="text method"><h1>How the colour is computed</h1>
<p class="lead">A colour in this book is never picked and never mixed on a screen. It is computed from how much light each material absorbs and scatters. Here is how that becomes the picture, with examples from this shelf, and where it stops being true.</p>
<nav class="method-contents" aria-label="On this page"><ol>${parts.map(({ id, title }) => html`<li><a href="#${id}">${title}</a></li>`)}</ol></nav>
${parts.map(({ id, title, content }) => html`<section aria-labelledby="${id}"><h2 id="${id}">${title}</h2>${content}</section>\n`)}</article>`,
    });
  },
};
