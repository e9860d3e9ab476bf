import type { MeasuredBait } from './taken-photo.ts';

/** A colour from photos. */
export type PhotoAnswer =
  /** Touched: `#rrggbb`, of which nobody knows how far it is off. */
  | { readonly kind: 'touched'; readonly hex: string }
  /** Measured on the card. */
  | ({ readonly kind: 'measured'; readonly camera: string } & MeasuredBait);

/** When photos are taken: where nothing is doubtful of them as soon as they are measured; else the reader takes them. */
export type TakesPhotos = 'at-once';

/** What the script of photos does for other pages: asks the reader for a colour, of so many photos as are asked for. */
export type AskPhotos = (wanted: number, takes?: TakesPhotos) => Promise<PhotoAnswer | undefined>;

/** What a page finds that by, once the script is loaded. */
export const PHOTOS_AS = 'cupbookPhotos';
