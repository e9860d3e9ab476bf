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
    content: html`<p>A test pour tells you what no label can: what your own bottles do. The book takes all its looks together, and works out from them what each material absorbs and scatters, how your cards reflect and how light travels in your plastic. It moves these as far as the looks ask for, and no further than labels and looks leave room for. A look that doesn’t fit the others counts for little. Whatever the model still misses near a look is added on top; the less a cup is like one that was seen, the less is added. The wall, the pages, the cards and the proposals all go by that.</p>
${seen.length === 0 ? '' : html`<p>In this book ${counted(seen.length, 'round')} ${seen.length === 1 ? 'was' : 'were'} looked at over white; half of them are within ΔE ${deltaEText(median(seen))} of what the book shows now.</p>`}${learningFigures(context, examples)}`,
  };
}

/** How a book learns, in pictures of its own looks; of one without looks what there is. */
function learningFigures(context: PageContext, examples: MethodExamples): Html {
  const { book } = context;
  const { light, line } = learningPictures(book);
  const known = knownOverLooks(book);
  const steps = [
    light &&
      html`<h3>A label leaves a lot open</h3><p>Many materials fit the one colour on a label, and your bottle may be stronger than the next. Each look rules some of them out.</p>${lightFigure(context, light)}`,
    examples.scatterer &&
      html`<h3>Clear is not cloudy</h3><p>White does more to a dye than cover it: it sends light the long way round through it.</p>${lightPathPicture(examples.scatterer, book.optics)}`,
    line &&
      html`<h3>What was seen weighs most where it was seen</h3><p>No theory is quite right. So the book shows what the model says, and adds what it missed the nearest looks by.</p>${offsetPicture(book, line)}`,
    known && html`<h3 id="knew">How well this book knew its colours</h3>${knownChart(known)}`,
  ];
  return html`${steps.flatMap((step) => (step === undefined ? [] : html`<div class="method-step">${step}</div>\n`))}`;
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
  })}<figcaption>How much light is left after ${lengthText(thicknessMm, context.book.settings)} of plastic with the usual dose of ${name}. By the label alone, nine in ten such materials lie in the wide band; after ${counted(looks, 'look')} nine in ten lie in the narrow one.</figcaption></figure>`;
}

/** "from 9 % to 47 %" */
function width({ low, high }: LightLeft['before']): string {
  const middle = Math.floor(low.length / 2);
  return `from ${Math.round(100 * low[middle]!)} % to ${Math.round(100 * high[middle]!)} %`;
}
