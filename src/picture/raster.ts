/** A finished picture: 8-bit sRGB, three numbers a pixel, row by row. */
export interface Raster {
  readonly columns: number;
  readonly rows: number;
  readonly rgb: Uint8ClampedArray;
}
