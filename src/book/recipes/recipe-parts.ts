import type { CoreOrder } from '../../patterns/pattern.ts';
import type { Pattern } from '../../patterns/patterns.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { type CupSpec, cupKey } from '../cups/cup-specs.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import type { Publish } from '../model/publish.ts';
import type { Mold } from '../model/shelf.ts';
import { type InheritedField, unreadOrigin } from '../read/inherited-field.ts';
import type { Things } from '../read/read-things.ts';
import { usualMold } from '../read/usual-things.ts';
import type { Report } from '../report.ts';
import { orderOf, patternOf, sharesOf } from './bait-of-recipe.ts';

/** What a recipe's file and those above it say of its bait, with what is in its cups: all that its colours hang on but the shelf. */
export interface RecipeParts {
  readonly recipe: Thing<'recipe'>;
  readonly pattern: Pattern;
  readonly mold: string;
  readonly baits?: number;
  readonly target?: string;
  readonly streak?: number;
  readonly order?: CoreOrder;
  /** Thickness of a test pour, and of the bait: the body of its mold. */
  readonly bodyMm: number;
  readonly cups: readonly FilledCup[];
  /** Shares of the cups, 1 together. */
  readonly shares: readonly number[];
  readonly publish: Publish;
}

/** What recipes are read with. */
export interface PartsContext {
  readonly molds: ReadonlyMap<string, Omit<Mold, 'usedIn'>>;
  readonly inherited: InheritedField;
  readonly publish: (id: string) => Publish;
  readonly report: Report;
}

/** The parts of every recipe whose cups are filled and whose bait is known; what keeps others from it is reported. */
export function partsOfRecipes(
  things: Things,
  specs: ReadonlyMap<string, readonly CupSpec[]>,
  filled: ReadonlyMap<string, FilledCup>,
  { molds, inherited, publish, report }: PartsContext,
): readonly RecipeParts[] {
  return [...things.recipes.values()].flatMap((recipe): RecipeParts[] => {
    const specsHere = specs.get(recipe.id);
    if (!specsHere || comesFromWaiting(recipe, things)) return [];
    const pattern = patternOf(recipe, inherited, specsHere, report);
    const shares = sharesOf(recipe, specsHere, report);
    const mold = usualMold(recipe, inherited, things, report);
    const cups = specsHere.flatMap((cup) => filled.get(cupKey(recipe.id, cup.name)) ?? []);
    if (!pattern || !shares || !mold || !molds.has(mold) || cups.length < specsHere.length) return [];
    const [baits, target, streak] = [inherited(recipe, 'baits'), recipe.fields.for, inherited(recipe, 'streak')];
    const order = orderOf(recipe, inherited, pattern, report);
    return [
      {
        recipe,
        pattern,
        mold,
        ...defined({ baits, target, streak, order }),
        bodyMm: required(molds, mold).bodyMm,
        cups,
        shares,
        publish: publish(recipe.id),
      },
    ];
  });
}

/** Whether a recipe comes from one that waits to be filled in: what it has from that nobody knows yet. */
function comesFromWaiting(recipe: Thing<'recipe'>, { recipes, faulty }: Things): boolean {
  if (faulty.waiting.size === 0) return false;
  const origin = unreadOrigin(recipe, recipes);
  return origin !== undefined && faulty.isWaiting('recipe', origin);
}
