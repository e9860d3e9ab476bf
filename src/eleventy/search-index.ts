import { createHash } from 'node:crypto';
import { readdir, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import * as pagefind from 'pagefind';
import type { SearchRecord } from '../render/page.ts';

/** Folder of the search index in an output folder. */
export const PAGEFIND_FOLDER = 'pagefind';

/** Folder in which the next index is written. */
const ASIDE_FOLDER = `${PAGEFIND_FOLDER}.tmp`;

/** Interfaces that Pagefind writes beside its index. The book has its own. */
const UNUSED = /^pagefind-(?:ui|modular-ui|component-ui|highlight)\b/;

/** Whether a path from the output folder is the index, or one that is being written. */
export function isSearchIndex(path: string): boolean {
  return path === PAGEFIND_FOLDER || path === ASIDE_FOLDER;
}

/** Writes a search index of records into an output folder, in place of the one that is there. */
export async function writeSearchIndex(records: readonly SearchRecord[], output: string): Promise<void> {
  const aside = join(output, ASIDE_FOLDER);
  await rm(aside, { recursive: true, force: true });
  try {
    const { index } = sound(await pagefind.createIndex());
    if (!index) throw new Error('Pagefind made no index');
    const added = records.map(({ url, content, language, meta, filters, sort }) =>
      index.addCustomRecord({
        url,
        content,
        language,
        meta: { ...meta },
        filters: Object.fromEntries(Object.entries(filters).map(([name, values]) => [name, [...values]])),
        sort: { ...sort },
      }),
    );
    for (const answer of await Promise.all(added)) sound(answer);
    sound(await index.writeFiles({ outputPath: aside }));
  } finally {
    await pagefind.close();
  }
  for (const name of await readdir(aside)) if (UNUSED.test(name)) await rm(join(aside, name));

  // Swapped at the end, so that a search during a rebuild finds the index of before, whole.
  const folder = join(output, PAGEFIND_FOLDER);
  await rm(folder, { recursive: true, force: true });
  await rename(aside, folder);
}

/** Pagefind reports its errors in the answer and goes on. */
function sound<T extends { errors: string[] }>(answer: T): T {
  if (answer.errors.length > 0) throw new Error(`Pagefind could not index the book: ${answer.errors.join('; ')}`);
  return answer;
}

/** Keeps the index of a site that is built again and again. */
export interface SearchIndexer {
  /** Has the index written, if the records are others than last time. */
  update(records: readonly SearchRecord[], output: string): void;
  /** Resolves when the first index stands; later ones follow by themselves. */
  readonly first: Promise<void>;
}

/**
 * The first index is written at once, beside the rendering of the pages. Later ones, while somebody edits, wait until
 * nothing has changed for a while: a save must not wait for them.
 *
 * @param wait ms without a change before a later index is written
 * @param onError told when a later index fails
 */
export function searchIndexer(wait: number, onError: (error: unknown) => void): SearchIndexer {
  let hash = '';
  let timer: NodeJS.Timeout | undefined;
  let first: Promise<void> | undefined;
  let last: Promise<void> | undefined;
  return {
    update(records, output) {
      const next = createHash('sha256').update(JSON.stringify(records)).digest('hex');
      if (next === hash) return;
      hash = next;
      if (!first) {
        first = writeSearchIndex(records, output);
        // Reported where `first` is awaited; if the build stops before, there is nobody left to tell.
        last = first.catch(() => undefined);
        return;
      }
      clearTimeout(timer);
      timer = setTimeout(() => {
        last = last?.then(() => writeSearchIndex(records, output)).catch(onError);
      }, wait);
    },
    get first() {
      return first ?? Promise.resolve();
    },
  };
}
