import type { Material } from '../../book/model/shelf.ts';
import type { Settings } from '../../book/model.ts';
import { isHeatProof } from '../../kinds/additive-uses.ts';
import { MATERIAL_KINDS, SHELF_ORDER } from '../../kinds/kinds.ts';
import { LADDER_MM } from '../../tables/material-defaults.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { lengthText } from '../../units/length-text.ts';
import { UNITS } from '../../units/unit.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import { required } from '../../values/required.ts';
import { assumptionText } from '../../words/assumption.ts';
import { cutShareText } from '../../words/cut.ts';
import { EFFECT_WORDS } from '../../words/effect.ts';
import { handyMeasure } from '../../words/handy-measure.ts';
import { knownText } from '../../words/how-known.ts';
import { ownChipsText } from '../../words/own-chips.ts';
import { boughtText } from '../../words/stock.ts';
import { bookIndex, titleOnShelf } from '../book-index.ts';
import { cautionsBlock } from '../cautions.ts';
import { document } from '../document.ts';
import { ladderText, massIn } from '../dose-text.ts';
import { shelfNote } from '../edition-mark.ts';
import { filmText, flakeSizeText } from '../flake-size-text.ts';
import { type Html, html } from '../html.ts';
import { labelLine } from '../label-line.ts';
import { link, paths } from '../links.ts';
import { beforeAndAfterSection } from '../material/before-and-after.ts';
import { knownColour } from '../material/known-colour.ts';
import { lightGraph } from '../material/light-graph.ts';
import { ownChips } from '../material/own-chips.ts';
import { runsLow, runsLowSection } from '../material/runs-low.ts';
import { worthAChipSection } from '../material/worth-a-chip.ts';
import { notesHtml, notesText } from '../notes.ts';
import type { PageContext, PageKind } from '../page.ts';
import { photoFigures } from '../photo.ts';
import { shortDescription } from '../short-description.ts';
import { chipColours, chips, dot } from '../swatch/chip.ts';
import { flakeCard } from '../swatch/flake-card.ts';
import { counted, inches, limitText, listText, massText, moneyText, sentence, temperatureText } from '../words.ts';

/** Whether the look of a material means anything: an additive without one does not colour. */
const colours = ({ ladder, flake, kind }: Material): boolean =>
  ladder.length > 0 || flake !== undefined || kind === 'plastic';

/** What a material looks like, in small: its ladder, its flake, or a flat colour. */
function strip(material: Material): Html {
  if (material.flake !== undefined) return flakeCard(material, { id: `m-${material.id}`, budget: 40, label: '' });
  if (material.ladder.length > 0)
    return chips(
      material.ladder.map(({ look }) => chipColours(look)),
      '',
    );
  return colours(material) ? chips([{ overWhite: material.hex, overBlack: material.hex }], '') : html``;
}

/** Everything that the maker owns or can buy. */
export const shelfPage: PageKind = {
  kind: 'shelf',
  items: () => [''],
  url: () => paths.shelf,
  render: (context) => {
    const { book } = context;
    const groups = SHELF_ORDER.map((kind) => ({
      name: MATERIAL_KINDS[kind].heading,
      materials: book.materials.filter((material) => material.kind === kind),
    }));
    const low = runsLow(book);
    const isLow = new Set(low.map(({ material }) => material.id));
    return document(context, {
      title: 'Shelf',
      description: `The ${counted(book.materials.length, 'material')} of ${book.title}, each in rising doses over white and over black.`,
      part: paths.shelf,
      main: html`<h1>Shelf</h1>
<p class="lead">Each strip is one material alone in clear plastic, from a quarter of its usual dose to four times as much, over white above and over black below.</p>
${runsLowSection(context, low)}${worthAChipSection(context)}${groups
  .filter(({ materials }) => materials.length > 0)
  .map(
    ({
      name,
      materials,
    }) => html`<section class="part" aria-labelledby="shelf-${name.toLowerCase()}"><h2 id="shelf-${name.toLowerCase()}">${name} <span class="count">${materials.length}</span></h2>
<ul class="shelf">${materials.map((material) => [shelfItem(context, material, isLow.has(material.id)), ...cutItems(context, material)])}</ul></section>
`,
  )}`,
    });
  },
};

