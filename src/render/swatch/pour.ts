/**
 * A colour as a drawdown card shows it: one film over a white and a black half, thick, then thin, then none.
 *
 * The drawing has no viewBox: it takes any width, and its flake stays at its true size.
 *
 * @packageDocumentation
 */
import { type Html, html } from '../html.ts';
import type { Coat, Coats } from './coat.ts';
import { coatFlakes } from './coat-flakes.ts';
import { PX_PER_MM } from './flake-pattern.ts';
import { streakPatterns } from './streaks.ts';
import { BLACK_CARD, WHITE_CARD } from './tint.ts';

export interface PourOptions {
  /** Decides where the flakes lie. */
  readonly seed: string;
  /** Most flakes of a cup. */
  readonly budget: number;
}

interface Column {
  readonly coat: Coat;
  readonly from: number;
  readonly to: number;
}

/** Film from here to there, in per cent of the height. */
const TOP = 9;
const BOTTOM = 91;

/** Where the film ends and the bare card begins, in per cent of the width. */
const FILM_END = 93;

function columns({ body, other, thin }: Coats): readonly Column[] {
  const coats = [body, ...(other === undefined ? [] : [other]), ...(thin === undefined ? [] : [thin])];
  const widths = columnWidths(other !== undefined, thin !== undefined);
  return coats.map((coat, index): Column => {
    const from = widths.slice(0, index).reduce((sum, width) => sum + width, 0);
    return { coat, from, to: from + widths[index]! };
  });
}

function columnWidths(hasOther: boolean, hasThin: boolean): readonly number[] {
  if (hasOther) return hasThin ? [48, 28, 17] : [54, FILM_END - 54];
  return hasThin ? [72, 21] : [FILM_END];
}

/** The drawing of a recipe's coats, an SVG that stands by itself. */
export function pour(coats: Coats, options: PourOptions): Html {
  const { seed, budget } = options;
  const parts = columns(coats);
  const { streaks } = coats;
  const flakes = coatFlakes(
    [...parts, ...streaks].map(({ coat }) => coat),
    {
      id: 'f',
      seed,
      budget,
      scale: PX_PER_MM,
    },
  );
  const definitions = [
    ...flakes.definitions,
    ...streaks.map(({ coat, share }, lane) =>
      streakPatterns(coat, share, { id: `s${lane}`, scale: PX_PER_MM, lane, flakes: flakes.fills(coat) }),
    ),
  ];
  const film = parts.map(({ from, to, coat }, index) => {
    const half = (fill: string, y: number, height: number): Html =>
      html`<rect${from === 0 ? '' : html` x="${from}%"`} y="${y}%" width="${to - from}%" height="${height}%" fill="${fill}"/>`;
    const halves = (white: string, black: string): readonly Html[] => [
      half(white, TOP, 50 - TOP),
      half(black, 50, BOTTOM - 50),
    ];
    const laid = flakes.fills(coat).map((fill) => half(fill, TOP, BOTTOM - TOP));
    // A streak lies over the flake of the cup that it runs through.
    const streaked = (index === 0 ? streaks : []).map((_, lane) =>
      halves(`url(#s${lane}-white)`, `url(#s${lane}-black)`),
    );
    return [halves(coat.white, coat.black), laid, streaked];
  });
  return html`<svg xmlns="http://www.w3.org/2000/svg" width="100%" height="100%">${
    definitions.length > 0 ? html`<defs>${definitions}</defs>` : ''
  }<rect width="100%" height="50%" fill="${WHITE_CARD}"/><rect y="50%" width="100%" height="50%" fill="${BLACK_CARD}"/>${film}</svg>`;
}
