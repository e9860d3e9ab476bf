import type { MaterialKind } from '../../kinds/kinds.ts';
import type { LearningData, TaughtLook, TaughtMaterial } from '../../learning/learning-data.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { required } from '../../values/required.ts';
import type { ChipSpec } from '../cups/chip-spec.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';
import type { LookedRecipe } from './looked-recipe.ts';
import { chipLooks, taughtLooks } from './taught-looks.ts';
import { taughtMaterial } from './taught-material.ts';

/**
 * All that a book can learn its shelf from: what its files say of every material that colours, and every look of these recipes and chips.
 *
 * Shape: both in the order of their names, whatever the order of the files.
 */
export function learningData(
  things: ReadonlyMap<string, Thing<MaterialKind>>,
  shelf: ReadonlyMap<string, MaterialCore>,
  recipes: readonly LookedRecipe[],
  chips: Iterable<FilledCup<ChipSpec>>,
): LearningData {
  const materials = [...shelf.values()].flatMap((material): TaughtMaterial[] => {
    const taught = taughtMaterial(required(things, material.id), material);
    return taught ? [taught] : [];
  });
  const known = new Set(materials.map(({ id }) => id));
  const colours = (material: string): boolean => known.has(material);
  const looks = [
    ...recipes.flatMap((recipe) => taughtLooks(recipe, colours)),
    ...[...chips].flatMap((chip) => chipLooks(chip, colours)),
  ];
  return {
    materials: materials.sort((one, other) => (one.id < other.id ? -1 : 1)),
    looks: withoutNames(looks).sort((one, other) => (one.key < other.key ? -1 : 1)),
  };
}

/** Looks whose cameras have numbers for names: which looks one camera made is learned from, and what it is called is nobody's business. */
function withoutNames(looks: readonly TaughtLook[]): TaughtLook[] {
  const cameras = [...new Set(looks.flatMap(({ camera }) => camera ?? []))].sort();
  return looks.map((look) =>
    look.camera === undefined ? look : { ...look, camera: String(cameras.indexOf(look.camera) + 1) },
  );
}
