import { median } from '../../book/median.ts';
import { knownOverLooks } from '../../book/method/known-over-looks.ts';
import { type LightLeft, learningPictures } from '../../book/method/learning-pictures.ts';
import type { MethodExamples } from '../../book/method/method-examples.ts';
import { lengthText } from '../../units/length-text.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { spectrumGraph } from '../spectrum-graph.ts';
import { counted, deltaEText } from '../words.ts';
import { knownChart } from './known-chart.ts';
import { lightPathPicture } from './light-path-picture.ts';
import type { MethodPart } from './method-part.ts';
import { offsetPicture } from './offset-picture.ts';

/** Learning from looks, in words and in pictures. */
export function learningPart(context: PageContext, examples: MethodExamples): MethodPart {
  const seen = context.book.recipes.flatMap(({ cups }) =>
    cups.flatMap(({ rounds }) => rounds.flatMap(({ seen: [judged] }) => judged?.missedBy?.overWhite ?? [])),
  );
  return {
    id: 'learning',
    title: 'How the book learns',
    content: html`<p>A test bait tells you what no shelf can: what your own bottles are. Every look of the book is taken together: what every material absorbs and scatters, the cards that you look over, and how light goes in plastic are moved as far as all looks together demand, and no further than files and looks leave open. A look that fits nothing else counts for little. What is left over beside the nearest looks is kept as well, and fades as a cup is less like them. Wall, pages, cards and proposals all go by that.</p>
${seen.length === 0 ? '' : html`<p>In this book ${counted(seen.length, 'round')} ${seen.length === 1 ? 'was' : 'were'} looked at over white; half of the looks are within ΔE ${deltaEText(median(seen))} of what the book shows of them now.</p>`}${learningFigures(context, examples)}`,
  };
}

/** How a book learns, in pictures of its own looks; of one without looks what there is. */
function learningFigures(context: PageContext, examples: MethodExamples): Html {
  const { book } = context;
  const { light, line } = learningPictures(book);
  const known = knownOverLooks(book);
  return html`${light === undefined ? '' : html`<h3>A label leaves much open</h3><p>One colour on a bottle fits many materials, and yours may be stronger than the next. Each look rules some of them out.</p>${lightFigure(context, light)}`}
${examples.scatterer === undefined ? '' : html`<h3>Clear is not cloudy</h3><p>White does more to a dye than cover it: it sends light on longer ways through it.</p>${lightPathPicture(examples.scatterer, book.optics)}`}
${line === undefined ? '' : html`<h3>What was seen weighs most where it was seen</h3><p>No theory is quite right. So what the book shows is the model, and beside it what the nearest looks were off by.</p>${offsetPicture(book, line)}`}
${known === undefined ? '' : html`<h3 id="knew">How well this book knew its colours</h3>${knownChart(known)}`}`;
}

function lightFigure(context: PageContext, { material, thicknessMm, before, after, looks }: LightLeft): Html {
  const name = html`<a href="${link(context, paths.material(material.id))}">${material.title}</a>`;
  return html`<figure class="method-figure">${spectrumGraph({
    id: 'left-open',
    title: `Light that ${material.title} leaves, by its label and after ${counted(looks, 'look')}`,
    description: `Two bands of nine in ten over wavelength: wide by the label alone, ${width(before)} in the middle of the spectrum, narrow after the looks, ${width(after)} there.`,
    whole: 'all the light',
    lines: [
      { name: 'by its file', values: before.middle, mark: 'dashed' },
      { name: 'learned', values: after.middle, mark: 'solid' },
    ],
    bands: [
      { ...before, mark: 'wide' },
      { ...after, mark: 'narrow' },
    ],
  })}<figcaption>How much light ${name} leaves on ${lengthText(thicknessMm, context.book.settings)} of its usual dose. Nine in ten materials with such a label lie in the wide band; after ${counted(looks, 'look')} nine in ten lie in the narrow one.</figcaption></figure>`;
}

/** "from 9 % to 47 %" */
function width({ low, high }: LightLeft['before']): string {
  const middle = Math.floor(low.length / 2);
  return `from ${Math.round(100 * low[middle]!)} % to ${Math.round(100 * high[middle]!)} %`;
}
