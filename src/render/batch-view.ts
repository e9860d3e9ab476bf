/**
 * A batch as a page shows it: what goes into each cup, what it costs, what runs short. The build and the page's planner both
 * write it with this.
 *
 * @packageDocumentation
 */

import type { Edition } from '../book/model/publish.ts';
import type { Batch, BatchAmounts, BatchCup, Measured, Settings } from '../book/model.ts';
import { inOrderOfCup, sinksIn, type WorkMaterial } from '../book/recipes/work-material.ts';
import { measuredName } from '../words/cut.ts';
import { fillsText, lineText } from '../words/fills.ts';
import { batchFlakesText } from '../words/flake.ts';
import { canWeighAll, exactWords, measureNote, measuringNotes, weighsText } from '../words/measured.ts';
import { type Bought, boughtText, shortWords } from '../words/stock.ts';
import { heatParagraph } from './heat-paragraph.ts';
import { type Html, html, joined } from './html.ts';
import { dot } from './swatch/chip.ts';
import { unbroken, unitsKept } from './unbroken.ts';
import { listText, massText, moneyText, sentence, volumeText } from './words.ts';

/** What the view knows of a material. */
export interface NamedMaterial extends Bought, WorkMaterial {
  readonly hex: string;
  readonly price?: number;
}

/** Names and doses that a batch does not carry itself. */
export interface BatchNames {
  material(id: string): NamedMaterial;
  /** Link to a material's page; absent where there is none. */
  href?(id: string): string;
  /** Share of the bait, and the colour of the cup over white. */
  cup(name: string): { readonly share: number; readonly hex: string };
  /** Heat of a cup in words; absent where the page states it for the whole recipe. */
  heat?(cup: string): readonly string[];
  mold(id: string): { readonly title: string; readonly bag?: number };
  readonly settings: Settings;
  /** Whether the page says elsewhere what rounding does to the colour. */
  readonly roundingSaidElsewhere?: true;
}

/** Letters of a word, above which a phone's column holds it only in small letters, or not at all. Tried by eye, no source. */
const LONG_WORD = 14;
const ENDLESS_WORD = 20;

function nameClass(title: string): string {
  const longest = Math.max(...title.split(/[\s-]+/).map(({ length }) => length));
  return `amount-name${longest > LONG_WORD ? ' long' : ''}${longest > ENDLESS_WORD ? ' endless' : ''}`;
}

function materialName(names: BatchNames, id: string, cut?: Measured['cut']): Html {
  const { hex } = names.material(id);
  const title = measuredName({ material: id, ...(cut && { cut }) }, (material) => names.material(material).title);
  const href = names.href?.(id);
  const name =
    href === undefined
      ? html`<span class="${nameClass(title)}">${title}</span>`
      : html`<a class="${nameClass(title)}" href="${href}">${title}</a>`;
  return html`${dot(hex)}${name}`;
}

function amountRow(names: BatchNames, cup: BatchCup, amount: Measured): Html {
  const { material, text, grams, tool } = amount;
  const weighs = weighsText(amount);
  const note = measureNote(amount, cup);
  // Beside what the scale has shown already stands what it rounds.
  const exact: ReturnType<typeof exactWords> = tool === 'scale' ? { amount: massText(grams) } : exactWords(amount);
  const flakes = batchFlakesText(amount.flakesABait, (mold) => names.mold(mold).title);
  const below = [
    ...(note === undefined ? [] : [html` <span class="or">${unitsKept(note)}</span>`]),
    ...(exact.note === undefined ? [] : [html` <span class="or by-weight">by weight: ${exact.note}</span>`]),
  ];
  return html`<tr data-material="${material}"><th class="amount-head" scope="row">${materialName(names, material, amount.cut)}</th><td class="measure"><b>${unbroken(text)}</b>${weighs === undefined ? '' : html` <span class="or weighs">${unitsKept(weighs)}</span>`}${below}${flakes === undefined ? '' : html` <span class="or flakes">${unitsKept(flakes)}</span>`}</td><td class="exact">${unbroken(exact.amount)}</td></tr>`;
}

