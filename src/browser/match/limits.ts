/**
 * Limits of what a match holds. What is typed, what is kept and what is read go by this one table, so that a match that was kept is
 * always read again.
 *
 * @packageDocumentation
 */

import { readNumber } from '../../units/read-number.ts';
import { mlInField, volumeLimits } from '../../units/volume-field.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';

/** Numbers of a match. */
export const LIMITS = {
  tolerance: { what: 'The tolerance', least: 0.1, most: 100 },
  plasticMl: { what: 'The size of the cup', least: 1, most: 100_000 },
  thicknessMm: { what: 'The thickness', least: 0.1, most: 1000 },
  addedMl: { what: 'The plastic that went in', least: 0.1, most: 100_000 },
  pouredMl: { what: 'What was poured', least: 0.01, most: 100_000 },
  flakeMm: { what: 'The size of the flake', least: 0.05, most: 25 },
  coverage: { what: 'How much flake you see', least: 0.001, most: 0.9 },
  celsius: { what: 'The temperature', least: 100, most: 245 },
  again: { what: 'How often it was heated again', least: 1, most: 9 },
  heldMinutes: { what: 'How many minutes it was held hot', least: 0.1, most: 600 },
  doubt: { what: 'The doubt', least: 0.01, most: 100 },
  contrastDoubt: { what: 'How far off “hides” may be', least: 0.001, most: 1 },
  photos: { what: 'The number of photos', least: 1, most: 100 },
  grams: { what: 'An amount', least: 1e-4, most: 100_000 },
} as const;

/** How much there can be of something, and how long a text. */
export const MOST = {
  sides: 2,
  /** In the log of one cup. */
  steps: 500,
  /** Logs of cups that were given up for one. */
  earlier: 50,
  amounts: 50,
  /** Kinds of flake in a side. */
  flakes: 6,
  without: 10_000,
  name: 1000,
  title: 300,
  dose: 40,
  note: 2000,
  camera: 120,
  /** Characters of a match as it is exported. */
  exported: 2_000_000,
} as const;

type Limited = keyof typeof LIMITS;

/** Whether a number is within its limits. */
export function isWithin(name: Limited, number: number): boolean {
  return number >= LIMITS[name].least && number <= LIMITS[name].most;
}

/** The nearest number within its limits: a book may state others. */
export function within(name: Limited, number: number): number {
  return Math.min(LIMITS[name].most, Math.max(LIMITS[name].least, number));
}

/** A number as it was typed, or a sentence where it is none within its limits. */
export function numberOf(text: string, name: Limited): number | string {
  const number = readNumber(text);
  return isWithin(name, number) ? number : `${LIMITS[name].what} is a number ${fromTo(LIMITS[name])}.`;
}

/**
 * A volume as it was typed in the book's unit, in ml, or a sentence where it is none within its limits.
 *
 * @param before ml that its field showed
 */
export function volumeOf(
  text: string,
  name: 'plasticMl' | 'addedMl',
  unit: VolumeUnit,
  before?: number,
): number | string {
  if (unit.volume === 'ml') return numberOf(text, name);
  const ml = text.trim() === '' ? Number.NaN : mlInField(text, unit, before);
  if (isWithin(name, ml)) return ml;
  return `${LIMITS[name].what} is a number ${fromTo(volumeLimits(LIMITS[name], unit))}, in fluid ounces.`;
}

/** "from 0.5 to 1,000" */
export function fromTo({ least, most }: { readonly least: number; readonly most: number }): string {
  return `from ${least} to ${most.toLocaleString('en')}`;
}
