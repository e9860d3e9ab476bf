import { parseDose } from '../../units/parse-quantity.ts';
import { isFault } from '../../units/quantity.ts';
import { SLUG } from '../../values/slug.ts';
import { typedHex } from '../typed-hex.ts';
import { keptHow } from './how-seen.ts';
import { LIMITS, MOST, within } from './limits.ts';
import { keptMeasured } from './measured-by.ts';
import type { WorkFlake } from './side-flake.ts';
import { cupLogs, joinedLogs, type Work, type WorkCup, type WorkSide, type WorkStep } from './work.ts';
import { settledLab, type WorkColour } from './work-colour.ts';

/** Why a text is no work, for the maker. */
export interface NoWork {
  readonly fault: string;
  /** It may be one, of a version that this page does not know. */
  readonly newer?: true;
}

/** What this page writes and reads. */
const FORMAT = 1;

/** Of all cups of a log, and where each is begun. */
const MOST_STEPS = (MOST.earlier + 1) * (MOST.steps + 1);

/**
 * Reads work that was exported, or kept by the browser: checked field by field, since it may come from anywhere.
 *
 * @example readWork('{}') // { fault: 'This file holds no match. Choose one that this page has exported.' }
 */
export function readWork(text: string): Work | NoWork {
  const fault = { fault: 'This file holds no match. Choose one that this page has exported.' };
  if (text.length > MOST.exported) return fault;
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return fault;
  }
  if (isNewer(value)) {
    return {
      fault:
        'This match was made with a newer version of Cupbook. Reload the page; if that doesn’t help, build the book with the newer version.',
      newer: true,
    };
  }
  try {
    return workOf(value);
  } catch {
    return fault;
  }
}

function isNewer(value: unknown): boolean {
  const { format, cups } = (typeof value === 'object' && value !== null ? value : {}) as Fields;
  return Number.isInteger(format) && (format as number) > FORMAT && Array.isArray(cups);
}

/** Whether a text was none. */
export function isNoWork(read: Work | NoWork): read is NoWork {
  return 'fault' in read;
}

class Unfit extends Error {}

function need<T>(value: T | undefined): T {
  if (value === undefined) throw new Unfit();
  return value;
}

type Fields = Readonly<Record<string, unknown>>;

const object = (value: unknown): Fields =>
  need(typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : undefined);
const list = (value: unknown, most: number): readonly unknown[] =>
  need(Array.isArray(value) && value.length <= most ? value : undefined);
const text = (value: unknown, most: number): string =>
  need(typeof value === 'string' && value.length <= most ? value : undefined);
const name = (value: unknown): string => need(SLUG.test(text(value, MOST.name)) ? (value as string) : undefined);
// Earlier versions kept smaller numbers than can be typed now.
const number = (value: unknown, limits: keyof typeof LIMITS): number =>
  within(limits, need(typeof value === 'number' && value > 0 && value <= LIMITS[limits].most ? value : undefined));
const colour = (value: unknown): WorkColour => {
  if (typeof value === 'string') return need(typedHex(text(value, 7)));
  const { L, a, b } = object(value);
  const each = (number: unknown): number => need(typeof number === 'number' ? number : undefined);
  return need(settledLab({ L: each(L), a: each(a), b: each(b) }));
};
// Spaces of any kind count as one for who reads a dose, and a recipe's file has it on one line.
const dose = (value: unknown): string => {
  const plain = text(value, MOST.dose).trim().replace(/\s+/g, ' ');
  return need(isFault(parseDose(plain)) ? undefined : plain);
};
const maybe = <T>(value: unknown, read: (value: unknown) => T): T | undefined =>
  value === undefined ? undefined : read(value);
const present = <K extends string, T>(key: K, value: T | undefined): { [P in K]?: T } =>
  value === undefined ? {} : ({ [key]: value } as { [P in K]: T });

function workOf(value: unknown): Work {
  const fields = object(value);
  if (fields.format !== FORMAT) throw new Unfit();
  const arrangement = need((['solid', 'apart', 'together'] as const).find((each) => each === fields.arrangement));
  const sides = list(fields.sides, MOST.sides).map(sideOf);
  const cups = list(fields.cups, MOST.sides).map(cupOf);
  if (sides.length === 0 || cups.length !== sides.length || (arrangement === 'solid') !== (sides.length === 1))
    throw new Unfit();
  // A cup is that of its side, and the fields of a recipe's file have names of their own.
  if (
    cups.some((cup, index) => cup.name !== sides[index]!.name) ||
    new Set(cups.map((cup) => cup.name)).size < cups.length
  )
    throw new Unfit();
  return {
    format: FORMAT,
    title: text(fields.title, MOST.title),
    ...present('target', maybe(fields.target, name)),
    arrangement,
    ...present('whole', fields.whole === true || undefined),
    sides,
    tolerance: number(fields.tolerance, 'tolerance'),
    mold: name(fields.mold),
    plastic: name(fields.plastic),
    plasticMl: number(fields.plasticMl, 'plasticMl'),
    without: list(fields.without, MOST.without).map(name),
    inStock: fields.inStock === true,
    cups,
  };
}

