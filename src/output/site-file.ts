/** One file of a site, as a value: nothing is written until all of a site is known. */
export interface SiteFile {
  /** From the root of the site, with `/`. */
  readonly path: string;
  readonly content: string | Uint8Array | Copied;
}

/** The content of a file that lies ready elsewhere. It must not change while a site is written. */
export interface Copied {
  /** Absolute. */
  readonly copyOf: string;
}
