/**
 * All that was seen, made ready for the fit: compositions, metrics and what hangs together, none of which changes while one is going on.
 *
 * @packageDocumentation
 */
import type { Lab } from '../optics/cielab.ts';
import { type LocalMetric, localMetric } from '../optics/local-metric.ts';
import { BackwardLooker } from './backward-looker.ts';
import { type Composition, compose, composeLabel } from './composition.ts';
import { compositionPoint } from './composition-point.ts';
import type { Looker } from './composition-views.ts';
import type { Label, LearningData, TaughtLook } from './learning-data.ts';
import {
  LEAST_AXIS_SD,
  type LookErrors,
  type LookedView,
  viewsCovariance,
  weightedCovariance,
} from './look-covariance.ts';
import { once } from './once.ts';
import { RememberingLooker } from './remembering-looker.ts';
import { byCodeUnits, CAMERA_UNKNOWNS, type ShelfUnknowns, shelfUnknowns } from './shelf-unknowns.ts';
import { VIEWS_ALIKE } from './views-alike.ts';

/** A colour that was seen. */
export interface SeenColour {
  readonly lab: Lab;
  /** At the colour that was seen, or as `withModelMetrics` has it. */
  readonly metric: LocalMetric;
  /** Its place among the views of the block. */
  readonly view: number;
}

/** A look, or a label, in a block. */
export interface SeenItem {
  readonly composition: Composition;
  readonly white?: SeenColour;
  readonly black?: SeenColour;
  /** Place in the block's columns of each of the composition's. */
  readonly places: Int32Array;
  /** Place in the block's columns of the camera's first unknown. */
  readonly camera?: number;
}

/** What is seen together: the looks at one cup, or a label. What two blocks are off by has nothing in common. */
export interface SeenBlock {
  readonly items: readonly SeenItem[];
  readonly views: readonly LookedView[];
  /** Places in theta that any of it depends on, rising. */
  readonly columns: Int32Array;
  /** Covariance of the views along each axis, items of these weights. */
  readonly covariance: (weights?: ArrayLike<number>) => Float64Array;
}

/** A cup's looks, by round and then by key. */
export interface CupBlock extends SeenBlock {
  readonly cup: string;
  readonly looks: readonly TaughtLook[];
  /** Place of each look in the sorted data. */
  readonly places: readonly number[];
}

/** A label of a material. */
export interface LabelBlock extends SeenBlock {
  readonly material: string;
  /** Which of the material's labels. */
  readonly index: number;
}

/** See the top of the file. */
export interface ShelfProblem {
  /** Materials by id, looks by key. */
  readonly data: LearningData;
  readonly unknowns: ShelfUnknowns;
  readonly cups: readonly CupBlock[];
  readonly labels: readonly LabelBlock[];
  /** Looks at its compositions. */
  readonly looker: Looker;
  readonly backward: BackwardLooker;
}

/**
 * Makes it ready, with metrics at the colours that were seen. The order of what is given changes nothing.
 *
 * Throws: RangeError if two looks have one key, a look has no colour, or as `compose`.
 */
export function shelfProblem(data: LearningData): ShelfProblem {
  const materials = [...data.materials].sort((one, other) => byCodeUnits(one.id, other.id));
  const looks = [...data.looks].sort((one, other) => byCodeUnits(one.key, other.key));
  for (const [i, { key }] of looks.entries())
    if (i > 0 && looks[i - 1]!.key === key) throw new RangeError(`Two looks have the key ${key}`);
  const sorted = { materials, looks };
  const unknowns = shelfUnknowns(sorted);
  const byCup = new Map<string, [number, TaughtLook][]>();
  for (const [place, look] of looks.entries()) {
    const entries = byCup.get(look.cup) ?? [];
    byCup.set(look.cup, entries);
    entries.push([place, look]);
  }
  const cups = [...byCup].sort(([one], [other]) => byCodeUnits(one, other));
  return {
    data: sorted,
    unknowns,
    cups: cups.map(([cup, entries]) => cupBlock(unknowns, cup, entries)),
    labels: materials.flatMap(({ id, labels }) =>
      labels.map((label, index) => ({ material: id, index, ...labelBlock(unknowns, id, label) })),
    ),
    looker: new RememberingLooker(unknowns),
    backward: new BackwardLooker(unknowns),
  };
}

