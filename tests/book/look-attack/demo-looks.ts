import type { Book } from '../../../src/book/model.ts';
import { lookOnly } from '../../../src/book/publish/look-only.ts';
import { FILES } from '../../../src/render/data-files.ts';
import { pageOf } from '../../render/sample-book.ts';
import { type Knowledge, knowledgeOf, type PublicLook } from './attack.ts';
import { type ReadLook, readLook } from './read-look.ts';

/** A look-only recipe as it is read from the finished bytes of the shared edition. */
export async function readFromEdition(shared: Book, id: string, step: number): Promise<ReadLook> {
  const file = (name: string, item: string): string => FILES.find(({ kind }) => kind === name)!.text(shared, item, {});
  const [bookJson, chip] = [file('book-data', ''), file('test-chip', id)];
  return readLook({ bookJson, chip, page: await pageOf('recipe', id, shared) }, id, step);
}

/** A recipe of a book as if only its look were published, in colours of a step. */
export function asLookOnly(book: Book, id: string, step: number): { look: PublicLook; knowledge: Knowledge } {
  const recipe = book.recipes.find((each) => each.id === id)!;
  return { look: { ...lookOnly(recipe, book, step), step }, knowledge: knowledgeOf(book, id) };
}
