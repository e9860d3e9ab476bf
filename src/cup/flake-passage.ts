import { defined } from '../values/defined.ts';

/** What of a mold flake has to get through, mm. */
export interface FlakeWay {
  /** The narrowest way in; unset of a mold that is poured open, or whose gate nobody has measured. */
  readonly gateMm?: number;
  /** Of the thinnest part that shows. */
  readonly thinMm: number;
}

/** A part of a mold that is too narrow for a flake. */
export interface TooNarrow {
  readonly at: 'gate' | 'thin';
  /** How wide it is, and how wide it has to be, mm. */
  readonly mm: number;
  readonly leastMm: number;
}

/** How wide a way has to be, by the size of the flake. Common practice, no source: a gate twice it, since flakes come abreast. */
const TIMES_THE_FLAKE = { gate: 2, thin: 1 } as const;

// Both sizes come off a bag or a rule in inches: 0.125 in through 0.25 in is enough.
const ROUNDING_MM = 1e-6;

/**
 * The part of a mold that a flake jams in, the gate first; undefined where it passes.
 *
 * @param acrossMm its size across flats, or its side. Of a strip its width: strips turn along the flow and go in end first, so that their
 * length does not count. Common practice, no source.
 */
export function tooNarrow(acrossMm: number, { gateMm, thinMm }: FlakeWay): TooNarrow | undefined {
  const ways = Object.entries(defined({ gate: gateMm, thin: thinMm })) as ['gate' | 'thin', number][];
  return ways
    .map(([at, mm]): TooNarrow => ({ at, mm, leastMm: TIMES_THE_FLAKE[at] * acrossMm }))
    .find(({ mm, leastMm }) => mm < leastMm - ROUNDING_MM);
}
