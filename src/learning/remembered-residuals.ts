import { type BlockResiduals, blockResiduals } from './block-residuals.ts';
import type { Looker } from './composition-views.ts';
import type { SeenBlock } from './shelf-problem.ts';
import type { ShelfState } from './shelf-state.ts';

/** Residuals and slopes of blocks, remembered for as long as theta is the same array, and written over then. */
export class RememberedResiduals {
  private readonly looker: Looker;
  private readonly known = new WeakMap<SeenBlock, { readonly found: BlockResiduals; theta: ArrayLike<number> }>();

  constructor(looker: Looker) {
    this.looker = looker;
  }

  /** What a block is off by at a state. Not to be written over, nor kept beyond it. */
  of(block: SeenBlock, state: ShelfState): BlockResiduals {
    const known = this.known.get(block);
    if (known?.theta === state.theta) return known.found;
    const found = blockResiduals(block, this.looker, state, known?.found);
    if (known) known.theta = state.theta;
    else this.known.set(block, { found, theta: state.theta });
    return found;
  }
}
