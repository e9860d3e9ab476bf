import type { MaterialKind } from '../../kinds/kinds.ts';
import type { LearningData, TaughtLook, TaughtMaterial } from '../../learning/learning-data.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { required } from '../../values/required.ts';
import type { ChipSpec } from '../cups/chip-spec.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import { NOTHING, Remembered } from '../remembered.ts';
import { reportInto } from '../report.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';
import type { LookedRecipe } from './looked-recipe.ts';
import { chipLooks, taughtLooks } from './taught-looks.ts';
import { taughtMaterial } from './taught-material.ts';

/** What there is to learn from, and which number each camera has for a name in it. */
export interface NumberedData {
  readonly data: LearningData;
  readonly cameras: ReadonlyMap<string, string>;
}

/**
 * All that a book can learn its shelf from: what its files say of every material that colours, and every look of these recipes and chips.
 *
 * Shape: both in the order of their names, whatever the order of the files.
 * @param kept the looks that the last compile found
 */
export function learningData(
  things: ReadonlyMap<string, Thing<MaterialKind>>,
  shelf: ReadonlyMap<string, MaterialCore>,
  recipes: readonly LookedRecipe[],
  chips: Iterable<FilledCup<ChipSpec>>,
  kept: Remembered<readonly TaughtLook[]> = new Remembered(),
): NumberedData {
  const materials = [...shelf.values()].flatMap((material): TaughtMaterial[] => {
    const taught = taughtMaterial(required(things, material.id), material);
    return taught ? [taught] : [];
  });
  const known = new Set(materials.map(({ id }) => id));
  const names = [...known].sort().join(' ');
  const colours = (material: string): boolean => known.has(material);
  const looks = [
    ...recipes.flatMap((recipe) => looksOf(recipe, names, () => taughtLooks(recipe, colours), kept)),
    ...[...chips].flatMap((chip) => chipLooks(chip, colours)),
  ];
  const cameras = numbersOf([...materials.flatMap(({ labels }) => labels), ...looks]);
  return {
    data: withoutNames(
      {
        materials: materials.sort((one, other) => (one.id < other.id ? -1 : 1)),
        looks: looks.sort((one, other) => (one.key < other.key ? -1 : 1)),
      },
      cameras,
    ),
    cameras,
  };
}

/** The looks of a recipe, found anew only where something was changed that they say or that they were at. */
function looksOf(
  { recipe, cups, shares, pattern, streak, bodyMm }: LookedRecipe,
  names: string,
  find: () => readonly TaughtLook[],
  kept: Remembered<readonly TaughtLook[]>,
): readonly TaughtLook[] {
  return kept.of(
    recipe.id,
    [recipe, names, pattern, streak, bodyMm, ...shares, ...cups],
    NOTHING,
    reportInto([]),
    find,
  );
}

/** What a camera may have seen. */
type Seen = Pick<TaughtLook, 'camera'>;

/** Numbers of the cameras that these looks and chips were made with, by their names. */
function numbersOf(seen: readonly Seen[]): ReadonlyMap<string, string> {
  const cameras = [...new Set(seen.flatMap(({ camera }) => camera ?? []))].sort();
  return new Map(cameras.map((camera, index) => [camera, String(index + 1)]));
}

/** Cameras by their numbers: which looks and chips one camera made is learned from, and what it is called is nobody's business. */
function withoutNames({ materials, looks }: LearningData, numbers: ReadonlyMap<string, string>): LearningData {
  const numbered = <T extends Seen>(each: T): T =>
    each.camera === undefined ? each : { ...each, camera: required(numbers, each.camera) };
  return {
    materials: materials.map((material) => ({ ...material, labels: material.labels.map(numbered) })),
    looks: looks.map(numbered),
  };
}

/** Whether the looks are the same, of data that say the same of the materials. */
export function isSameTaught({ looks }: LearningData, other: LearningData): boolean {
  return (
    looks.length === other.looks.length &&
    looks.every(
      (look, index) => look === other.looks[index] || JSON.stringify(look) === JSON.stringify(other.looks[index]),
    )
  );
}
