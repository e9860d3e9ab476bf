import type { BaitLook } from '../../book/model/looks.ts';
import type { Recipe } from '../../book/model/recipe.ts';
import { doubtedLookView } from '../doubted-look.ts';
import { type Html, html } from '../html.ts';
import { lookWords } from '../look-words.ts';
import type { PageContext } from '../page.ts';
import { photoFigure } from '../photo.ts';
import { type ChipColours, chips, chipWords } from '../swatch/chip.ts';
import { listText, sentence } from '../words.ts';
import { inFold } from './fold.ts';

/** The finished bait as its maker saw it, look by look; nothing where nobody noted one. */
export function finishedBait(context: PageContext, { id, seen = [], title }: Recipe): Html {
  if (seen.length === 0) return html``;
  return inFold(
    'bait',
    'The finished bait',
    html`<ul class="rounds">${seen.map((look, bait) => lookItem(context, look, title, doubtedLookView(context, { of: 'recipe', id, at: { bait } })))}</ul>`,
  );
}

function lookItem(context: PageContext, look: BaitLook, title: string, doubted: Html): Html {
  const { side, rounds = [], overWhite, overBlack, note, photo } = look;
  const colours: ChipColours = {
    ...(overWhite && { overWhite: overWhite.hex }),
    ...(overBlack && { overBlack: overBlack.hex }),
  };
  const name = side === undefined ? title : `${title}, ${side} up`;
  const after = rounds.map(({ cup, number }) => `round ${number} of the ${cup}`);
  const facts = [
    lookWords(look, context.book.settings),
    ...(after.length === 0 ? [] : [`Poured after ${listText(after)}.`]),
  ].filter((words) => words !== '');
  const chip = chips([colours], `${name}, as seen, over white above and over black below`);
  return html`<li class="round"><div class="round-chips"><div class="single">${chip}</div>${chipWords('seen')}</div><div class="round-words">${side === undefined ? '' : html`<h4>${sentence(side)}</h4>`}${
    note === undefined ? '' : html`<p class="said">“${note}”</p>`
  }${facts.length === 0 ? '' : html`<p class="fine">${facts.join(' ')}</p>`}${doubted}${photo === undefined ? '' : photoFigure(context, photo, name)}</div></li>`;
}
