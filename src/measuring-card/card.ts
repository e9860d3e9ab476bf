import type { Box, Place } from './box.ts';
import type { Edge } from './dark-edges.ts';

/** Four small cards go on a sheet; the large one takes a whole sheet, for long baits and for several chips. */
export type CardKind = 'small' | 'large';

/** A mark that a photo is put straight by: a code of the dictionary ARUCO_MIP_36h12, which stands upright. */
export interface Mark extends Box {
  readonly id: number;
  /** Which corner of the card it lies in. */
  readonly corner: 'left-top' | 'right-top' | 'right-bottom' | 'left-bottom';
}

/** A printed grey. */
export interface Grey extends Box {
  readonly row: 'above' | 'below';
  /** Its place among `GREY_VALUES`. */
  readonly step: number;
}

/** A measuring card: x to the right and y down from its left top corner, mm as designed (a printed 80 mm may be 79.6). */
export interface MeasuringCard {
  readonly kind: CardKind;
  readonly version: number;
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
  /** Where the bait lies: bare paper left of the seam, black right of it. */
  readonly window: Box;
  readonly seamX: number;
  /** Two rows in opposed order, so that light which falls off is not taken for a tone. */
  readonly greys: readonly Grey[];
  /** From its 0 to its 80 mm. */
  readonly scale: Box;
  /** Middles of spots of `SPOT_MM` where paper is bare, and where the window is black, away from where a bait lies. */
  readonly paperSpots: readonly Place[];
  readonly blackSpots: readonly Place[];
  /** Straight printed edges, with the dark at the right hand of whoever walks from the first place to the second. */
  readonly edges: readonly Edge[];
  /** Where words are printed, above and below: no paper is read there. */
  readonly words: readonly [Box, Box];
  /** Where the code with the address may be printed. */
  readonly address: Box;
}

/** The values of the printed greys in the file, sRGB, lightest first. */
export const GREY_VALUES: readonly number[] = [205, 160, 120, 80, 40];

/** How long the printed scale is as designed. */
export const SCALE_MM = 80;

/** How thick the line around the white half is, mm; it lies outside the window. */
export const FRAME_MM = 0.4;
