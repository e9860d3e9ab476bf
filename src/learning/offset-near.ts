/**
 * What looks add to the model near a cup, for searches that ask thousands of times.
 *
 * @packageDocumentation
 */
import type { TwoViews } from '../optics/cup-body.ts';
import { inverseMetric, localMetric } from '../optics/local-metric.ts';
import { ALIKE_WITHIN } from '../tables/model-discrepancy.ts';
import type { BelievedCup } from './asked-views.ts';
import { type CompositionPoint, compositionPoint, doseCoordinate } from './composition-point.ts';
import { BOTH_AXES, VIEW_AXES } from './linear-views.ts';
import type { ShelfUnknowns } from './shelf-unknowns.ts';

/** Steps in Lab over white and over black. */
export type LabOffsets = TwoViews;

/** Squared distance from which on a look says nothing: it would say less than a part in a thousand of what it says of its own cup. */
const FARTHEST = 2 * ALIKE_WITHIN * ALIKE_WITHIN * Math.log(1000);

/** Something that adds to the offset of compositions like it. */
export interface OffsetSource {
  readonly point: CompositionPoint;
  /** ΔE00 along six axes, for a composition of which it shares all, by how alike it is. */
  readonly ofLikeness: Float64Array;
  /** The same whatever the doses; unset: nothing. */
  readonly always?: Float64Array;
}

/**
 * The mean of universal kriging (see `JointKriging`) from all looks of a shelf, for one cup with other doses of some materials in its near
 * layer. What it returns is written over by the next call.
 */
export class OffsetNear {
  private readonly typical: Float64Array;
  /** Of each look that a search may come near to: squared distance with none of what may change. */
  private readonly distances: Float64Array;
  /** Six axes each: by how alike a look is. */
  private readonly ofLikeness: Float64Array;
  /** Six axes, of all together, whatever the doses. */
  private readonly always = new Float64Array(BOTH_AXES);
  /** By what may change: where its looks begin; then those looks, and their coordinates in it. */
  private readonly starts: Int32Array;
  private readonly holders: Int32Array;
  private readonly coordinates: Float64Array;
  private readonly apart: Float64Array;
  private readonly sum = new Float64Array(BOTH_AXES);
  private readonly white = { L: 0, a: 0, b: 0 };
  private readonly black = { L: 0, a: 0, b: 0 };

  /**
   * Throws: RangeError, naming it, if a material is not one of the shelf.
   *
   * @param names of what may change, each once
   * @param bias what is added to both views whatever the doses, ΔE00 along each axis
   */
  constructor(
    unknowns: ShelfUnknowns,
    asked: BelievedCup,
    names: readonly string[],
    sources: readonly OffsetSource[],
    bias: ArrayLike<number> = [0, 0, 0],
  ) {
    const [nearLayer, ...behind] = asked.layers;
    const kept = { ...nearLayer!, contents: nearLayer!.contents.filter(([id]) => !names.includes(id)) };
    const point = compositionPoint(unknowns, [kept, ...behind], asked.streaks);
    const fixed = new Map(Array.from(point.keys, (key, i) => [key, point.values[i]!]));
    const places = names.map((name) => placeOf(unknowns, name));
    const changing = new Map(places.map((place, i) => [place, i]));
    const reached = sources
      .map((source) => ({ source, ...nearPoint(source.point, fixed, changing) }))
      .filter(({ least }) => least < FARTHEST);
    this.typical = Float64Array.from(places, (place) => unknowns.materials[place]!.typical);
    this.distances = Float64Array.from(reached, ({ distance }) => distance);
    this.ofLikeness = Float64Array.from(reached.flatMap(({ source }) => Array.from(source.ofLikeness)));
    for (let i = 0; i < BOTH_AXES; i++) this.always[i] = bias[i % VIEW_AXES]!;
    for (const { always } of sources) if (always) for (let i = 0; i < BOTH_AXES; i++) this.always[i]! += always[i]!;
    const held = names.map((_, name) =>
      reached.flatMap(({ coordinates }, look) =>
        coordinates.has(name) ? [[look, coordinates.get(name)!] as const] : [],
      ),
    );
    const all = held.flat();
    this.starts = new Int32Array(names.length + 1);
    for (const [name, { length }] of held.entries()) this.starts[name + 1] = this.starts[name]! + length;
    this.holders = Int32Array.from(all, ([look]) => look);
    this.coordinates = Float64Array.from(all, ([, coordinate]) => coordinate);
    this.apart = new Float64Array(reached.length);
  }

