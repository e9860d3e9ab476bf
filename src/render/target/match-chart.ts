import type { MatchedRound } from '../../book/model/target.ts';
import { type Html, html } from '../html.ts';
import { deltaEText } from '../words.ts';

type Verdict = MatchedRound['verdict'];

/** The strips of the chart, top to bottom. */
const STRIPS: readonly (readonly [name: string, value: (verdict: Verdict) => number | undefined])[] = [
  ['overall', ({ deltaE }) => deltaE],
  ['hue', ({ hue }) => hue.deltaE],
  ['lightness', ({ lightness }) => lightness.deltaE],
  ['vividness', ({ vividness }) => vividness.deltaE],
  ['opacity', ({ opacity }) => opacity?.deltaE],
];

const WIDTH = 340;
const STRIP = 38;
const LEFT = 78;
const RIGHT = 44;
const FOOT = 18;
/** Least top of the scale, ΔE00, so that a match that was right from the start is drawn small. */
const LEAST_TOP = 4;

/**
 * How far each round was from the target, in all and part by part, over the rounds: one strip of dots a part, with a rule where the
 * tolerance is.
 *
 * Heights go with the root of ΔE00, so that 20 and 1 are both to be seen. The picture tells what the words beside it tell in full.
 */
export function matchChart(rounds: readonly MatchedRound[], tolerance: number, title: string): Html {
  if (rounds.length < 2) return html``;
  const strips = STRIPS.map(([name, value]) => ({ name, values: rounds.map(({ verdict }) => value(verdict)) })).filter(
    ({ values }) => values.some((each) => each !== undefined),
  );
  const highest = Math.max(LEAST_TOP, ...strips.flatMap(({ values }) => values.map((each) => each ?? 0)));
  const height = STRIP * strips.length + FOOT;
  const x = (round: number): number => Math.round(LEFT + ((WIDTH - LEFT - RIGHT) * round) / (rounds.length - 1));
  const y = (strip: number, deltaE: number): number =>
    STRIP * (strip + 1) - 6 - (STRIP - 12) * Math.sqrt(deltaE / highest);
  const label = strips
    .map(
      ({ name, values }) =>
        `${name}: ${values.map((each) => (each === undefined ? 'not seen' : deltaEText(each))).join(', ')}`,
    )
    .join('; ');
  return html`<svg class="match-chart" role="img" aria-label="${`${title}, ΔE round by round. ${label}.`}" viewBox="0 0 ${WIDTH} ${height}">
${strips.map(({ name, values }, strip) => stripOf(name, values, strip, { x, y, tolerance, isMain: strip === 0 }))}
${rounds.map(({ number }, round) => html`<text class="chart-round" x="${x(round)}" y="${height - 4}">${number}</text>`)}
</svg>`;
}

function stripOf(
  name: string,
  values: readonly (number | undefined)[],
  strip: number,
  {
    x,
    y,
    tolerance,
    isMain,
  }: { x: (round: number) => number; y: (strip: number, deltaE: number) => number; tolerance: number; isMain: boolean },
): Html {
  const points = values.flatMap((each, round) =>
    each === undefined ? [] : [{ at: x(round), deltaE: each, height: y(strip, each) }],
  );
  const foot = STRIP * (strip + 1) - 6;
  const within = y(strip, tolerance);
  const last = points.at(-1);
  const places = points.map(({ at, height }) => `${at} ${fixed(height)}`);
  // A line of no length with round ends is a dot.
  const dots = places.map((place) => `M${place}h0`).join('');
  return html`<g${isMain ? html` class="chart-main"` : ''}><text y="${foot - 8}">${name}</text><path class="chart-foot" d="M${LEFT - 8} ${foot}H${WIDTH - RIGHT + 8}"/><path class="chart-tolerance" d="M${LEFT - 8} ${fixed(within)}H${WIDTH - RIGHT + 8}"/><path class="chart-line" d="M${places.join('L')}"/><path class="chart-dots" d="${dots}"/>${
    last === undefined
      ? ''
      : html`<text class="chart-last" x="${WIDTH}" y="${foot - 8}">${shortDeltaE(last.deltaE)}</text>`
  }</g>`;
}

/** Short enough to stand beside the strip, where words would reach into it. */
function shortDeltaE(deltaE: number): string {
  return deltaEText(deltaE).replace('less than', '<');
}

function fixed(value: number): string {
  return value.toFixed(1).replace(/\.0$/, '');
}
