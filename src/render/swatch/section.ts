/**
 * A cut through a bait: how its cups lie.
 *
 * @packageDocumentation
 */
import { type CutRegion, cutAcross, cutLevel, regionsOf } from '../../patterns/cut.ts';
import { discHalf, discPlace } from '../../patterns/disc.ts';
import { PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import { type Html, html } from '../html.ts';
import { describedAs } from './described-as.ts';

interface Part {
  readonly hex: string;
  readonly share: number;
}

/** Places across a cut, closer together towards its edges, where a disc is steep. */
const PLACES = Array.from({ length: 21 }, (_, index) => (1 - Math.cos((Math.PI * index) / 20)) / 2);

/** Half of a cut across, and of one along the bait: width and height, in units of the drawing. */
const ACROSS = { width: 9.5, height: 9.5 };
const LEVEL = { width: 9.5, height: 5 };

/** Steps of the drawing in a unit: finer ones are not seen at any size that it is shown in. */
const FINE = 10;

const text = (number: number): string => String(number / FINE).replace(/^(-?)0\./, '$1.');

/** Outline of a region in an oval: places of the cut to −1..1 across it by `placeOf`, and down from its upper edge. */
function regionPath({ edges }: CutRegion, size: typeof ACROSS, placeOf: (at: number) => number): string {
  const line = (side: 'from' | 'to'): readonly (readonly [number, number])[] =>
    edges.map((edge) => {
      const place = placeOf(edge.at);
      const down = discHalf(place) * (2 * edge[side] - 1);
      return [Math.round(FINE * (10 + size.width * place)), Math.round(FINE * (10 + size.height * down))];
    });
  let [x, y] = [0, 0];
  const steps = [...line('from'), ...line('to').toReversed()].map(([toX, toY], index) => {
    const [across, down] = [text(toX - x), text(toY - y)];
    [x, y] = [toX, toY];
    return `${index === 0 ? 'M' : 'l'}${across}${down.startsWith('-') ? '' : ' '}${down}`;
  });
  return `${steps.join('')}z`;
}

/** The cut of a pattern, with the cups in their order: across it, or level along it where they lie beside one another. */
export function section(pattern: Pattern, parts: readonly Part[], label = ''): Html {
  const { beside, through } = PATTERNS[pattern];
  const shares = parts.map(({ share }) => share);
  const size = beside ? LEVEL : ACROSS;
  const regions = regionsOf((beside ? cutLevel : cutAcross)(through, shares), PLACES);
  // Along a bait places are parts of its plastic, across it parts of its width.
  const placeOf = beside ? discPlace : (at: number): number => 2 * at - 1;
  const drawn = regions
    .filter(({ cup }) => cup !== 0)
    .map((region) => html`<path d="${regionPath(region, size, placeOf)}" fill="${parts[region.cup]!.hex}"/>`);
  return html`<svg class="section"${describedAs(label)} width="20" height="20" viewBox="0 0 20 20"><ellipse cx="10" cy="10" rx="${size.width}" ry="${size.height}" fill="${parts[0]!.hex}"/>${drawn}</svg>`;
}
