/** Something to tell about a line of a table of films. */
export interface FilmsFinding {
  readonly severity: 'error' | 'warning';
  readonly file: string;
  /** From 1; undefined for the file as a whole. */
  readonly line?: number;
  /** Unexpected what, expected what, because of what. */
  readonly message: string;
  /** What to do about it, where that is known. */
  readonly fix?: string;
  /** The film that it is about, where it says that its rows do not agree on what is in it. */
  readonly disagrees?: string;
}

/** A finding as one or two lines of text: `films.csv:12 error Unexpected …`. */
export function findingText({ file, line, severity, message, fix }: FilmsFinding): string {
  const place = line === undefined ? file : `${file}:${line}`;
  return `${place} ${severity} ${message}${fix === undefined ? '' : `\n  fix: ${fix}`}`;
}

/** Orders findings by file and line; those about a whole file come first. */
export function compareFindings(one: FilmsFinding, other: FilmsFinding): number {
  return (one.file < other.file ? -1 : one.file > other.file ? 1 : 0) || (one.line ?? 0) - (other.line ?? 0);
}
