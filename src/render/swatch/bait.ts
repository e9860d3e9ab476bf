/**
 * A bait as it looks over white and over black, to scale: its body, its thin parts, how its cups lie, and its flake.
 *
 * @packageDocumentation
 */

import type { Recipe } from '../../book/model/recipe.ts';
import type { Mold } from '../../book/model/shelf.ts';
import type { Settings } from '../../book/model.ts';
import { opacityClass } from '../../book/recipes/facets.ts';
import { PATTERNS } from '../../patterns/patterns.ts';
import { type BaitShape, baitShape } from '../../shapes/bait-shapes.ts';
import { outline, round } from '../../shapes/ribbon.ts';
import { UNITS } from '../../units/unit.ts';
import { hexWords } from '../../words/colour.ts';
import { type Html, html } from '../html.ts';
import { type Coat, type Coats, cupCoat, recipeCoats } from './coat.ts';
import { coatFlakes } from './coat-flakes.ts';
import { cupRegions } from './cup-regions.ts';
import { streakPatterns } from './streaks.ts';
import { BLACK_CARD, luminance, WHITE_CARD } from './tint.ts';

type View = 'white' | 'black';

/** Something of a bait that is filled: with a coat, its flake, and streaks. */
interface Area {
  /** What it is, for those who don’t see it. */
  readonly name: string;
  readonly path: string;
  readonly coat: Coat;
  readonly streaks?: Coats['streaks'];
  /** Whether it reaches beyond the body and is cut off along its outline. */
  readonly clipped?: boolean;
}

/** Most flakes of a cup in a bait. */
const BUDGET = 240;
const MARGIN_MM = 7;

function recipeAreas(recipe: Recipe, mold: Mold, shape: BaitShape): readonly Area[] {
  const { pattern, cups } = recipe;
  const coats = recipeCoats(recipe, mold);
  const thin = shape.thin.map((part): Area => ({ name: mold.thinPart, path: outline(part), coat: coats.thin }));
  const body = outline(shape.body);
  const [first, second] = cups;
  if (first === undefined || second === undefined) return [...thin, { name: 'body', path: body, coat: coats.body }];
  const { flank } = PATTERNS[pattern];
  if (flank === 'streaks') return [...thin, { name: first.name, path: body, coat: coats.body, streaks: coats.streaks }];
  const shares = cups.map(({ share }) => share);
  return [
    ...thin,
    { name: first.name, path: body, coat: cupCoat(first, mold) },
    ...cupRegions(pattern, shares, shape, mold.thinMm).map(({ cup, path }): Area => {
      const { [cup]: own = second } = cups;
      return { name: own.name, path, coat: flank === 'covered' ? coats.body : cupCoat(own, mold), clipped: true };
    }),
  ];
}

/** The colours of a bait in words, its body before its thin part: "back brown, belly light yellow, tail clear white". */
function inWords(areas: readonly Area[], thinParts: number, view: View): string {
  const words = [...areas.slice(thinParts), ...areas.slice(0, thinParts)].flatMap(({ name, coat, streaks }) => [
    `${name} ${coatWords(coat, view)}`,
    ...(streaks ?? []).map((streak) => `streaks ${coatWords(streak.coat, view)}`),
  ]);
  return [...new Set(words)].join(', ');
}

function coatWords(coat: Coat, view: View): string {
  const { word } = opacityClass(luminance(coat.black) / luminance(coat.white));
  return `${word === 'clear' ? 'clear ' : ''}${hexWords(coat[view])}`;
}

/** A bait to be drawn. */
export interface BaitDrawing {
  /** Beginning of the ids in the drawing; one that the page has once. */
  readonly id: string;
  readonly seed: string;
  readonly label: string;
  /** Unit of the book, for a bar beside it; unset: its scale cannot be told. */
  readonly scale?: Pick<Settings, 'volume'>;
}

