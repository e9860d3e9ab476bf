import type { ChipToPour } from './chip-candidates.ts';

// Of each bottle, and of all: more pairs choose hardly better, and take longer. Conventions of this book.
const OF_EACH = 2;
const IN_ALL = 40;

/**
 * Chips of two bottles at once: of each bottle the chips that tell most by themselves, two by two in one cup.
 *
 * @param gains what each chip tells by itself
 */
export function pairedChips(chips: readonly ChipToPour[], gains: ArrayLike<number>): readonly ChipToPour[] {
  const kept = mostTellingOfEach(chips, gains);
  return kept.flatMap((one, at) =>
    kept.slice(at + 1).flatMap((other) => (share(one, other) ? [] : [together(one, other)])),
  );
}

function mostTellingOfEach(chips: readonly ChipToPour[], gains: ArrayLike<number>): readonly ChipToPour[] {
  const kept: ChipToPour[] = [];
  const ofEach = new Map<string, number>();
  for (const place of [...chips.keys()].sort((one, other) => gains[other]! - gains[one]! || one - other)) {
    const chip = chips[place]!;
    if (chip.doses.length > 1) continue;
    const count = ofEach.get(bottleOf(chip)) ?? 0;
    if (count === OF_EACH) continue;
    ofEach.set(bottleOf(chip), count + 1);
    kept.push(chip);
    if (kept.length === IN_ALL) break;
  }
  return kept;
}

/** What a chip is of, before the white that goes with it. */
const bottleOf = ({ doses }: ChipToPour): string => doses[0]!.material;

function share(one: ChipToPour, other: ChipToPour): boolean {
  return one.doses.some(({ material }) => other.doses.some((each) => each.material === material));
}

function together(one: ChipToPour, other: ChipToPour): ChipToPour {
  const [first, ...withFirst] = one.doses;
  const [second, ...withSecond] = other.doses;
  return { ...one, doses: [first!, second!, ...withFirst, ...withSecond] };
}
