/**
 * The computed layer of a picture: the colour of the plastic alone, before flake, light and 8 bits.
 *
 * Linear sRGB, three numbers a pixel, over the book's white and black in optical contact and beside the gloss. Not clipped: what a screen
 * cannot show lies outside 0 to 1. Where no bait is, nothing is said.
 */
export interface ComputedColour {
  readonly white: Float32Array;
  readonly black: Float32Array;
}
