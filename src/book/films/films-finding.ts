/** What is wrong with a table of films. */
export interface FilmsFault {
  /** What was found; of a warning that expects nothing else, all there is to tell. */
  readonly found: string;
  readonly expected?: string;
  /** Text of the cell that it is about. */
  readonly cell?: string;
}

/** Something to tell about a line of a table of films. */
export interface FilmsFinding extends FilmsFault {
  readonly severity: 'error' | 'warning';
  readonly file: string;
  /** From 1; undefined for the file as a whole. */
  readonly line?: number;
  /** What to do about it, where that is known. */
  readonly fix?: string;
  /** The film that it is about, where it says that its rows do not agree on what is in it. */
  readonly disagrees?: string;
}

/** A finding as one or two lines of text: `films.csv:12 error Unexpected …`. */
export function findingText({ file, line, severity, found, expected, fix }: FilmsFinding): string {
  const place = line === undefined ? file : `${file}:${line}`;
  const message = expected === undefined ? found : `Unexpected ${found}, expected ${expected}`;
  return `${place} ${severity} ${message}${fix === undefined ? '' : `\n  fix: ${fix}`}`;
}

/** Orders findings by file and line; those about a whole file come first. */
export function compareFindings(one: FilmsFinding, other: FilmsFinding): number {
  return (one.file < other.file ? -1 : one.file > other.file ? 1 : 0) || (one.line ?? 0) - (other.line ?? 0);
}