function shelfItem(context: PageContext, material: Material, isLow: boolean): Html {
  const { id, title, flake, known, usedIn, stockGrams, hardness, use, effect } = material;
  const uses = new Set(usedIn.map(({ recipe }) => recipe)).size;
  const own = bookIndex(context.book).chipsOf.get(id)?.length ?? 0;
  const words = [
    ...(flake === undefined ? [] : [inches(flake.acrossMm), flake.finish]),
    ...(hardness === undefined ? [] : [hardness]),
    ...(use === undefined ? [] : [use]),
    ...(effect === undefined ? [] : [EFFECT_WORDS[effect]]),
    ...(colours(material) && material.kind !== 'plastic' && flake === undefined ? [knownText(known)] : []),
    uses === 0 ? 'not used yet' : `in ${counted(uses, 'colour')}`,
    ...(own === 0 ? [] : [ownChipsText(own, context.book.edition)]),
  ];
  const left = stockGrams === undefined ? '' : `${stockText(material, stockGrams, context.book.settings)} left`;
  const stock = left === '' ? '' : isLow ? html`, <strong class="shortage">${left}</strong>` : `, ${left}`;
  return html`<li><a href="${link(context, paths.material(id))}"><span class="shelf-strip ${flake === undefined ? '' : 'flakes'}">${strip(material)}</span><span class="shelf-name">${title}</span></a><span class="shelf-words">${words.join(', ')}${stock}</span></li>`;
}

/** The cuts of a bottle, each with the palest step of its colour, which they are for. */
function cutItems(context: PageContext, material: Material): readonly Html[] {
  const { cuts = [], ladder: steps } = material;
  return cuts.map(
    (cut) =>
      html`<li><a href="${link(context, paths.material(material.id))}#${cut.id}"><span class="shelf-strip">${chips(
        steps.slice(0, 1).map(({ look }) => chipColours(look)),
        '',
      )}</span><span class="shelf-name">${cut.title}</span></a><span class="shelf-words">${cutShareText(cut, material.title)}, with ${titleOnShelf(context.book, cut.with)}</span></li>`,
  );
}

/** The dilutions of a bottle: what is in a drop of each. */
function cutsSection(context: PageContext, { cuts = [], title }: Material): Html {
  if (cuts.length === 0) return html``;
  return html`<section class="part" aria-labelledby="cuts"><h2 id="cuts">Cut, for small doses</h2>${cuts.map((cut) => {
    const diluent = html`<a href="${link(context, paths.material(cut.with))}">${titleOnShelf(context.book, cut.with)}</a>`;
    return html`<h3 id="${cut.id}">${cut.title}</h3><p>${sentence(cutShareText(cut, title))} by volume, with ${diluent}. One drop is ${massText(cut.gramsPerDrop)} and holds ${massText(cut.gramsPerDrop * cut.bottlePerGram)} of ${title}. What goes into a cup, the stock and the cost are its two parts.</p>${cut.notes.trim() === '' ? '' : html`<div class="notes">${notesHtml(context, cut.notes)}</div>`}${cut.assumptions.map((assumed) => html`<p class="fine">${sentence(assumptionText(assumed))}.</p>`)}`;
  })}</section>`;
}

/** A material's page. */
export const materialPage: PageKind = {
  kind: 'material',
  items: (book) => book.materials.map(({ id }) => id),
  url: paths.material,
  render: (context, id) => {
    const material = required(bookIndex(context.book).materials, id);
    const { title, notes, kind } = material;
    return document(context, {
      title,
      description:
        shortDescription(notesText(notes)) ||
        `${title}, a ${kind}: how it looks in rising doses, and where it is used.`,
      part: paths.shelf,
      main: html`<article class="material">
<header class="label"><h1>${title}</h1>${labelLine([html`<a href="${link(context, paths.shelf)}">Shelf</a>`, kind])}${shelfNote(material)}</header>
${ladder(context, material)}
<div class="columns"><div class="column-main">
${notes.trim() === '' ? '' : html`<div class="notes">${notesHtml(context, notes)}</div>`}
${photoFigures(context, material.photos, `Photo of ${title}`)}
${cutsSection(context, material)}
${beforeAndAfterSection(context, material)}
${lightGraph(context, material)}
${ownChips(context, material)}
${usedIn(context, material)}
${cautionsBlock(context)}
</div><aside class="column-side" aria-label="Particulars">${properties(context, material)}</aside></div>
</article>`,
    });
  },
};

function ladder({ book: { settings } }: PageContext, material: Material): Html {
  const { title, flake, ladder: steps } = material;
  if (flake !== undefined) {
    return html`<figure class="flake-plate">${flakeCard(material, { id: 'flake', budget: 240, label: `${title} to scale over white and over black` })}<figcaption>To scale, flat on white and on black card: ${inches(flake.acrossMm)} across, ${flake.outline}, ${flake.finish}.</figcaption></figure>`;
  }
  if (steps.length === 0) return html``;
  const labels = steps.map((step) => ladderText(step, settings, material));
  return html`<figure class="ladder"><div class="ladder-chips">${chips(
    steps.map(({ look }) => chipColours(look)),
    `${title} from ${labels[0]!} on the left to ${labels.at(-1)!} on the right`,
  )}</div><ol>${labels.map((label) => html`<li>${doseLines(label)}</li>`)}</ol><figcaption>Alone in clear plastic, ${lengthText(LADDER_MM, settings)} thick; over white above, over black below.</figcaption></figure>`;
}

