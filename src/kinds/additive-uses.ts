/**
 * What additives are for: all that the book knows of a use stands in its entry. Common practice, no source.
 *
 * @packageDocumentation
 */

interface UseEntry {
  /** Whether one of it is spooned and sinks, where its file says neither how it is dropped nor what it weighs. */
  readonly solid: boolean;
  /**
   * When it goes into a cup, whatever heat it bears: a heat guard is to be there before the heat is, a softener is part of the plastic, and a scent
   * boils off and smokes.
   */
  readonly goesIn: 'cold' | 'last and off the heat' | 'with what sinks';
  /** Words that makers use for it. */
  readonly alsoCalled: readonly string[];
}

const ENTRIES = {
  softener: { solid: false, goesIn: 'cold', alsoCalled: ['plasticiser', 'plasticizer'] },
  hardener: { solid: false, goesIn: 'cold', alsoCalled: [] },
  stabiliser: {
    solid: false,
    goesIn: 'cold',
    alsoCalled: ['stabilizer', 'heat stabiliser', 'heat stabilizer', 'heat guard'],
  },
  scent: { solid: false, goesIn: 'last and off the heat', alsoCalled: ['attractant'] },
  salt: { solid: true, goesIn: 'with what sinks', alsoCalled: [] },
} as const satisfies Readonly<Record<string, UseEntry>>;

/** What an additive is for. */
export type AdditiveUse = keyof typeof ENTRIES;

export const ADDITIVE_USES: Readonly<Record<AdditiveUse, UseEntry>> = ENTRIES;

/** Their names, as they are written in an additive's file. */
export const USE_NAMES = Object.keys(ENTRIES) as readonly AdditiveUse[];
