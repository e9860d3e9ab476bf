/** Red, green and blue of one thing, linear. */
export type Rgb = readonly [number, number, number];
