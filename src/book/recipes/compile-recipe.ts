import { TIERS } from '../../optics/material-constants.ts';
import { patternContrast } from '../../optics/pattern-contrast.ts';
import type { CoreOrder } from '../../patterns/pattern.ts';
import { PATTERN_NAMES, PATTERNS, type Pattern, takesCups, usualPattern } from '../../patterns/patterns.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { MM_PER_INCH } from '../../units/unit.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import {
  baitInWater,
  baitSides,
  baitUnderLights,
  type SharedCup,
  thinAppearance,
  withoutFlake,
} from '../cups/appearances.ts';
import { checkFlake } from '../cups/check-flake.ts';
import { checkFullness } from '../cups/check-fullness.ts';
import { checkShotTogether } from '../cups/check-heat.ts';
import { compileCup, type Shelf } from '../cups/compile-cup.ts';
import type { CupSpec } from '../cups/cup-specs.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import { placeInBait } from '../cups/place-in-bait.ts';
import { withSeenFlake } from '../cups/seen-flake.ts';
import { baitLooks } from '../looks/bait-looks.ts';
import type { Cup } from '../model/cup.ts';
import type { Publish } from '../model/publish.ts';
import type { Facets, Recipe } from '../model/recipe.ts';
import type { Mold } from '../model/shelf.ts';
import type { Settings } from '../model.ts';
import { photoOf } from '../photo-of.ts';
import type { InheritedField } from '../read/inherited-field.ts';
import type { Report } from '../report.ts';
import { batchOfRecipe, doseDeviation } from './batch-of-recipe.ts';
import { checkSides } from './check-sides.ts';
import { lookFacets } from './facets.ts';
import { flakeHue } from './flake-hue.ts';
import { repeatabilityOf } from './repeatability-of.ts';
import { shareOut } from './share-out.ts';
import { spreadOfBait } from './spread-of-bait.ts';

/** What every recipe of a book is compiled with. */
export interface RecipeContext {
  readonly shelf: Shelf;
  readonly molds: ReadonlyMap<string, Omit<Mold, 'usedIn'>>;
  readonly settings: Settings;
  readonly publish: Publish;
  readonly report: Report;
}

/** A recipe before its place in the family is known. */
export type RecipeCore = Omit<Recipe, 'children' | 'cupsIn' | 'family' | 'changes'>;

const DEFAULT_BAITS = 20;

/** Shares of the cups, 1 together; undefined, and reported, where those that are stated do not fit. */
export function sharesOf(
  recipe: Thing<'recipe'>,
  cups: readonly CupSpec[],
  report: Report,
): readonly number[] | undefined {
  const { shares, sum, open } = shareOut(cups);
  if (shares) return shares;
  const at = cups.findLast(({ fields }) => fields.share !== undefined);
  report.add('recipe/shares', recipe, at ? [...at.path, 'share'] : ['cups'], {
    found: `shares of ${formatDecimal(sum * 100)} % together`,
    expected: open > 0 ? 'less than 100 %, with the rest for the cup without a share' : '100 % together',
    why: 'the cups make up the whole bait',
    fix: open > 0 ? 'lower a share' : 'leave one `share` out: it takes what is left',
  });
  return undefined;
}

/** The pattern, if the cups fit it. */
export function patternOf(
  recipe: Thing<'recipe'>,
  inherited: InheritedField,
  cups: readonly CupSpec[],
  report: Report,
): Pattern | undefined {
  const pattern = inherited(recipe, 'pattern') ?? usualPattern(cups.length);
  if (takesCups(pattern, cups.length)) return pattern;
  const { most, words } = PATTERNS[pattern].cups;
  const others = PATTERN_NAMES.filter((name) => takesCups(name, cups.length));
  const kept = cups.filter(({ path }) => path[0] === 'from').map(({ name }) => `\`${name}\``);
  const parent = recipe.fields.from;
  const patterns = others.map((name) => `\`${name}\``).join(' or ');
  report.add('recipe/pattern', recipe, ['pattern'], {
    found: `pattern \`${pattern}\` with ${cups.length} cup${cups.length === 1 ? '' : 's'}${kept.length > 0 ? `, of which ${kept.join(', ')} come${kept.length === 1 ? 's' : ''} from \`${parent}\`` : ''}`,
    expected: words,
    why:
      kept.length > 0
        ? 'a derived recipe has all cups of the one that it comes from, and those of its own'
        : 'the pattern says how the cups lie in the bait',
    fix:
      kept.length > 0 && cups.length > most
        ? `write \`pattern: ${others[0] ?? 'swirl'}\`; or, for some of the cups alone, remove the recipe's \`from\` and write \`from: ${parent}/CUP\` in each cup`
        : `add or remove a cup, or write ${patterns}`,
  });
  return undefined;
}

