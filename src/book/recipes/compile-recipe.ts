import type { AppearanceOptions } from '../../optics/appearance.ts';
import { TIERS } from '../../optics/material-constants.ts';
import { patternContrast } from '../../optics/pattern-contrast.ts';
import { PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import { MM_PER_INCH } from '../../units/unit.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { SharedCup } from '../cups/appearances.ts';
import type { Bait, BaitCup } from '../cups/asked-bait.ts';
import { askedSide, baitInWater, baitSides, baitUnderLights, thinAppearance } from '../cups/bait-appearances.ts';
import { checkFlake } from '../cups/check-flake.ts';
import { checkFullness } from '../cups/check-fullness.ts';
import { checkShotTogether } from '../cups/check-heat.ts';
import { compileCup, type Shelf, withoutFlake } from '../cups/compile-cup.ts';
import { placeInBait } from '../cups/place-in-bait.ts';
import { withSeenFlake } from '../cups/seen-flake.ts';
import type { BookEye } from '../learning/book-eye.ts';
import { baitKey, lastCupKey } from '../learning/cup-keys.ts';
import { howKnown } from '../learning/how-known.ts';
import { baitLooks } from '../looks/bait-looks.ts';
import type { Cup } from '../model/cup.ts';
import type { Facets, Recipe } from '../model/recipe.ts';
import type { Mold } from '../model/shelf.ts';
import type { Settings } from '../model.ts';
import { photoOf } from '../photo-of.ts';
import type { Report } from '../report.ts';
import { batchOfRecipe, doseDeviation } from './batch-of-recipe.ts';
import { checkSides } from './check-sides.ts';
import { lookFacets } from './facets.ts';
import { flakeHue } from './flake-hue.ts';
import type { RecipeParts } from './recipe-parts.ts';
import { repeatabilityOf } from './repeatability-of.ts';
import { spreadOfBait } from './spread-of-bait.ts';

/** What every recipe of a book is compiled with. */
export interface RecipeContext {
  readonly shelf: Shelf;
  readonly eye: BookEye;
  readonly molds: ReadonlyMap<string, Omit<Mold, 'usedIn'>>;
  readonly settings: Settings;
  readonly report: Report;
}

/** A recipe before its place in the family is known. */
export type RecipeCore = Omit<Recipe, 'children' | 'cupsIn' | 'family' | 'changes'>;

const DEFAULT_BAITS = 20;

/** A recipe with everything that can be said of it by itself. */
export function compileRecipe(parts: RecipeParts, context: RecipeContext): RecipeCore {
  const { shelf, eye, molds, settings, report } = context;
  const { optics } = eye;
  const { recipe, cups: filled, shares } = parts;
  const { fields } = recipe;
  const mold = required(molds, parts.mold);
  for (const cup of filled) checkFullness(cup, settings, (id) => 1 / required(shelf, id).density, report);
  for (const cup of filled) checkFlake(cup, mold, shelf, settings, report);
  checkSides(recipe, parts.pattern, shares, mold, report);
  checkShotTogether(filled, parts.pattern, shelf, settings.temperature, report);
  const coloured = filled.map((cup, index) =>
    compileCup(cup, { share: shares[index]!, ...placeInBait(parts.pattern, shares, index) }, mold, context),
  );
  const flaked = coloured.map((cup, index) => ({ ...cup, share: shares[index]! }));
  const flakes = withSeenFlake(parts.pattern, flaked, mold.bodyMm, { shelf, optics });
  const cups = flaked.map(({ cup, share }, index): Cup => ({ ...cup, flakes: flakes[index]!, share }));
  const shared = coloured.map(
    ({ body }, index): BaitCup => ({
      body,
      share: shares[index]!,
      state: filled[index]!.state,
      key: lastCupKey(filled[index]!),
    }),
  );
  const bait: Bait = {
    pattern: parts.pattern,
    cups: shared,
    thicknessMm: mold.bodyMm,
    ...defined({ streakMm: parts.streak }),
    key: baitKey(recipe.id),
  };
  const plainBait = { ...bait, cups: shared.map((cup) => ({ ...cup, state: withoutFlake(cup.state, shelf) })) };
  const thin = { thicknessMm: mold.thinMm };
  const body = baitSides(bait, eye);
  const plain = baitSides(plainBait, eye);
  const batchShelf = (material: string): NonNullable<ReturnType<Shelf['get']>> => required(shelf, material);
  const batch = batchOfRecipe(
    { pattern: parts.pattern, cups },
    [{ mold, baits: parts.baits ?? DEFAULT_BAITS }],
    batchShelf,
    settings,
    { bodyMm: mold.bodyMm, optics },
  );
  const contrast = contrastOf(parts.pattern, shared, { thickness: mold.bodyMm, optics }, parts.streak);
  return {
    id: recipe.id,
    title: fields.title,
    ...defined({ made: fields.made }),
    pattern: parts.pattern,
    ...defined({ order: parts.order, streakMm: parts.streak }),
    mold: parts.mold,
    publish: fields.publish ?? parts.publish,
    tags: fields.tags ?? [],
    notes: recipe.notes,
    photos: (fields.photos ?? []).map(photoOf),
    ...defined({ target: parts.target }),
    source: recipe.source,
    cups,
    ...defined({ seen: baitLooks(recipe, filled, report) }),
    body: body.side,
    thin: thinAppearance({ ...bait, ...thin }, eye),
    ...defined({ other: body.other }),
    between: {
      body: plain.side,
      thin: thinAppearance({ ...plainBait, ...thin }, eye),
      ...defined({ other: plain.other }),
    },
    ...defined({ contrast }),
    lights: baitUnderLights(bait, eye),
    water: baitInWater(bait, eye),
    facets: { ...lookFacets(body.side, parts.pattern, cups), ...materialFacets(cups, shelf) },
    batch,
    repeatability: repeatabilityOf({ pattern: parts.pattern, cups }, batch, batchShelf, settings, {
      bodyMm: mold.bodyMm,
      optics,
    }),
    tier: TIERS[Math.max(...cups.map((cup) => TIERS.indexOf(cup.tier)))]!,
    known: howKnown(
      askedSide(bait, eye),
      shared.map(({ state }) => state),
      shelf,
      eye,
    ),
    spread: spreadOfBait(
      bait,
      cups.map((cup, index) => ({
        ...cup,
        doseDeviation: (material: string) => doseDeviation(batch.cups[index]!, material, settings),
      })),
      batchShelf,
      eye,
    ),
    ...defined({ parent: fields.from }),
    cupsFrom: [
      ...new Set(
        cups.flatMap(({ from }) =>
          from && from.recipe !== recipe.id && from.recipe !== fields.from ? [from.recipe] : [],
        ),
      ),
    ],
  };
}

function materialFacets(cups: readonly Cup[], shelf: Shelf): Pick<Facets, 'materials' | 'flakeColours' | 'flakeSizes'> {
  const materials = [...new Set(cups.flatMap((cup) => cup.contents.map(({ material }) => material)))].sort();
  const flakes = materials.flatMap((material) => required(shelf, material).flake ?? []);
  return {
    materials,
    flakeColours: [...new Set(flakes.map(flakeHue))].sort(),
    flakeSizes: [...new Set(flakes.map((flake) => `${(flake.acrossMm / MM_PER_INCH).toFixed(3)} in`))].sort(),
  };
}

/** How far the two cups that differ most stand apart where one lies over the other, and which patterns that suits. */
function contrastOf(
  pattern: Pattern,
  cups: readonly SharedCup[],
  looked: AppearanceOptions,
  streak: number | undefined,
): Recipe['contrast'] {
  if (cups.length < 2) return undefined;
  const room = streak === undefined ? {} : { streak: Math.min(streak, looked.thickness / 2) };
  const pairs = cups.flatMap((one, index) =>
    cups.slice(index + 1).map((other) => {
      const contrast = patternContrast(one.body, other.body, { ...looked, ...room });
      return { deltaE: contrast[PATTERNS[pattern].apart], suits: contrast.suits };
    }),
  );
  return pairs.reduce((most, pair) => (pair.deltaE > most.deltaE ? pair : most));
}
