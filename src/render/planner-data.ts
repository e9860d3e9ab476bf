/**
 * What the planner of a page needs to work out batches in the browser, written into the page as JSON.
 *
 * @packageDocumentation
 */

import type { Cup } from '../book/model/cup.ts';
import type { Edition } from '../book/model/publish.ts';
import type { Recipe } from '../book/model/recipe.ts';
import type { Material, Mold, ShelfCut } from '../book/model/shelf.ts';
import type { Book, Settings } from '../book/model.ts';
import type { Pattern } from '../patterns/patterns.ts';
import { defined } from '../values/defined.ts';
import { required } from '../values/required.ts';
import type { BatchNames } from './batch-view.ts';
import { usedMaterials } from './used-materials.ts';

/** A cup as the planner needs it. */
export type PlannedCup = Pick<Cup, 'name' | 'share' | 'plastics' | 'contents' | 'volumePerPlastic'> & {
  readonly hex: string;
};

/** A cut as it is measured. */
export type PlannedCut = Omit<ShelfCut, 'notes' | 'assumptions' | 'source'>;

/** A material as the planner needs it. */
export type PlannedMaterial = Pick<
  Material,
  | 'id'
  | 'kind'
  | 'use'
  | 'highest'
  | 'working'
  | 'bears'
  | 'title'
  | 'hex'
  | 'constants'
  | 'flake'
  | 'gramsPerMl'
  | 'gramsPerDrop'
  | 'byVolume'
  | 'byOunce'
  | 'price'
  | 'packGrams'
  | 'stockGrams'
> & { readonly href: string; readonly cuts?: readonly PlannedCut[] };

/** A mold as the planner needs it. */
export type PlannedMold = Pick<
  Mold,
  'id' | 'title' | 'cavities' | 'cavityMl' | 'sprueMl' | 'bag' | 'method' | 'rejects'
>;

/** One recipe ready to be planned. */
export interface PlannedRecipe {
  readonly id: string;
  readonly title: string;
  readonly pattern: Pattern;
  /** mm, at which the colour error of measuring is judged. */
  readonly bodyMm: number;
  readonly cups: readonly PlannedCup[];
  readonly mold: string;
  readonly baits: number;
}

export interface PlannerData {
  readonly recipes: readonly PlannedRecipe[];
  readonly materials: readonly PlannedMaterial[];
  readonly molds: readonly PlannedMold[];
  readonly settings: Settings;
  readonly optics: Book['optics'];
  readonly edition: Edition;
}

/** What planners of all recipes have in common: the whole shelf, the molds and the bench. */
export type PlannerShelf = Omit<PlannerData, 'recipes' | 'materials'> & {
  readonly materials: readonly Omit<PlannedMaterial, 'href'>[];
};

/** What the file of a book's shelf leaves it under, in the window of the page that loads it. */
export const PLANNER_SHELF = 'cupbookShelf';

// Six digits are far below what any bench can measure, and half of what JSON would write.

function plannedMaterial(material: Omit<Material, 'usedIn'>): Omit<PlannedMaterial, 'href'> {
  const { id, kind, title, hex, constants, flake, gramsPerMl, gramsPerDrop } = material;
  const { byVolume, byOunce, price, packGrams, stockGrams, use, highest, working, bears } = material;
  return {
    id,
    kind,
    title,
    hex,
    gramsPerMl,
    byVolume,
    byOunce,
    ...defined({ constants, flake, gramsPerDrop, price, packGrams, stockGrams, use, highest, working, bears }),
    ...defined({ cuts: material.cuts?.map(plannedCut) }),
  };
}

/** A cut without what only its file and page tell. */
export function plannedCut({ notes: _, assumptions: __, source: ___, ...cut }: ShelfCut): PlannedCut {
  return cut;
}

function plannedRecipe(bodyMm: number, recipe: Recipe): PlannedRecipe {
  return {
    id: recipe.id,
    title: recipe.title,
    pattern: recipe.pattern,
    bodyMm,
    mold: recipe.mold,
    baits: recipe.batch.baits,
    cups: recipe.cups.map(({ name, share, plastics, contents, volumePerPlastic, body }) => ({
      name,
      share,
      plastics,
      contents,
      volumePerPlastic,
      hex: body.overWhite.hex,
    })),
  };
}

/** A mold in the shop: with the thickness at which colours are judged. */
export type ShopMold = PlannedMold & Pick<Mold, 'bodyMm'>;

/** What batches are planned with. */
export interface PlannerShop {
  readonly materials: ReadonlyMap<string, Omit<Material, 'usedIn'>>;
  readonly molds: ReadonlyMap<string, ShopMold>;
  readonly settings: Settings;
  readonly optics: Book['optics'];
  /** Whether what a batch costs is known, and is for who looks at it. */
  readonly edition: Edition;
}

/** A mold as the planner needs it. */
export function plannedMold({
  id,
  title,
  cavities,
  cavityMl,
  sprueMl,
  bag,
  method,
  rejects,
}: PlannedMold): PlannedMold {
  return { id, title, cavities, cavityMl, sprueMl, ...defined({ bag, method, rejects }) };
}

/** Data of some recipes with what is in them, all molds, and the bench. */
export function plannerData(
  shop: PlannerShop,
  recipes: readonly Recipe[],
  href: (material: string) => string,
): PlannerData {
  const { materials, molds, settings, optics, edition } = shop;
  const used = usedMaterials(
    recipes.flatMap(({ cups }) => cups),
    materials,
  );
  return {
    recipes: recipes.map((recipe) => plannedRecipe(required(molds, recipe.mold).bodyMm, recipe)),
    materials: used.map((id) => ({ ...plannedMaterial(required(materials, id)), href: href(id) })),
    molds: [...molds.values()].map(plannedMold),
    settings,
    optics,
    edition,
  };
}

/** The shelf of a book as its planners need it. */
export function plannerShelf({ materials, molds, settings, optics, edition }: Book): PlannerShelf {
  return { materials: materials.map(plannedMaterial), molds: molds.map(plannedMold), settings, optics, edition };
}

/**
 * What a recipe is planned with, on a page that has loaded the shelf.
 *
 * @param href path of a material's page from this one
 */
export function plannedOnShelf(
  recipe: PlannedRecipe,
  shelf: PlannerShelf,
  href: (material: string) => string,
): PlannerData {
  return {
    ...shelf,
    recipes: [recipe],
    materials: shelf.materials.map((material) => ({ ...material, href: href(material.id) })),
  };
}

/** Names of a batch of a recipe from the planner's data: the same in the build and in the browser. */
export function plannedNames(data: PlannerData, recipe: PlannedRecipe): BatchNames {
  const materials = new Map(data.materials.map((material) => [material.id, material]));
  const molds = new Map(data.molds.map((mold) => [mold.id, mold]));
  const cups = new Map(recipe.cups.map((cup) => [cup.name, cup]));
  return {
    material: (id) => required(materials, id),
    href: (id) => required(materials, id).href,
    mold: (id) => required(molds, id),
    cup: (name) => required(cups, name),
    settings: data.settings,
  };
}
