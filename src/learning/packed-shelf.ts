/**
 * A learned shelf as a short value for a page: lists instead of fields, places instead of names, and nothing that its page has anyhow.
 *
 * @packageDocumentation
 */
import type { Lab } from '../optics/cielab.ts';
import type { LearnedShelf, Weights } from './learned-shelf.ts';
import type { LookedLayer, TaughtLook, TaughtMaterial } from './learning-data.ts';
import { byCodeUnits } from './shelf-unknowns.ts';

/** Thickness, plastics with their shares, contents with their g/ml: places among the materials. */
type PackedLayer = readonly [thicknessMm: number, plastics: readonly number[], contents: readonly number[]];
/** L, a, b; 0 where nothing was seen. */
type PackedColour = readonly [number, number, number] | 0;
type PackedLook = readonly [
  cup: number,
  round: number,
  how: number,
  overWhite: PackedColour,
  overBlack: PackedColour,
  layers: readonly PackedLayer[],
  streaks?: readonly number[],
  streakMm?: number,
];
/** How something was looked at. */
type How = Pick<TaughtLook, 'axisSd' | 'means' | 'camera' | 'checked'>;

/** See the top of the file. Survives JSON. */
export interface PackedShelf {
  readonly materials: readonly TaughtMaterial[];
  readonly hows: readonly How[];
  readonly looks: readonly PackedLook[];
  readonly theta: readonly number[];
  /** Cups by their places. */
  readonly weights: Weights;
}

/**
 * Packs a learned shelf. Nothing that is learned from is lost but what cups and looks are called: cups have their places for names, and
 * looks theirs, so that the order of everything stays.
 */
export function packedShelf({ data, theta, weights }: LearnedShelf): PackedShelf {
  const { materials } = data;
  const placeOf = new Map(materials.map(({ id }, place) => [id, place]));
  const cups = [...new Set(data.looks.map(({ cup }) => cup))].sort(byCodeUnits);
  const cupAt = new Map(cups.map((cup, place) => [cup, place]));
  const howAt = new Map<string, number>();
  const hows: How[] = [];
  const howOf = ({ axisSd, means, camera, checked }: TaughtLook): number => {
    const how = { axisSd, means, ...(camera === undefined ? {} : { camera }), ...(checked ? { checked } : {}) };
    const key = JSON.stringify(how);
    const known = howAt.get(key) ?? hows.push(how) - 1;
    howAt.set(key, known);
    return known;
  };
  const pairs = (amounts: LookedLayer['contents']): readonly number[] =>
    amounts.flatMap(([id, amount]) => [placeOf.get(id)!, amount]);
  return {
    materials,
    looks: data.looks.map((look): PackedLook => {
      const { cup, round, overWhite, overBlack, layers, streaks, streakMm } = look;
      const packed = layers.map(
        ({ thicknessMm, plastics, contents }): PackedLayer => [thicknessMm, pairs(plastics), pairs(contents)],
      );
      const views = [packedColour(overWhite), packedColour(overBlack)] as const;
      const seen = [cupAt.get(cup)!, round, howOf(look), ...views, packed] as const;
      if (!streaks) return seen;
      return streakMm === undefined ? [...seen, streaks] : [...seen, streaks, streakMm];
    }),
    hows,
    theta,
    weights: { ...weights, cups: renamed(weights.cups, (cup) => String(cupAt.get(cup)!)) },
  };
}

/** The shelf again, with the cards, and the K and S of its materials, as they were learned. */
export function unpackedShelf(
  { materials, looks, hows, theta, weights }: PackedShelf,
  { optics, constants }: Pick<LearnedShelf, 'optics' | 'constants'>,
): LearnedShelf {
  const amounts = (pairs: readonly number[]): LookedLayer['contents'] =>
    Array.from({ length: pairs.length / 2 }, (_, at) => [materials[pairs[2 * at]!]!.id, pairs[2 * at + 1]!] as const);
  const layer = ([thicknessMm, plastics, contents]: PackedLayer): LookedLayer => ({
    plastics: amounts(plastics),
    contents: amounts(contents),
    thicknessMm,
  });
  return {
    data: {
      materials,
      looks: looks.map(
        ([cup, round, how, overWhite, overBlack, layers, streaks, streakMm], place): TaughtLook => ({
          key: named(place),
          cup: named(cup),
          round,
          layers: layers.map(layer),
          ...(streaks ? { streaks } : {}),
          ...(streakMm === undefined ? {} : { streakMm }),
          ...(overWhite === 0 ? {} : { overWhite: colour(overWhite) }),
          ...(overBlack === 0 ? {} : { overBlack: colour(overBlack) }),
          ...hows[how]!,
        }),
      ),
    },
    theta,
    weights: { ...weights, cups: renamed(weights.cups, (place) => named(Number(place))) },
    optics,
    constants,
  };
}

const packedColour = (lab: Lab | undefined): PackedColour => (lab ? [lab.L, lab.a, lab.b] : 0);
const colour = ([L, a, b]: readonly [number, number, number]): Lab => ({ L, a, b });

/** A name that stands where its place is, in the order of names. */
const named = (place: number): string => String(place).padStart(6, '0');

function renamed<T>(all: Readonly<Record<string, T>>, name: (before: string) => string): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(all).map(([before, value]) => [name(before), value]));
}
