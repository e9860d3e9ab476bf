import { PATTERNS } from '../patterns/patterns.ts';
import { inLayers } from '../patterns/through.ts';
import type { BaitField } from '../shapes/bait-field.ts';
import { sideColour } from './colour/side-colour.ts';
import { flakeLayer } from './flake/flake-layer.ts';
import { keptFloats } from './kept-arrays.ts';
import { type BaitPicture, drawnPicture } from './light/drawn-picture.ts';
import type { PicturedBait, PicturedSide } from './pictured-bait.ts';

/**
 * Draws a bait as it lies in a field: its computed colour and flake, with light, gloss and shadow over them.
 *
 * One picture is finished before the next begins, since arrays are kept from one to the next.
 *
 * @param from the side that is looked at; from the far side the bait is turned round, its nose at the right. A bait without another side looks the same from there
 */
export function baitPicture(bait: PicturedBait, field: BaitField, from: 'near' | 'far'): BaitPicture {
  const side = from === 'far' ? (bait.far ?? bait.near) : bait.near;
  const numbers = 3 * field.cover.length;
  const { colour, runsAt } = sideColour(bait, side, field, {
    white: keptFloats('over white', numbers),
    black: keptFloats('over black', numbers),
  });
  const flake = flakeLayer({ bait, field, runsAt, from: side.from });
  return drawnPicture({
    field,
    colour,
    flake,
    pearl: pearlOf(bait, side),
    backings: bait.optics.backings,
    turned: from === 'far',
  });
}

/** How much of what is seen of a side is pearl: of layers that of the near one, else of its cups by their shares. */
function pearlOf({ cups }: PicturedBait, { pattern, cups: met, from }: PicturedSide): number {
  const seen = PATTERNS[pattern].through === inLayers ? [met.at(from === 'near' ? 0 : -1)!] : met;
  const all = seen.reduce((sum, { share }) => sum + share, 0);
  return seen.reduce((sum, { cup, share }) => sum + (share / all) * (cups[cup]!.pearl ?? 0), 0);
}
