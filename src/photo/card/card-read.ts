import type { MeasuringCard, Place } from '../../measuring-card/measuring-card.ts';
import type { CardSignals } from './card-signals.ts';
import type { LightField } from './light-field.ts';

/** A card that was found in a photo, and what it tells of the photo. */
export interface CardRead {
  readonly kind: 'read';
  readonly card: MeasuringCard;
  /** From mm of the card to pixels of the photo, and back. */
  toPixel(place: Place): Place;
  toPlace(pixel: Place): Place;
  /** How far over the card a line of sight moves for each mm that it rises: what is `h` high is seen `h` times this before where it stands. */
  leanAt(place: Place): Place;
  /** Pixels a mm, in the middle of the card. */
  readonly pixelsPerMm: number;
  /** Root mean square of what the card's straight edges are off, mm, and the share of their points in the photo that could be used. */
  readonly edgeRmsMm: number;
  readonly edgesUsed: number;
  readonly field: LightField;
  readonly signals: CardSignals;
  /** Share of the spots of paper that are at the camera's end, and how light paper is, linear 0..1. */
  readonly clippedPaper: number;
  readonly paperLevel: number;
}

/** Why no card could be read: three marks are needed, of one kind of card, and light on its paper. */
export interface CardRefused {
  readonly kind: 'refused';
  readonly reason: 'too-few-marks' | 'two-kinds' | 'too-dark';
  /** How many marks were found. */
  readonly found: number;
}
