import type { Publish } from '../model/publish.ts';
import type { Book } from '../model.ts';
import { publishedBook } from './published-book.ts';

/** The maker's own copy: everything in full, with what readers have of each thing of the shelf, each mold and each target. */
export function makersBook(book: Book): Book {
  const { materials, molds, targets } = publishedBook(book);
  const whole = new Set([...materials, ...molds].map(({ source }) => source.path));
  const publishedAs = new Map(targets.map(({ id, publish }) => [id, publish]));
  const shared = <T extends Book['materials'][number] | Book['molds'][number]>(thing: T): T => ({
    ...thing,
    shared: whole.has(thing.source.path) ? 'full' : 'no',
  });
  const { readers: _, ...mine } = book;
  return {
    ...mine,
    edition: 'mine',
    materials: book.materials.map(shared),
    molds: book.molds.map(shared),
    targets: book.targets.map((target) => ({
      ...target,
      shared: publishedAs.get(target.id) ?? ('no' satisfies Publish),
    })),
  };
}
