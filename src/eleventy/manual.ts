import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Edition } from '../book/model/publish.ts';
import type { PageContext } from '../render/page.ts';
import { MANUAL } from '../render/pages/manual.ts';

/** The texts of the manual by name, for the edition that has it; none for another. */
export async function readManual(root: string, edition: Edition): Promise<PageContext['manual']> {
  if (edition !== 'mine') return {};
  const texts = MANUAL.map(
    async (name) => [name, await readFile(join(root, `site/manual/${name}.md`), 'utf8')] as const,
  );
  return Object.fromEntries(await Promise.all(texts));
}
