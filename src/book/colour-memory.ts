import type { LearnedShelf } from '../learning/learned-shelf.ts';
import type { LogFault } from '../learning/log-fault.ts';
import type { MatchMaterial } from '../matching/shelf/match-material.ts';
import type { Target } from './model/target.ts';
import type { RecipeCore } from './recipes/compile-recipe.ts';
import type { ComparedRecipe, ShownMaterial } from './recipes/join-recipes.ts';
import { Remembered } from './remembered.ts';
import type { MaterialCore } from './shelf/compile-material.ts';

/** What one compile leaves for the next of all that hangs on what was learned: of the maker's own looks, and of those that readers get. */
export class ColourMemory {
  readonly learned = new Remembered<LearnedShelf>();
  readonly faults = new Remembered<readonly LogFault[]>();
  readonly materials = new Remembered<MaterialCore>();
  readonly shown = new Remembered<ShownMaterial>();
  /** With the numbers of their cameras. */
  readonly targets = new Remembered<Omit<Target, 'recipes'>>();
  readonly cores = new Remembered<RecipeCore, MaterialCore>();
  readonly compared = new Remembered<ComparedRecipe, MatchMaterial>();

  /** Begins a compile. */
  begin(): void {
    for (const kind of Object.values(this)) if (kind instanceof Remembered) kind.begin();
  }
}
