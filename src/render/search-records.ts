/**
 * What the search knows of each page.
 *
 * @packageDocumentation
 */

import type { Appearance } from '../book/model/colours.ts';
import type { Recipe, RecipeLook } from '../book/model/recipe.ts';
import type { Material } from '../book/model/shelf.ts';
import type { Batch, Book } from '../book/model.ts';
import { required } from '../values/required.ts';
import { bookIndex } from './book-index.ts';
import { paths } from './links.ts';
import { notesText } from './notes.ts';
import { opacityName, opacityWords } from './opacity-words.ts';
import type { SearchRecord } from './page.ts';
import { dayText, inches, sentence } from './words.ts';

const LANGUAGE = 'en';

/** How much a body hides, as it is asked for: what is clear is translucent to many. */
function opacityContent(look: Appearance): string {
  const words = opacityWords(look);
  return words.startsWith('clear') ? `${words}, translucent` : words;
}

/** Sorts as text: lightness with two digits before the point, title in lower case. */
function sortKeys(title: string, lightness: number): SearchRecord['sort'] {
  return { title: title.toLowerCase(), lightness: lightness.toFixed(2).padStart(6, '0') };
}

/** Whether the shelf has enough for the recipe's batch, of all whose stock is counted; of nothing where the book counts none. */
function isInStock({ materials }: Book, { batch }: Recipe): boolean {
  const isCounted = materials.some(({ stockGrams }) => stockGrams !== undefined);
  return isCounted && 'cost' in batch && (batch as Batch).materials.every(({ shortGrams }) => shortGrams === 0);
}

function recipeRecord(book: Book, recipe: Recipe): SearchRecord {
  const { id, title, pattern, facets, body, notes, tags, cups, known, made } = recipe;
  const { materials, molds } = bookIndex(book);
  const materialTitles = facets.materials.map((material) => required(materials, material).title);
  const rounds = cups.flatMap((cup) =>
    cup.rounds.flatMap((round) => [round.note, ...round.seen.map((look) => look.note)]),
  );
  const kinds = facets.materials.map((material) => required(materials, material).kind);
  const mold = required(molds, recipe.mold);
  return {
    url: paths.recipe(id),
    content: [
      title,
      pattern,
      ...facets.hueFamilies,
      opacityContent(body),
      ...tags,
      // `copper flake` finds what has copper in the name of a flake.
      ...materialTitles.map((material, index) => `${material} ${kinds[index]}`),
      mold.title,
      ...(made === undefined ? [] : [dayText(made), made]),
      notesText(notes),
      ...rounds,
    ]
      .filter((text) => text !== undefined && text !== '')
      .join('. '),
    language: LANGUAGE,
    meta: {
      title,
      white: body.overWhite.hex,
      black: body.overBlack.hex,
      about: `${pattern}, ${opacityName(facets.opacity)}, ${mold.title}`,
    },
    filters: {
      kind: ['colour'],
      hue: facets.hueFamilies,
      stock: isInStock(book, recipe) ? ['enough for its batch'] : [],
      lightness: [facets.lightness],
      opacity: [opacityName(facets.opacity)],
      pattern: [pattern],
      material: materialTitles,
      'flake-colour': facets.flakeColours,
      'flake-size': facets.flakeSizes,
      mold: [mold.title],
      tag: tags,
      known: [known.how],
    },
    sort: sortKeys(title, body.overWhite.lab.L),
  };
}

function lookRecord({ id, title, pattern, body, facets }: RecipeLook): SearchRecord {
  return {
    url: paths.recipe(id),
    content: [title, pattern, ...facets.hueFamilies, opacityContent(body)].join('. '),
    language: LANGUAGE,
    meta: {
      title,
      white: body.overWhite.hex,
      black: body.overBlack.hex,
      about: `${pattern}, ${opacityName(facets.opacity)}, look only`,
    },
    filters: {
      kind: ['colour'],
      hue: facets.hueFamilies,
      lightness: [facets.lightness],
      opacity: [opacityName(facets.opacity)],
      pattern: [pattern],
    },
    sort: sortKeys(title, body.overWhite.lab.L),
  };
}

function materialRecord({ id, title, kind, notes, hex, flake, cuts = [] }: Material): SearchRecord {
  const about = flake === undefined ? kind : `${kind}, ${inches(flake.acrossMm)}, ${flake.finish}`;
  return {
    url: paths.material(id),
    content: [title, about, notesText(notes), ...cuts.flatMap((cut) => [cut.title, notesText(cut.notes)])]
      .filter((text) => text !== '')
      .join('. '),
    language: LANGUAGE,
    meta: { title, white: hex, black: hex, about: sentence(about) },
    filters: { kind: ['material'] },
    sort: { title: title.toLowerCase() },
  };
}

/** Records of all colours, materials, molds and targets. A filter without values is left out. */
export function searchRecords(book: Book): readonly SearchRecord[] {
  const plain =
    (kind: string) =>
    ({ id, title, notes }: { id: string; title: string; notes: string }, url: string): SearchRecord => ({
      url,
      content: [title, id, notesText(notes)].filter((text) => text !== '').join('. '),
      language: LANGUAGE,
      meta: { title, about: sentence(kind) },
      filters: { kind: [kind] },
      sort: { title: title.toLowerCase() },
    });
  const records = [
    ...book.recipes.map((recipe) => recipeRecord(book, recipe)),
    ...book.looks.map(lookRecord),
    ...book.materials.map(materialRecord),
    ...book.molds.map((mold) => plain('mold')(mold, paths.mold(mold.id))),
    ...book.targets.map((target) => plain('target')(target, paths.target(target.id))),
  ];
  return records.map((record) => ({
    ...record,
    filters: Object.fromEntries(Object.entries(record.filters).filter(([, values]) => values.length > 0)),
  }));
}
