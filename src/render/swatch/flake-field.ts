/**
 * Flake as it lies in a bait, seen from outside: how many, how deep, turned how far, at their true sizes.
 *
 * Units: mm; densities in flakes per ml.
 *
 * @packageDocumentation
 */
import type { FlakeLook } from '../../book/model/cup.ts';
import { randomFrom } from '../../values/random-from.ts';

/** One kind of flake in a cup, as far as it is drawn. */
export type FlakeKind = Pick<FlakeLook, 'hex' | 'sizeMm' | 'longMm' | 'outline' | 'finish' | 'flakesPerMl'>;

/** The plastic that the flake lies in. */
export interface Depth {
  readonly thicknessMm: number;
  /** Of that thickness: what it hides of its backing, it hides of a flake at its bottom. */
  readonly contrastRatio: number;
  /** Whether all flakes lie flat, as on a table, and none is tilted. */
  readonly flat?: boolean;
}

/** One flake of the drawing. */
export interface PlacedFlake {
  readonly x: number;
  readonly y: number;
  /** How far it is turned in its own plane, and which way it is tilted, in radians. */
  readonly turn: number;
  readonly tilt: number;
  /** Cosine of the tilt: 1 lies flat, 0 stands on its edge. */
  readonly facing: number;
  /** Plastic above it, mm. */
  readonly deepMm: number;
  /** How much of it is seen through that plastic, 0..1. */
  readonly visible: number;
  /** 0..1, what the light does on this flake. */
  readonly glint: number;
}

/** A square of flakes that repeats without a seam. */
export interface FlakeField {
  readonly sideMm: number;
  readonly flakes: readonly PlacedFlake[];
}

/** Flakes that are fainter than this are not drawn. */
const FAINTEST = 0.08;
/** A square is not larger than this: a bait's width; sparse flake needs room to be sparse in. */
const LARGEST_SIDE = 40;
const SMALLEST_SIDE = 3.2;
/** Flakes below this size are dots: their shape can't be seen on a page, and a dot takes a third of the text of an outline. */
const DOT_BELOW_MM = 0.45;
const DOT_WEIGHT = 0.33;

/** Whether a kind is too fine for its shape to be seen. */
export function isDot({ sizeMm, longMm }: Pick<FlakeKind, 'sizeMm' | 'longMm'>): boolean {
  return Math.max(sizeMm, longMm ?? 0) < DOT_BELOW_MM;
}

/**
 * Depth to which flake is seen.
 *
 * What lies at depth z is seen by the part (1 − CR)^(z / thickness), CR the contrast ratio: the exponential that gives 1 at
 * the surface and, at the back, what is still seen of the backing.
 */
export function seenDepth({ thicknessMm, contrastRatio }: Depth): number {
  const back = Math.max(1 - contrastRatio, 1e-6);
  return back >= FAINTEST ? thicknessMm : (thicknessMm * Math.log(FAINTEST)) / Math.log(back);
}

/**
 * Places the flakes of one kind.
 *
 * Positions and orientations are uniform, as in a stirred cup, and independent but for the finest flake. The square is as
 * large as the budget of flakes allows, so that the density is true whatever the budget.
 *
 * @param seed decides the places; the same text, the same flakes
 * @param budget most flakes to draw
 */
export function flakeField(kind: FlakeKind, depth: Depth, seed: string, budget: number): FlakeField {
  const deep = seenDepth(depth);
  const perSquareMm = (kind.flakesPerMl * deep) / 1000;
  const dots = isDot(kind);
  const wanted = perSquareMm > 0 ? Math.sqrt(budget / perSquareMm / (dots ? DOT_WEIGHT : 1)) : 0;
  const sideMm = Math.min(LARGEST_SIDE, Math.max(SMALLEST_SIDE, 3 * (kind.longMm ?? kind.sizeMm), wanted));
  const random = randomFrom(seed);
  const fade = Math.log(Math.max(1 - depth.contrastRatio, 1e-6)) / depth.thicknessMm;
  // The fraction left over is a flake in that fraction of colours, so sparse flake is neither lost nor doubled.
  const count = Math.floor(perSquareMm * sideMm * sideMm + random());
  // Dots lie one to a cell: a cluster of dots would be seen again and again where the square repeats.
  const cells = dots ? Math.ceil(Math.sqrt(count)) : 1;
  const span = sideMm / cells;
  const ranks = shuffled(count, random);
  const flakes = Array.from({ length: count }, (_, number): PlacedFlake => {
    const cell = Math.floor((number * cells * cells) / count);
    const [column, row] = dots ? [cell % cells, Math.floor(cell / cells)] : [0, 0];
    // One to each of as many slices of the depth, so that a thinner part, which has the upper slices, has its true share.
    const deepMm = ((ranks[number]! + random()) / count) * deep;
    return {
      x: (column + random()) * span,
      y: (row + random()) * span,
      turn: random() * 2 * Math.PI,
      tilt: random() * 2 * Math.PI,
      // The cosine of a direction drawn evenly from the sphere is itself even, which gives Cauchy's mean of one half.
      facing: depth.flat ? 1 : random(),
      deepMm,
      visible: Math.exp(fade * deepMm),
      glint: random(),
    };
  });
  // The deepest first, so that the near ones lie over them.
  flakes.sort((one, other) => other.deepMm - one.deepMm);
  return { sideMm, flakes };
}

/** The numbers from 0 up to a count, in random order (Fisher & Yates). */
function shuffled(count: number, random: () => number): readonly number[] {
  const numbers = Array.from({ length: count }, (_, number) => number);
  for (let last = count - 1; last > 0; last--) {
    const at = Math.floor(random() * (last + 1));
    [numbers[last], numbers[at]] = [numbers[at]!, numbers[last]!];
  }
  return numbers;
}
