/**
 * The patterns that a bait can have: all that the book knows of one stands in its entry.
 *
 * @packageDocumentation
 */
import type { CoreOrder, Face, Filling, PatternEntry, StepWords } from './pattern.ts';
import { MIDDLE, type Run } from './place.ts';
import { alongTheBottom, endToEnd, inLayers, inStreaks, within } from './through.ts';

const TWO_SIDES: readonly [Face, Face] = [
  { name: 'this side', from: 'near', along: 0.5 },
  { name: 'other side', from: 'far', along: 0.5 },
];

const inOrder = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index);
const secondFirst = (): readonly number[] => [1, 0];

/** "Shoot", or what is done where no injector is. */
const fill = ({ method }: Filling): string =>
  method === 'poured' ? 'Pour' : method === 'dipped' ? 'Dip into' : 'Shoot';

const CORE_FIRST = (shell: string, core: string, how: Filling): StepWords => [
  `${fill(how)} the `,
  { cup: core },
  ` cup first, in a core mold or on pins. Once it has set, trim it, and ${fill(how).toLowerCase()} the `,
  { cup: shell },
  ' cup hot around it.',
];
const SHELL_FIRST = (shell: string, core: string, how: Filling): StepWords => [
  `${fill(how)} the `,
  { cup: shell },
  ' cup, and while its middle is liquid, the ',
  { cup: core },
  ' cup into it.',
];

const ENTRIES = {
  solid: {
    cups: { least: 1, most: 1, words: 'one cup' },
    one: 'a solid bait',
    means: 'one cup',
    alsoCalled: [],
    through: inLayers,
    beside: false,
    faces: [{ name: 'body', from: 'near', along: 0.5 }],
    second: undefined,
    thin: 'body',
    flank: 'own',
    apart: 'laminate',
    together: false,
    sideBySide: false,
    byHand: false,
    orders: [],
    poured: inOrder,
    pour: (_, { method }) => {
      if (method === 'injected') return [['Shoot hot and quick, and hold the pressure for 5 to 15 seconds.']];
      if (method === 'dipped')
        return [['Dip the warm rods, draw them out slowly, and let the coat set.'], ['Dip again for a thicker wall.']];
      return [
        ['Fill the mold slowly, and top it up as it shrinks.'],
        ['Thin ribbons and paddles want the plastic hot, and the pour quick.'],
      ];
    },
  },
  laminate: {
    cups: { least: 2, most: 2, words: 'two cups' },
    one: 'a laminate',
    means: 'two cups shot together, one on each side',
    alsoCalled: [],
    through: inLayers,
    beside: false,
    faces: TWO_SIDES,
    second: { name: 'other side', share: 0.5 },
    thin: 'body',
    flank: 'own',
    apart: 'laminate',
    together: true,
    sideBySide: true,
    byHand: false,
    orders: [],
    poured: inOrder,
    // A name stands before its "cup": a cup is not poured back, nor shot core.
    pour: (cups, how) => [[`${fill(how)} the `, ...cupNames(cups, ', ', ' and '), ' cups together, side by side.']],
  },
  swirl: {
    cups: { least: 2, most: Number.POSITIVE_INFINITY, words: 'two cups or more' },
    one: 'a swirl',
    means: 'two cups poured together, unmixed',
    alsoCalled: ['marble', 'marbled'],
    through: inStreaks,
    beside: true,
    faces: [{ name: 'body', mean: true }],
    second: { name: 'streaks', share: 0.5 },
    thin: 'body',
    flank: 'streaks',
    apart: 'swirl',
    together: true,
    sideBySide: false,
    byHand: false,
    orders: [],
    poured: inOrder,
    pour: (cups, how) => [
      [
        `${fill(how)} the `,
        ...cupNames(cups, ', ', ' and '),
        how.method === 'poured'
          ? ' cups in one stream, from the same height, unmixed.'
          : ' cups through one nozzle, unmixed.',
      ],
    ],
  },
  layered: {
    cups: { least: 2, most: Number.POSITIVE_INFINITY, words: 'two cups or more' },
    one: 'a layered bait',
    means: 'two or more cups, poured one on top of another',
    alsoCalled: [],
    through: inLayers,
    beside: false,
    faces: TWO_SIDES,
    second: { name: 'other side', share: 0.5 },
    thin: 'body',
    flank: 'own',
    apart: 'laminate',
    together: false,
    sideBySide: false,
    byHand: true,
    orders: [],
    poured: inOrder,
    ready: 'Have every cup hot, with its bubbles up, before you begin.',
    pour: ([first = '', ...others]) => [
      [
        'Pour from the ',
        { cup: first },
        ' cup first, then from the ',
        ...cupNames(others, ' cup, then from the '),
        ` cup, ${others.length > 1 ? 'each ' : ''}20 to 60 seconds later.`,
      ],
      [
        'A layer is ready for the next when its skin dimples. Pour the next at the hot end of its range: what is too cool, or lands on a layer gone cold, peels.',
      ],
    ],
  },
  core: {
    cups: { least: 2, most: 2, words: 'two cups, the shell first' },
    one: 'a bait with a core',
    means: 'one cup inside another',
    alsoCalled: [],
    through: within,
    beside: false,
    faces: [
      { name: 'body', from: 'near', along: 0.5 },
      { name: 'core alone', alone: 1 },
    ],
    second: undefined,
    // What is shot into the middle does not get into a tail. Common practice, no source.
    thin: { cup: 0 },
    flank: 'covered',
    apart: 'laminate',
    together: false,
    sideBySide: false,
    byHand: false,
    orders: ['core first', 'shell first'],
    poured: (_, order) => (order === 'core first' ? [1, 0] : [0, 1]),
    pour: ([shell = '', core = ''], how) => {
      const coreFirst = CORE_FIRST(shell, core, how);
      const shellFirst = SHELL_FIRST(shell, core, how);
      if (how.order === undefined) return [[...coreFirst, ' Or the other way round: ', ...lowered(shellFirst)]];
      return [how.order === 'core first' ? coreFirst : shellFirst];
    },
  },
  tipped: {
    cups: { least: 2, most: 2, words: 'two cups, the body first' },
    one: 'a tipped bait',
    means: 'body in one colour, tip in another',
    alsoCalled: [],
    through: endToEnd,
    beside: true,
    faces: [
      { name: 'body', from: 'near', along: 0 },
      { name: 'tip', from: 'near', along: 1 },
    ],
    second: { name: 'tip', share: 0.2 },
    thin: { cup: 1 },
    flank: 'own',
    apart: 'laminate',
    together: false,
    sideBySide: false,
    byHand: false,
    orders: [],
    poured: secondFirst,
    ready: 'Have both cups hot, with their bubbles up, before you begin: a tip that has set, or gone cold, pulls off.',
    pour: ([first = '', second = ''], how) => [
      [
        'Fill only the end of the mold from the ',
        { cup: second },
        ` cup, and ${fill(how).toLowerCase()} the `,
        { cup: first },
        ' cup hot as soon as the tip has a skin.',
      ],
    ],
  },
  striped: {
    cups: { least: 2, most: 2, words: 'two cups, the body first' },
    one: 'a striped bait',
    means: 'a body with a stripe along its belly',
    alsoCalled: ['stripe', 'belly-stripe', 'pinstripe', 'tiger stripe', 'tiger-stripe'],
    through: alongTheBottom,
    beside: false,
    faces: [
      { name: 'back', from: 'near', along: 0.5 },
      { name: 'belly', from: 'far', along: 0.5 },
    ],
    second: { name: 'belly', share: 0.15 },
    // The line is poured along the body and stops before the tail. Common practice, no source.
    thin: { cup: 0 },
    flank: 'own',
    apart: 'laminate',
    together: false,
    sideBySide: false,
    byHand: true,
    orders: [],
    poured: secondFirst,
    ready: 'Have both cups hot, with their bubbles up, before you begin.',
    pour: ([first = '', second = '']) => [
      [
        'Lay a thin line from the ',
        { cup: second },
        ' cup along the belly of the mold, let it skin over, then fill up hot from the ',
        { cup: first },
        ' cup.',
      ],
    ],
  },
} as const satisfies Readonly<Record<string, PatternEntry>>;

