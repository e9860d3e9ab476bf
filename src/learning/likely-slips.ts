import { type HeldAgainst, HeldLooks } from './held-looks.ts';
import type { TaughtLook, TaughtMaterial } from './learning-data.ts';
import type { LogSlip } from './log-fault.ts';
import { cupBlock } from './shelf-problem.ts';
import { type SlipFamily, slipHypotheses, type ThoughtOf } from './slip-hypotheses.ts';
import { lookedElsewhere } from './suspect-looks.ts';

/** So many are kept. */
const MOST_SLIPS = 3;

// So many slips are judged by all looks at the cup, after all were by the first that does not fit, every other size of them.
const JUDGED_BY_ALL = 20;

interface Scored {
  readonly family: SlipFamily;
  /** Place among the sizes of the family. */
  readonly size: number;
  /** ln of how likely the slip is, and what was seen after it. */
  readonly score: number;
}

/**
 * The likeliest slips that make looks at a cup what they are, judged on all of them together.
 *
 * @param held the looks as logged
 * @param first place of the first look that does not fit
 */
export function likelySlips(
  held: HeldLooks,
  first: number,
  against: HeldAgainst,
  materials: readonly TaughtMaterial[],
): readonly LogSlip[] {
  const { unknowns } = against.state;
  const { cup, looks } = held.block;
  const scored = (
    family: SlipFamily,
    size: number,
    judged: (looks: readonly TaughtLook[]) => readonly TaughtLook[],
  ): Scored => {
    const seen = judged(family.looksAfter(family.slips[size]!));
    const block = cupBlock(unknowns, cup, Array.from(seen.entries()));
    return { family, size, score: new HeldLooks(block, against).logDensity() - family.rarer };
  };
  const byFirst = slipHypotheses({ materials, unknowns }, looks, first).map((family) =>
    likeliest(everyOther(family).map((size) => scored(family, size, (after) => [after[first]!]))),
  );
  const best = new Map<string, Scored>();
  for (const { family, size } of byFirst.sort(byScore).slice(0, JUDGED_BY_ALL)) {
    const near = [size - 1, size, size + 1].filter((each) => each >= 0 && each < family.slips.length);
    const found = likeliest(near.map((each) => scored(family, each, (after) => after)));
    const other = best.get(family.name);
    if (!other || found.score > other.score) best.set(family.name, found);
  }
  return ranked([...best.values()], held.logDensity(lookedElsewhere(first)));
}

const byScore = (one: Scored, other: Scored): number => other.score - one.score;

const likeliest = (all: readonly Scored[]): Scored =>
  all.reduce((best, each) => (each.score > best.score ? each : best));

/** Of many sizes every other one, from the second on: their neighbours are tried later. */
function everyOther({ slips }: SlipFamily): readonly number[] {
  const all = Array.from(slips.keys());
  return all.length > 2 ? all.filter((size) => size % 2 === 1) : all;
}

function ranked(slips: readonly Scored[], badLook: number): readonly LogSlip[] {
  const most = Math.max(badLook, ...slips.map(({ score }) => score));
  const share = (score: number): number => Math.exp(score - most);
  const sum = slips.reduce((total, { score }) => total + share(score), share(badLook));
  const likely = (score: number): number => Number((share(score) / sum).toPrecision(3));
  const all = [
    { slip: { kind: 'bad-look' } as const, score: badLook },
    ...slips.map(({ family, size, score }) => ({ slip: family.slips[size]!, score })),
  ];
  return all
    .sort((one, other) => other.score - one.score)
    .slice(0, MOST_SLIPS)
    .map(({ slip, score }): LogSlip => ({ ...(slip as ThoughtOf), likely: likely(score) }));
}