function sideOf(value: unknown): WorkSide {
  const fields = object(value);
  return {
    name: name(fields.name),
    ...present('overWhite', maybe(fields.overWhite, colour)),
    ...present('overBlack', maybe(fields.overBlack, colour)),
    ...present('measured', keptMeasured(fields.measured)),
    thicknessMm: number(fields.thicknessMm, 'thicknessMm'),
    ...present(
      'flakes',
      maybe(fields.flakes, (flakes) => list(flakes, MOST.flakes).map(flakeOf)),
    ),
    ...present('plastic', maybe(fields.plastic, name)),
  };
}

function flakeOf(value: unknown): WorkFlake {
  const fields = object(value);
  return {
    hex: need(typedHex(text(fields.hex, 7))),
    sizeMm: number(fields.sizeMm, 'flakeMm'),
    ...present(
      'coverage',
      maybe(fields.coverage, (coverage) => number(coverage, 'coverage')),
    ),
  };
}

function cupOf(value: unknown): WorkCup {
  const fields = object(value);
  const steps = (each: unknown): readonly WorkStep[] => withRoundsMarked(list(each, MOST_STEPS).map(stepOf));
  // Earlier versions kept the logs of cups that were given up beside that of the cup.
  const earlier = maybe(fields.earlier, (each) => list(each, MOST.earlier).map(steps)) ?? [];
  const logs = [...earlier, ...cupLogs(steps(fields.steps))];
  if (logs.length > MOST.earlier + 1 || logs.some((log) => log.length > MOST.steps)) throw new Unfit();
  return { name: name(fields.name), steps: joinedLogs(logs) };
}

const isRound = (value: unknown): value is number =>
  Number.isInteger(value) && (value as number) >= 1 && (value as number) <= MOST_STEPS;

/** A log of a match that was kept before steps were marked has a round in two of them. */
function withRoundsMarked(steps: readonly WorkStep[]): readonly WorkStep[] {
  return steps.map((step, index) =>
    step.do === 'see' && steps[index - 1]?.do === 'pour' ? { ...step, also: true } : step,
  );
}

function stepOf(value: unknown): WorkStep {
  const fields = object(value);
  const also = fields.also === true ? { also: true as const } : {};
  switch (fields.do) {
    case 'add':
      return {
        do: 'add',
        ...also,
        ...(fields.recipe === true ? { recipe: true as const } : {}),
        amounts: list(fields.amounts, MOST.amounts).map((amount) => {
          const each = object(amount);
          return { material: name(each.material), dose: dose(each.dose), grams: number(each.grams, 'grams') };
        }),
      };
    case 'new-cup':
      return { do: 'new-cup', ...also };
    case 'plastic':
      return { do: 'plastic', ...also, ml: number(fields.ml, 'addedMl') };
    case 'heat': {
      const again = maybe(fields.again, (each) => number(each, 'again'));
      return {
        do: 'heat',
        ...also,
        ...present(
          'celsius',
          maybe(fields.celsius, (each) => number(each, 'celsius')),
        ),
        ...present('again', again === undefined ? undefined : Math.round(again)),
        ...present(
          'heldMinutes',
          maybe(fields.heldMinutes, (each) => number(each, 'heldMinutes')),
        ),
      };
    }
    case 'pour':
      return {
        do: 'pour',
        ...also,
        ml: number(fields.ml, 'pouredMl'),
        ...present('whole', fields.whole === true || undefined),
      };
    case 'see':
      return {
        do: 'see',
        ...also,
        ...present('overWhite', maybe(fields.overWhite, colour)),
        ...present('overBlack', maybe(fields.overBlack, colour)),
        ...present('measured', keptMeasured(fields.measured)),
        ...present(
          'note',
          maybe(fields.note, (note) => text(note, MOST.note)),
        ),
        ...present('checked', fields.checked === true || undefined),
        ...present(
          'behind',
          maybe(fields.behind, (round) => need(isRound(round) ? round : undefined)),
        ),
        ...keptHow(fields),
      };
    default:
      throw new Unfit();
  }
}