function drawing(shape: BaitShape, areas: readonly Area[], { id, seed, label, scale }: BaitDrawing): Html {
  const streaks = areas.flatMap((area) => area.streaks ?? []);
  const flakes = coatFlakes(
    [...areas, ...streaks].map(({ coat }) => coat),
    {
      id: `${id}-f`,
      seed,
      budget: BUDGET,
      scale: 1,
    },
  );
  // Every outline is written once and painted as often as there are coats over white and over black.
  const body = outline(shape.body);
  const outlines = [...new Set([body, ...areas.map(({ path }) => path)])];
  const idOf = (path: string): string => `${id}-o${outlines.indexOf(path)}`;
  const definitions: readonly Html[] = [
    ...outlines.map((path) => html`<path id="${idOf(path)}" d="${path}"/>`),
    html`<clipPath id="${id}-body"><use href="#${idOf(body)}"/></clipPath>`,
    ...flakes.definitions,
    ...streaks.map(({ coat, share }, lane) =>
      streakPatterns(coat, share, { id: `${id}-s${lane}`, scale: 1, lane, flakes: flakes.fills(coat) }),
    ),
  ];
  const side = (view: View): readonly Html[] =>
    areas.map(({ path, coat, clipped, streaks: streaked = [] }) => {
      // A streak lies over the flake of the cup that it runs through.
      const fills = [coat[view], ...flakes.fills(coat), ...streaked.map((_, lane) => `url(#${id}-s${lane}-${view})`)];
      const painted = fills.map((fill) => html`<use href="#${idOf(path)}" fill="${fill}"/>`);
      return clipped ? html`<g clip-path="url(#${id}-body)">${painted}</g>` : html`${painted}`;
    });
  const lines = html`<g class="bait-lines"><use href="#${idOf(body)}"/>${shape.lines.map((d) => html`<path d="${d}"/>`)}</g>`;
  const width = round(shape.lengthMm + 2 * MARGIN_MM);
  const height = round(2 * (shape.reachMm + MARGIN_MM * 0.75));
  const panel = (view: View, parts: Html): Html => {
    const over = view === 'white' ? WHITE_CARD : BLACK_CARD;
    return html`<svg class="bait ${view}" role="img" aria-label="${label}, over ${view}: ${inWords(areas, shape.thin.length, view)}" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">${parts}<rect width="${width}" height="${height}" fill="${over}"/><g transform="translate(${MARGIN_MM} ${round(height / 2)})">${side(view)}${lines}</g>${view === 'white' && scale ? scaleBar(width, height, scale) : ''}</svg>`;
  };
  const tall = height / width > TALL ? ' tall' : '';
  return html`<div class="baits${tall}">${panel('white', html`<defs>${definitions}</defs>`)}${panel('black', html``)}</div>`;
}

/** Shapes that are taller than this, for their length, lie side by side where there is room. */
const TALL = 0.36;

function scaleBar(width: number, height: number, { volume }: Pick<Settings, 'volume'>): Html {
  const [long, text] = volume === 'ml' ? [10, '10 mm'] : [UNITS.in.size / 2, '1/2 in'];
  const bar = width - MARGIN_MM * 0.7;
  return html`<path class="scale-bar" d="M${round(bar - long)} ${round(height - 1.6)}h${long}"/><text class="scale-text" x="${round(bar - long / 2)}" y="${round(height - 2.4)}" text-anchor="middle">${text}</text>`;
}

/** A recipe's bait in its own mold. */
export function bait(recipe: Recipe, mold: Mold, options: BaitDrawing): Html {
  const shape = baitShape(mold);
  return drawing(shape, recipeAreas(recipe, mold, shape), options);
}

/** The outline of a mold's bait, in grey. */
export function baitOutline(mold: Mold): Html {
  const { lengthMm, ...shape } = baitShape(mold);
  const height = round(2 * shape.reachMm + 2);
  return html`<svg class="bait-outline" aria-hidden="true" width="${round(lengthMm + 2)}mm" height="${height}mm" viewBox="-1 ${round(-height / 2)} ${round(lengthMm + 2)} ${height}">${shape.thin.map((part) => html`<path class="thin" d="${outline(part)}"/>`)}<path class="body" d="${outline(shape.body)}"/><g class="bait-lines">${shape.lines.map((d) => html`<path d="${d}"/>`)}</g></svg>`;
}
