import { cpSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, inject, test } from 'vitest';
import type { Recipe } from '../../src/book/model/recipe.ts';
import type { Book } from '../../src/book/model.ts';
import { LOOK_STEP } from '../../src/book/publish/look-only.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import { madeNow } from '../../src/output/later-file.ts';
import type { SiteFile } from '../../src/output/site-file.ts';
import { loadBook } from '../../src/shell/load-book.ts';
import { photosOf, pictureName } from '../../src/shell/photos.ts';
import { sitePictures } from '../../src/shell/pictures/site-pictures.ts';
import { readLook } from '../book/look-attack/read-look.ts';
import { pictureSource, siteFiles } from '../eleventy/site-files.ts';
import { filesBelow } from '../folder-tree.ts';
import { ROOT } from '../run-cupbook.ts';
import { temporaryFolder } from '../small-book.ts';
import { book as dataOfSite } from './visit.ts';

const RECIPES = join(ROOT, 'recipes');
const site = inject('site');
const files = filesBelow(site);
const { book: whole } = loadBook(RECIPES);
const recipes = (publish: Recipe['publish']): readonly Recipe[] =>
  whole!.recipes.filter((recipe) => recipe.publish === publish);

/** What a reader can get out of a file: the search index is packed. */
function unpacked(path: string): string {
  const bytes = readFileSync(join(site, path));
  const packed = bytes[0] === 0x1f && bytes[1] === 0x8b;
  return (packed ? gunzipSync(bytes) : bytes)
    .toString('utf8')
    .replace(/&(?:amp|lt|gt|quot|#39);/g, (entity) => ENTITIES[entity]!);
}

/** A picture of a bait, by its path. */
const PICTURE = /\.(?:webp|jpg)$/;

function bytesOf(content: SiteFile['content']): Buffer {
  return typeof content === 'string' || content instanceof Uint8Array
    ? Buffer.from(content)
    : readFileSync(content.copyOf);
}

const contents = new Map<string, string>();

function contentOf(path: string): string {
  const content = contents.get(path) ?? unpacked(path);
  contents.set(path, content);
  return content;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&amp;': '&',
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
};

/** Files whose name or content holds a word, in any case. */
function tracesOf(word: string): readonly string[] {
  const small = word.toLowerCase();
  return files.filter((path) => path.toLowerCase().includes(small) || contentOf(path).toLowerCase().includes(small));
}

test('the search for traces finds what is there, in pages, data, names and the packed search index', () => {
  const { id, title } = recipes('full')[0]!;
  const found = tracesOf(title);
  expect(found).toEqual(expect.arrayContaining(['book.json', 'index.html', `colours/${id}/index.html`]));
  expect(found.some((path) => path.endsWith('.pf_fragment'))).toBe(true);
  expect(tracesOf(id)).toContain(`colours/${id}/${id}.md`);
});

describe('a recipe with `publish: no`', () => {
  test('is in the demo book, or there would be nothing to hide', () => {
    expect(recipes('no').length).toBeGreaterThanOrEqual(2);
  });

  test.each(recipes('no').map(({ id, title, notes }) => ({ id, title, notes })))(
    '$id leaves no trace in any file',
    ({ id, title, notes }) => {
      expect(tracesOf(id)).toEqual([]);
      expect(tracesOf(title)).toEqual([]);
      const words = notes.split(/\s+/).slice(0, 8).join(' ');
      expect(words.length).toBeGreaterThan(20);
      expect(tracesOf(words)).toEqual([]);
    },
  );
});

describe('a recipe with `publish: look`', () => {
  test('is in the demo book, or there would be nothing to hide', () => {
    expect(recipes('look').length).toBeGreaterThanOrEqual(2);
  });

  test.each(recipes('look').map((recipe) => ({ id: recipe.id, recipe })))(
    '$id shows its name and nothing of its cups',
    ({ id, recipe }) => {
      const own = files.filter((path) => path.startsWith(`colours/${id}/`)).sort();
      expect(own.filter((path) => !PICTURE.test(path))).toEqual([
        `colours/${id}/index.html`,
        `colours/${id}/test-chip.svg`,
      ]);
      expect(own.length).toBeGreaterThan(5);
      const page = contentOf(`colours/${id}/index.html`);
      expect(page.includes(recipe.title)).toBe(true);
      const names = new Map(whole!.materials.map((material) => [material.id, material.title]));
      for (const { material } of recipe.cups.flatMap(({ contents }) => contents)) {
        expect({ material, named: page.includes(names.get(material)!) || page.includes(`/${material}/`) }).toEqual({
          material,
          named: false,
        });
      }
      expect(dataOfSite().recipes.map((published) => published.id)).not.toContain(id);
      expect(tracesOf(recipe.source.text.slice(0, 200))).toEqual([]);
    },
  );

  test.each(recipes('look').map(({ id }) => id))(
    '%s has no colour but its four in its page, and its pictures are drawn of what the data of the book tells',
    async (id) => {
      const text = (path: string): string => readFileSync(join(site, path), 'utf8');
      const bytes = {
        bookJson: text('book.json'),
        page: text(`colours/${id}/index.html`),
        chip: text(`colours/${id}/test-chip.svg`),
      };
      expect(readLook(bytes, id, LOOK_STEP).strayColours).toEqual([]);
      const { title, address, settings, looks } = dataOfSite();
      const told = {
        title,
        address,
        settings,
        recipes: [],
        targets: [],
        looks: looks.filter((look) => look.id === id),
      };
      const { later } = sitePictures(told as unknown as Book, await pictureSource(temporaryFolder()));
      expect(later.length).toBeGreaterThan(4);
      for (const { path, content } of await madeNow(later.filter((file) => file.path.startsWith('colours/'))))
        expect({ path, same: bytesOf(content).equals(readFileSync(join(site, path))) }).toEqual({ path, same: true });
    },
  );
});

describe('photos', () => {
  test('of the demo book have metadata, or there would be nothing to remove', async () => {
    const metadata = await Promise.all(photosOf(whole!).map((file) => sharp(join(RECIPES, file)).metadata()));
    expect(metadata.filter(({ exif }) => exif?.includes('GPS') || (exif && exif.length > 0)).length).toBeGreaterThan(0);
  });

  test('and drawn pictures come out without any, and without their names', async () => {
    const pictures = files.filter((path) => /\.(?:webp|jpe?g|png|avif|gif)$/.test(path));
    expect(pictures.length).toBeGreaterThan(0);
    for (const path of pictures) {
      expect(path).toMatch(
        /^photos\/[0-9a-f]{16}(?:-small)?\.webp$|^colours\/[a-z0-9-]+\/[a-z0-9-]+\.(?:webp|jpg)$|^(?:targets\/[a-z0-9-]+\/)?shared\.jpg$|^icon-\d+\.png$/,
      );
      const { exif, xmp, iptc, comments } = await sharp(join(site, path)).metadata();
      expect({ path, exif, xmp, iptc, comments }).toEqual({
        path,
        exif: undefined,
        xmp: undefined,
        iptc: undefined,
        comments: undefined,
      });
    }
  });

  test('of what is not published are not there, and all others are', () => {
    const namesOf = (photos: readonly string[]): readonly string[] =>
      photos.flatMap((file) => {
        const name = `photos/${pictureName(readFileSync(join(RECIPES, file)))}`;
        return [`${name}.webp`, `${name}-small.webp`];
      });
    const wanted = photosOf(publishedBook(whole!));
    const hidden = photosOf(whole!).filter((file) => !wanted.includes(file));
    expect(hidden.length).toBeGreaterThan(0);
    const pictures = files.filter((path) => path.startsWith('photos/'));
    expect(pictures.toSorted()).toEqual([...new Set(namesOf(wanted))].sort());
    expect(pictures.filter((path) => namesOf(hidden).includes(path))).toEqual([]);
  });
});

test('no file tells a price, a cost, what is left, or what a photo was called', () => {
  const { materials, currency } = { materials: whole!.materials, currency: whole!.settings.currency };
  expect(
    materials.filter(({ price, stockGrams }) => price !== undefined && stockGrams !== undefined).length,
  ).toBeGreaterThan(5);
  const money = new RegExp(`\\${currency} ?\\d`);
  const names = new RegExp(
    photosOf(whole!)
      .map((file) => file.slice('photos/'.length))
      .join('|'),
  );
  for (const path of files.filter((each) => /\.(?:html|json|md|pf_fragment)$/.test(each))) {
    const content = contentOf(path);
    for (const told of [
      money,
      names,
      /"(?:price|stockGrams|cost|costPerBait|shortGrams|packs)"/,
      /\bleft afterwards\b|\bnot enough:|\bnone left\b/i,
      /^(?:price|stock):/m,
    ])
      expect({ path, told: told.exec(content)?.[0] }).toEqual({ path, told: undefined });
  }
});

test('deleting what is not published, and from which nothing published comes, changes no byte of any file', async () => {
  const from = new Set(
    whole!.recipes
      .filter(({ publish }) => publish !== 'no')
      .flatMap(({ parent, cups }) => [parent, ...cups.map((cup) => cup.from?.recipe)]),
  );
  const unneeded = recipes('no').filter(({ id }) => !from.has(id));
  expect(unneeded.length).toBeGreaterThanOrEqual(2);
  const left = join(temporaryFolder(), 'book');
  cpSync(RECIPES, left, { recursive: true });
  for (const { source } of unneeded) rmSync(join(left, source.path));
  const again = await siteFiles(loadBook(left).book!, 'shared', {
    root: ROOT,
    recipes: left,
    cache: temporaryFolder(),
  });
  expect(again.map(({ path }) => path).sort()).toEqual(files.filter((path) => path !== '.cupbook'));
  for (const { path, content } of again) {
    expect({ path, same: bytesOf(content).equals(readFileSync(join(site, path))) }).toEqual({ path, same: true });
  }
});

test('nothing tells of the machine that built it', () => {
  expect(tracesOf(ROOT)).toEqual([]);
  expect(tracesOf(site)).toEqual([]);
});
