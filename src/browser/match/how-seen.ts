/**
 * How a test pour was looked at, as it is asked once and then remembered: how thick it was, how long after the pour, wet or dry.
 *
 * @packageDocumentation
 */
import type { HowLooked } from '../../cup/how-looked.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { defined } from '../../values/defined.ts';
import { isWithin } from './limits.ts';
import { thicknessOf } from './thickness-field.ts';

/** How it was looked at; what nobody has said is unset, and a thickness that is unset is the body's. */
export type HowSeen = Pick<HowLooked, 'thicknessMm' | 'after' | 'wet'>;

/** Times after the pour, in the order in which they come. */
export const AFTERS = ['hot', '10 min', 'next day'] as const;

/** The answer as it stands in its fields. */
export interface TypedHow {
  /** Of a chip, in the unit of the book's lengths; unset: a bait was looked at. */
  readonly chip?: string;
  /** '' where nobody says. */
  readonly after: string;
  readonly wet: boolean;
}

/** The answer; a sentence where the chip has no thickness. `before` is what the field of the chip showed. */
export function howOf({ chip, after, wet }: TypedHow, unit: VolumeUnit, before?: number): HowSeen | string {
  const thicknessMm = chip === undefined ? undefined : thicknessOf(chip, unit, before);
  if (typeof thicknessMm === 'string') return thicknessMm;
  return { ...defined({ thicknessMm, after: afterOf(after) }), ...(wet ? { wet: true } : {}) };
}

/** What a match or a browser has kept of it, checked; what is none counts as not said. */
export function keptHow(value: unknown): HowSeen {
  const { thicknessMm, after, wet } = (typeof value === 'object' && value !== null ? value : {}) as Record<
    string,
    unknown
  >;
  return {
    ...(typeof thicknessMm === 'number' && isWithin('thicknessMm', thicknessMm) ? { thicknessMm } : {}),
    ...defined({ after: afterOf(after) }),
    ...(wet === true ? { wet: true } : {}),
  };
}

function afterOf(text: unknown): HowSeen['after'] {
  return AFTERS.find((each) => each === text);
}
