import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { titleFonts } from '../../../src/eleventy/title-fonts.ts';
import { baitPicture, picturedMold, pictureKinds } from '../../../src/render/bait-picture.ts';
import { type PictureKind, picturePath, pictureSize } from '../../../src/render/picture-files.ts';
import type { Drawing } from '../../../src/shell/pictures/drawing-threads.ts';
import { KeptPictures } from '../../../src/shell/pictures/kept-pictures.ts';
import { type SitePictures, sitePictures } from '../../../src/shell/pictures/site-pictures.ts';
import { readOutlines } from '../../../src/shell/pictures/title-outlines.ts';
import { pictureSource } from '../../eleventy/site-files.ts';
import { DEMO_BOOK } from '../../render/demo-book.ts';
import { bookOf, contextOf, MAKERS_BOOK, SAMPLE_BOOK, SAMPLE_FILES } from '../../render/sample-book.ts';
import { ROOT } from '../../run-cupbook.ts';
import { temporaryFolder } from '../../small-book.ts';

/** Draws one byte, and counts. */
function counted(): Drawing & { drawn: number } {
  return {
    version: 'one',
    drawn: 0,
    async draw() {
      this.drawn += 1;
      return Uint8Array.of(7);
    },
  };
}

const source = (drawing: Drawing, cache = temporaryFolder(), told: string[] = []) => ({
  drawing,
  kept: new KeptPictures(join(cache, 'pictures')),
  fonts: titleFonts(ROOT),
  tell: (sentence: string) => told.push(sentence),
});

const bytesOf = async ({ later }: SitePictures, path: string): Promise<Uint8Array> => {
  const content = await later.find((file) => file.path === path)!.make();
  return content instanceof Uint8Array ? content : readFileSync(content.copyOf);
};

test('nothing is drawn before it is wanted, and what was drawn is drawn once, in another run too', async () => {
  const [drawing, cache] = [counted(), temporaryFolder()];
  const { later } = sitePictures(SAMPLE_BOOK, source(drawing, cache));
  expect(drawing.drawn).toBe(0);
  const tile = later.find(({ path }) => path === picturePath('weir-foam', 'tile'))!;
  expect(await tile.make()).toHaveProperty('copyOf');
  await tile.make();
  const again = sitePictures(SAMPLE_BOOK, source(drawing, cache)).later.find(({ path }) => path === tile.path)!;
  await again.make();
  expect(drawing.drawn).toBe(1);
  const other = sitePictures(SAMPLE_BOOK, source({ ...drawing, version: 'two' }, cache));
  await other.later.find(({ path }) => path === tile.path)!.make();
  expect(drawing.drawn).toBe(1);
});

test('a picture has another state where its recipe has another colour, and no other has', () => {
  const edited = SAMPLE_FILES['colours/wick.md']!.replace('lamp-black: 12 drops', 'lamp-black: 2 drops');
  const { pictures } = sitePictures(SAMPLE_BOOK, source(counted()));
  const after = sitePictures(bookOf({ ...SAMPLE_FILES, 'colours/wick.md': edited }), source(counted())).pictures;
  expect(after.wick).not.toBe(pictures.wick);
  expect(after['weir-foam']).toBe(pictures['weir-foam']);
  expect(after['']).not.toBe(pictures['']);
});

test('links have pictures in the shared edition alone', () => {
  const paths = (book: typeof SAMPLE_BOOK) => sitePictures(book, source(counted())).later.map(({ path }) => path);
  expect(paths(SAMPLE_BOOK)).toEqual(
    expect.arrayContaining(['shared.jpg', 'colours/hush/shared.jpg', 'targets/rack/shared.jpg']),
  );
  expect(paths(MAKERS_BOOK).filter((path) => path.endsWith('shared.jpg'))).toEqual([]);
});

