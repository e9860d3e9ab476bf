import { filledMl } from '../../cup/filled-ml.ts';
import type { Effect } from '../../kinds/effects.ts';
import type { AdditionLimits } from '../../matching/shelf/usable-materials.ts';
import type { Settings } from '../model.ts';

/**
 * What may be added to a cup of a book, whoever asks, the book itself, a command or the page: it may be let down, and is filled no further
 * than `cup` and `fill` say, since hot plastic foams.
 */
export function cupLimits(
  settings: Pick<Settings, 'cupMl' | 'fill'>,
  asking: Pick<AdditionLimits, 'inStock' | 'without'> & { readonly effect?: Effect | undefined } = {},
): AdditionLimits & { readonly roomMl: number } {
  const { inStock = false, without = [], effect } = asking;
  return {
    inStock,
    without,
    effects: effect === undefined ? [] : [effect],
    mayLetDown: true,
    roomMl: filledMl(settings),
  };
}
