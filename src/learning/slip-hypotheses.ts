/**
 * What may really have gone into a cup, where its looks do not fit its log from some look on.
 *
 * @packageDocumentation
 */
import { CupOfLooks } from './cup-of-looks.ts';
import type { TaughtLook, TaughtMaterial } from './learning-data.ts';
import type { LogSlip } from './log-fault.ts';
import type { ShelfUnknowns } from './shelf-unknowns.ts';

/** A slip, not yet judged. */
export type ThoughtOf =
  Exclude<LogSlip, { kind: 'bad-look' }> extends infer Slip
    ? Slip extends LogSlip
      ? Omit<Slip, 'likely'>
      : never
    : never;

/** One slip, in several sizes. */
export interface SlipFamily {
  /** Of slips of one name only one is told. */
  readonly name: string;
  /** By rising size. */
  readonly slips: readonly ThoughtOf[];
  /** ln of how many times as rare it is as a look that is wrong. */
  readonly rarer: number;
  /** What the looks at the cup would have been at, those before it as they are. */
  readonly looksAfter: (slip: ThoughtOf) => readonly TaughtLook[];
}

/** What is on a shelf. */
export interface Bottles {
  readonly materials: readonly TaughtMaterial[];
  readonly unknowns: ShelfUnknowns;
}

/** Something that is not logged went in at one of these parts of its usual dose. */
const EXTRA_DOSES = [0.056, 0.1, 0.18, 0.32, 0.56, 1, 1.8];

/** A count, or a decimal point, that slipped. */
const SLIPPED_TIMES = [0.1, 0.5, 2, 10];

// Nobody makes a certain slip as often as a look goes wrong. From our own study on simulated benches.
const RARER = 4;

// A bottle is less often taken for one of another kind: convention of this book.
const OF_ANOTHER_KIND = 1;

/**
 * All slips that are thought of: each addition before the first look that does not fit left out, miscounted, and taken from each other
 * bottle, as much of it by weight or as many drops; a dose of each material beside what is logged, in seven sizes.
 *
 * @param looks of one cup, by round
 * @param first place of the first that does not fit
 */
export function slipHypotheses(
  { materials, unknowns }: Bottles,
  looks: readonly TaughtLook[],
  first: number,
): readonly SlipFamily[] {
  const kinds = new Map(materials.map(({ id, prior }) => [id, prior.kind]));
  const bottles = materials.flatMap(({ id, prior }) => (prior.kind === 'plastic' ? [] : id));
  const usual = (id: string): number => unknowns.materials[unknowns.placeOf.get(id)!]!.typical;
  return looks[first]!.layers.flatMap((_, layer) => {
    const cup = new CupOfLooks(looks, first, layer);
    const added = cup.added();
    const family = (name: readonly string[], slips: readonly ThoughtOf[], rarer = RARER): SlipFamily => ({
      name: JSON.stringify([layer, ...name]),
      slips,
      rarer,
      looksAfter: (slip) => cup.after(slip, added.get(slip.material) ?? 0),
    });
    const ofAdditions = [...added].flatMap(([material, gramsPerMl]) => [
      family(['left-out', material], [{ kind: 'left-out', material, layer, gramsPerMl }]),
      family(
        ['more', material],
        SLIPPED_TIMES.map((times) => ({ kind: 'miscounted', times, material, layer, gramsPerMl: times * gramsPerMl })),
      ),
      ...bottles.flatMap((instead): SlipFamily[] => {
        // Nobody takes flake for drops.
        if (instead === material || (kinds.get(instead) === 'flake') !== (kinds.get(material) === 'flake')) return [];
        const doses = [...new Set([gramsPerMl, (gramsPerMl * usual(instead)) / usual(material)])];
        const slips = doses.map((dose) => ({ kind: 'swapped', material, instead, layer, gramsPerMl: dose }) as const);
        const isOther = kinds.get(material) !== kinds.get(instead);
        return [family(['swapped', material, instead], slips, RARER + (isOther ? OF_ANOTHER_KIND : 0))];
      }),
    ]);
    const extra = bottles.map((material) =>
      family(
        ['more', material],
        EXTRA_DOSES.map((part) => ({ kind: 'extra', material, layer, gramsPerMl: part * usual(material) })),
      ),
    );
    return [...ofAdditions, ...extra];
  });
}
