import type { Edition } from '../book/model/publish.ts';
import type { Output } from '../output/write-site.ts';

const CALLED: Readonly<Record<Edition, string>> = {
  shared: 'the shared edition of a book',
  mine: 'your own edition of a book',
};

/** Where an edition of a book is written: never in the place of the other one, and the maker's never among what may be published. */
export function editionOutput(edition: Edition, folder: string, recipes: string): Output {
  return { folder, sources: recipes, label: edition, called: CALLED, alone: edition === 'mine' };
}