/** The order in which the cups of a bait with a core are shot, if the recipe or one above it says. A bait that needs one and has none is told of. */
export function orderOf(
  recipe: Thing<'recipe'>,
  inherited: InheritedField,
  pattern: Pattern,
  report: Report,
): CoreOrder | undefined {
  const { orders } = PATTERNS[pattern];
  const order = inherited(recipe, 'order');
  if (orders.length === 0) {
    if (recipe.fields.order !== undefined)
      report.add('recipe/order', recipe, ['order'], {
        found: `\`order\` with the pattern \`${pattern}\``,
        expected: 'no `order`',
        why: 'only a bait with a core is made in one order or the other',
        fix: 'remove the line',
      });
    return undefined;
  }
  if (order !== undefined) return order;
  report.add('recipe/order', recipe, recipe.fields.pattern === undefined ? [] : ['pattern'], {
    found: `pattern \`${pattern}\` without \`order\``,
    expected: orders.map((each) => `\`order: ${each}\``).join(' or '),
    why: 'a core that has set gets its shell shot round it, and a liquid one is shot into the shell: the page tells both until you say',
    fix: `add a line ${orders.map((each) => `\`order: ${each}\``).join(', or ')}`,
  });
  return undefined;
}

/** A recipe with everything that can be said of it by itself. */
export function compileRecipe(
  recipe: Thing<'recipe'>,
  parts: {
    readonly pattern: Pattern;
    readonly mold: string;
    readonly baits?: number;
    readonly target?: string;
    readonly streak?: number;
    readonly order?: CoreOrder;
  },
  filled: readonly FilledCup[],
  shares: readonly number[],
  context: RecipeContext,
): RecipeCore {
  const { shelf, settings, report } = context;
  const { fields } = recipe;
  const mold = required(context.molds, parts.mold);
  for (const cup of filled) checkFullness(cup, settings, (id) => 1 / required(shelf, id).density, report);
  for (const cup of filled) checkFlake(cup, mold, shelf, settings, report);
  checkSides(recipe, parts.pattern, shares, mold, report);
  checkShotTogether(filled, parts.pattern, shelf, settings.temperature, report);
  const coloured = filled.map((cup, index) =>
    compileCup(
      cup,
      { share: shares[index]!, ...placeInBait(parts.pattern, shares, index) },
      mold,
      shelf,
      settings,
      report,
    ),
  );
  const flaked = coloured.map((cup, index) => ({ ...cup, share: shares[index]! }));
  const flakes = withSeenFlake(parts.pattern, flaked, mold.bodyMm, shelf);
  const cups = flaked.map(({ cup, share }, index): Cup => ({ ...cup, flakes: flakes[index]!, share }));
  const shared = coloured.map(({ body }, index): SharedCup => ({ body, share: shares[index]! }));
  const body = baitSides(parts.pattern, shared, mold.bodyMm);
  const plainCups = shared.map((cup): SharedCup => ({ ...cup, body: withoutFlake(cup.body) }));
  const plain = baitSides(parts.pattern, plainCups, mold.bodyMm);
  const batchShelf = (material: string): NonNullable<ReturnType<Shelf['get']>> => required(shelf, material);
  const batch = batchOfRecipe(
    { pattern: parts.pattern, cups },
    [{ mold, baits: parts.baits ?? DEFAULT_BAITS }],
    batchShelf,
    settings,
    mold.bodyMm,
  );
  const contrast = contrastOf(parts.pattern, shared, mold.bodyMm, parts.streak);
  return {
    id: recipe.id,
    title: fields.title,
    ...defined({ made: fields.made }),
    pattern: parts.pattern,
    ...defined({ order: parts.order, streakMm: parts.streak }),
    mold: parts.mold,
    publish: fields.publish ?? context.publish,
    tags: fields.tags ?? [],
    notes: recipe.notes,
    photos: (fields.photos ?? []).map(photoOf),
    ...defined({ target: parts.target }),
    source: recipe.source,
    cups,
    ...defined({ seen: baitLooks(recipe, filled, report) }),
    body: body.side,
    thin: thinAppearance(parts.pattern, shared, mold.thinMm),
    ...defined({ other: body.other }),
    between: {
      body: plain.side,
      thin: thinAppearance(parts.pattern, plainCups, mold.thinMm),
      ...defined({ other: plain.other }),
    },
    ...defined({ contrast }),
    lights: baitUnderLights(parts.pattern, shared, mold.bodyMm),
    water: baitInWater(parts.pattern, shared, mold.bodyMm),
    facets: { ...lookFacets(body.side, parts.pattern, cups), ...materialFacets(cups, shelf) },
    batch,
    repeatability: repeatabilityOf({ pattern: parts.pattern, cups }, batch, batchShelf, settings, mold.bodyMm),
    tier: TIERS[Math.max(...cups.map((cup) => TIERS.indexOf(cup.tier)))]!,
    spread: spreadOfBait(
      parts.pattern,
      cups.map((cup, index) => ({
        ...cup,
        doseDeviation: (material: string) => doseDeviation(batch.cups[index]!, material, settings),
      })),
      batchShelf,
      mold.bodyMm,
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
  thickness: number,
  streak: number | undefined,
): Recipe['contrast'] {
  if (cups.length < 2) return undefined;
  const room = streak === undefined ? {} : { streak: Math.min(streak, thickness / 2) };
  const pairs = cups.flatMap((one, index) =>
    cups.slice(index + 1).map((other) => {
      const contrast = patternContrast(one.body, other.body, { thickness, ...room });
      return { deltaE: contrast[PATTERNS[pattern].apart], suits: contrast.suits };
    }),
  );
  return pairs.reduce((most, pair) => (pair.deltaE > most.deltaE ? pair : most));
}
