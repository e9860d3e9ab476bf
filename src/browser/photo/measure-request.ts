/**
 * What a page asks of the script that measures photos, and what it answers: both go to a worker and back.
 *
 * @packageDocumentation
 */
import type { PhotoFault } from '../../book/checks/check-photos.ts';
import type { CardValues } from '../../photo/card-values.ts';
import type { PhotoMeasured, PhotoRefused } from '../../photo/photo-measured.ts';

/** A place in a photo, pixels from its left top corner. */
export type PhotoPlace = PhotoMeasured['baitPixels'][number];

/** Where the bait lies: two places on its belly. */
export type BaitLine = readonly [PhotoPlace, PhotoPlace];

/** A photo to be measured. */
export interface MeasureRequest {
  readonly photo: Blob;
  readonly card: CardValues;
  /** Where the maker says that the bait lies, in pixels of the answer's `width` and `height`. */
  readonly line?: BaitLine;
}

/** What a photo tells, or why it can't be read at all. */
export type MeasureAnswer = ReadAnswer | UnreadAnswer;

/** A photo that could be read. */
export interface ReadAnswer {
  readonly kind: 'read';
  readonly found: PhotoMeasured | PhotoRefused;
  /** Of what was measured: upright, and made smaller where it was very large. */
  readonly width: number;
  readonly height: number;
  /** The photo, upright, small enough to be shown. */
  readonly picture: ImageBitmap;
}

/** A file that could not. */
export interface UnreadAnswer {
  readonly kind: 'unreadable';
  readonly fault: PhotoFault;
}
