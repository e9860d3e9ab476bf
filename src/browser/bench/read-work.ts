import { isHex } from '../../optics/display.ts';
import type { Work, WorkCup, WorkSide, WorkStep } from './work.ts';

/** Why a text is no work, for the maker. */
export interface NoWork {
  readonly fault: string;
}

/** A file of work is small; anything else is something else. */
const MOST_CHARACTERS = 500_000;
const NAME = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;

/**
 * Reads work that was exported, or kept by the browser: checked field by field, since it may come from anywhere.
 *
 * @example readWork('{}') // { fault: 'This file holds no match. …' }
 */
export function readWork(text: string): Work | NoWork {
  const fault = { fault: 'This file holds no match. Choose one that this page has exported.' };
  if (text.length > MOST_CHARACTERS) return fault;
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return fault;
  }
  try {
    return workOf(value);
  } catch {
    return fault;
  }
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
const text = (value: unknown, most = 300): string =>
  need(typeof value === 'string' && value.length <= most ? value : undefined);
const name = (value: unknown): string => need(NAME.test(text(value, 100)) ? (value as string) : undefined);
const number = (value: unknown, least: number, most: number): number =>
  need(typeof value === 'number' && value >= least && value <= most ? value : undefined);
const colour = (value: unknown): string =>
  need(isHex(text(value, 7)) && (value as string).length === 7 ? (value as string).toLowerCase() : undefined);
const maybe = <T>(value: unknown, read: (value: unknown) => T): T | undefined =>
  value === undefined ? undefined : read(value);
const present = <K extends string, T>(key: K, value: T | undefined): { [P in K]?: T } =>
  value === undefined ? {} : ({ [key]: value } as { [P in K]: T });

function workOf(value: unknown): Work {
  const fields = object(value);
  if (fields.format !== 1) throw new Unfit();
  const arrangement = need((['solid', 'apart', 'together'] as const).find((each) => each === fields.arrangement));
  const sides = list(fields.sides, 2).map(sideOf);
  const cups = list(fields.cups, 2).map(cupOf);
  if (sides.length === 0 || cups.length !== sides.length || (arrangement === 'solid') !== (sides.length === 1))
    throw new Unfit();
  return {
    format: 1,
    title: text(fields.title),
    ...present('target', maybe(fields.target, name)),
    arrangement,
    sides,
    tolerance: number(fields.tolerance, 0.01, 100),
    mold: name(fields.mold),
    plastic: name(fields.plastic),
    plasticMl: number(fields.plasticMl, 1, 100_000),
    without: list(fields.without, 10_000).map(name),
    inStock: fields.inStock === true,
    cups,
  };
}

function sideOf(value: unknown): WorkSide {
  const fields = object(value);
  return {
    name: name(fields.name),
    overWhite: colour(fields.overWhite),
    ...present('overBlack', maybe(fields.overBlack, colour)),
    thicknessMm: number(fields.thicknessMm, 0.01, 1000),
  };
}

function cupOf(value: unknown): WorkCup {
  const fields = object(value);
  const steps = (each: unknown): readonly WorkStep[] => list(each, 500).map(stepOf);
  return {
    name: name(fields.name),
    steps: steps(fields.steps),
    ...present(
      'earlier',
      maybe(fields.earlier, (each) => list(each, 50).map(steps)),
    ),
  };
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
        amounts: list(fields.amounts, 50).map((amount) => {
          const { material, dose, grams } = object(amount);
          return { material: name(material), dose: text(dose, 40), grams: number(grams, 1e-9, 1e6) };
        }),
      };
    case 'plastic':
      return { do: 'plastic', ...also, ml: number(fields.ml, 1e-6, 1e6) };
    case 'pour':
      return { do: 'pour', ...also, ml: number(fields.ml, 1e-6, 1e6) };
    case 'see':
      return {
        do: 'see',
        ...also,
        ...present('overWhite', maybe(fields.overWhite, colour)),
        ...present('overBlack', maybe(fields.overBlack, colour)),
        ...present(
          'note',
          maybe(fields.note, (note) => text(note, 2000)),
        ),
      };
    default:
      throw new Unfit();
  }
}
