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
  readonly goesIn: 'cold' | 'off-heat' | 'sinks';
  /** Whether it is dried and kept warm before it goes in: damp, it spits, and cold, it cools the cup. */
  readonly dried: boolean;
  /** Whether heat spoils it: of what no heat at a bench spoils, nobody asks the supplier. */
  readonly scorches: boolean;
  /**
   * Most that a cup takes, as a part of its plastic's mass, where a file has no `most`; unset: see `src/kinds/together.ts`. Usual are of
   * stabiliser 0.3 to 1 %, and more clouds; of scent 1 to 3 %. Of hardener no figure is known: as of its opposite.
   */
  readonly most?: number;
  /** Words that makers use for it. */
  readonly alsoCalled: readonly string[];
}

const ENTRIES = {
  softener: { solid: false, goesIn: 'cold', dried: false, scorches: true, alsoCalled: ['plasticiser', 'plasticizer'] },
  hardener: { solid: false, goesIn: 'cold', dried: false, scorches: true, most: 0.2, alsoCalled: [] },
  stabiliser: {
    solid: false,
    goesIn: 'cold',
    dried: false,
    scorches: true,
    most: 0.02,
    alsoCalled: ['stabilizer', 'heat stabiliser', 'heat stabilizer', 'heat guard'],
  },
  scent: { solid: false, goesIn: 'off-heat', dried: false, scorches: true, most: 0.03, alsoCalled: ['attractant'] },
  salt: { solid: true, goesIn: 'sinks', dried: true, scorches: false, alsoCalled: [] },
} as const satisfies Readonly<Record<string, UseEntry>>;

/** What an additive is for. */
export type AdditiveUse = keyof typeof ENTRIES;

export const ADDITIVE_USES: Readonly<Record<AdditiveUse, UseEntry>> = ENTRIES;

/** Their names, as they are written in an additive's file. */
export const USE_NAMES = Object.keys(ENTRIES) as readonly AdditiveUse[];

/** Whether no heat at a bench spoils a material, so that nobody asks for a highest temperature that its file does not say. */
export function isHeatProof(material: { readonly use?: AdditiveUse; readonly highest?: number } | undefined): boolean {
  const { use, highest } = material ?? {};
  return highest === undefined && use !== undefined && !ADDITIVE_USES[use].scorches;
}
