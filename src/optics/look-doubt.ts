/**
 * How far what somebody has seen may be from the colour that is there.
 *
 * A bound says more to a maker than a standard deviation: "nine in ten are within 5". With errors that are normal and alike on three
 * axes of a colour space in which ΔE00 is a distance, ΔE00 has the chi distribution of three degrees of freedom, times the deviation of
 * an axis. Its root mean square is √3 of those, its 90 % point 2.50 (the root of 6.251, the 90 % point of chi-square with three degrees of
 * freedom, from memory), which is 1.44 root mean squares.
 *
 * @packageDocumentation
 */

/** Root mean squares of ΔE00 that nine in ten stay within: 2.50 / √3. */
const BOUND_IN_SD = 1.44;
const AXES = 3;

/** How the colour of a look was come by. */
export type LookMeans = 'instrument' | 'screen';

/**
 * How colours were seen: a hex is what somebody has typed, or a photo; one among other colours is the vaguest of them. Lab or XYZ is of a
 * photo where a camera took it; a reflectance band by band never is.
 *
 * @param camera what took them; unset: nobody has said that it was a camera
 *
 * @example meansOf([{ lab: [40, 2, 30] }]) // 'instrument'
 * @example meansOf([{ lab: [40, 2, 30] }], 'my phone') // 'screen'
 */
export function meansOf(colours: readonly (string | object)[], camera?: string): LookMeans {
  const isOfScreen = (colour: string | object): boolean =>
    typeof colour === 'string' || (camera !== undefined && !('reflectance' in colour));
  return colours.some(isOfScreen) ? 'screen' : 'instrument';
}

/** ΔE00 that nine in ten looks stay within where none is stated: of an instrument, and of a hex that was typed or a photo. Conventions of this book. */
const USUAL_BOUND: Readonly<Record<LookMeans, number>> = { instrument: 1, screen: 5 };

/** What a look loses by being made while the plastic is hot, and by being made wet: ΔE00, added in squares. Common practice, no source. */
const HOT = 4;
const WET = 3;

/** What of how something was looked at makes a look vaguer. */
export interface LookedVaguely {
  /** How long after the pour. */
  readonly after?: string;
  readonly wet?: boolean;
}

/** The doubt of a look, ΔE00. */
export interface LookDoubt {
  /** How the colour was come by. */
  readonly means: LookMeans;
  /** Nine in ten looks of this kind stay within this. */
  readonly bound: number;
  /** One standard deviation of the whole: its root mean square. */
  readonly sd: number;
  /** One standard deviation along each of three axes. */
  readonly axisSd: number;
  /** Nobody has stated it: it is what is usual of such a look. */
  readonly usual?: true;
}

/** ΔE00 that nine in ten stay within, by one standard deviation along each of three axes. */
export function boundOf(axisSd: number): number {
  return axisSd * Math.sqrt(AXES) * BOUND_IN_SD;
}

/**
 * The doubt of a look. What is stated, or usual, is that of the eye and its light; a look at hot or wet plastic is vaguer by what that adds.
 *
 * @param stated ΔE00 that nine in ten stay within, above 0; unset: what is usual of such a look
 *
 * @example lookDoubt('screen').bound // 5
 * @example lookDoubt('screen', 2.88).sd // 2
 * @example lookDoubt('screen', 3, { after: 'hot' }).bound // 5
 */
export function lookDoubt(means: LookMeans, stated?: number, { after, wet }: LookedVaguely = {}): LookDoubt {
  const bound = Math.hypot(stated ?? USUAL_BOUND[means], after === 'hot' ? HOT : 0, wet ? WET : 0);
  const sd = bound / BOUND_IN_SD;
  return { means, bound, sd, axisSd: sd / Math.sqrt(AXES), ...(stated === undefined ? { usual: true as const } : {}) };
}
