import { CHIP_CUP } from '../../book/cups/chip-spec.ts';
import type { Chip, ChipRound } from '../../book/model/chip.ts';
import type { Material } from '../../book/model/shelf.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import { required } from '../../values/required.ts';
import { handyMeasure } from '../../words/handy-measure.ts';
import { ownChipsText } from '../../words/own-chips.ts';
import { bookIndex } from '../book-index.ts';
import { massIn } from '../dose-text.ts';
import { doubtedLookView } from '../doubted-look.ts';
import { type Html, html } from '../html.ts';
import { lookWords } from '../look-words.ts';
import { notesHtml } from '../notes.ts';
import type { PageContext } from '../page.ts';
import { photoFigures } from '../photo.ts';
import { chips, viewsInWords } from '../swatch/chip.ts';
import { sentence } from '../words.ts';

/** The chips that a material is in, each with what it holds and how it was seen. */
export function ownChips(context: PageContext, { id, title }: Material): Html {
  const { book } = context;
  const own = bookIndex(book).chipsOf.get(id) ?? [];
  if (own.length === 0) return html``;
  return html`<section class="part" aria-labelledby="own-chips"><h2 id="own-chips">${sentence(ownChipsText(own.length, book.edition))}</h2><ul class="own-chips">${own.map(
    (chip) =>
      html`<li><b>${chip.title}</b>${chip.rounds.map((round) => html`${roundHtml(context, round)}${doubtedLookView(context, { of: 'chip', id: chip.id, at: { cup: CHIP_CUP, round: round.number } })}`)}${chip.notes === '' ? '' : html`<div class="notes">${notesHtml(context, chip.notes)}</div>`}</li>`,
  )}</ul>${photoFigures(context, own.flatMap(photosOf), `Photo of a chip of ${title}`)}</section>`;
}

const photosOf = ({ rounds }: Chip): NonNullable<ChipRound['seen'][number]['photo']>[] =>
  rounds.flatMap(({ seen }) => seen.flatMap(({ photo }) => photo ?? []));

function roundHtml(context: PageContext, { contents, seen, note }: ChipRound): Html {
  const { settings } = context.book;
  const { materials } = bookIndex(context.book);
  const { ml, text } = usualVolume(settings);
  const held = contents.map(({ material, gramsPerMl }) => {
    const known = required(materials, material);
    return `${handyMeasure(gramsPerMl * ml, known, settings) ?? massIn({ gramsPerMl }, settings)} of ${known.title}`;
  });
  const what = held.length === 0 ? `nothing in ${text}` : `${held.join(', ')} in ${text}`;
  return html`<p>${sentence(what)}.</p>${seen.map(({ overWhite, overBlack, ...look }) => {
    const colours = {
      ...(overWhite === undefined ? {} : { overWhite: overWhite.hex }),
      ...(overBlack === undefined ? {} : { overBlack: overBlack.hex }),
    };
    return html`<p class="own-chip"><span class="own-chip-look">${chips([colours], '')}</span><span class="fine">${sentence(viewsInWords(colours))}. ${lookWords(look, settings)}${look.note === undefined ? '' : ` ${look.note}`}</span></p>`;
  })}${note === undefined ? '' : html`<p class="fine">${note}</p>`}`;
}