  /**
   * What is to be added in Lab to what the model alone shows with these doses.
   *
   * Shape: g/ml in the near layer, in the order of the names.
   */
  at(gramsPerMl: ArrayLike<number>, model: TwoViews): LabOffsets {
    const sum = this.inMetric(gramsPerMl);
    toLab(model.overWhite, sum, 0, this.white);
    toLab(model.overBlack, sum, VIEW_AXES, this.black);
    return { overWhite: this.white, overBlack: this.black };
  }

  /** The same along six axes, ΔE00. Written over by the next call. */
  inMetric(gramsPerMl: ArrayLike<number>): Float64Array {
    const { apart, distances, ofLikeness, sum } = this;
    const square = this.comeNear(gramsPerMl);
    sum.set(this.always);
    for (let look = 0; look < apart.length; look++) {
      const distance = distances[look]! + square + apart[look]!;
      if (distance >= FARTHEST) continue;
      const alike = Math.exp(-Math.max(0, distance) / (2 * ALIKE_WITHIN * ALIKE_WITHIN));
      const at = look * BOTH_AXES;
      for (let axis = 0; axis < BOTH_AXES; axis++) sum[axis]! += alike * ofLikeness[at + axis]!;
    }
    return sum;
  }

  /** Writes by how much doses bring each look nearer, and returns the squared distance that they are from nothing. */
  private comeNear(gramsPerMl: ArrayLike<number>): number {
    const { apart, starts, holders, coordinates, typical } = this;
    apart.fill(0);
    let square = 0;
    for (let name = 0; name < typical.length; name++) {
      const dose = gramsPerMl[name]!;
      if (!(dose > 0)) continue;
      const coordinate = doseCoordinate(dose, typical[name]!);
      square += coordinate * coordinate;
      for (let at = starts[name]!; at < starts[name + 1]!; at++)
        apart[holders[at]!]! -= 2 * coordinate * coordinates[at]!;
    }
    return square;
  }
}

function placeOf({ placeOf: places }: ShelfUnknowns, name: string): number {
  const place = places.get(name);
  if (place === undefined) throw new RangeError(`There is no material ${name} on the shelf that is learned; add it`);
  return place;
}

/** How far a look is with none of what may change, at least with any of it, and its coordinates there by place among what may change. */
function nearPoint(
  point: CompositionPoint,
  fixed: ReadonlyMap<number, number>,
  changing: ReadonlyMap<number, number>,
): { readonly distance: number; readonly least: number; readonly coordinates: ReadonlyMap<number, number> } {
  const coordinates = new Map<number, number>();
  let least = 0;
  let distance = 0;
  for (const [i, key] of point.keys.entries()) {
    const value = point.values[i]!;
    const place = changing.get(key);
    if (place === undefined) least += (value - (fixed.get(key) ?? 0)) ** 2;
    else {
      coordinates.set(place, value);
      distance += value * value;
    }
  }
  const own = new Set(point.keys);
  for (const [key, value] of fixed) if (!own.has(key)) least += value * value;
  return { distance: distance + least, least, coordinates };
}

function toLab(
  at: TwoViews['overWhite'],
  offset: Float64Array,
  from: number,
  out: { L: number; a: number; b: number },
): void {
  const back = inverseMetric(localMetric(at));
  const [x, y, z] = [offset[from]!, offset[from + 1]!, offset[from + 2]!];
  out.L = back[0]! * x + back[1]! * y + back[2]! * z;
  out.a = back[4]! * y + back[5]! * z;
  out.b = back[8]! * z;
}
