import type { BaitField } from '../shapes/bait-field.ts';
import { sideColour } from './colour/side-colour.ts';
import { flakeLayer } from './flake/flake-layer.ts';
import { keptFloats } from './kept-arrays.ts';
import { type BaitPicture, drawnPicture } from './light/drawn-picture.ts';
import type { PicturedBait } from './pictured-bait.ts';

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
  return drawnPicture({ field, colour, flake, backings: bait.optics.backings, turned: from === 'far' });
}
