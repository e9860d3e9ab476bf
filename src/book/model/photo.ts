/** A photo that a file names. */
export interface Photo {
  /** Path in the book's folder, `photos/…`. */
  readonly file: string;
  readonly caption?: string;
}
