/**
 * How a mold is filled: all that the book knows of a method stands in its entry. Common practice, no source.
 *
 * @packageDocumentation
 */

interface MethodEntry {
  /** Plastic lost on the way, as a part of what baits and sprues take, where nobody says: 10 to 20 % injected, 5 to 10 % by hand. */
  readonly loss: number;
  /** Whether plastic gets into the mold out of an injector. */
  readonly injects: boolean;
  /** Words that makers use for it. */
  readonly alsoCalled: readonly string[];
}

const ENTRIES = {
  injected: { loss: 0.15, injects: true, alsoCalled: ['injection', 'inject', 'shot', 'hand injected'] },
  poured: { loss: 0.08, injects: false, alsoCalled: ['pour', 'open pour', 'open', 'hand poured'] },
  dipped: { loss: 0.1, injects: false, alsoCalled: ['dip', 'rods'] },
} as const satisfies Readonly<Record<string, MethodEntry>>;

/** How a mold is filled. */
export type Method = keyof typeof ENTRIES;

export const METHODS: Readonly<Record<Method, MethodEntry>> = ENTRIES;

/** Their names, as they are written in a mold's file. */
export const METHOD_NAMES = Object.keys(ENTRIES) as readonly Method[];
