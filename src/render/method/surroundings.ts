import type { MethodExamples } from '../../book/method/method-examples.ts';
import type { Recipe } from '../../book/model/recipe.ts';
import type { Settings } from '../../book/model.ts';
import { ILLUMINANTS } from '../../tables/illuminants.ts';
import { depthText } from '../../units/length-text.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { spectrumGraph } from '../spectrum-graph.ts';
import { peakWords } from '../spectrum-words.ts';
import { deltaEText, listText } from '../words.ts';
import type { MethodPart } from './method-part.ts';

/** Columns of the table of lights, by what a reader calls them. */
const LIGHTS: readonly (readonly [column: 1 | 3 | 4 | 5, name: string, words: string])[] = [
  [1, 'daylight', 'fairly even, a little more blue than red'],
  [3, 'lamp', 'rises steadily from little violet to much red'],
  [5, 'warm LED', 'a narrow blue peak and a broad hill in the orange'],
  [4, 'tube', 'three narrow peaks, blue, green and orange, and little between'],
];
const LAST_NM = 730;

/** Where the waters come from. The figures and their limits are described in `tables/water-types.ts` and `stained-water.ts`. */
const WATER_SOURCE =
  'Clear, green and turbid are sea water of the types IB, 5C and 9C (Jerlov, Marine Optics, 2nd ed., 1976, table XXVII). Stained is calculated: the clearest water plus the average humus of 30 Finnish and Estonian lakes (Sipelgas et al., Hydrology Research 34:361, 2003); the darkest of those lakes held three times as much, the clearest a tenth. Mud that a river carries is not included.';

/** The same bait under other lights. */
export function lightsPart(context: PageContext): MethodPart {
  const { recipes } = context.book;
  const rows = ILLUMINANTS.filter(([nm]) => nm <= LAST_NM);
  const graphs = LIGHTS.map(([column, name, words]) =>
    spectrumGraph({
      id: `light-${column}`,
      title: `Light of a ${name}`,
      description: `Power over wavelength: ${words}.`,
      wavelengths: rows.map(([nm]) => nm),
      height: 130,
      lines: [{ name, values: relative(rows.map((row) => row[column])), mark: 'solid' }],
    }),
  );
  return {
    id: 'lights',
    title: 'Under other lights',
    content: html`<p>A bait has no colour in the dark: what comes back depends on the light that falls on it. All colours here are for daylight; a recipe’s page shows three other lights, each as your eye sees it once used to the light. Colours that depend on one narrow part of the spectrum change most, since that part may be missing.</p>
<figure class="method-figure"><div class="method-pair">${graphs}</div><figcaption>Power of each light over wavelength, scaled to its own peak: daylight D65, a lamp (A), a warm LED (LED-B1), a three-band tube (FL11).</figcaption></figure>
${mostChanged(context, recipes)}
<p>Two baits that match in daylight can differ under a lamp. A cup is compared with its target under each of these lights: with the target’s own spectrum where that was measured, otherwise with the smoothest spectrum of its colour. The real one may behave differently, so hold both under the lamp.</p>`,
  };
}

function relative(values: readonly number[]): readonly number[] {
  const most = Math.max(...values);
  return values.map((value) => value / most);
}

function mostChanged(context: PageContext, recipes: readonly Recipe[]): Html {
  const views = recipes.flatMap((recipe) => recipe.lights.map((view) => ({ recipe, view })));
  const most = views.reduce<(typeof views)[number] | undefined>(
    (best, each) => (best === undefined || each.view.deltaE > best.view.deltaE ? each : best),
    undefined,
  );
  if (most === undefined) return html``;
  const { recipe, view } = most;
  return html`<p>Of the colours in this book, <a href="${link(context, paths.recipe(recipe.id))}">${recipe.title}</a> changes most: under a ${view.name} ${view.words.length === 0 ? 'it is' : `it turns ${listText(view.words)},`} ΔE ${deltaEText(view.deltaE)} from daylight.</p>`;
}

/** The same bait at depth. */
export function waterPart({ water, waterDepthM }: MethodExamples, settings: Pick<Settings, 'volume'>): MethodPart {
  const marks = ['solid', 'dashed', 'dotted', 'dash-dot'] as const;
  return {
    id: 'water',
    title: 'In water',
    content: html`<p>Water absorbs light too: red first, in green and turbid water blue as well, and in stained water blue most of all. Whatever is left at depth lights the bait. Under water the surface of the plastic holds hardly any light back, so the bait looks lighter, and somewhat paler, than in air. The swatches show the hue that is left, seen close up against dark water and exposed as a camera would, so that white takes on the colour of the light; the percentage beside each says how dark it really is. Only the light’s way down is counted, and nothing that glows.</p>
<figure class="method-figure">${spectrumGraph({
      id: 'water-light',
      title: `Daylight left at ${depthText(waterDepthM, settings)}`,
      description: water.map(({ name, light }) => `In ${name} water ${peakWords(light)}`).join('. '),
      whole: 'all the light at the surface',
      lines: water.map(({ name, light }, index) => ({ name, values: light, mark: marks[index % marks.length]! })),
    })}<figcaption>Daylight left at ${depthText(waterDepthM, settings)}. ${water.map(({ name, light }) => `In ${name} water ${peakWords(light)}`).join('. ')}.</figcaption></figure>
<p class="fine">${WATER_SOURCE}</p>`,
  };
}