/** The orders that a recipe may say. */
export const CORE_ORDERS = ['core first', 'shell first'] as const satisfies readonly CoreOrder[];

/** How cups lie in a bait. */
export type Pattern = keyof typeof ENTRIES;

export const PATTERNS: Readonly<Record<Pattern, PatternEntry>> = ENTRIES;

/** Their names, as they are written in a recipe. */
export const PATTERN_NAMES = Object.keys(ENTRIES) as readonly Pattern[];

/** Whether a pattern is made of so many cups. */
export function takesCups(pattern: Pattern, count: number): boolean {
  const { least, most } = PATTERNS[pattern].cups;
  return count >= least && count <= most;
}

/** The pattern of so many cups, where nobody says. */
export function usualPattern(count: number): Pattern {
  return count === 1 ? 'solid' : 'laminate';
}

/** Whether a bait is looked at from both sides, each with what lies behind it. */
export function hasTwoSides(pattern: Pattern): boolean {
  const [, far] = PATTERNS[pattern].faces;
  return far !== undefined && 'from' in far && far.from === 'far';
}

/** What an eye looks through at a face, the near cup first; of streaks that run together, the first cup. */
export function faceRuns(pattern: Pattern, face: Face, shares: readonly number[]): readonly Run[] {
  if ('mean' in face) return [{ cup: 0, part: 1 }];
  if ('alone' in face) return [{ cup: face.alone, part: 1 }];
  const runs = PATTERNS[pattern].through(shares, { ...MIDDLE, along: face.along });
  return face.from === 'near' ? runs : runs.toReversed();
}

/** What the sides of a bait are called that are looked at by themselves: its body, or this side and what else there is. */
export function faceNames(pattern: Pattern, hasOther: boolean): readonly string[] {
  const [near, far] = PATTERNS[pattern].faces;
  return hasOther && far !== undefined ? [near.name, far.name] : ['body'];
}

/** A step that goes on with a sentence: its first letter small. */
function lowered([first = '', ...rest]: StepWords): StepWords {
  return typeof first === 'string' ? [first.charAt(0).toLowerCase() + first.slice(1), ...rest] : [first, ...rest];
}

/** Names of cups in a row: `back and belly`. */
function cupNames(names: readonly string[], between: string, last = between): StepWords {
  return names.flatMap((cup, index) => {
    const before = index === names.length - 1 ? last : between;
    return index === 0 ? [{ cup }] : [before, { cup }];
  });
}
