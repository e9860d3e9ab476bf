/**
 * What the pictures show by which the page *Method* explains how a book learns, computed of its own looks.
 *
 * Units: doses in g per ml of plastic; spectra are 36 numbers, 380 to 730 nm.
 *
 * @packageDocumentation
 */
import { absorptionBand, type SpectrumBand } from '../../learning/absorption-band.ts';
import type { BelievedViews } from '../../learning/believed-views.ts';
import { learn } from '../../learning/learn.ts';
import type { LookedLayer } from '../../learning/learning-data.ts';
import { Posterior } from '../../learning/posterior.ts';
import type { Lab } from '../../optics/cielab.ts';
import { cupBody, layersViews } from '../../optics/cup-body.ts';
import { inverseMetric, localMetric } from '../../optics/local-metric.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { eyeOf } from '../learning/eye-of.ts';
import type { Material } from '../model/shelf.ts';
import type { Book } from '../model.ts';
import { bestOf } from './best-of.ts';
import { linesOfLooks, others } from './looks-on-a-line.ts';

/** Light of each wavelength that is left of all, 0 to 1, after some way through a usual dose of a material. */
export interface LightLeft {
  readonly material: Material;
  readonly thicknessMm: number;
  /** By its file alone, and by all looks. */
  readonly before: SpectrumBand;
  readonly after: SpectrumBand;
  /** How many looks at something with it there are. */
  readonly looks: number;
}

/** How much more of an axis of CIELAB a cup is than its model, over white, along the doses of one material in it. */
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

/** What light is left of after so much, mm: half an ordinary bait. Convention of this book. */
const WAY_MM = 3;

/** Doses of a line: an eighth of the least to eight times the most that was seen. */
const REACH = 8;
const STEPS = 33;

// Of a normal number nine in ten are no farther than this from the middle, in standard deviations.
const NINE_IN_TEN = 1.6449;

export interface LearningPictures {
  readonly light?: LightLeft;
  readonly line?: OffsetLine;
}

/** The pictures of a book; of one that has learned from no look at a cup by itself, none. */
export function learningPictures(book: Pick<Book, 'learned' | 'materials' | 'optics'>): LearningPictures {
  const known = pictures.get(book.learned);
  if (known !== undefined) return known;
  const of = defined({ light: lightLeft(book), line: offsetLine(book) });
  pictures.set(book.learned, of);
  return of;
}

// Most edits change nothing that was learned.
const pictures = new WeakMap<Book['learned'], LearningPictures>();

// Of so many materials, those with most looks, one is drawn.
const MOST_MATERIALS = 8;

/** Of the colorant that looks have told most of. */
function lightLeft({ learned, materials }: Pick<Book, 'learned' | 'materials'>): LightLeft | undefined {
  const taught = materials
    .filter(({ kind, constants, typical, learnedFrom }) => kind === 'colorant' && constants && typical && learnedFrom)
    .toSorted((one, other) => other.learnedFrom! - one.learnedFrom! || (one.id < other.id ? -1 : 1))
    .slice(0, MOST_MATERIALS);
  if (taught.length === 0) return undefined;
  const now = new Posterior(learned);
  const drawn = taught.map((material): LightLeft => {
    const { id } = material;
    const alone = learn({ materials: learned.data.materials.filter((each) => each.id === id), looks: [] });
    return {
      material,
      thicknessMm: WAY_MM,
      before: leftBy(new Posterior(alone), material),
      after: leftBy(now, material),
      looks: material.learnedFrom!,
    };
  });
  return bestOf(drawn, ({ before, after }) => widthOf(before) - widthOf(after));
}

function leftBy(posterior: Posterior, { id, typical }: Material): SpectrumBand {
  const { middle, low, high } = absorptionBand(posterior, id);
  const left = (K: readonly number[]): readonly number[] => K.map((value) => Math.exp(-value * typical! * WAY_MM));
  return { middle: left(middle), low: left(high), high: left(low) };
}

function widthOf({ low, high }: SpectrumBand): number {
  return high.reduce((sum, value, band) => sum + value - low[band]!, 0);
}

// Lines are many in a large book, and one picture is drawn.
const MOST_LINES = 100;

const AXES = ['L', 'a', 'b'] as const;
export type LabAxis = (typeof AXES)[number];

/** Of the cup and the axis on which the nearest looks have most to say. */
function offsetLine(book: Pick<Book, 'learned' | 'materials' | 'optics'>): OffsetLine | undefined {
  const { learned, materials, optics } = book;
  const shelf = new Map(materials.map((each) => [each.id, each]));
  const { belief } = eyeOf(learned);
  const model = (layer: LookedLayer): Lab => modelled(layer, (id) => required(shelf, id), optics);
  const asked = linesOfLooks(book)
    .slice(0, MOST_LINES)
    .flatMap((line) => AXES.map((axis) => ({ line, axis })));
  const best = bestOf(asked, ({ line: { material, layer, seen }, axis }) => {
    const at = withDose(layer, material, seen[0]!.gramsPerMl);
    return Math.abs(belief.mean({ layers: [at] }).overWhite[axis] - model(at)[axis]);
  });
  if (best === undefined) return undefined;
  const { line, axis } = best;
  const { material: id, layer, seen } = line;
  const [from, to] = [seen[0]!.gramsPerMl / REACH, seen.at(-1)!.gramsPerMl * REACH];
  return {
    material: required(shelf, id),
    axis,
    beside: others(layer, id).map(([material, gramsPerMl]) => ({ material, gramsPerMl })),
    steps: Array.from({ length: STEPS }, (_, step) => {
      const gramsPerMl = from * (to / from) ** (step / (STEPS - 1));
      const at = withDose(layer, id, gramsPerMl);
      const believed = belief.of({ layers: [at] });
      const more = believed.overWhite[axis] - model(at)[axis];
      const off = NINE_IN_TEN * axisSd(believed, axis);
      return { gramsPerMl, more, low: more - off, high: more + off };
    }),
    seen: seen.map(({ gramsPerMl, look }) => ({
      gramsPerMl,
      more: look.overWhite![axis] - model(withDose(layer, id, gramsPerMl))[axis],
    })),
  };
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
