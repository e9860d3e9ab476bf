import type { DiagnosticCode } from './catalogue.ts';
import type { Diagnostic } from './diagnostic.ts';

/** So many warnings of a code are shown of one folder, and of a whole book. */
const MOST_OF_FOLDER = 20;
const MOST_OF_CODE = 100;

/** Warnings that are counted and not shown. */
export interface Unshown {
  readonly code: DiagnosticCode;
  /** The folder in the book that they are in, with what is below it; `./` for the book's own. */
  readonly folder: string;
  readonly count: number;
}

/** Findings to be shown, and how many warnings are left out. */
export interface Capped {
  readonly shown: readonly Diagnostic[];
  readonly unshown: readonly Unshown[];
}

/**
 * Findings without the warnings that only say the same of another file of the same folder: a folder of scans or of another program may hold
 * thousands. Errors are all kept, since each must be mended.
 */
export function capped(diagnostics: readonly Diagnostic[]): Capped {
  const counts = new Map<string, number>();
  const counted = (key: string): number => {
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    return count;
  };
  const unshown = new Map<string, Unshown>();
  const shown = diagnostics.filter(({ severity, code, file }) => {
    if (severity === 'error') return true;
    const folder = topFolder(file);
    const ofFolder = counted(`${code} ${folder}`);
    if (ofFolder <= MOST_OF_FOLDER && counted(code) <= MOST_OF_CODE) return true;
    const key = `${code} ${folder}`;
    unshown.set(key, { code, folder, count: (unshown.get(key)?.count ?? 0) + 1 });
    return false;
  });
  return { shown, unshown: [...unshown.values()] };
}

function topFolder(file: string): string {
  return /^[^/]*\//.exec(file)?.[0] ?? './';
}
