import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { Recipe, RecipeLook } from '../../book/model/recipe.ts';
import type { Book } from '../../book/model.ts';
import { picturedLook } from '../../book/pictured/pictured-look.ts';
import { picturedRecipe } from '../../book/pictured/pictured-recipe.ts';
import type { LaterFile } from '../../output/later-file.ts';
import type { Copied } from '../../output/site-file.ts';
import { pictureKinds } from '../../render/bait-picture.ts';
import { coloursByHue } from '../../render/colour-entry.ts';
import { paths } from '../../render/links.ts';
import type { PageContext } from '../../render/page.ts';
import { picturePath } from '../../render/picture-files.ts';
import { BOOK_PICTURE } from '../../render/shared-head.ts';
import { defined } from '../../values/defined.ts';
import { contactSheet, SHEET_BAITS } from './contact-sheet.ts';
import { PictureFiles, plainMasters } from './draw.ts';
import type { Drawing, Wanted } from './drawing-threads.ts';
import type { KeptPictures } from './kept-pictures.ts';
import { type Pictured, plainSide } from './pictured.ts';
import { type TargetColours, targetLink } from './target-link.ts';
import { readOutlines } from './title-outlines.ts';

/** Where pictures come from. */
export interface PictureSource {
  readonly drawing: Drawing;
  readonly kept: KeptPictures;
  /** Files of the fonts of titles. */
  readonly fonts: readonly string[];
  /** Told of a picture that could not be drawn. */
  tell(sentence: string): void;
}

/** The pictures that a site has of baits, and of targets for links. */
export interface SitePictures {
  readonly pictures: PageContext['pictures'];
  readonly later: readonly LaterFile[];
}

/**
 * The pictures of all baits of an edition, or of one. None is drawn before it is wanted, nor a second time as long as it is kept.
 *
 * What is not for readers must have been taken out of the book before.
 */
export function sitePictures(book: Book, source: PictureSource, only?: string): SitePictures {
  const states: [string, string][] = [];
  const later: LaterFile[] = [];
  for (const thing of [...book.recipes, ...book.looks]) {
    if (only !== undefined && thing.id !== only) continue;
    const pictured = picturedOf(book, thing);
    const bait = nameOf([source.drawing.version, pictured]);
    const words = { title: thing.title, book: book.title };
    states.push([thing.id, nameOf([bait, words]).slice(0, 8)]);
    for (const kind of pictureKinds(thing)) {
      if (kind === 'shared' && !hasLinks(book)) continue;
      const wanted: Wanted = kind === 'shared' ? { kind, words } : { kind };
      const path = picturePath(thing.id, kind);
      later.push({ path, make: () => made({ title: thing.title, bait, pictured, wanted, path }, source) });
    }
  }
  const things = coloursByHue(book).flatMap(({ entries }) => entries);
  if (only === undefined && hasLinks(book) && things.length > 0) {
    const ids = spreadOver(things, SHEET_BAITS).map(({ id }) => id);
    const tiles = ids.map((id) => later.find(({ path }) => path === picturePath(id, 'tile-2x'))!);
    const state = nameOf([book.title, ids.map((id) => states.find(([of]) => of === id))]);
    states.push([BOOK_PICTURE, state.slice(0, 8)]);
    later.push({ path: paths.sharedPicture, make: () => madeSheet(tiles, book.title, state, source) });
  }
  if (only === undefined && hasLinks(book)) {
    for (const { id, title, parts } of book.targets) {
      const colours = parts.map(
        ({ overWhite, overBlack }): TargetColours => ({ white: overWhite.hex, ...defined({ black: overBlack?.hex }) }),
      );
      const words = { title, book: book.title };
      const path = paths.targetPicture(id);
      states.push([path, nameOf([colours, words]).slice(0, 8)]);
      later.push({ path, make: async () => targetLink(colours, words, await readOutlines(source.fonts)) });
    }
  }
  return { pictures: Object.fromEntries(states), later };
}

/** At most so many of a list, evenly from its first to its last. */
function spreadOver<T>(list: readonly T[], most: number): readonly T[] {
  if (list.length <= most) return list;
  return Array.from({ length: most }, (_, at) => list[Math.round((at * (list.length - 1)) / (most - 1))]!);
}

async function madeSheet(
  tiles: readonly LaterFile[],
  title: string,
  state: string,
  { kept, fonts }: PictureSource,
): Promise<Uint8Array | Copied> {
  const name = `${state}-shared.jpg`;
  const found = await kept.find(name);
  if (found) return found;
  const made = await Promise.all(tiles.map((tile) => tile.make()));
  const bytes = await Promise.all(made.map((tile) => (tile instanceof Uint8Array ? tile : readFile(tile.copyOf))));
  const sheet = await contactSheet(bytes, title, await readOutlines(fonts));
  // One with a bait that could not be drawn is not kept.
  return made.some((tile) => tile instanceof Uint8Array) ? sheet : kept.keep(name, sheet);
}

/** A picture of a shared link is found only where the book says where it is published, and never of the maker’s own copy. */
function hasLinks({ address, edition }: Book): boolean {
  return address !== undefined && edition !== 'mine';
}

function picturedOf(book: Book, thing: Recipe | RecipeLook): Pictured {
  const other = pictureKinds(thing).includes('other') ? thing.other : undefined;
  return {
    bait: 'cups' in thing ? picturedRecipe(thing, book) : picturedLook(thing),
    plain: { near: plainSide(thing.body), ...(other ? { far: plainSide(other) } : {}) },
  };
}

const nameOf = (value: unknown): string =>
  createHash('sha256').update(JSON.stringify(value)).digest('hex').slice(0, 24);

interface Picture {
  readonly title: string;
  /** Of the bait with the program that draws it. */
  readonly bait: string;
  readonly pictured: Pictured;
  readonly wanted: Wanted;
  readonly path: string;
}

async function made(picture: Picture, { drawing, kept, fonts, tell }: PictureSource): Promise<Uint8Array | Copied> {
  const { title, bait, pictured, wanted, path } = picture;
  const name = `${nameOf([bait, wanted])}-${path.slice(path.lastIndexOf('/') + 1)}`;
  const found = await kept.find(name);
  if (found) return found;
  try {
    return await kept.keep(name, await drawing.draw(bait, pictured, wanted));
  } catch (error) {
    tell(
      `The bait of ${title} could not be drawn, so ${path} shows its plain colours. ${error instanceof Error ? error.message : error}`,
    );
    return new PictureFiles(fonts).file(plainMasters(pictured), pictured, wanted.kind, wanted.words);
  }
}
