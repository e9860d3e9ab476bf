import type { MatchMaterial } from '../../matching/shelf/match-material.ts';
import { required } from '../../values/required.ts';
import { computed } from '../computed.ts';
import { cupKey } from '../cups/cup-specs.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import type { BookEye } from '../learning/book-eye.ts';
import { type MatchContext, matchRounds } from '../match/match-rounds.ts';
import type { Family, Recipe } from '../model/recipe.ts';
import type { Material, Mold } from '../model/shelf.ts';
import type { Target } from '../model/target.ts';
import type { Things } from '../read/read-things.ts';
import { NOTHING, type Remembered } from '../remembered.ts';
import type { Report } from '../report.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';
import { clearPlastic, shownAlone } from '../shelf/shown-alone.ts';
import { changesFromParent, cupPairs, type KnownCup } from './changes-from-parent.ts';
import { compileFamilies } from './compile-families.ts';
import type { RecipeCore } from './compile-recipe.ts';
import { reportNoPart, reportStrayPart } from './report-no-part.ts';

/** A recipe with what it is beside others, before its place among them is known. */
export type ComparedRecipe = RecipeCore & Pick<Recipe, 'changes'> & Partial<Pick<Recipe, 'match'>>;

/** What recipes are compared with. */
export interface CompareContext extends MatchContext {
  readonly eye: BookEye;
  readonly molds: ReadonlyMap<string, Omit<Mold, 'usedIn'>>;
  readonly targets: ReadonlyMap<string, Omit<Target, 'recipes'>>;
  readonly filled: ReadonlyMap<string, FilledCup>;
  readonly kept: Remembered<ComparedRecipe, MatchMaterial>;
  /** Of a book for readers the recipes that they get nothing of. Nobody is told there what to add next. */
  readonly hidden?: ReadonlyMap<string, RecipeCore>;
}

/** A material with what it looks like in steps, before it is known where it is used. */
export type ShownMaterial = Omit<MaterialCore, 'doubt'> &
  Pick<Material, 'hex' | 'ladder' | 'known' | 'sure' | 'learnedHex'>;

/** What each material looks like by itself. */
export function showMaterials(
  shelf: ReadonlyMap<string, MaterialCore>,
  eye: BookEye,
  things: Things,
  kept: Remembered<ShownMaterial>,
  report: Report,
): ReadonlyMap<string, ShownMaterial> {
  const plastic = clearPlastic(shelf.values());
  return new Map(
    [...shelf.values()].flatMap((material): [string, ShownMaterial][] => {
      const thing = required(things.materials, material.id);
      const shown = kept.of(material.id, [material, eye, plastic], NOTHING, report, (telling) =>
        computed(thing, telling, () => besideItself(material, plastic, eye)),
      );
      return shown === undefined ? [] : [[material.id, shown]];
    }),
  );
}

/** What is shown of a material; how surely films tell its K and S went into what was learned. */
function besideItself(material: MaterialCore, plastic: string | undefined, eye: BookEye): ShownMaterial {
  const { doubt: _, ...told } = material;
  return { ...told, ...shownAlone(material, plastic, eye) };
}

/** Each recipe beside the one that it comes from, and beside its target. */
export function compareRecipes(
  cores: ReadonlyMap<string, RecipeCore>,
  context: CompareContext,
  things: Things,
  report: Report,
): readonly ComparedRecipe[] {
  const { filled, targets, molds, materials, eye, settings, kept, hidden } = context;
  const onShelf = new Map(materials.map((material) => [material.id, material]));
  const known = (recipe: string, name: string): KnownCup | undefined => {
    const cup = cores.get(recipe)?.cups.find((each) => each.name === name);
    return cup && { cup, contents: required(filled, cupKey(recipe, name)).contents };
  };
  return [...cores.values()].map((core) => {
    if (hidden?.has(core.id)) return { ...core, changes: [] };
    const thing = required(things.recipes, core.id);
    const mold = required(molds, core.mold);
    const pairs = cupPairs(core, known);
    const target = core.target === undefined ? undefined : targets.get(core.target);
    const inputs = [
      core,
      mold,
      eye,
      ...pairs.flatMap(({ before, after }) => [before.cup, before.contents, after.contents]),
      // Of all that is on the shelf, some may be proposed.
      ...(target === undefined ? [] : [target, settings, ...materials]),
    ];
    return kept.of(core.id, inputs, onShelf, report, (telling): ComparedRecipe => {
      const changes = computed(thing, telling, () => changesFromParent(pairs, mold.bodyMm, eye));
      const match = target && computed(thing, telling, () => matchRounds(core, target, context, hidden === undefined));
      if (target) (match ? reportStrayPart : reportNoPart)(thing, core, target, telling);
      return { ...core, changes: changes ?? [], ...(match && { match }) };
    });
  });
}

/** Recipes with their places among the others, and the families that they make. */
export function joinRecipes(compared: readonly ComparedRecipe[]): {
  readonly recipes: readonly Recipe[];
  readonly families: readonly Family[];
} {
  const families = compileFamilies(compared);
  const familyOf = new Map(families.flatMap((family) => family.members.map((id) => [id, family.id] as const)));
  const children = new Map(compared.map(({ id }) => [id, [] as string[]]));
  const cupsIn = new Map(compared.map(({ id }) => [id, [] as string[]]));
  for (const { id, parent, cupsFrom } of compared) {
    if (parent !== undefined) children.get(parent)?.push(id);
    for (const origin of new Set(cupsFrom)) cupsIn.get(origin)?.push(id);
  }
  const recipes = compared.map(
    ({ match, ...recipe }): Recipe => ({
      ...recipe,
      children: children.get(recipe.id) ?? [],
      cupsIn: cupsIn.get(recipe.id) ?? [],
      family: required(familyOf, recipe.id),
      ...(match && { match }),
    }),
  );
  return { recipes, families };
}

/** Where each material is used, by its id; absent where it is not. */
export function usesOf(recipes: readonly Recipe[]): ReadonlyMap<string, Material['usedIn']> {
  const uses = new Map<string, Material['usedIn'][number][]>();
  for (const { id, cups } of recipes) {
    for (const { name, plastics, contents } of cups) {
      const inCup = new Map([
        ...plastics.map(({ material }) => [material, 1] as const),
        ...contents.map(({ material, gramsPerMl }) => [material, gramsPerMl] as const),
      ]);
      for (const [material, gramsPerMl] of inCup) {
        const known = uses.get(material) ?? [];
        known.push({ recipe: id, cup: name, gramsPerMl });
        uses.set(material, known);
      }
    }
  }
  return uses;
}