test('a bait that cannot be drawn shows its plain colours, is told of, and is not kept', async () => {
  const [told, cache] = [[] as string[], temporaryFolder()];
  const broken: Drawing = { version: 'one', draw: () => Promise.reject(new Error('out of paint')) };
  const { later } = sitePictures(SAMPLE_BOOK, source(broken, cache, told));
  const made = await later.find(({ path }) => path === picturePath('weir-foam', 'tile'))!.make();
  expect(told).toEqual([expect.stringContaining('The bait of Weir Foam could not be drawn')]);
  expect(await sharp(made as Uint8Array).metadata()).toMatchObject({ width: 320, format: 'webp' });
  const drawing = counted();
  await sitePictures(SAMPLE_BOOK, source(drawing, cache))
    .later.find(({ path }) => path.endsWith('foam/tile.webp'))!
    .make();
  expect(drawing.drawn).toBe(1);
});

test('without a place to keep them pictures are drawn all the same', async () => {
  const cache = temporaryFolder();
  mkdirSync(join(cache, 'taken'));
  writeFileSync(join(cache, 'taken/pictures'), '');
  const { later } = sitePictures(SAMPLE_BOOK, source(counted(), join(cache, 'taken')));
  expect(await later[0]!.make()).toEqual(Uint8Array.of(7));
});

test('a picture is as large as its page says, has its colours in words, and an address with its state', async () => {
  const context = { ...(await contextOf(SAMPLE_BOOK, 'colours/wick/')), pictures: { wick: 'abc' } };
  const wick = SAMPLE_BOOK.recipes.find(({ id }) => id === 'wick')!;
  const text = baitPicture(context, wick, 'page').toString();
  const { width, height } = pictureSize(picturedMold(SAMPLE_BOOK, wick), 'page');
  expect(text).toContain(`src="../../colours/wick/bait.webp?v=abc"`);
  expect(text).toContain(`width="${width}" height="${height}" loading="lazy" decoding="async"`);
  expect(text).toMatch(/alt="Wick: body black[^"]*; tip /);
  expect(baitPicture(context, wick, 'tile', { first: true, alt: '' }).toString()).toMatch(
    /srcset="\S+tile\.webp\?v=abc 1x, \S+tile-2x\.webp\?v=abc 2x" alt="" width="320" height="\d+" decoding/,
  );
});

/** Most bytes of a picture: a page holds dozens of tiles, and a phone loads a page in a shed. */
const MOST: Readonly<Record<PictureKind, number>> = {
  page: 37_000,
  other: 37_000,
  tile: 3500,
  'tile-2x': 10_000,
  shared: 85_000,
  card: 28_000,
  label: 14_000,
};

test('the pictures of the demo book are as large as stated and no heavier than they may be', async () => {
  const pictures = sitePictures(DEMO_BOOK, await pictureSource(temporaryFolder()));
  for (const id of ['first-ice', 'eel-bridge', 'haw-stone']) {
    const thing = DEMO_BOOK.recipes.find((recipe) => recipe.id === id)!;
    await Promise.all(
      pictureKinds(thing).map(async (kind) => {
        const bytes = await bytesOf(pictures, picturePath(id, kind));
        const { width, height, exif, icc } = await sharp(bytes).metadata();
        expect({ id, kind, width, height, exif, icc }).toEqual({
          id,
          kind,
          ...pictureSize(picturedMold(DEMO_BOOK, thing), kind),
          exif: undefined,
          icc: undefined,
        });
        expect({ id, kind, light: bytes.length <= MOST[kind] }).toEqual({ id, kind, light: true });
      }),
    );
  }
});

test('readOutlines(fonts) outlines a text with letters of two fonts, and none with a letter that neither has', async () => {
  const outlines = await readOutlines(titleFonts(ROOT));
  const plain = outlines('Alder')!;
  expect(plain.width).toBeGreaterThan(1.5);
  expect(plain.markup.match(/<path /g)).toHaveLength(5);
  expect(outlines('Ałder')!.markup.match(/<path /g)).toHaveLength(5);
  expect(outlines('Альдер')).toBeUndefined();
});
