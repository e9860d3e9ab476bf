import * as pagefind from 'pagefind';
import type { SiteFile } from '../output/site-file.ts';
import type { SearchRecord } from '../render/page.ts';

/** Folder of the search index in a site. */
export const PAGEFIND_FOLDER = 'pagefind';

/** Interfaces that Pagefind makes beside its index. The book has its own. */
const UNUSED = /^pagefind-(?:ui|modular-ui|component-ui|highlight)\b/;

/** The file by which a search begins: it names the others. */
const ENTRY = 'pagefind-entry.json';

/** A search index of records, the file by which a search begins last. */
export async function searchIndex(records: readonly SearchRecord[]): Promise<readonly SiteFile[]> {
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
    const { files } = sound(await index.getFiles());
    return files
      .map(({ path, content }) => ({ path: path.replaceAll('\\', '/'), content }))
      .filter(({ path }) => !UNUSED.test(path))
      .sort((one, other) => Number(one.path === ENTRY) - Number(other.path === ENTRY))
      .map(({ path, content }) => ({ path: `${PAGEFIND_FOLDER}/${path}`, content }));
  } finally {
    await pagefind.close();
  }
}

/** Pagefind reports its errors in the answer and goes on. */
function sound<T extends { errors: string[] }>(answer: T): T {
  if (answer.errors.length > 0) throw new Error(`Pagefind could not index the book: ${answer.errors.join('; ')}`);
  return answer;
}
