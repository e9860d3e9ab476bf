import type { Cut } from '../../cup/cut.ts';
import { isWeighable } from '../../cup/measures.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import type { Weight } from './weigh-doses.ts';

/** What is weighed, as the scale shows it. */
export interface WeighedAmount {
  readonly title: string;
  /** It is of this cut, and so are the grams. */
  readonly cut?: Pick<Cut, 'title' | 'oneIn'>;
  readonly grams: number;
  /** "0.01 g" */
  readonly text: string;
  /** A liquid can be let down beforehand, so that there is more to measure of it. */
  readonly isLiquid: boolean;
  /** It is one of a cut, or there is one of it: its drops can be counted. */
  readonly hasCut?: true;
}

/** Amounts that a scale hardly shows. */
export interface TooLittle {
  readonly amounts: readonly WeighedAmount[];
  /** Half a step of the scale as a part of the least of them. */
  readonly error: number;
}

/** An amount of a material as it lies on the scale. */
export function onScale(
  { title, gramsPerDrop, cuts }: Pick<MatchMaterial, 'title' | 'gramsPerDrop' | 'cuts'>,
  { grams, text, cut }: Pick<Weight, 'grams' | 'text' | 'cut'>,
): WeighedAmount {
  const isLiquid = gramsPerDrop !== undefined;
  const has = cuts === undefined ? {} : { hasCut: true as const };
  return cut
    ? { title, cut, grams: grams / cut.bottlePerGram, text, isLiquid, hasCut: true }
    : { title, grams, text, isLiquid, ...has };
}

/**
 * Amounts of which half a step of the scale is too large a part; undefined where there is enough of everything.
 *
 * @param scaleGrams step of the scale, g; unset: there is none
 */
export function tooLittleToWeigh(amounts: readonly WeighedAmount[], scaleGrams = 0): TooLittle | undefined {
  const small = amounts.filter(({ grams }) => !isWeighable(grams, scaleGrams));
  if (small.length === 0) return undefined;
  return { amounts: small, error: scaleGrams / 2 / Math.min(...small.map(({ grams }) => grams)) };
}
