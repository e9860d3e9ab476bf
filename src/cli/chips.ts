import { chipStart } from '../book/chips/chip-start.ts';
import { MOST_CHIPS, worthAChip } from '../book/chips/worth-a-chip.ts';
import { dayOf } from '../book/day-of.ts';
import { matchPlastic } from '../book/match/match-cup.ts';
import type { Book } from '../book/model.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import { printable } from '../shell/printable.ts';
import { writeNewFile } from '../shell/write-new-file.ts';
import { required } from '../values/required.ts';
import { sentence } from '../words/sentence-text.ts';
import { chipToPourText, NOTHING_WORTH_LOOKING, worthText } from '../words/worth-looking.ts';
import { type ChipFile, chipFile } from './chip-file.ts';
import type { Command } from './command.ts';
import { soundBook } from './sound-book.ts';
import { wholeNumber } from './whole-number.ts';

const USUAL_COUNT = 3;

/** `cupbook chips` */
export const chipsCommand: Command = {
  name: 'chips',
  usage: '[--count N] [--write]',
  summary: 'say which chip of your own would teach the book most',
  words: [0, 0],
  options: {
    count: { value: 'N', help: `at most so many, 1 to ${MOST_CHIPS} (default ${USUAL_COUNT})` },
    write: { help: 'write a file for each of them, to be filled in once you have looked' },
    json: { help: 'as JSON, for other programs' },
  },
  details:
    'Each is chosen as if those before it had been poured and looked at on a white and on a black card. None is asked for where little is to be learned.',
  async run(_words, values, { recipes }) {
    const count = wholeNumber(values, 'count', USUAL_COUNT, MOST_CHIPS);
    const { book, loaded } = soundBook(recipes);
    const titleOf = (id: string): string => required(materialsOf(book), id).title;
    const taken = new Set(loaded.sources.map(({ path }) => path));
    const told = worthAChip(book, count).map((chip) => {
      const start = chipStart(chip, {
        plastic: required(materialsOf(book), matchPlastic(book)!).id,
        titleOf,
        isTaken: (path) => taken.has(path),
        settings: book.settings,
      });
      const file = chipFile(start, dayOf(new Date()));
      taken.add(file.source.path);
      const says = `${chipToPourText(chip, titleOf, book.settings)}: ${worthText(chip, titleOf)}`;
      return { ...chip, says, file };
    });
    if (values.write)
      await writeFiles(
        recipes,
        told.map(({ file }) => file),
      );
    if (values.json)
      console.log(
        JSON.stringify(
          told.map(({ file, ...chip }) => ({ ...chip, title: file.title, file: file.source })),
          null,
          2,
        ),
      );
    else
      console.log(
        printable(
          told.length === 0
            ? NOTHING_WORTH_LOOKING
            : told
                .map(({ says, file }) => `${sentence(says)}\n  ${values.write ? 'in' : 'for'} ${file.source.path}`)
                .join('\n'),
        ),
      );
    return 0;
  },
};

const materialsOf = (book: Book): ReadonlyMap<string, Book['materials'][number]> =>
  new Map(book.materials.map((material) => [material.id, material]));

async function writeFiles(recipes: string, files: readonly ChipFile[]): Promise<void> {
  for (const { source } of files) {
    try {
      await writeNewFile(recipes, source.path, source.text);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
      throw new Refusal(`${source.path} is already there. Ask again.`);
    }
  }
}
