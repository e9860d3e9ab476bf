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
  const cameras = numbersOf(looks);
  return {
    data: {
      materials: materials.sort((one, other) => (one.id < other.id ? -1 : 1)),
      looks: withoutNames(looks, cameras).sort((one, other) => (one.key < other.key ? -1 : 1)),
    },
    cameras,
  };
}

/** The looks of a recipe, found anew only where something was changed that they say or that they were at. */
function looksOf(
  { recipe, cups, shares, pattern, bodyMm }: LookedRecipe,
  names: string,
  find: () => readonly TaughtLook[],
  kept: Remembered<readonly TaughtLook[]>,
): readonly TaughtLook[] {
  return kept.of(recipe.id, [recipe, names, pattern, bodyMm, ...shares, ...cups], NOTHING, reportInto([]), find);
}

/** Numbers of the cameras that these looks were made with, by their names. */
function numbersOf(looks: readonly TaughtLook[]): ReadonlyMap<string, string> {
  const cameras = [...new Set(looks.flatMap(({ camera }) => camera ?? []))].sort();
  return new Map(cameras.map((camera, index) => [camera, String(index + 1)]));
}

/** Looks whose cameras have numbers for names: which looks one camera made is learned from, and what it is called is nobody's business. */
function withoutNames(looks: readonly TaughtLook[], numbers: ReadonlyMap<string, string>): TaughtLook[] {
  return looks.map((look) => (look.camera === undefined ? look : { ...look, camera: required(numbers, look.camera) }));
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
