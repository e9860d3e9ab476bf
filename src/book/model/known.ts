import type { Tier } from '../../optics/material-constants.ts';

/** How a colour is known, the surest first. */
export type Known =
  /** Somebody has looked at it, just as it is. */
  | { readonly how: 'seen' }
  /** All that colours it was in something that was looked at: in so many looks, all told. */
  | { readonly how: 'learned'; readonly looks: number }
  /** Something in it was never looked at but by its file: what the least known of that rests on. */
  | { readonly how: Tier };
