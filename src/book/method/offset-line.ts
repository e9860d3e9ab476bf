/**
 * How much more of an axis of CIELAB a cup is than its model, over white, along the doses of one of its materials: what the nearest looks
 * add, and how surely.
 *
 * Units: doses in g per ml of plastic.
 *
 * @packageDocumentation
 */
import type { Belief } from '../../learning/belief.ts';
import type { BelievedViews } from '../../learning/believed-views.ts';
import type { LookedLayer } from '../../learning/learning-data.ts';
import type { Lab } from '../../optics/cielab.ts';
import { cupBody, layersViews } from '../../optics/cup-body.ts';
import { inverseMetric, localMetric } from '../../optics/local-metric.ts';
import { required } from '../../values/required.ts';
import { eyeOf } from '../learning/eye-of.ts';
import type { Material } from '../model/shelf.ts';
import type { Book } from '../model.ts';
import { bestOf } from './best-of.ts';
import { type LookLine, linesOfLooks, others } from './looks-on-a-line.ts';

/** A line of doses, to be drawn. */
export interface OffsetLine {
  readonly material: Material;
  /** That on which the nearest looks have most to say. */
  readonly axis: LabAxis;
  /** What else is in the cup. */
  readonly beside: readonly { readonly material: string; readonly gramsPerMl: number }[];
  readonly steps: readonly {
    readonly gramsPerMl: number;
    /** What the nearest looks add. */
    readonly more: number;
    /** Nine in ten are between these. */
    readonly low: number;
    readonly high: number;
  }[];
  /** By how much more it was seen to be. */
  readonly seen: readonly { readonly gramsPerMl: number; readonly more: number }[];
}

/** Doses of a line: an eighth of the least to eight times the most that was seen. */
const REACH = 8;
const STEPS = 33;

// Of a normal number nine in ten are no farther than this from the middle, in standard deviations.
const NINE_IN_TEN = 1.6449;

// Lines are many in a large book: of so many, those on which the nearest looks add most are asked how they go on.
const MOST_LINES = 100;
const ASKED_ON = 40;

const AXES = ['L', 'a', 'b'] as const;
export type LabAxis = (typeof AXES)[number];

/**
 * The line and the axis on which it shows best that looks tell most where they were made; undefined of a book without a look at a cup by
 * itself. One is preferred on which every look lies within nine in ten, and beyond what is believed of it.
 */
export function offsetLine({
  learned,
  materials,
  optics,
}: Pick<Book, 'learned' | 'materials' | 'optics'>): OffsetLine | undefined {
  const shelf = new Map(materials.map((each) => [each.id, each]));
  const { belief } = eyeOf(learned);
  const model = (layer: LookedLayer): Lab => modelled(layer, (id) => required(shelf, id), optics);
  const asked = linesOfLooks({ learned, materials })
    .slice(0, MOST_LINES)
    .flatMap((line) => {
      const at = withDose(line.layer, line.material, line.seen[0]!.gramsPerMl);
      const [mean, by] = [belief.mean({ layers: [at] }).overWhite, model(at)];
      return AXES.map((axis) => ({ line, axis, added: Math.abs(mean[axis] - by[axis]) }));
    })
    .toSorted((one, other) => other.added - one.added)
    .slice(0, ASKED_ON)
    .map(({ line, axis }) => ({ line, axis, along: alongDoses(line, axis, belief, model) }));
  const best = bestOf(asked, ({ line, along }) => shownBy(along, rangeOf(line)));
  if (best === undefined) return undefined;
  const { line, axis, along } = best;
  const [from, to] = rangeOf(line);
  return {
    material: required(shelf, line.material),
    axis,
    beside: others(line.layer, line.material).map(([material, gramsPerMl]) => ({ material, gramsPerMl })),
    steps: Array.from({ length: STEPS }, (_, step) => along.at(from * (to / from) ** (step / (STEPS - 1)))),
    seen: along.seen,
  };
}

/** A line as an axis of CIELAB goes along it. */
interface AlongDoses {
  readonly at: (gramsPerMl: number) => OffsetLine['steps'][number];
  readonly seen: OffsetLine['seen'];
}

function alongDoses(
  { material, layer, seen }: LookLine,
  axis: LabAxis,
  belief: Belief,
  model: (layer: LookedLayer) => Lab,
): AlongDoses {
  return {
    at: (gramsPerMl) => {
      const dosed = withDose(layer, material, gramsPerMl);
      const believed = belief.of({ layers: [dosed] });
      const more = believed.overWhite[axis] - model(dosed)[axis];
      const off = NINE_IN_TEN * axisSd(believed, axis);
      return { gramsPerMl, more, low: more - off, high: more + off };
    },
    seen: seen.map(({ gramsPerMl, look }) => ({
      gramsPerMl,
      more: look.overWhite![axis] - model(withDose(layer, material, gramsPerMl))[axis],
    })),
  };
}

function rangeOf({ seen }: LookLine): readonly [from: number, to: number] {
  return [seen[0]!.gramsPerMl / REACH, seen.at(-1)!.gramsPerMl * REACH];
}

/**
 * How plainly a line shows what it is drawn for: by how much more is added at its looks than at its ends, as a share of how wide its
 * picture is. Less than nothing where a look lies outside nine in ten or short of what is believed, or the ends are as sure as the looks.
 */
function shownBy({ at, seen }: AlongDoses, range: readonly [from: number, to: number]): number {
  const ends = range.map(at);
  const looks = seen.map((look) => ({ look, believed: at(look.gramsPerMl) }));
  const wide = ({ low, high }: OffsetLine['steps'][number]): number => high - low;
  const tall = Math.max(...ends.map(wide), ...looks.map(({ believed }) => wide(believed)));
  const added = Math.min(...looks.map(({ believed }) => Math.abs(believed.more)));
  const share = (added - Math.max(...ends.map(({ more }) => Math.abs(more)))) / tall;
  const isPlain = looks.every(
    ({ look, believed }) =>
      look.more >= believed.low &&
      look.more <= believed.high &&
      look.more / believed.more >= 1 &&
      ends.every((end) => wide(end) > wide(believed)),
  );
  return isPlain ? share : share - 1;
}

function withDose(layer: LookedLayer, id: string, gramsPerMl: number): LookedLayer {
  return { ...layer, contents: [...others(layer, id), [id, gramsPerMl]] };
}

/** By K and S alone. */
function modelled(
  { plastics, contents, thicknessMm }: LookedLayer,
  shelf: (id: string) => Material,
  optics: Book['optics'],
): Lab {
  const mix = {
    plastics: plastics.map(([material, fraction]) => ({ material, fraction })),
    contents: contents.map(([material, gramsPerMl]) => ({ material, gramsPerMl })),
  };
  return layersViews([{ ...cupBody(mix, shelf, optics), thickness: thicknessMm }], optics).overWhite;
}

/** One standard deviation of an axis of CIELAB, over white. */
function axisSd({ overWhite, covariance }: BelievedViews, axis: LabAxis): number {
  const back = inverseMetric(localMetric(overWhite)).subarray(3 * AXES.indexOf(axis));
  let variance = 0;
  for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) variance += back[i]! * covariance[i * 6 + j]! * back[j]!;
  return Math.sqrt(Math.max(0, variance));
}
