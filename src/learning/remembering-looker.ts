import type { Composition } from './composition.ts';
import { CompositionLooker, type CompositionViews, type Looker, type WantedViews } from './composition-views.ts';
import type { ShelfState } from './shelf-state.ts';
import type { ShelfUnknowns } from './shelf-unknowns.ts';

/**
 * Looks at compositions that are asked about again and again, and remembers what it saw of each for as long as theta is the same array.
 *
 * A composition is always asked about with the same views.
 */
export class RememberingLooker implements Looker {
  private readonly looker: CompositionLooker;
  private readonly known = new Map<Composition, CompositionViews>();
  private theta: ArrayLike<number> | undefined;

  constructor(unknowns: ShelfUnknowns) {
    this.looker = new CompositionLooker(unknowns);
  }

  /** The colours of a composition and their slopes: not to be written over. */
  views(composition: Composition, state: ShelfState, wanted: WantedViews): CompositionViews {
    if (state.theta !== this.theta) {
      this.known.clear();
      this.theta = state.theta;
    }
    let views = this.known.get(composition);
    if (!views) {
      views = this.looker.views(composition, state, wanted);
      this.known.set(composition, views);
    }
    return views;
  }
}
