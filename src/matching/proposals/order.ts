/**
 * Which of several proposals a maker takes first, decided by named figures alone.
 *
 * @packageDocumentation
 */
import { type Expectation, isLikelyRight } from '../belief/expectation.ts';

/** What a proposal is chosen by. */
export interface Figures extends Omit<Expectation, 'bound90'> {
  /** Whether the cup then holds more of a sort together than cups usually do, so that `check` warns of it. */
  readonly isOverfull: boolean;
  /** ΔE00 by which drops, spoons or the scale scatter it, one standard deviation. */
  readonly scatter: number;
  /** Bottles in it that nobody knows yet: of one alone a look at this tells. */
  readonly untried: number;
  /** Bottles to open; one that the cup has nothing of yet counts twice. */
  readonly bottles: number;
  /** Liquid colour that goes in, as a part of the plastic's volume. */
  readonly liquid: number;
  /** Largest ΔE00 to the target under the other lights. */
  readonly lampDeltaE: number;
  /** How far in hue its bottles are from the target: 0 its own hue, 1 the opposite one; the mean by what each gives. */
  readonly hueAway: number;
  /** What goes in of black, in typical doses. */
  readonly black: number;
  readonly cost: number;
  /** Materials, by which two proposals are the same or not. */
  readonly names: readonly string[];
}

/** What the figures of some proposals are measured by: the same for all that are compared. */
export interface Yardstick {
  /** ΔE00 that counts as a match. */
  readonly tolerance: number;
  /** The least ΔE00 that is to be expected of any of them. */
  readonly least: number;
  /** Differences below this are none: nobody makes that proposal the same twice, ΔE00. */
  readonly step: number;
}

// Steps within which two figures count as alike. All are conventions of this book.
/** ΔE00: what a drop more or less scatters a colour by, where nothing was measured. */
export const DROP_SCATTER = 0.5;
/** Of the plastic's volume: some six drops in a cup of 120 ml. */
const LIQUID_STEP = 0.0025;
const LAMP_STEP = 1;
/** An eighth of the way to the opposite hue: bottles of one family. */
const HUE_STEP = 1 / 8;
const BLACK_STEP = 0.1;

/** ΔE00 of a first pour that knowing one more bottle is worth, in all the pours to come. Found by `npm run bench foreign`, on books that are not reported. */
const WORTH_TRYING = 1.5;

/**
 * What some proposals are compared by: the nearest of them, and what making that one scatters its ΔE00, `DROP_SCATTER` at least.
 *
 * Colours scatter to all sides, and only what lies along the difference to the target makes that larger or smaller: of three axes one.
 */
export function yardstickFor(
  proposals: readonly Pick<Figures, 'expected' | 'scatter'>[],
  tolerance: number,
): Yardstick {
  const least = Math.min(...proposals.map(({ expected }) => expected));
  const scatters = proposals.flatMap(({ expected, scatter }) => (expected === least ? [scatter] : []));
  return { tolerance, least, step: Math.max(DROP_SCATTER, Math.min(...scatters) / Math.sqrt(3)) };
}

/**
 * The order of two proposals, below 0 where the first comes first: by the ΔE00 to be expected, in steps of what making them scatters it,
 * where all that is likely right counts as the nearest, and what tries one bottle as `WORTH_TRYING` nearer. Of those what leaves no cup too full; what is likely right; what tries one bottle that
 * nobody knows yet, for a careful choice never learns what it never takes; then the fewest bottles, the least liquid, the safest under other
 * lights, the nearest hues, the least black; and only then the smaller difference and the lower cost.
 *
 * Every figure counts in steps that are the same for all, so that the order is one whichever proposals are compared.
 */
export function inOrder(one: Figures, other: Figures, yardstick: Yardstick): number {
  const [first, second] = [places(one, yardstick), places(other, yardstick)];
  for (const [index, place] of first.entries()) {
    const apart = place - second[index]!;
    if (apart !== 0) return apart;
  }
  const [name, otherName] = [one.names.join(), other.names.join()];
  if (name !== otherName) return name < otherName ? -1 : 1;
  // The same materials in nearly the same amounts: by the last digit, so that it does not matter which was found first.
  for (const figure of FIGURES) if (one[figure] !== other[figure]) return one[figure] - other[figure];
  return 0;
}

const FIGURES = [
  'expected',
  'likely',
  'liquid',
  'black',
  'scatter',
  'bottles',
  'lampDeltaE',
  'hueAway',
  'cost',
] as const;

function places(figures: Figures, { tolerance, least, step: apart }: Yardstick): readonly number[] {
  const { expected, isOverfull, untried, bottles, liquid, lampDeltaE, hueAway, black, cost } = figures;
  const isRight = isLikelyRight(figures);
  return [
    isRight ? 0 : Math.max(0, Math.floor((expected - (untried === 1 ? WORTH_TRYING : 0) - least) / apart)),
    isOverfull ? 1 : 0,
    isRight ? 0 : 1,
    untried === 1 ? 0 : 1,
    bottles,
    step(liquid, LIQUID_STEP),
    step(lampDeltaE, LAMP_STEP),
    step(hueAway, HUE_STEP),
    step(black, BLACK_STEP),
    step(expected, tolerance / 20),
    step(cost, 1e-6),
  ];
}

function step(figure: number, size: number): number {
  return Math.round(figure / size);
}

// More materials for less than this part of the tolerance are no other proposal.
const WORTH_MORE = 0.15;

/**
 * The first few of some proposals, in their order; without those that only add something to one that comes before, or leave something out
 * of it, for no gain. Where all of them would try bottles, the last gives way to the first that tries none: nobody has to.
 */
export function firstOf<T>(
  proposals: readonly T[],
  figuresOf: (proposal: T) => Figures,
  tolerance: number,
  count: number,
): readonly T[] {
  const ranked = proposals.map((proposal) => ({ proposal, figures: figuresOf(proposal) }));
  const yardstick = yardstickFor(
    ranked.map(({ figures }) => figures),
    tolerance,
  );
  ranked.sort((one, other) => inOrder(one.figures, other.figures, yardstick));
  const kept: typeof ranked = [];
  for (const next of ranked) {
    if (kept.length >= count) break;
    if (!kept.some((other) => isNoOther(next.figures, other.figures, tolerance))) kept.push(next);
  }
  const known = ranked.find(({ figures }) => figures.untried === 0);
  if (known && count > 1 && kept.length === count && kept.every(({ figures }) => figures.untried > 0))
    kept.splice(-1, 1, known);
  return kept.map(({ proposal }) => proposal);
}

function isNoOther(next: Figures, before: Figures, tolerance: number): boolean {
  const alike =
    before.names.every((name) => next.names.includes(name)) || next.names.every((name) => before.names.includes(name));
  // What is all of known bottles is another proposal than what tries one.
  if (before.untried > 0 && next.untried === 0) return false;
  return alike && next.expected > before.expected - WORTH_MORE * tolerance;
}
