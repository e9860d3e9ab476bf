import type { OpticalModel } from '../optics/optical-model.ts';
import type { ShelfState } from './shelf-state.ts';

const rounded = (value: number): number => Number(value.toPrecision(6)) + 0;

/** Cards, light path and crowding at some theta, as the rest of the book computes with them. Rounded to six digits. */
export function learnedOptics({ white, black, crowding, d, s0 }: ShelfState): OpticalModel {
  return {
    backings: { white: Array.from(white.reflectance, rounded), black: rounded(black.reflectance[0]!) },
    path: { d: rounded(d.value), s0: rounded(s0.value) },
    crowding: rounded(crowding.value),
  };
}
