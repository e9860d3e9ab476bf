import type { CardRead } from '../card/card-read.ts';
import type { Half } from './background.ts';
import type { BaitPlace } from './bait-place.ts';
import { type Body, bodyOf } from './body-colour.ts';
import { type Patch, rectify, type Shown } from './rectify.ts';
import { zonesOf } from './zone.ts';

/** What is seen of a bait on one half of the window. */
export interface SeenZone {
  readonly half: Half;
  readonly patch: Patch;
  readonly body: Body;
}

/** A zone is looked at no finer than this, pixels a mm: the finest flake is 0.2 mm. */
const FINEST = 24;

/** The zones of a bait, that on white first; none of a half that holds too little of it. */
export function seenZones(shown: Shown, card: Pick<CardRead, 'card' | 'leanAt'>, bait: BaitPlace): readonly SeenZone[] {
  const pieces = zonesOf(bait, card);
  return (['white', 'black'] as const).flatMap((half): SeenZone[] => {
    const piece = pieces[half];
    if (piece === undefined) return [];
    const patch = rectify(shown, piece, Math.min(FINEST, shown.pixelsPerMm));
    return [{ half, patch, body: bodyOf(patch) }];
  });
}
