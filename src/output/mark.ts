import { join } from 'node:path';
import { Refusal } from '../diagnostics/refusal.ts';
import { type Effects, undefinedIfMissing } from './effects.ts';
import { isSitePath } from './site-file.ts';

/**
 * The file that marks a folder as written by a build, and lists what is the build's in it: only that is ever replaced or removed.
 *
 * An empty one says that a site may be written among the files that are there.
 */
export const MARKER = '.cupbook';

/** What the mark of a folder says. */
export interface Mark {
  /** Which of several sites it is; absent where none has been written yet. */
  readonly label?: string;
  /** Every file of the site, from the folder, with `/`. */
  readonly files: readonly string[];
}

const ABOUT =
  'This folder holds a site that Cupbook wrote. It replaces and removes the files listed here, and leaves all others alone.';

/** A mark as the text of its file: the same for the same site. */
export function markText({ label, files }: Mark): string {
  return `${JSON.stringify({ about: ABOUT, label, files: [...files].sort() }, null, 1)}\n`;
}

/** The mark of a folder; undefined where there is none. Refuses one that is not understood. */
export async function readMark(folder: string, disk: Effects): Promise<Mark | undefined> {
  const text = (await disk.read(join(folder, MARKER)).catch(undefinedIfMissing))?.toString('utf8');
  if (text === undefined) return undefined;
  if (text.trim() === '') return { files: [] };
  const mark = parsed(text);
  if (mark) return mark;
  throw new Refusal(
    `${folder} was written by another version of Cupbook, or its list of files, ${MARKER}, has been changed. Move what is yours out of it, delete the folder, and do this again.`,
  );
}

function parsed(text: string): Mark | undefined {
  try {
    const { label, files } = JSON.parse(text) as { readonly label?: unknown; readonly files?: unknown };
    if (!Array.isArray(files) || !files.every(isSitePath)) return undefined;
    return typeof label === 'string' ? { label, files } : { files };
  } catch {
    return undefined;
  }
}
