/**
 * Small drawings of flat colours: a chip over white and black, two of them to be compared, a ladder of doses.
 *
 * @packageDocumentation
 */

import type { Appearance } from '../../book/model/colours.ts';
import { hexWords } from '../../words/colour.ts';
import { type Html, html } from '../html.ts';
import { sentence } from '../words.ts';
import { describedAs } from './described-as.ts';

/** Colours of one chip; one that was not looked at is left out. */
export interface ChipColours {
  readonly overWhite?: string;
  readonly overBlack?: string;
}

/** Colours of a look. */
export function chipColours({ overWhite, overBlack }: Appearance): ChipColours {
  return { overWhite: overWhite.hex, overBlack: overBlack.hex };
}

function half(colour: string | undefined, x: number, width: number, y: number): Html {
  const place = html`${x === 0 ? '' : html` x="${x}%"`}${y === 0 ? '' : html` y="${y}%"`} width="${width}%" height="50%"`;
  return colour === undefined ? html`<rect class="unseen"${place}/>` : html`<rect${place} fill="${colour}"/>`;
}

/**
 * Chips side by side without a gap, since the eye compares best along an edge: over white above, over black below.
 *
 * @param label what is shown, to which its colours are added in words; an empty text where the words stand beside it
 * @param names what each chip is, where there are several: it is heard before its colours
 */
export function chips(
  colours: readonly ChipColours[],
  label: string,
  names: readonly string[] = colours.length === 2 ? ['left', 'right'] : [],
): Html {
  const width = 100 / colours.length;
  const drawn = colours.map(({ overWhite, overBlack }, index) => {
    const x = Number((index * width).toFixed(3));
    // A per cent wider, so that no hairline of the page shows between two chips.
    const wide = Number((width + (index < colours.length - 1 ? 1 : 0)).toFixed(3));
    return [half(overWhite, x, wide, 0), half(overBlack, x, wide, 50)];
  });
  return html`<svg class="chips"${describedAs(label === '' ? '' : `${label}. ${chipsInWords(colours, names)}`)}>${drawn}</svg>`;
}

/** The colours of some chips in words: "Target: brown over white, dark brown over black. Seen: …" */
function chipsInWords(colours: readonly ChipColours[], names: readonly string[]): string {
  const named = (index: number): string => (names[index] === undefined ? '' : `${names[index]}: `);
  return colours.map((colour, index) => sentence(`${named(index)}${viewsInWords(colour)}.`)).join(' ');
}

/** "brown over white, dark brown over black" */
export function viewsInWords({ overWhite, overBlack }: ChipColours): string {
  const seen = [
    ...(overWhite === undefined ? [] : [`${hexWords(overWhite)} over white`]),
    ...(overBlack === undefined ? [] : [`${hexWords(overBlack)} over black`]),
  ];
  return seen.length === 0 ? 'not looked at' : seen.join(', ');
}

/** What the columns and rows of chips are, below them; who hears the page has it from their label. */
export function chipWords(...columns: readonly string[]): Html {
  return html`${columnWords(...columns)}<p class="row-words" aria-hidden="true">over white above, over black below</p>`;
}

/** As `chipWords`, of chips that follow others whose rows are named. */
export function columnWords(...columns: readonly string[]): Html {
  return html`<p class="pair-words" aria-hidden="true">${columns.map((column) => html`<span>${column}</span>`)}</p>`;
}

/** One small disc of a colour, beside a name. */
export function dot(hex: string): Html {
  return html`<svg class="dot" aria-hidden="true" viewBox="-8 -8 16 16"><circle r="7.5" fill="${hex}"/></svg>`;
}