function plasticRow(names: BatchNames, { material, ml }: BatchCup['plastics'][number]): Html {
  const exact = names.settings.volume === 'ml' ? `${ml.toFixed(1)} ml` : volumeText(ml, names.settings);
  return html`<tr class="plastic" data-material="${material}"><th class="amount-head" scope="row">${materialName(names, material)}</th><td class="measure"><b>${unbroken(volumeText(ml, names.settings))}</b></td><td class="exact">${unbroken(exact)}</td></tr>`;
}

/** How many equal cups, in words that stand out. */
export function splitText(split: number): string {
  return split === 1 ? 'one cup' : `${split} equal cups, each:`;
}

function cupTable(names: BatchNames, cup: BatchCup, level: 3 | 4): Html {
  const { share, hex } = names.cup(cup.name);
  const order = inOrderOfCup(cup.amounts, cup.plastics, names.material);
  const head = html`${dot(hex)}<span>${sentence(cup.name)}</span> <span class="cup-share">${Math.round(share * 100)} % of the bait, ${splitText(cup.split)}</span>`;
  const leastRounding = names.roundingSaidElsewhere ? Number.POSITIVE_INFINITY : undefined;
  const rounding = measuringNotes(cup, (material) => names.material(material).title, leastRounding);
  const lines = [
    ...rounding.map((note) => html`<p class="fine rounding">${unitsKept(note)}</p>`),
    ...fillNotes(cup, names).map((note) => html`<p class="fine">${unitsKept(note)}</p>`),
  ];
  const heat = names.heat?.(cup.name);
  return html`<div class="cup" data-cup="${cup.name}"${canWeighAll(cup) ? html` data-weighable` : ''}>${level === 3 ? html`<h3>${head}</h3>` : html`<h4>${head}</h4>`}${heat === undefined ? '' : heatParagraph(heat)}<table class="amounts" aria-label="${sentence(cup.name)}: amounts"><thead><tr><th scope="col">Material</th><th scope="col">Measure</th><th scope="col">Exact</th></tr></thead><tbody>${cup.plastics.map((plastic) => plasticRow(names, plastic))}${order.map((amount) => amountRow(names, cup, amount))}</tbody></table>${lines}</div>`;
}

/** How often the injector is filled from a cup; nothing where none is. */
export function fillNotes(cup: BatchCup, names: Pick<BatchNames, 'mold' | 'material'>): readonly string[] {
  const { fills, plastics, amounts } = cup;
  if (fills === undefined) return [];
  return [fillsText(fills, (mold) => names.mold(mold).title, sinksIn({ plastics, contents: amounts }, names.material))];
}

/** What the batch makes, in a sentence. */
export function batchSentence(batch: BatchAmounts, names: Pick<BatchNames, 'mold'>): string {
  return listText(batch.lines.map((line) => lineText(line, `of ${names.mold(line.mold).title}`)));
}

/** Amounts of every cup of a batch. */
export function batchCups(batch: BatchAmounts, names: BatchNames, level: 3 | 4 = 3): Html {
  return html`<p class="batch-says">Makes ${unitsKept(batchSentence(batch, names))}.</p><div class="cups">${batch.cups.map((cup) => cupTable(names, cup, level))}</div>`;
}

/** Heading of what a batch takes of all its materials. */
export function takesTitle(edition: Edition): string {
  return edition === 'mine' ? 'Cost and shopping' : 'Materials needed';
}

/** What a batch costs and what is missing for it, in a few words; empty for whoever has not the shelf. */
export function takesGist(batch: BatchAmounts, names: BatchNames): Html {
  if (!isCosted(batch)) return html``;
  const isPriced = batch.materials.length > batch.unpriced.length;
  const cost = isPriced
    ? `${moneyText(batch.cost, names.settings)}, ${moneyText(batch.costPerBait, names.settings)} a bait. `
    : '';
  return html`${cost}${shortVerdict(batch, names)}`;
}

