import { crc32, deflateSync } from 'node:zlib';
import { dusk, type HostileBook } from '../hostile-book.ts';
import type { HostileContent, HostileFiles } from '../sound-book.ts';

/** A picture of one pixel. */
export const PIXEL: Buffer = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAIAAACQd1PeAAAACXBIWXMAAAPoAAAD6AG1e1JrAAAADElEQVQImWM4scgLAAPqAbXaavlVAAAAAElFTkSuQmCC',
  'base64',
);

function chunk(type: string, data: Uint8Array): Buffer {
  const [length, sum, body] = [Buffer.alloc(4), Buffer.alloc(4), Buffer.concat([Buffer.from(type), data])];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}

/** A picture that says how large it is, with the chunks in it. */
function png(side: number, ...chunks: readonly Buffer[]): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(side, 0);
  head.writeUInt32BE(side, 4);
  head.set([8, 2], 8);
  return Buffer.concat([PIXEL.subarray(0, 8), chunk('IHDR', head), ...chunks, chunk('IEND', Buffer.alloc(0))]);
}

const pixels = chunk('IDAT', deflateSync(Buffer.alloc(4)));
const shows = (...names: readonly string[]): HostileFiles =>
  dusk(
    `title: Dusk\nmold: minnow\nphotos: ${JSON.stringify(names)}\ncups: { body: { plastic: 120 ml, add: { peat: 9 drops } } }`,
  );
const photo = (content: HostileContent, name = 'a.png'): HostileFiles => ({
  ...shows(name),
  [`photos/${name}`]: content,
});
const heic = Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic\0\0\0\0mif1heic'), Buffer.alloc(400)]);
const svg = '<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"><image href="file:///etc/passwd"/></svg>';

/** Pictures, and what only says that it is one. */
export const PICTURE_BOOKS: readonly HostileBook[] = [
  ['a picture of one pixel', photo(PIXEL), 'builds'],
  ['a picture under the name of another format', photo(PIXEL, 'a.jpg'), 'builds'],
  [
    'a picture with a page after its end',
    photo(Buffer.concat([PIXEL, Buffer.from('<script>alert(1)</script>')])),
    'builds',
  ],
  [
    'a picture with a text that unpacks to 20 MB',
    photo(png(1, chunk('zTXt', Buffer.concat([Buffer.from('a\0\0'), deflateSync(Buffer.alloc(20_000_000))])), pixels)),
    'builds',
  ],
  ['a picture of 900 million pixels', photo(png(30_000, pixels)), ['photo/unreadable']],
  ['a picture of no pixel', photo(png(0, pixels)), ['photo/unreadable']],
  ['a picture that ends too early', photo(PIXEL.subarray(0, 60)), ['photo/unreadable']],
  ['a picture whose pixels are noise', photo(png(9, chunk('IDAT', Buffer.alloc(80, 7)))), ['photo/unreadable']],
  ['nothing under the name of a picture', photo(''), ['photo/unreadable']],
  ['a text under the name of a picture', photo('no picture'), ['photo/unreadable']],
  ['a drawing that runs', photo(svg), ['photo/unreadable']],
  [
    'a drawing that runs, packed',
    photo(`<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>${svg}`, 'a.webp'),
    ['photo/unreadable'],
  ],
  ['an animation of old', photo(Buffer.from('GIF89a\u0001\0\u0001\0\0\0\0;', 'latin1')), ['photo/unreadable']],
  ['a picture of a telephone that no browser shows', photo(heic, 'a.jpg'), ['photo/unreadable']],
  ['a page', photo('<!doctype html><script>alert(1)</script>', 'a.jpeg'), ['photo/unreadable']],
  [
    'three pictures that are none',
    { ...shows('a.png', 'b.png', 'c.png'), 'photos/a.png': '', 'photos/b.png': 'x', 'photos/c.png': svg },
    ['photo/unreadable'],
  ],
  ['a name that leaves its quotes', photo(PIXEL, `a' onerror='alert(1).png`), 'builds'],
  ['a picture that nobody names', { 'photos/a.png': PIXEL }, ['photo/unused']],
  ['a picture that is not there', shows('a.png'), ['photo/missing']],
];
