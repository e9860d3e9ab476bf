import type { Appearance } from '../../book/model/colours.ts';
import type { PicturedBait } from '../../picture/pictured-bait.ts';

/** Colours of a side, `#rrggbb`. */
export interface PlainSide {
  readonly white: string;
  readonly black: string;
}

/** All that the pictures of a bait are made from; it goes to another thread. */
export interface Pictured {
  readonly bait: PicturedBait;
  /** What its picture shows where it cannot be drawn: the colours of its body, and of its other side if it has one. */
  readonly plain: { readonly near: PlainSide; readonly far?: PlainSide };
}

/** What stands on a shared link: what it leads to, and the name of the book. */
export interface LinkWords {
  readonly title: string;
  readonly book: string;
}

/** Colours of a side of a bait as a screen has them. */
export function plainSide({ overWhite, overBlack }: Appearance): PlainSide {
  return { white: overWhite.hex, black: overBlack.hex };
}
