/**
 * What photos are to reach, as lines of a table. Goals are of photos with even seeds, which nobody tunes by.
 *
 * @packageDocumentation
 */
import { quantile } from '../foreign/report/statistics.ts';
import type { PhotoResult } from './photo-result.ts';
import { coloursOff, covered, type Way } from './statistics.ts';

/** A number of some photos; or which of them something holds for, whose part is told in percent. */
export type Figure =
  | { readonly of: (results: readonly PhotoResult[]) => number }
  | { readonly holds: (results: readonly PhotoResult[]) => readonly boolean[] };

/** A figure of some photos, and what it is to be. */
export interface Row {
  readonly says: string;
  /** Sets of photos it is of. */
  readonly sets: readonly string[];
  readonly figure: Figure;
  readonly most?: number;
  readonly least?: number;
  readonly digits: number;
}

const each = (isSo: (result: PhotoResult) => boolean): Figure => ({ holds: (results) => results.map(isSo) });
const isRefused = ({ anyCard }: PhotoResult): boolean => anyCard.refused !== undefined;

function foundIn(says: string, sets: readonly string[], least: number): Row {
  return { says: `card found, ${says}, %`, sets, figure: each(({ cardFound }) => cardFound), least, digits: 0 };
}

function colours(
  says: string,
  sets: readonly string[],
  way: Way,
  most?: readonly [median: number, p90?: number],
): readonly Row[] {
  const row = (part: number, name: string, goal?: number): Row => ({
    says: `colour, ${says}: ${name}, ΔE00`,
    sets,
    figure: { of: (results) => quantile(coloursOff(results, way), part) },
    ...(goal === undefined ? {} : { most: goal }),
    digits: 2,
  });
  return [row(0.5, 'median', most?.[0]), row(0.9, 'p90', most?.[1])];
}

function doubt(says: string, sets: readonly string[], way: Way): Row {
  return {
    says: `stated doubt covers, ${says}, %`,
    sets,
    figure: { of: (results) => covered(results, way) },
    least: 85,
    digits: 0,
  };
}

const contrastOff = (results: readonly PhotoResult[]): readonly number[] =>
  results.flatMap(({ anyCard: { contrast } }) => (contrast === undefined ? [] : [Math.abs(contrast)]));

const flakes = (results: readonly PhotoResult[]) => results.flatMap(({ flake }) => flake ?? []);

const isNear = (one: number, other: number): boolean => Math.abs(one / other - 1) <= 0.2;

const ORDINARY = ['b2', 'a2', 'uneven', 'mixed'];

/** Every row, in the order in which it is printed. */
export const ROWS: readonly Row[] = [
  foundIn('ordinary', ['b2', 'a2'], 99),
  foundIn('uneven light', ['uneven', 'mixed'], 99),
  foundIn('640 pixels across', ['small'], 99),
  foundIn('dim and out of focus', ['dim'], 95),
  foundIn('far out of focus', ['defocused'], 80),
  ...[0.5, 0.95].map(
    (part): Row => ({
      says: `places off, ${part === 0.5 ? 'median' : 'p95'}, mm`,
      sets: ORDINARY,
      figure: {
        of: (results) =>
          quantile(
            results.flatMap(({ placeMm }) => placeMm ?? []),
            part,
          ),
      },
      ...(part === 0.5 ? {} : { most: 0.05 }),
      digits: 3,
    }),
  ),
  ...colours('any card', ['b2'], 'anyCard', [3.5, 6.5]),
  ...colours('certified', ['b2'], 'certified', [2.5, 5]),
  ...colours('touched spots, no card', ['b2'], 'touched'),
  ...colours('any card, S curve only', ['a2'], 'anyCard', [3.5, 6.5]),
  ...colours('certified, S curve only', ['a2'], 'certified', [2.5, 5]),
  ...colours('any card, ideal camera', ['ideal'], 'anyCard', [1.6]),
  ...colours('certified, ideal camera', ['ideal'], 'certified', [1.6]),
  ...colours('any card, uneven light', ['uneven'], 'anyCard'),
  ...colours('any card, mixed light', ['mixed'], 'anyCard'),
  ...colours('any card, 640 pixels', ['small'], 'anyCard'),
  ...colours('any card, dim and out of focus', ['dim'], 'anyCard'),
  ...colours('any card, one of three', ['one of three'], 'anyCard'),
  ...colours('any card, three averaged', ['three'], 'anyCard'),
  ...colours('certified, one of three', ['one of three'], 'certified'),
  ...colours('certified, three averaged', ['three'], 'certified'),
  {
    says: 'contrast ratio off, median',
    sets: ['b2', 'a2'],
    figure: { of: (results) => quantile(contrastOff(results), 0.5) },
    most: 0.025,
    digits: 3,
  },
  {
    says: 'contrast ratio off, p90',
    sets: ['b2', 'a2'],
    figure: { of: (results) => quantile(contrastOff(results), 0.9) },
    most: 0.07,
    digits: 3,
  },
  {
    says: 'stated doubt of the contrast covers, %',
    sets: ['b2', 'a2'],
    figure: {
      holds: (results) =>
        results.flatMap(({ anyCard: { contrast, contrastBound } }) =>
          contrast === undefined || contrastBound === undefined ? [] : [Math.abs(contrast) <= contrastBound],
        ),
    },
    least: 85,
    digits: 0,
  },
  doubt('any card', ORDINARY, 'anyCard'),
  doubt('certified', ORDINARY, 'certified'),
  doubt('any card, three averaged', ['three'], 'anyCard'),
  doubt('certified, three averaged', ['three'], 'certified'),
  {
    says: 'flake of 12 MP: cover within 20 % of the zone’s, %',
    sets: ['twelve'],
    figure: { holds: (results) => flakes(results).map(({ coverage, trueCoverage }) => isNear(coverage, trueCoverage)) },
    least: 75,
    digits: 0,
  },
  {
    says: 'flake of 12 MP: size within 20 %, %',
    sets: ['twelve'],
    figure: { holds: (results) => flakes(results).map(({ sizeMm, trueSizeMm }) => isNear(sizeMm, trueSizeMm)) },
    least: 85,
    digits: 0,
  },
  {
    says: 'flake of 12 MP: photos of which something is said, %',
    sets: ['twelve'],
    figure: each(({ flake }) => flake !== undefined),
    digits: 0,
  },
  {
    says: 'no flake, 12 MP: cover that is seen nevertheless, largest, %',
    sets: ['plain'],
    figure: { of: (results) => 100 * Math.max(...results.map(({ falseFlake = 0 }) => falseFlake)) },
    digits: 2,
  },
  {
    says: 'refused without need, %',
    sets: ['b2', 'a2', 'ideal', 'mixed'],
    figure: each(isRefused),
    digits: 0,
  },
  {
    says: 'refused as it should be: over-exposed, far too dark, %',
    sets: ['over', 'dark'],
    figure: each(isRefused),
    digits: 0,
  },
  {
    says: 'refused as it should be: card not flat, %',
    sets: ['bent'],
    figure: each(isRefused),
    digits: 0,
  },
];