/** What a batch takes of each material; for whoever has the shelf its cost too, and what must be bought for it. */
export function batchTakes(batch: BatchAmounts, names: BatchNames): Html {
  if (isCosted(batch)) return batchCosts(batch, names);
  const rows = batch.materials.map(
    ({ material, grams }) =>
      html`<tr><th scope="row">${materialName(names, material)}</th><td>${boughtText(grams, names.material(material), names.settings)}</td></tr>`,
  );
  return html`<div class="scroll"><table class="takes"><thead><tr><th scope="col">Material</th><th scope="col">Needed</th></tr></thead><tbody>${rows}</tbody></table></div>`;
}

/** What must be bought for a batch, one thing a line; that nothing must, where the shelf has all. */
export function batchShort(batch: BatchAmounts, names: BatchNames): Html {
  const short = isCosted(batch) ? batch.materials.filter(({ shortGrams }) => shortGrams > 0) : [];
  if (short.length === 0) return html`<p>The shelf has enough of everything that is counted.</p>`;
  return html`<ul class="to-buy">${short.map(({ material, shortGrams, packs }) => html`<li>${materialName(names, material)} <strong class="shortage">${shortWords({ shortGrams, packs }, names.material(material), names.settings)}</strong></li>`)}</ul>`;
}

function isCosted(batch: BatchAmounts): batch is Batch {
  return 'cost' in batch;
}

function batchCosts(batch: Batch, names: BatchNames): Html {
  const { settings } = names;
  const bags = batch.lines.length === 1 ? names.mold(batch.lines[0]!.mold).bag : undefined;
  const priced = batch.materials.length > batch.unpriced.length;
  const cost = priced
    ? html`<dl class="facts"><div><dt>Total</dt><dd>${moneyText(batch.cost, settings)}</dd></div><div><dt>Per bait</dt><dd>${moneyText(batch.costPerBait, settings)}</dd></div>${
        bags === undefined
          ? ''
          : html`<div><dt>Bag of ${bags}</dt><dd>${moneyText(batch.costPerBait * bags, settings)}</dd></div>`
      }</dl>`
    : html`<p>No prices on file for these materials.</p>`;
  const unpriced =
    priced && batch.unpriced.length > 0
      ? html`<p class="fine">Not counting ${joined(batch.unpriced.map((id) => names.material(id).title))}: no price on file.</p>`
      : '';
  const rows = batch.materials.map(({ material, grams, cost: price, stockGrams, shortGrams, packs }) => {
    const amountText = (mass: number): string => boughtText(mass, names.material(material), names.settings);
    const left =
      stockGrams === undefined
        ? 'not counted'
        : shortGrams > 0
          ? html`<strong class="shortage">${shortWords({ shortGrams, packs }, names.material(material), names.settings)}</strong>`
          : `${amountText(stockGrams - grams)} left afterwards`;
    return html`<tr><th scope="row">${materialName(names, material)}</th><td>${amountText(grams)}</td><td>${price === undefined ? '–' : moneyText(price, settings)}</td><td>${left}</td></tr>`;
  });
  const short = shortVerdict(batch, names);
  const verdict = short.toString() === '' ? '' : html`<p class="short">${short}</p>`;
  return html`${cost}${unpriced}${verdict}<details class="shopping"><summary>Materials and stock</summary><div class="scroll"><table><thead><tr><th scope="col">Material</th><th scope="col">Needed</th><th scope="col">Cost</th><th scope="col">Stock</th></tr></thead><tbody>${rows}</tbody></table></div></details>`;
}

/** What the shelf has too little of for a batch, and how much to buy; empty where it has enough. */
function shortVerdict({ materials }: Batch, names: BatchNames): Html {
  const short = materials.filter(({ shortGrams }) => shortGrams > 0);
  if (short.length === 0) return html``;
  const all = short.map(
    ({ material, packs }) => `${names.material(material).title}${packs === 0 ? '' : ` (buy ${packs})`}`,
  );
  return html`<strong class="shortage">Not enough:</strong> ${joined(all)}.`;
}