/** A dose whose number stands over its unit where there is little room. */
function doseLines(dose: string): Html {
  const [number, ...others] = dose.split(' ');
  return html`<b>${number}</b> ${others.join(' ')}`;
}

function stockText(material: Material, grams: number, settings: Settings): string {
  if (grams === 0) return 'none';
  return boughtText(grams, material, settings);
}

/** What the usual volume takes, so that uses can be compared: drops or spoons where they come near, with the grams. */
function useText(gramsPerMl: number, material: Material, settings: Settings): string {
  const { ml, text } = usualVolume(settings);
  const measure = handyMeasure(gramsPerMl * ml, material, settings);
  const mass = massIn({ gramsPerMl }, settings);
  return `${measure === undefined ? mass : `${measure} (${mass})`} in ${text}`;
}

function usedIn(context: PageContext, material: Material): Html {
  const { usedIn: uses, kind } = material;
  if (uses.length === 0)
    return html`<section class="part"><h2>Used in</h2><p>No colour in the book uses it yet.</p></section>`;
  const { recipes } = bookIndex(context.book);
  const { settings } = context.book;
  const most = [...uses].sort((one, other) => other.gramsPerMl - one.gramsPerMl);
  // Of plastic no dose is told, so each colour stands once, with all of its cups.
  const told = kind === 'plastic' ? [...new Map(most.map((use) => [use.recipe, use])).values()] : most;
  return html`<section class="part" aria-labelledby="used"><h2 id="used">Used in</h2><ul class="uses in-columns">${told.map(
    ({ recipe, cup, gramsPerMl }) => {
      const found = recipes.get(recipe);
      if (found === undefined) return html``;
      const cups = kind === 'plastic' ? uses.filter((use) => use.recipe === recipe).map((use) => use.cup) : [cup];
      const name = found.cups.length > 1 ? `, ${listText(cups)}` : '';
      const amount = kind === 'plastic' ? '' : `: ${useText(gramsPerMl, material, settings)}`;
      return html`<li>${dot(found.body.overWhite.hex)}<a href="${link(context, paths.recipe(recipe))}">${found.title}</a><span class="fine">${name}${amount}</span></li>`;
    },
  )}</ul></section>`;
}

function properties(context: PageContext, material: Material): Html {
  const { settings } = context.book;
  const {
    flake,
    density,
    gramsPerMl,
    gramsPerDrop,
    price,
    pack,
    stockGrams,
    highest,
    working,
    most,
    hardness,
    use,
    effect,
    assumptions,
  } = material;
  const facts: (readonly [string, string])[] = [];
  if (hardness !== undefined) facts.push(['Hardness', hardness]);
  if (use !== undefined) facts.push(['Use', use]);
  if (effect !== undefined) facts.push(['Effect', EFFECT_WORDS[effect]]);
  if (flake !== undefined) {
    facts.push(['Size', flakeSizeText(flake, settings)]);
    facts.push(
      ['Cut', `${flake.outline}, ${flake.finish}`],
      ['Film', filmText(flake.filmMm, settings)],
      ['Flakes per gram', `about ${Number((1 / flake.gramsPerFlake).toPrecision(3))}`],
    );
  }
  if (!isHeatProof(material))
    facts.push([
      'Max temperature',
      highest === undefined ? 'not on file, ask the supplier' : limitText(highest, settings),
    ]);
  if (working !== undefined)
    facts.push(['Pour at', `${temperatureText(working.from, settings)} to ${limitText(working.to, settings)}`]);
  if (most !== undefined) facts.push(['Max dose', useText(most, material, settings)]);
  if (gramsPerDrop !== undefined) facts.push(['One drop', massText(gramsPerDrop)]);
  facts.push(['Density', `${formatDecimal(density)} g/ml`]);
  if (gramsPerMl !== density)
    facts.push(
      settings.volume === 'ml'
        ? ['One level ml', massText(gramsPerMl)]
        : ['One level tsp', massText(gramsPerMl * UNITS.tsp.size)],
    );
  if (price !== undefined && pack !== undefined) facts.push(['Price', `${moneyText(price, settings)} for ${pack}`]);
  if (context.book.edition === 'mine')
    facts.push(['In stock', stockGrams === undefined ? 'not counted' : stockText(material, stockGrams, settings)]);
  const rests = colours(material) && material.kind !== 'plastic';
  return html`<section aria-labelledby="properties"><h2 id="properties">Properties</h2><dl class="facts stacked">${facts.map(([name, value]) => html`<div><dt>${name}</dt><dd>${value}</dd></div>`)}</dl></section>
${rests ? knownColour(context, material) : ''}
${assumptions.length === 0 ? '' : html`<section aria-labelledby="assumed"><h2 id="assumed">Assumed</h2><ul class="fine">${assumptions.map((assumed) => html`<li>${sentence(assumptionText(assumed))}</li>`)}</ul></section>`}`;
}
