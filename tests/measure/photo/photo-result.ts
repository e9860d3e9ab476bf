/**
 * What came of one photo of the bench: plain values that are kept.
 *
 * @packageDocumentation
 */

/** What was measured with one kind of card, beside the truth. Colours are off in ΔE00. */
export interface Outcome {
  /** Why nothing was measured. */
  readonly refused?: string;
  readonly white?: number;
  readonly black?: number;
  /** The stated doubt, nine in ten within; and its largest term. */
  readonly bound?: number;
  readonly largest?: string;
  /** Measured less true ratio, and its stated bound. */
  readonly contrast?: number;
  readonly contrastBound?: number;
  readonly warnings?: readonly string[];
}

/** Flake that was measured, beside that of the zone that was looked at. */
export interface FlakeOutcome {
  readonly coverage: number;
  readonly trueCoverage: number;
  readonly sizeMm: number;
  readonly trueSizeMm: number;
  readonly kinds: number;
  readonly name: string;
}

/** One photo. */
export interface PhotoResult {
  readonly set: string;
  readonly seed: number;
  /** Seed of its bait, print and phone: the same in photos that are averaged. */
  readonly bait: number;
  readonly light: 'daylight' | 'LED' | 'incandescent';
  readonly kelvin: number;
  readonly shape: 'worm' | 'chip';
  /** Whether the card was read, and how far its places are off, mm: root mean square over the window. */
  readonly cardFound: boolean;
  readonly placeMm?: number;
  /** A card that nobody has measured, and one with its paper, black and greys known. */
  readonly anyCard: Outcome;
  readonly certified: Outcome;
  /** One touched spot and a touched white, as without a card. */
  readonly touched: Outcome;
  /** Undefined where none was there; none measured where `coverage` is 0. */
  readonly flake?: FlakeOutcome;
  /** What was seen of flake where there is none. */
  readonly falseFlake?: number;
  readonly cpuSeconds: { readonly taken: number; readonly measured: number };
}
