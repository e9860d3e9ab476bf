import type { CupFlake } from '../matching/proposals/cup-flakes.ts';
import type { FlakeNow } from '../matching/proposals/flakes-now.ts';
import type { FlakeChoice } from '../matching/substitutes/flake-match.ts';
import { LEAST_CONTRAST, type SeenFlake } from '../optics/seen-coverage.ts';
import { lengthText } from '../units/length-text.ts';
import type { VolumeUnit } from '../units/volume-text.ts';
import { counted, listText } from './sentence-text.ts';

/** A flake that is chosen for a part of a target. */
export function flakeChoiceText(
  { part, ...choice }: FlakeChoice & { readonly part?: string },
  units: VolumeUnit,
): string {
  return `Flake${part === undefined ? '' : ` of the ${part}`}: ${choice.title}, ${flakeText(choice, units)}.`;
}

/**
 * A flake beside the one that is wanted: "the same size, a little greener and hologram instead of metallic"; behind one that jams in the
 * mold stands ", but too large for the gate: 3 mm where it needs 6.3 mm".
 */
export function flakeText({ sizeRatio, deltaE, towards, finishes, narrow }: FlakeChoice, units: VolumeUnit): string {
  const turns = Math.abs(Math.log2(sizeRatio));
  const like = listText([
    turns < 0.08
      ? 'the same size'
      : `${turns < 0.5 ? 'a little ' : turns > 1.2 ? 'much ' : ''}${sizeRatio > 1 ? 'larger' : 'smaller'}`,
    deltaE < 2 ? 'the same colour' : `${deltaE < 6 ? 'a little ' : deltaE > 20 ? 'much ' : ''}${towards}`,
    ...(finishes === undefined ? [] : [`${finishes.finish} instead of ${finishes.wanted}`]),
  ]);
  if (narrow === undefined) return like;
  const { at, mm, leastMm } = narrow;
  const part = at === 'gate' ? 'gate' : 'thin part of the mold';
  return `${like}, but too large for the ${part}: ${lengthText(mm, units)} where it needs ${lengthText(leastMm, units)}`;
}

/** How much of it is seen: "shows on about 12 % of its face". */
export function seenFlakeText({ seen, contrast }: { readonly seen: number } & Pick<SeenFlake, 'contrast'>): string {
  if (contrast < LEAST_CONTRAST) return 'can hardly be told from the plastic';
  return `shows on ${shareText(seen)} of its face`;
}

/** How much of all kinds of a cup is seen: of each the first one that is met, so that they add up. */
export function allFlakeText(flakes: readonly { readonly seen: number }[]): string {
  return `shows on ${shareText(flakes.reduce((sum, { seen }) => sum + seen, 0))} of its face`;
}

function shareText(share: number): string {
  return share < 0.01 ? 'less than 1 %' : `about ${Math.round(share * 100)} %`;
}

/** Up to here flakes are counted one by one; above, a count comes from what one weighs on average, to two digits. */
const COUNTED = 10;
const LEAST_COUNT = 0.6;

/** How many are in a bait: "about 150 flakes a bait", "3 flakes a bait", "a flake in one bait of 4". */
export function flakesABaitText(count: number): string {
  if (count < LEAST_COUNT) return `a flake in one bait of ${Math.round(1 / Math.max(count, 0.001))}`;
  if (count < COUNTED) return `${counted(Math.round(count), 'flake')} a bait`;
  return `about ${counted(Number(count.toPrecision(2)), 'flake')} a bait`;
}

/** So much more flake than is wanted is told of. Convention of this book. */
const TOO_MUCH = 1.4;

/** A bait that a cup is for: what its cavity holds, and the cup's share of that. */
export interface FlakedBait {
  readonly cavityMl: number;
  readonly share: number;
}

/** A flake of a proposed cup: "Copper shows on about 10 % of its face, about 150 flakes a bait". */
export function cupFlakeText({ title, perMl, wanted, atMost, ...seen }: CupFlake, bait?: FlakedBait): string {
  const count = bait === undefined ? '' : `, ${flakesABaitText(perMl * bait.cavityMl * bait.share)}`;
  const isScarce = atMost && seen.contrast >= LEAST_CONTRAST;
  const short =
    isScarce && wanted !== undefined ? `; ${shareText(wanted)} is wanted, and a cup takes no more of it` : '';
  return `${title} ${seenFlakeText(seen)}${count}${short}`;
}

/** A flake of a cup now, with what is missing of it: "Copper shows on about 4 % of its face; about 10 % is wanted: add 1/4 tsp, last of all". */
export function flakeNowText({ more, ...flake }: FlakeNow, bait?: FlakedBait): string {
  const { title, seen, wanted, atMost, perMl } = flake;
  const now = perMl > 0 ? cupFlakeText(flake, bait) : `${title} isn’t in it yet`;
  if (wanted === undefined || (atMost && more === undefined)) return now;
  const asked = `${shareText(wanted)} is wanted`;
  if (more) return `${now}; ${atMost ? '' : `${asked}: `}add ${more.text}, last of all`;
  return seen > TOO_MUCH * wanted ? `${now}; ${asked}: only clear plastic brings it down` : now;
}

/** How many flakes of an amount are in a bait of each mold of a batch; undefined of what is no flake. */
export function batchFlakesText(
  counts: readonly { readonly mold: string; readonly count: number }[] | undefined,
  mold: (id: string) => string,
): string | undefined {
  if (counts === undefined || counts.length === 0) return undefined;
  if (counts.length === 1) return flakesABaitText(counts[0]!.count);
  return listText(counts.map((each) => `${flakesABaitText(each.count)} of ${mold(each.mold)}`));
}
