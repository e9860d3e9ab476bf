import { hexOfSpot, spotOf } from '../../photo/photo-spot.ts';
import type { LinearRgb, Pixels } from '../../photo/pixels.ts';

/** What a spot of a photo lies on. */
export type SpotOn = 'bait' | 'card';

/** A place in a photo: parts of its width and height, 0..1. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** Radius of a spot, part of the photo's shorter side: a few millimetres of a bait that fills the picture. Chosen by eye, no source. */
export const SPOT_RADIUS = 0.015;

/** A photo with the spots that were touched in it. */
export class PhotoSpots {
  private readonly pixels: Pixels;
  private readonly places: Partial<Record<SpotOn, Place>> = {};

  constructor(pixels: Pixels) {
    this.pixels = pixels;
  }

  place(on: SpotOn): Place | undefined {
    return this.places[on];
  }

  /** Puts a spot somewhere; what lies beyond an edge comes to lie on it. */
  put(on: SpotOn, { x, y }: Place): void {
    const within = (part: number): number => Math.min(1, Math.max(0, part));
    this.places[on] = { x: within(x), y: within(y) };
  }

  forget(on: SpotOn): void {
    delete this.places[on];
  }

  /** `#rrggbb` of the bait, by the light that the card tells of; undefined until the bait was touched. */
  get hex(): string | undefined {
    const bait = this.colour('bait');
    return bait && hexOfSpot(bait, this.colour('card'));
  }

  private colour(on: SpotOn): LinearRgb | undefined {
    const place = this.places[on];
    const { width, height } = this.pixels;
    return (
      place && spotOf(this.pixels, place.x * (width - 1), place.y * (height - 1), SPOT_RADIUS * Math.min(width, height))
    );
  }
}
