import { Refusal } from '../diagnostics/refusal.ts';
import { isSitePath } from './site-file.ts';

/** What is still to be done in a folder. It has reached the disk, with the files that it puts in place, before any of it is done. */
export interface Journal {
  /** Files to put in place, in this order: the n-th lies ready under its number. `fresh`: nothing of the site was there. */
  readonly put: readonly { readonly path: string; readonly fresh: boolean }[];
  /** Files of the site that are no longer of it. */
  readonly stale: readonly string[];
}

/**
 * Reads a journal. Refuses what no writer has left: a folder may come from anybody, and what its journal says is done.
 *
 * @param folder where it was found
 */
export function readJournal(text: string, folder: string): Journal {
  try {
    const { put, stale } = JSON.parse(text) as { readonly put?: unknown; readonly stale?: unknown };
    if (Array.isArray(put) && put.every(isPut) && Array.isArray(stale) && stale.every(isSitePath))
      return { put, stale };
  } catch {
    // Refused below.
  }
  throw new Refusal(`${folder} was not left by a build of a book. Move it away, and do this again.`);
}

function isPut(entry: unknown): entry is Journal['put'][number] {
  const { path, fresh } = (entry ?? {}) as { readonly path?: unknown; readonly fresh?: unknown };
  return isSitePath(path) && typeof fresh === 'boolean';
}
