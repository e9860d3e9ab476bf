import type { Book } from '../../src/book/model.ts';
import { taughtData } from '../../src/browser/match/taught-data.ts';
import type { PackedShelf } from '../../src/learning/packed-shelf.ts';
import { learnedText } from '../../src/render/learned-file.ts';
import { matchPageData, type TaughtMatchData } from '../../src/render/pages/match.ts';

/** What the file beside the Match page of a book holds. */
export function learnedIn(book: Book): PackedShelf {
  const [, json] = /^window\.cupbookLearned=(.*);\n$/.exec(learnedText(book))!;
  return JSON.parse(json!) as PackedShelf;
}

/** What the Match page knows of a book, once it has loaded that file. */
export function taughtBook(book: Book): TaughtMatchData {
  return taughtData(matchPageData(book)!, learnedIn(book));
}
