/**
 * How far what a file says of a material's look may be off: root mean square ΔE00 of a colour.
 *
 * A hex is read off a bottle, a shop's page or a photo of the plastic. Found by a study of our own on simulated benches whose physics are
 * not this book's: taken for surer than this, a shelf of hexes that are off by more promises bounds that do not hold; taken for so vague, a
 * shelf of good ones loses next to nothing. `npm run bench foreign` holds it.
 */
export const HEX_DOUBT = 4;

/** A hex with a channel at 00 or ff: how much more there was of that nobody knows. From the same study. */
export const CLIPPED_HEX_DOUBT = 8;

/** A chip that was laid over white and over black and photographed or measured with care, each view. From the same study. */
export const CHIP_DOUBT = 1.3;

/** A photo with a channel at 00 or ff. From the same study. */
export const CLIPPED_PHOTO_DOUBT = 6;

/** mm of plastic that the colour of a pigment, a pearl or a white is taken to be seen through, over white. Convention of this book. */
export const BODY_MM = 6;
