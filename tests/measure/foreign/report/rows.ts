import { falseAlarms, slipsFound, slipsLarge, slipsNamed } from './slip-statistics.ts';
import {
  finalOff,
  finalWithin,
  firstPour,
  firstWithinBound,
  held,
  LAST,
  neverWithin,
  off,
  promisedFirst,
  promiseOff,
  roundsWithin,
  type Span,
  type Statistic,
  saidLikely,
  stepsWorse,
  wasRight,
  withinBy,
} from './statistics.ts';

/** What a figure is to reach; without one it is only told. */
export type Goal =
  | { readonly most: number }
  | { readonly least: number }
  | { readonly from: number; readonly to: number };

/** A figure of a row. */
export interface Figure {
  readonly says: string;
  readonly of: Statistic;
  readonly unit?: '%';
  readonly goal?: Goal;
}

/** What is said of the books of one condition. */
export interface Row {
  readonly condition: string;
  readonly says: string;
  readonly figures: readonly Figure[];
}

const EARLY: Span = [1, 10];
const LATE: Span = [21, 40];
const ALL: Span = [1, 40];

const figure = (says: string, of: Statistic, most?: number): Figure => ({
  says,
  of,
  ...(most === undefined ? {} : { goal: { most } }),
});
const share = (says: string, of: Statistic, goal?: Goal): Figure => ({
  says,
  of,
  unit: '%',
  ...(goal === undefined ? {} : { goal }),
});

function offRow(
  condition: string,
  says: string,
  what: 'unseen' | 'seen',
  after: number,
  median?: number,
  p90?: number,
): Row {
  return {
    condition,
    says,
    figures: [figure('median', off(what, after, 0.5), median), figure('p90', off(what, after, 0.9), p90)],
  };
}

function firstRow(condition: string, span: Span): Row {
  return {
    condition,
    says: `first pour, recipes ${span.join('–')}`,
    figures: [
      figure('median', firstPour(span, 0.5)),
      figure('p90', firstPour(span, 0.9)),
      figure('median that was said', promisedFirst(span)),
      share('within the bound that was said', firstWithinBound(span)),
    ],
  };
}

/** The rows of the table that are to be reached. */
export const GOAL_ROWS: readonly Row[] = [
  offRow('half', 'unseen mixtures after 20 recipes', 'unseen', 20, 2.5, 7.5),
  offRow('half', 'unseen mixtures after 40 recipes', 'unseen', 40, 1.6, 4.3),
  offRow('chips', 'unseen mixtures after the 12 chips that the book asked for, no recipe', 'unseen', 0, 2.2, 5),
  offRow('hex', 'unseen mixtures, all hex, after 40', 'unseen', 40, 1.8, 5.6),
  offRow('photo2', 'unseen mixtures, by photo (ΔE 2), after 40', 'unseen', 40, 2.2, 5),
  offRow('half', 'shown colour of a seen cup', 'seen', LAST, 0.6, 0.9),
  offRow('photo2', 'shown colour of a seen cup, by photo', 'seen', LAST, 1.2, 2.3),
  {
    condition: 'half',
    says: 'bound of nine in ten on unseen mixtures, after 20 and 40',
    figures: [
      share('all books', held('unseen', [20, 40], 'all'), { from: 87, to: 96 }),
      share('worst book', held('unseen', [20, 40], 'worst'), { least: 80 }),
    ],
  },
  {
    condition: 'half',
    says: 'first pour, recipes 21–40',
    figures: [
      figure('median', firstPour(LATE, 0.5), 1.8),
      figure('p90', firstPour(LATE, 0.9), 4.8),
      figure('median that was said', promisedFirst(LATE)),
      figure('between the two medians', promiseOff(LATE), 0.6),
    ],
  },
  {
    condition: 'half',
    says: 'rounds to true ≤ 3, recipes 1–10',
    figures: [
      figure('p50', roundsWithin(3, EARLY, 0.5), 2),
      figure('p95', roundsWithin(3, EARLY, 0.95), 4),
      share('never', neverWithin(3, EARLY), { most: 3 }),
    ],
  },
  {
    condition: 'half',
    says: 'rounds to true ≤ 3, recipes 21–40',
    figures: [
      figure('p50', roundsWithin(3, LATE, 0.5), 1),
      figure('p95', roundsWithin(3, LATE, 0.95), 3),
      share('never', neverWithin(3, LATE), { most: 1 }),
    ],
  },
  {
    condition: 'half',
    says: 'rounds to true ≤ 2, recipes 21–40',
    figures: [share('by the second round', withinBy(2, LATE, 2), { least: 88 })],
  },
  {
    condition: 'half',
    says: 'steps that made the truth worse by 0.5',
    figures: [share('all recipes', stepsWorse(ALL), { most: 2 })],
  },
  {
    condition: 'photo2',
    says: 'by photo (ΔE 2), recipes 21–40',
    figures: [
      share('within 3 of the truth', finalWithin(3, LATE), { least: 85 }),
      share('steps worse', stepsWorse(LATE), { most: 10 }),
    ],
  },
  {
    condition: 'false',
    says: 'false logs',
    figures: [
      share('faults ≥ 8 ΔE found', slipsFound, { least: 90 }),
      share('false alarms', falseAlarms, { most: 2 }),
      share('named among three', slipsNamed, { least: 75 }),
      figure('faults ≥ 8 ΔE there were', slipsLarge),
    ],
  },
];

/** Rows that tell more of the books of one condition. */
export function tellingRows(condition: string): readonly Row[] {
  return [
    ...[0, 5, 10, 15, 20, 40].map((after) => ({
      ...offRow(condition, `unseen mixtures after ${after}`, 'unseen', after),
      figures: [
        ...offRow(condition, '', 'unseen', after).figures,
        share('bound held', held('unseen', [after], 'all')),
        share('in the worst book', held('unseen', [after], 'worst')),
      ],
    })),
    {
      condition,
      says: 'shown colour of a seen cup, in the end',
      figures: [
        figure('median', off('seen', LAST, 0.5)),
        figure('p90', off('seen', LAST, 0.9)),
        share('bound held', held('seen', [LAST], 'all')),
      ],
    },
    ...([[1, 5], [6, 10], [11, 20], LATE] as const).map((span) => firstRow(condition, span)),
    ...([EARLY, [11, 20], LATE] as const).map((span) => ({
      condition,
      says: `course, recipes ${span.join('–')}`,
      figures: [
        share('≤ 2 by round 1', withinBy(2, span, 1)),
        share('by 2', withinBy(2, span, 2)),
        share('by 3', withinBy(2, span, 3)),
        share('never', neverWithin(2, span)),
        figure('final median', finalOff(span, 0.5)),
        figure('final p95', finalOff(span, 0.95)),
        share('steps worse', stepsWorse(span)),
        share('said likely right', saidLikely(span)),
        share('and were', wasRight(2, span)),
      ],
    })),
  ];
}
