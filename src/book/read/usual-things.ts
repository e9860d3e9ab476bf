/**
 * What a recipe means where it names nothing: the usual plastic, and the mold.
 *
 * @packageDocumentation
 */
import { nearestFix } from '../../diagnostics/nearest-name.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import type { CupShelf } from '../cups/cup-shelf.ts';
import type { Report } from '../report.ts';
import type { InheritedField } from './inherited-field.ts';
import type { Things } from './read-things.ts';

/** The plastic meant where none is named: the book's, or the only one on the shelf. */
export function usualPlastic(things: Things, shelf: CupShelf['materials'], report: Report): string | undefined {
  const plastics = [...things.materials.values()].filter(({ kind }) => kind === 'plastic').map(({ id }) => id);
  const stated = things.book?.fields.plastic;
  if (
    things.book &&
    stated !== undefined &&
    shelf.get(stated)?.kind !== 'plastic' &&
    !things.faulty.has('plastic', stated)
  ) {
    report.add('book/unknown-plastic', things.book, ['plastic'], {
      found: `plastic \`${stated}\``,
      expected: 'the name of a file in shelf/plastics/',
      ...nearestFix(stated, [...plastics, ...things.faulty.namesOf((kind) => kind === 'plastic')]),
    });
  }
  if (
    things.book &&
    plastics.length === 0 &&
    things.recipes.size > 0 &&
    things.faulty.materials.size === 0 &&
    things.faulty.folderOf('plastic') === undefined
  ) {
    report.add('book/no-plastic', things.book, [], {
      found: 'shelf without plastic',
      expected: 'at least one file in shelf/plastics/',
      why: 'every cup begins with plastic',
      fix: 'create `shelf/plastics/NAME.md` with a `title`',
    });
  }
  // Of a `book.md` with faults it is not known which plastic it means, so that no cup is told to name one.
  const known = plastics.length === 1 || things.faulty.has('book', 'book');
  return stated ?? (known ? plastics[0] : undefined);
}

/** A recipe's mold: its own, its parent's, or the only one there is; else it is asked for. */
export function usualMold(
  recipe: Thing<'recipe'>,
  inherited: InheritedField,
  things: Things,
  report: Report,
): string | undefined {
  const mold = inherited(recipe, 'mold');
  if (mold !== undefined) return mold;
  if (things.faulty.folderOf('mold') !== undefined) return undefined;
  if (things.molds.size === 1) return [...things.molds.keys()][0];
  const { faulty } = things;
  // It may be the one that is meant.
  const waits = faulty.namesOf((kind) => kind === 'mold').some((id) => faulty.isWaiting('mold', id));
  if (things.molds.size === 0 && waits) return undefined;
  report.add(
    'field/missing',
    recipe,
    [],
    {
      found: 'recipe without `mold`',
      expected: 'a field `mold` with the name of a file in molds/',
      why: 'how thick the bait is decides how it looks, and how large it is how much it takes',
      fix: 'add a line `mold: …`',
    },
    'key',
  );
  return undefined;
}
