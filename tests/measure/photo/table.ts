import { interval } from '../foreign/report/bootstrap.ts';
import { percent, quantile } from '../foreign/report/statistics.ts';
import { exactRate } from './exact-rate.ts';
import { type Figure, ROWS, type Row } from './goals.ts';
import type { PhotoResult } from './photo-result.ts';
import { coloursOff, tally } from './statistics.ts';

/** What is to be reached and what came, then what else is known of the photos, as lines of text. */
export function tableOf(results: readonly PhotoResult[]): readonly string[] {
  return [
    'figure | photos | to reach | came | 80 % of it | reached',
    ...ROWS.map((row) => lineOf(row, results)),
    '',
    'by light, b2 and a2, any card: median / p90',
    ...lightLines(results.filter(({ set }) => set === 'b2' || set === 'a2')),
    '',
    'refused, by set',
    ...refusalLines(results),
    '',
    'flake of 12 MP: kind, size true → measured mm, cover true → measured %',
    ...flakeLines(results.filter(({ set }) => set === 'twelve')),
    '',
    cpuLine(results),
  ];
}

function lineOf({ says, sets, figure, most, least, digits }: Row, results: readonly PhotoResult[]): string {
  const own = results.filter(({ set }) => sets.includes(set));
  const { value, from, to } = figureOf(figure, own);
  const goal = most === undefined ? (least === undefined ? '' : `≥ ${least}`) : `≤ ${most}`;
  const reached = (most === undefined || value <= most) && (least === undefined || value >= least);
  const within = (most === undefined || from <= most) && (least === undefined || to >= least);
  const judged = goal === '' || Number.isNaN(value) ? '' : reached ? 'yes' : within ? 'within' : 'NO';
  const [came, low, high] = [value, from, to].map((each) => (Number.isNaN(each) ? '–' : each.toFixed(digits)));
  return [says, own.length, goal, came, `${low} to ${high}`, judged].join(' | ');
}

function figureOf(figure: Figure, own: readonly PhotoResult[]): { value: number; from: number; to: number } {
  if ('of' in figure) {
    const value = own.length === 0 ? Number.NaN : figure.of(own);
    const [from, to] = Number.isNaN(value) ? [value, value] : interval(figure.of, own);
    return { value, from, to };
  }
  const holds = figure.holds(own);
  const value = percent(holds, (each) => each);
  const [from, to] = holds.length === 0 ? [value, value] : exactRate(holds.filter((each) => each).length, holds.length);
  return { value, from, to };
}

function lightLines(results: readonly PhotoResult[]): readonly string[] {
  const line = (says: string, own: readonly PhotoResult[]): string => {
    const off = coloursOff(own, 'anyCard');
    return `  ${says}: ${quantile(off, 0.5).toFixed(2)} / ${quantile(off, 0.9).toFixed(2)} (${own.length} photos)`;
  };
  return [
    ...(['daylight', 'LED', 'incandescent'] as const).map((kind) =>
      line(
        kind,
        results.filter(({ light }) => light === kind),
      ),
    ),
    line(
      'below 3300 K',
      results.filter(({ kelvin }) => kelvin < 3300),
    ),
    line(
      'above 5000 K',
      results.filter(({ kelvin }) => kelvin > 5000),
    ),
  ];
}

function refusalLines(results: readonly PhotoResult[]): readonly string[] {
  return [...new Set(results.map(({ set }) => set))].map((set) => {
    const own = results.filter((each) => each.set === set);
    const refused = own.flatMap(({ anyCard }) => anyCard.refused ?? []);
    const warned = own.flatMap(({ anyCard }) => anyCard.warnings ?? []);
    const terms = own.flatMap(({ anyCard }) => anyCard.largest ?? []);
    return `  ${set}: ${refused.length} of ${own.length}${refused.length > 0 ? ` (${tally(refused)})` : ''}; warned: ${tally(warned) || 'none'}; largest doubt: ${tally(terms)}`;
  });
}

function flakeLines(results: readonly PhotoResult[]): readonly string[] {
  return results.flatMap(({ seed, flake }) =>
    flake
      ? [
          `  ${seed} ${flake.name}: ${flake.trueSizeMm.toFixed(2)} → ${flake.sizeMm.toFixed(2)}, ${(100 * flake.trueCoverage).toFixed(1)} → ${(100 * flake.coverage).toFixed(1)} (${flake.kinds} kinds)`,
        ]
      : [],
  );
}

function cpuLine(results: readonly PhotoResult[]): string {
  const small = results.filter(({ set, cpuSeconds }) => !['twelve', 'plain'].includes(set) && cpuSeconds.taken > 0);
  const middle = (of: (result: PhotoResult) => number): string => quantile(small.map(of), 0.5).toFixed(2);
  return `a photo of 2 MP: taken in ${middle(({ cpuSeconds }) => cpuSeconds.taken)} s of a processor, measured in ${middle(({ cpuSeconds }) => cpuSeconds.measured)} s (median)`;
}
