import type { CupState } from '../../cup/ledger.ts';
import { shelfPart } from '../../learning/shelf-part.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { Chip } from '../model/chip.ts';
import type { Cup } from '../model/cup.ts';
import type { BaitLook } from '../model/looks.ts';
import type { Recipe, RecipeLook } from '../model/recipe.ts';
import type { Material } from '../model/shelf.ts';
import type { Target } from '../model/target.ts';
import type { Book } from '../model.ts';
import { compileFamilies } from '../recipes/compile-families.ts';
import { sharedPart } from './field-table.ts';
import { lookOnly } from './look-only.ts';
import { SHARED_FIELDS } from './shared-fields.ts';
import { sharedSource } from './shared-file-fields.ts';
import { standaloneRecipe } from './standalone-recipe.ts';

/**
 * The shared edition: the book as readers may have it. Nothing of a recipe or target that is not published, only the name and the look of
 * those published as `look`, of the shelf and the molds what published recipes are made with, and no field that `SHARED_FIELDS` keeps. Its
 * colours are learned from published looks alone.
 */
export function publishedBook(book: Book): Book {
  const known = editions.get(book);
  if (known !== undefined) return known;
  const shared = editionOf(book.readers ?? book);
  editions.set(book, shared);
  return shared;
}

// It is checked, compared with and rendered, and a book never changes.
const editions = new WeakMap<Book, Book>();

function editionOf(book: Book): Book {
  const full = book.recipes.filter(({ publish }) => publish === 'full');
  const looks = book.recipes.filter(({ publish }) => publish === 'look').map((recipe) => lookOnly(recipe, book));
  const targets = sharedTargets(book, full);
  const molds = new Set([...full, ...targets.filter(({ publish }) => publish === 'full')].map(({ mold }) => mold));
  const reach: Reach = {
    full: idsOf(full),
    targets: idsOf(targets),
    rewritten: new Set(),
  };
  const recipes = sharedRecipes(full, reach, book);
  const chips = book.chips.filter(({ publish }) => publish === 'full');
  const named = new Set([...recipes.flatMap(materialsOf), ...chips.flatMap(materialsOfChip)]);
  const cuts = book.materials.flatMap((material) => material.cuts ?? []).filter(({ id }) => named.has(id));
  const shelf = new Set([...named, ...cuts.flatMap((cut) => [cut.of, cut.with])]);
  const families = compileFamilies([...recipes, ...looks.map((look) => lookDescendant(look, book, idsOf(looks)))]);
  const familyOf = new Map(families.flatMap((family) => family.members.map((id) => [id, family.id] as const)));
  const { plastic, ...settings } = book.settings;
  const { looks: _, readers: __, ...rest } = book;
  const shared: Omit<Book, 'looks' | 'readers'> = {
    ...rest,
    edition: 'shared',
    settings: { ...settings, ...(plastic === undefined || !shelf.has(plastic) ? {} : { plastic }) },
    recipes: recipes.map((recipe) => ({ ...recipe, family: required(familyOf, recipe.id) })),
    chips: chips.map((chip) => ({ ...chip, source: sharedSource(chip.source) })),
    targets: targets.map(({ mold, ...target }) => ({
      ...target,
      ...(mold === undefined || !molds.has(mold) ? {} : { mold }),
      recipes: target.recipes.filter((id) => reach.full.has(id)),
      source: sharedSource(target.source),
    })),
    materials: book.materials
      .filter(({ id }) => shelf.has(id))
      .map((material) => ({
        ...material,
        ...defined({ cuts: sharedCuts(material, named) }),
        usedIn: material.usedIn.filter(({ recipe }) => reach.full.has(recipe)),
        source: sharedSource(material.source),
      })),
    molds: book.molds
      .filter(({ id }) => molds.has(id))
      .map((mold) => ({
        ...mold,
        usedIn: mold.usedIn.filter((id) => reach.full.has(id)),
        source: sharedSource(mold.source),
      })),
    families,
    learned: shelfPart(book.learned, shelf),
  };
  return { ...sharedPart<Omit<Book, 'looks' | 'readers'>>(shared, SHARED_FIELDS), looks };
}

/** Ids of what readers have. */
interface Reach {
  /** Recipes with their amounts. */
  readonly full: ReadonlySet<string>;
  readonly targets: ReadonlySet<string>;
  /** Recipes in full whose own file would tell of what readers do not have, so that they have another. */
  readonly rewritten: Set<string>;
}

const idsOf = (things: readonly { readonly id: string }[]): ReadonlySet<string> => new Set(things.map(({ id }) => id));

/** A target whose file says so, or for which there is a recipe in full; never more than is published of it. */
function sharedTargets(book: Book, full: readonly Recipe[]): readonly Target[] {
  const matched = new Set(full.map(({ target }) => target));
  return book.targets
    .filter(({ id, publish, publishSaid }) => publish !== 'no' && (publishSaid || matched.has(id)))
    .map((target) => (target.publish === 'look' ? lookOfTarget(target) : target));
}

/** The dilutions of a bottle that readers are told of: none but those that a recipe in full is mixed with. */
function sharedCuts({ cuts }: Material, named: ReadonlySet<string>): Material['cuts'] {
  return cuts?.filter(({ id }) => named.has(id)).map((cut) => ({ ...cut, source: sharedSource(cut.source) }));
}

const namesIn = ({ plastics, materials }: CupState): readonly { readonly material: string }[] =>
  [...Object.keys(plastics), ...Object.keys(materials)].map((material) => ({ material }));

