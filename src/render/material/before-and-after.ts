import { type WhatTaught, whatTaught } from '../../book/learning/what-taught.ts';
import type { Chip } from '../../book/model/chip.ts';
import type { LadderStep, Material } from '../../book/model/shelf.ts';
import { beforeAndAfter, type MaterialBeliefs } from '../../book/shelf/before-and-after.ts';
import { lengthText } from '../../units/length-text.ts';
import { required } from '../../values/required.ts';
import {
  apartText,
  BELIEVED_OTHERWISE_SENTENCE,
  SHARES_SENTENCE,
  shareText,
  taughtText,
  UNTAUGHT_SENTENCE,
} from '../../words/what-taught.ts';
import { bookIndex } from '../book-index.ts';
import { ladderText } from '../dose-text.ts';
import { type Html, html } from '../html.ts';
import { link, paths } from '../links.ts';
import type { PageContext } from '../page.ts';
import { chipColours, chips, chipWords } from '../swatch/chip.ts';
import { counted, sentence } from '../words.ts';

/** What a material was believed to be by its file, what the book believes now, how surely, and what has taught it. */
export function beforeAndAfterSection(context: PageContext, material: Material): Html {
  const beliefs = beforeAndAfter(material, context.book);
  if (beliefs === undefined) return html``;
  const taught = whatTaught(context.book, material);
  return html`<section class="part" aria-labelledby="before"><h2 id="before">${taught !== undefined ? 'Before and after the looks' : beliefs.differs ? 'Its file, and what the book believes' : 'As its file says'}</h2>
${pairFigure(context, material, beliefs)}
${beliefs.differs ? laddersFigure(context, material, beliefs) : ''}
<p>${taught === undefined ? UNTAUGHT_SENTENCE : taughtText(taught.looks, taught.share)}${taught === undefined && beliefs.differs ? ` ${BELIEVED_OTHERWISE_SENTENCE}` : ''}</p>
${taught === undefined ? '' : teachersList(context, material, taught)}
<p><a href="${link(context, paths.method)}#learning">How the book learns</a></p></section>`;
}

const FILE = 'as its file says';
const BOOK = 'as the book believes now';

/** The label’s swatch, and what is believed beside it where an eye tells the two apart. */
function pairFigure(context: PageContext, material: Material, beliefs: MaterialBeliefs): Html {
  const { settings } = context.book;
  const { said, learned, gramsPerMl, thicknessMm, deltaE, differs } = beliefs;
  const dose = gramsPerMl === undefined ? '' : `${ladderText({ gramsPerMl }, settings, material)}, `;
  const colours = ({ overWhite, overBlack }: typeof said) => ({ overWhite: overWhite.hex, overBlack: overBlack.hex });
  const how = `${dose}${lengthText(thicknessMm, settings)} thick`;
  const label = differs ? `${material.title}, left ${FILE}, right ${BOOK}` : `${material.title} ${FILE}`;
  return html`<figure class="beliefs"><div class="belief-pair">${chips(differs ? [colours(said), colours(learned)] : [colours(said)], label)}</div>${differs ? chipWords(FILE, BOOK) : chipWords(FILE)}<figcaption>${sentence(how)}. ${sentence(apartText(deltaE))}.</figcaption></figure>`;
}

/** The doses of its ladder in two rows. */
function laddersFigure({ book: { settings } }: PageContext, material: Material, { ladders }: MaterialBeliefs): Html {
  if (ladders.said.length === 0) return html``;
  const row = (steps: readonly LadderStep[], how: string): Html =>
    html`<p class="fine" aria-hidden="true">${sentence(how)}</p><div class="belief-ladder">${chips(
      steps.map(({ look }) => chipColours(look)),
      `${material.title} in rising doses, ${how}`,
    )}</div>`;
  const [first, last] = [ladders.said[0]!, ladders.said.at(-1)!].map((step) => ladderText(step, settings, material));
  return html`<figure class="beliefs">${row(ladders.said, FILE)}${row(ladders.learned, BOOK)}<figcaption>From ${first!} on the left to ${last!} on the right.</figcaption></figure>`;
}

/** So many are listed; the others are told together. Convention of this book. */
const LISTED = 6;

/** Recipes and chips that have told most, each with its share as a bar. */
function teachersList(context: PageContext, { id }: Material, { teachers }: WhatTaught): Html {
  const { recipes } = bookIndex(context.book);
  const chipsById = new Map(context.book.chips.map((chip) => [chip.id, chip]));
  const listed = teachers.slice(0, LISTED);
  const others = teachers.slice(LISTED);
  const share = others.reduce((sum, each) => sum + each.share, 0);
  return html`<section aria-labelledby="taught"><h3 id="taught">What taught it</h3><p class="fine">${SHARES_SENTENCE}</p><ol class="teachers">${listed.map(
    (teacher) =>
      html`<li><span>${
        teacher.kind === 'recipe'
          ? html`<a href="${link(context, paths.recipe(teacher.id))}">${required(recipes, teacher.id).title}</a>`
          : html`<a href="${chipLink(context, id, required(chipsById, teacher.id))}">${required(chipsById, teacher.id).title}</a>, a chip`
      } <span class="fine">${counted(teacher.looks, 'look')}, ${shareText(teacher.share)}</span></span>${bar(teacher.share)}</li>`,
  )}</ol>${others.length === 0 ? '' : html`<p class="fine">${counted(others.length, 'other')} together ${shareText(share)}.</p>`}</section>`;
}

/** Where a chip stands: here, or on the page of a material that is in it. */
function chipLink(context: PageContext, here: string, chip: Chip): string {
  const { chipsOf } = bookIndex(context.book);
  const isOf = (material: string): boolean => chipsOf.get(material)?.includes(chip) ?? false;
  const material = isOf(here) ? undefined : [...chipsOf.keys()].find(isOf);
  return `${material === undefined ? '' : link(context, paths.material(material))}#own-chips`;
}

function bar(share: number): Html {
  return html`<svg class="share-bar" aria-hidden="true" width="100%" height="6"><rect width="${Number((100 * Math.max(0, share)).toFixed(1))}%" height="100%"/></svg>`;
}