/**
 * The looks at one cup, made ready.
 *
 * @param entries each with its place in the sorted data
 * Throws: as `shelfProblem`.
 */
export function cupBlock(
  unknowns: ShelfUnknowns,
  cup: string,
  entries: readonly (readonly [place: number, look: TaughtLook])[],
): CupBlock {
  const inRounds = [...entries].sort(
    ([, one], [, other]) => one.round - other.round || byCodeUnits(one.key, other.key),
  );
  const looks = inRounds.map(([, look]) => look);
  const compositions = looks.map(({ layers, streaks, streakMm }) => compose(unknowns, layers, streaks, streakMm));
  const cameras = looks.map((look) => cameraOf(unknowns, look));
  const errors: readonly LookErrors[] = looks.map(({ layers, streaks, axisSd, means }) => ({
    point: compositionPoint(unknowns, layers, streaks),
    cup,
    axisSd,
    means,
  }));
  const block = seenBlock(looks, compositions, cameras);
  const noted = once(() => viewsCovariance(errors, block.views));
  return {
    ...block,
    cup,
    looks,
    places: inRounds.map(([place]) => place),
    covariance: (weights) => weightedCovariance(noted(), block.views, weights),
  };
}

function labelBlock(unknowns: ShelfUnknowns, id: string, label: Label): SeenBlock {
  const block = seenBlock([label], [composeLabel(unknowns, id, label)], [cameraOf(unknowns, label)]);
  const n = block.views.length;
  return {
    ...block,
    // What a label says is vaguer than the theory, so nothing of that is added; its views are two chips, one hex, or one photo.
    covariance: (weights) => {
      const variance = Math.max(LEAST_AXIS_SD, label.axisSd) ** 2 / (weights?.[0] ?? 1);
      const shared = label.camera === undefined ? 0 : VIEWS_ALIKE.screen;
      return Float64Array.from({ length: n * n }, (_, at) => (at % (n + 1) === 0 ? variance : shared * variance));
    },
  };
}

/** Place in theta of a camera's first unknown. */
function cameraOf({ cameras }: ShelfUnknowns, { camera }: Pick<TaughtLook, 'camera'>): number | undefined {
  return camera === undefined ? undefined : cameras.get(camera)!;
}

function seenBlock(
  seen: readonly Pick<TaughtLook, 'overWhite' | 'overBlack'>[],
  compositions: readonly Composition[],
  cameras: readonly (number | undefined)[],
): Omit<SeenBlock, 'covariance'> {
  const places = new Set<number>();
  for (const { columns } of compositions) for (const place of columns) places.add(place);
  for (const camera of cameras)
    if (camera !== undefined) for (let i = 0; i < CAMERA_UNKNOWNS; i++) places.add(camera + i);
  const columns = Int32Array.from(places).sort();
  const placeOf = new Map(Array.from(columns, (place, column) => [place, column]));
  const views: LookedView[] = [];
  const items = seen.map(({ overWhite, overBlack }, look): SeenItem => {
    const colour = (lab: Lab | undefined, over: LookedView['over']): SeenColour | undefined =>
      lab && { lab, metric: localMetric(lab), view: views.push({ look, over }) - 1 };
    const white = colour(overWhite, 'white');
    const black = colour(overBlack, 'black');
    if (!white && !black) throw new RangeError('A look has no colour; give one over white, over black, or both');
    const camera = cameras[look];
    return {
      composition: compositions[look]!,
      ...(white ? { white } : {}),
      ...(black ? { black } : {}),
      places: compositions[look]!.columns.map((place) => placeOf.get(place)!),
      ...(camera === undefined ? {} : { camera: placeOf.get(camera)! }),
    };
  });
  return { items, views, columns };
}
