import type { Tier } from '../../optics/material-constants.ts';

/** How a colour is known, the surest first. */
export type Known =
  /** Somebody has looked at it, just as it is. */
  | { readonly how: 'seen' }
  /** All that colours it was in something that was looked at: in so many looks, all told. */
  | ({ readonly how: 'learned'; readonly looks: number } & KnownFlake)
  /** Something in it was never looked at but by its file: what the least known of that rests on. */
  | ({ readonly how: Tier } & KnownFlake);

/** Flake beside something that colours: that is what the rest says how it is known. */
interface KnownFlake {
  /** Some of its flake is in nothing that was looked at: of that its face colour is known, as of all flake. */
  readonly flakeByFace?: true;
}
