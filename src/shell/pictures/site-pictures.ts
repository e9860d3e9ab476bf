import { createHash } from 'node:crypto';
import type { Recipe, RecipeLook } from '../../book/model/recipe.ts';
import type { Book } from '../../book/model.ts';
import { picturedLook } from '../../book/pictured/pictured-look.ts';
import { picturedRecipe } from '../../book/pictured/pictured-recipe.ts';
import type { LaterFile } from '../../output/later-file.ts';
import type { Copied } from '../../output/site-file.ts';
import { pictureKinds } from '../../render/bait-picture.ts';
import type { PageContext } from '../../render/page.ts';
import { type PictureKind, picturePath } from '../../render/picture-files.ts';
import { PictureFiles, plainMasters } from './draw.ts';
import type { Drawing, Wanted } from './drawing-threads.ts';
import type { KeptPictures } from './kept-pictures.ts';
import { type Pictured, plainSide } from './pictured.ts';

/** Where pictures come from. */
export interface PictureSource {
  readonly drawing: Drawing;
  readonly kept: KeptPictures;
  /** Files of the fonts of titles. */
  readonly fonts: readonly string[];
  /** Told of a picture that could not be drawn. */
  tell(sentence: string): void;
}

/** The pictures of baits that a site has. */
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
    for (const kind of kindsOf(book, thing)) {
      const wanted: Wanted = kind === 'shared' ? { kind, words } : { kind };
      const path = picturePath(thing.id, kind);
      later.push({ path, make: () => made({ title: thing.title, bait, pictured, wanted, path }, source) });
    }
  }
  return { pictures: Object.fromEntries(states), later };
}

/** A picture of a shared link is found only where the book says where it is published, and never of the maker’s own copy. */
function kindsOf({ address, edition }: Book, thing: Recipe | RecipeLook): readonly PictureKind[] {
  const isFound = address !== undefined && edition !== 'mine';
  return pictureKinds(thing).filter((kind) => isFound || kind !== 'shared');
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
