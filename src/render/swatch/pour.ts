/**
 * A colour as a drawdown card shows it: one film over a white and a black half, thick, then thin, then none.
 *
 * The drawing has no viewBox: it takes any width, and its flake stays at its true size.
 *
 * @packageDocumentation
 */
import { type Html, html } from '../html.ts';
import type { Coat, Coats } from './coat.ts';
import { flakePatterns, PX_PER_MM } from './flake-pattern.ts';
import { streakPatterns } from './streaks.ts';
import { BLACK_CARD, WHITE_CARD } from './tint.ts';

export interface PourOptions {
  /** Beginning of the ids in the drawing; one that the page has once. */
  readonly id: string;
  /** Decides where the flakes lie. */
  readonly seed: string;
  /** Most flakes of the body; a narrower part of the card has fewer. */
  readonly budget: number;
  /** What the drawing shows, for those who don't see it; an empty text for a drawing beside its words. */
  readonly label: string;
}

interface Column {
  readonly coat: Coat;
  readonly from: number;
  readonly to: number;
}

/** Film from here to there, in per cent of the height. */
const TOP = 9;
const BOTTOM = 91;

function columns({ body, other, thin }: Coats): readonly Column[] {
  return other === undefined
    ? [
        { coat: body, from: 0, to: 72 },
        { coat: thin, from: 72, to: 93 },
      ]
    : [
        { coat: body, from: 0, to: 48 },
        { coat: other, from: 48, to: 76 },
        { coat: thin, from: 76, to: 93 },
      ];
}

/** The drawing of a recipe's coats. */
export function pour(coats: Coats, options: PourOptions): Html {
  const { id, seed, budget, label } = options;
  const parts = columns(coats).map((column, index) => {
    const { coat, from, to } = column;
    const flakes = flakePatterns(coat.flakes, coat.depth, {
      id: `${id}-f${index}`,
      seed: `${seed}/${index}`,
      budget: (budget * (to - from)) / 72,
      scale: PX_PER_MM,
    });
    return { from, to, coat, flakes, streaks: index === 0 ? coats.streaks : undefined };
  });
  const definitions: Html[] = [];
  const film = parts.map(({ from, to, coat, flakes, streaks }) => {
    const half = (fill: string, y: number, height: number): Html =>
      html`<rect x="${from}%" y="${y}%" width="${to - from}%" height="${height}%" fill="${fill}"/>`;
    const drawn = [half(coat.white, TOP, 50 - TOP), half(coat.black, 50, BOTTOM - 50)];
    if (streaks !== undefined) {
      definitions.push(streakPatterns(streaks.coat, streaks.share, { id: `${id}-s`, scale: PX_PER_MM }));
      drawn.push(half(`url(#${id}-s-white)`, TOP, 50 - TOP), half(`url(#${id}-s-black)`, 50, BOTTOM - 50));
    }
    for (const { definition, fill } of flakes) {
      definitions.push(definition);
      drawn.push(half(fill, TOP, BOTTOM - TOP));
    }
    return drawn;
  });
  return html`<svg class="pour"${describedAs(label)} width="100%" height="100%">${
    definitions.length > 0 ? html`<defs>${definitions}</defs>` : ''
  }<rect width="100%" height="50%" fill="${WHITE_CARD}"/><rect y="50%" width="100%" height="50%" fill="${BLACK_CARD}"/>${film}</svg>`;
}

/** Attributes of a drawing that is a picture with a name, or that says nothing beside its words. */
export function describedAs(label: string): Html {
  return label === '' ? html` aria-hidden="true"` : html` role="img" aria-label="${label}"`;
}
