// What a bait's pictures cost, in multiples of one WebP encode of a page's picture, and how many bytes they are.
import { join } from 'node:path';
import type { Book } from '../../src/book/model.ts';
import { picturedLook } from '../../src/book/pictured/pictured-look.ts';
import { picturedRecipe } from '../../src/book/pictured/pictured-recipe.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import { titleFonts } from '../../src/eleventy/title-fonts.ts';
import { above } from '../../src/picture/laid-together.ts';
import { madeSmaller } from '../../src/picture/made-smaller.ts';
import { pictureKinds } from '../../src/render/bait-picture.ts';
import type { PictureKind } from '../../src/render/picture-files.ts';
import { loadBook } from '../../src/shell/load-book.ts';
import { DrawnMasters, PictureFiles } from '../../src/shell/pictures/draw.ts';
import { plainSide } from '../../src/shell/pictures/pictured.ts';
import { sharpOf } from '../../src/shell/pictures/shared-link.ts';

const ROOT = process.cwd();
const { book } = loadBook(join(ROOT, 'recipes')) as { book: Book };
const shared = publishedBook(book);
const things = [...shared.recipes, ...shared.looks];
const drawn = new DrawnMasters();
const files = new PictureFiles(titleFonts(ROOT));

/** Time of a processor, ms. */
async function processor(work: () => Promise<unknown>): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const middle = (values: readonly number[]): number => values.toSorted((one, other) => one - other)[values.length >> 1]!;

const baits = things.map((thing) => ({
  thing,
  kinds: pictureKinds(thing),
  pictured: {
    bait: 'cups' in thing ? picturedRecipe(thing, shared) : picturedLook(thing),
    plain: { near: plainSide(thing.body) },
  },
}));
// Molds that follow one another share a field.
baits.sort((one, other) =>
  JSON.stringify(one.pictured.bait.mold).localeCompare(JSON.stringify(other.pictured.bait.mold)),
);

/** Draws a bait, and returns the bytes of its pictures by what they are for. */
async function drawBait({ thing, kinds, pictured }: (typeof baits)[number], wanted: readonly PictureKind[]) {
  const asked = kinds.filter((kind) => wanted.includes(kind));
  const masters = drawn.of(pictured.bait, asked.includes('other'));
  const words = { title: thing.title, book: shared.title };
  const bytes: Partial<Record<PictureKind, number>> = {};
  for (const kind of asked) bytes[kind] = (await files.file(masters, pictured, kind, words)).length;
  return bytes;
}

const WEB: readonly PictureKind[] = ['page', 'other', 'tile', 'tile-2x'];
const ALL: readonly PictureKind[] = [...WEB, 'shared', 'card', 'label'];

// Warm, as a thread is that has drawn some baits.
for (const bait of baits.slice(0, 6)) await drawBait(bait, ALL);

const yardstick = baits.find(({ thing }) => thing.id === 'eel-bridge') ?? baits[0]!;
const { overWhite, overBlack } = drawn.of(yardstick.pictured.bait, false).near;
const page = above(madeSmaller(overWhite, 990, 225), madeSmaller(overBlack, 990, 225));
const encode = (): Promise<unknown> => sharpOf(page).webp({ quality: 70, effort: 2 }).toBuffer();
const encodes: number[] = [];
for (let round = 0; round < 15; round++) encodes.push(await processor(encode));
const one = middle(encodes);
console.log(`one WebP encode of 990 × 450 at quality 70, effort 2: ${one.toFixed(1)} ms of a processor`);

for (const [name, wanted] of [
  ['page, other side and two tiles', WEB],
  ['all sizes', ALL],
] as const) {
  const costs: number[] = [];
  for (const bait of baits) costs.push((await processor(() => drawBait(bait, wanted))) / one);
  console.log(`${name}: ${middle(costs).toFixed(1)} encodes in the middle, ${Math.max(...costs).toFixed(1)} at most`);
}

const sizes = [];
for (const bait of baits) sizes.push(await drawBait(bait, ALL));
const kilobytes = (bytes: number): string => `${(bytes / 1000).toFixed(1)} kB`;
for (const kind of ALL) {
  const of = sizes.flatMap((size) => size[kind] ?? []);
  console.log(`${kind}: ${kilobytes(middle(of))} in the middle, ${kilobytes(Math.max(...of))} at most`);
}
const web = sizes.map((size) => WEB.reduce((sum, kind) => sum + (size[kind] ?? 0), 0));
console.log(`on the web: ${kilobytes(middle(web))} in the middle, ${kilobytes(Math.max(...web))} at most`);
