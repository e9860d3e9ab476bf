/**
 * The bait of a mold in space, drawn so that it holds what the mold says.
 *
 * @packageDocumentation
 */
import { fieldVolumeMl } from './bait-field.ts';
import { drawSolid } from './drawings.ts';
import { reachOf } from './reach.ts';
import type { ShapedMold } from './shaped-mold.ts';
import type { BaitSolid } from './solid.ts';
import { solidField } from './solid-field.ts';

/**
 * How full a bait is drawn, by one number from lean, through 0, as we would draw it, to stout: its outline's height, how fast it thins
 * out towards its ends, and how square its section is.
 */
function drawn({ shape, bodyMm, thinMm }: ShapedMold, lengthMm: number, fullness: number): BaitSolid {
  const heightMm = bodyMm * (1 + (fullness > 0 ? 0.35 : 0.3) * fullness);
  const girthExponent = 0.92 - 0.25 * fullness;
  return drawSolid(shape, { lengthMm, bodyMm, thinMm, heightMm, girthExponent }, 2.2 + 0.5 * fullness);
}

/** The leanest and the stoutest that we draw: about 0.3 and 1 to 1.4 of a round bar as long and as thick. */
const FULLNESS = [-1.4, 1.8] as const;

/** Pixels a mm at which a volume is counted. */
const COUNTED_AT = 4;

/** Volume of a bait in space, ml. */
export function solidVolumeMl(solid: BaitSolid): number {
  const { up, down, left, right } = reachOf(solid);
  const frame = {
    columns: Math.ceil((left + right) * COUNTED_AT) + 4,
    rows: Math.ceil((up + down) * COUNTED_AT) + 4,
    pixelsPerMm: COUNTED_AT,
    noseX: left * COUNTED_AT + 2,
    noseY: up * COUNTED_AT + 2,
  };
  // Dents take nothing from the thickness.
  return fieldVolumeMl(solidField({ ...solid, grooves: [], eyes: [] }, frame));
}

/** The number between two at which a rising function is a value, or the nearer of the two; by false position (Dowell & Jarratt 1971, from memory). */
function solved(value: (at: number) => number, wanted: number, from: number, to: number): number {
  let [low, high] = [from, to];
  let [below, above] = [value(low) - wanted, value(high) - wanted];
  if (below >= 0) return low;
  if (above <= 0) return high;
  for (let step = 0; step < 12; step++) {
    const at = low + ((high - low) * below) / (below - above);
    const off = value(at) - wanted;
    if (Math.abs(off) < 0.002 * wanted) return at;
    if (off < 0) {
      [low, below, above] = [at, off, above / 2];
    } else {
      [high, above, below] = [at, off, below / 2];
    }
  }
  return (low + high) / 2;
}

/** Length of a mold's bait that does not state it, in thicknesses of its body, at least and at most. */
const LENGTHS = [2, 16] as const;

/** Molds of which the bait is kept, since to find how full it is takes many tries. */
const MOST_KEPT = 200;
const kept = new Map<string, BaitSolid>();

/**
 * The bait of a mold in space.
 *
 * As long as the mold says, or as its volume and thickness let it be; then as full as it takes to hold the cavity's volume, within what its
 * shape bears. Where the mold does not state a volume, as we would draw it.
 */
export function baitSolid(mold: ShapedMold): BaitSolid {
  const { shape, cavityMl, bodyMm, thinMm, lengthMm } = mold;
  const key = JSON.stringify([shape, cavityMl, bodyMm, thinMm, lengthMm]);
  const solid = kept.get(key) ?? solve(mold);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, solid);
  return solid;
}

/** Length of a bait of which nothing tells it, in thicknesses of its body. */
const USUAL_LENGTH = 8;

function solve(mold: ShapedMold): BaitSolid {
  const { lengthMm, cavityMl, bodyMm } = mold;
  if (cavityMl === undefined) return drawn(mold, lengthMm ?? USUAL_LENGTH * bodyMm, 0);
  const volume = (long: number, fullness: number): number => solidVolumeMl(drawn(mold, long, fullness));
  const [shortest, longest] = LENGTHS;
  const length = lengthMm ?? solved((bodies) => volume(bodies * bodyMm, 0), cavityMl, shortest, longest) * bodyMm;
  return drawn(
    mold,
    length,
    solved((fullness) => volume(length, fullness), cavityMl, ...FULLNESS),
  );
}