/** What readers are told is in the cups of a recipe, was in them, or was changed in them. */
function materialsOf({ cups, changes, batch }: Recipe): readonly string[] {
  return [
    ...batch.cups.flatMap(({ amounts }) => amounts.flatMap(({ cut }) => (cut ? [{ material: cut.id }] : []))),
    ...cups.flatMap(({ plastics, contents, written, rounds, naive }) => [
      ...plastics,
      ...contents,
      ...written,
      ...rounds.flatMap(({ added, cup, newCup }) => [
        ...added,
        ...namesIn(cup),
        ...(newCup ? namesIn(newCup.pouredAway) : []),
      ]),
      ...(naive?.contents ?? []),
    ]),
    ...changes.flatMap(({ change }) => change.doses),
  ].map(({ material }) => material);
}

/** What a published chip is made of: also the cut that its file names, which readers are told of with its bottle. */
function materialsOfChip({ rounds }: Chip): readonly string[] {
  return rounds
    .flatMap(({ contents, plastics, cuts }) => [...contents, ...plastics, ...cuts])
    .map(({ material }) => material);
}

/** Recipes in full without what they would tell of others that readers cannot have. */
function sharedRecipes(full: readonly Recipe[], reach: Reach, book: Book): readonly Recipe[] {
  const materials = new Map(book.materials.map((material) => [material.id, material]));
  const parts = full.map((recipe) => withoutSecrets(recipe, reach, book));
  // A file that is made anew can make that of a child mean another amount, which is then made anew as well.
  const isNew = (recipe: Recipe): boolean =>
    namesHidden(recipe, reach) || recipe.cups.some(({ startOf }) => startOf && reach.rewritten.has(startOf.recipe));
  for (let before = -1; before < reach.rewritten.size; ) {
    before = reach.rewritten.size;
    for (const recipe of full) if (isNew(recipe)) reach.rewritten.add(recipe.id);
  }
  return parts.map((recipe) => ({
    ...recipe,
    source: reach.rewritten.has(recipe.id)
      ? { ...recipe.source, text: standaloneRecipe(recipe, book.settings, (id): Material => required(materials, id)) }
      : sharedSource(recipe.source),
  }));
}

/** Whether a recipe's file names a recipe, cup or target that readers do not have in full, or an amount that only a hidden file states. */
function namesHidden({ parent, target, cups }: Recipe, { full, targets }: Reach): boolean {
  const origins = [parent, ...cups.flatMap(({ from, startOf }) => [from?.recipe, startOf?.recipe])];
  return origins.some((id) => id !== undefined && !full.has(id)) || (target !== undefined && !targets.has(target));
}

/**
 * A recipe without what it would tell of others that readers cannot have. That a look-only recipe comes from this one, or this one
 * from it, would tell its materials.
 */
function withoutSecrets(recipe: Recipe, { full, targets }: Reach, book: Book): Recipe {
  const { parent, target, match, seen, ...rest } = recipe;
  const cups = recipe.cups.map(({ from, ...cup }) => ({
    ...(cup.startOf && !full.has(cup.startOf.recipe) ? withoutVolume(cup, usualVolume(book.settings).ml) : cup),
    ...(from && full.has(from.recipe) ? { from } : {}),
  }));
  const logged = new Set(cups.flatMap(({ name, rounds }) => (rounds.length > 0 ? [name] : [])));
  return {
    ...rest,
    ...defined({ seen: seen?.map((look) => ofKnownRounds(look, logged)) }),
    ...(parent !== undefined && full.has(parent) ? { parent } : {}),
    ...(target === undefined || !targets.has(target) ? {} : { target, ...defined({ match }) }),
    cups,
    // A change of dose from a recipe whose amounts are not published would tell them.
    changes: recipe.changes.filter(({ fromRecipe }) => full.has(fromRecipe)),
    children: recipe.children.filter((id) => full.has(id)),
    cupsFrom: recipe.cupsFrom.filter((id) => full.has(id)),
    cupsIn: recipe.cupsIn.filter((id) => full.has(id)),
  };
}

/**
 * A cup for so much plastic, which readers cannot tell how much was in: only the hidden file says. So many drops beside what they come to
 * in a millilitre would tell, and so would rounds with what was added and poured.
 */
function withoutVolume({ naive: _, leftMl: __, ...cup }: Omit<Cup, 'from'>, startMl: number): Omit<Cup, 'from'> {
  return { ...cup, startMl, written: [], rounds: [] };
}

/** A look at a bait, which tells of no round that readers do not have. */
function ofKnownRounds({ rounds = [], ...look }: BaitLook, logged: ReadonlySet<string>): BaitLook {
  const known = rounds.filter(({ cup }) => logged.has(cup));
  return known.length === 0 ? look : { ...look, rounds: known };
}

/** A target's name and colours, without notes, photo, file and what was measured. */
function lookOfTarget({ photo: _, parts, ...target }: Target): Target {
  return {
    ...target,
    parts: parts.map(({ reflectance: __, ...part }) => part),
    notes: '',
    source: { ...target.source, text: '' },
  };
}

/** A look in the lineage: that it comes from another look may be told, by which cup and how it changed may not. */
function lookDescendant(
  { id, title }: RecipeLook,
  book: Book,
  looks: ReadonlySet<string>,
): Parameters<typeof compileFamilies>[0][number] {
  const { parent } = required(book.recipes, id);
  return { id, title, ...(parent !== undefined && looks.has(parent) ? { parent } : {}), cups: [], changes: [] };
}
