import { duskWith, type HostileBook } from '../hostile-book.ts';
import { SOUND_BOOK } from '../sound-book.ts';

const DUSK = SOUND_BOOK['colours/dusk.md']!;
const bytes = (...parts: readonly (string | readonly number[])[]): Uint8Array =>
  Buffer.concat(parts.map((part) => (typeof part === 'string' ? Buffer.from(part) : Buffer.from(part))));
const utf16 = (swap: boolean): Uint8Array => {
  const little = Buffer.from(`\uFEFF${DUSK}`, 'utf16le');
  return swap ? little.swap16() : little;
};
const noise = Uint8Array.from({ length: 2000 }, (_, at) => (at * 197 + 83 * (at >> 3)) & 0xff);
const without = (...paths: readonly string[]): Readonly<Record<string, undefined>> =>
  Object.fromEntries(paths.map((path) => [path, undefined]));

/** Encodings, and what a folder may hold besides texts. */
export const FILE_BOOKS: readonly HostileBook[] = [
  ['UTF-16, little end first', { 'colours/dusk.md': utf16(false) }, ['file/not-text']],
  ['UTF-16, big end first', { 'colours/dusk.md': utf16(true) }, ['file/not-text']],
  ['Latin-1', { 'colours/dusk.md': Buffer.from(DUSK.replace('Dusk', 'D\u00fcsk'), 'latin1') }, ['file/not-text']],
  [
    'a surrogate by itself, in bytes',
    { 'colours/dusk.md': bytes('---\ntitle: D', [0xed, 0xa0, 0x80], '\n---\n') },
    ['file/not-text'],
  ],
  ['a letter cut in half at the end', { 'colours/dusk.md': bytes(DUSK, [0xe2, 0x82]) }, ['file/not-text']],
  ['a letter written longer than it is', { 'colours/dusk.md': bytes(DUSK, [0xc0, 0xaf]) }, ['file/not-text']],
  ['noise', { 'colours/dusk.md': noise }, ['file/not-text']],
  ['a byte order mark', { 'colours/dusk.md': `\uFEFF${DUSK}` }, 'builds'],
  ['two byte order marks', { 'colours/dusk.md': `\uFEFF\uFEFF${DUSK}` }, ['front-matter/missing']],
  ['NUL in the notes', { 'colours/dusk.md': `${DUSK}\0` }, ['file/not-text']],
  ['carriage returns alone', { 'colours/dusk.md': DUSK.replaceAll('\n', '\r') }, ['front-matter/missing']],
  ['line separators of Unicode', { 'colours/dusk.md': DUSK.replaceAll('\n', '\u2028') }, ['front-matter/missing']],
  ['spaces that are none', { 'colours/dusk.md': DUSK.replaceAll(': ', ':\u00a0') }, ['front-matter/syntax']],
  ['an archive', { 'colours/dusk.md': bytes('PK', [3, 4, 20, 0, 0, 0, 8, 0], DUSK) }, ['file/not-text']],
  ['nothing in the folder', without(...Object.keys(SOUND_BOOK)), ['book/missing']],
  ['no book.md', without('book.md'), ['book/missing']],
  [
    'no shelf',
    without(
      'shelf/plastics/supple.md',
      'shelf/colorants/peat.md',
      'shelf/powders/frost.md',
      'shelf/flakes/gold-hex.md',
      'shelf/additives/salt.md',
    ),
    ['book/no-plastic', 'recipe/unknown-material', 'recipe/unknown-plastic'],
  ],
  ['no mold', without('molds/minnow.md'), ['recipe/unknown-mold']],
  [
    'no recipes',
    {
      ...without('colours/dusk.md', 'colours/dawn.md', 'colours/hush.md'),
      'book.md': SOUND_BOOK['book.md']!.replace(/See.*/, ''),
    },
    'builds',
  ],
  ['a text of 300 KB', { 'colours/dusk.md': `${DUSK}${'x '.repeat(150_000)}` }, ['file/too-large']],
  ['a text of 10 MB', { 'colours/dusk.md': `${DUSK}${'x '.repeat(5_000_000)}` }, ['file/too-large']],
  ['a table of 5 MB', { 'shelf/measurements.csv': 'a,b\n'.repeat(1_300_000) }, ['file/too-large']],
  ['a table of noise', { 'shelf/measurements.csv': noise }, ['file/not-text']],
  ['a table of nothing', { 'shelf/measurements.csv': '' }, ['shelf/measurements']],
  ['a table of one quote', { 'shelf/measurements.csv': '"' }, ['shelf/measurements']],
  [
    'a table with names of programs',
    { 'shelf/measurements.csv': '# unit: percent\n__proto__,constructor,toString\n1,2,3\n' },
    ['shelf/measurements'],
  ],
  [
    'a table that a spreadsheet would run',
    {
      'shelf/measurements.csv':
        '# unit: percent\nsample,composition,thickness,surface,400,500,600,700\n=cmd|calc,@SUM(1),1,bare_white,1,2,3,4\n',
    },
    ['shelf/film', 'shelf/measurements'],
  ],
  ['a photo of the folder above', duskWith('photos: [../../etc/passwd]'), ['photo/missing']],
  ['a photo at the root', duskWith('photos: [/etc/passwd]'), ['photo/missing']],
  [
    'a photo by an encoded path',
    duskWith('photos: [..%2f..%2fx.jpg, "C:\\\\x.jpg", "photos/../book.md"]'),
    ['photo/missing'],
  ],
  ['a photo of another host', duskWith('photos: [https://spy.example/p.jpg]'), ['photo/missing']],
  ['30 folders within each other', { [`colours/${'a/'.repeat(30)}dusk.md`]: DUSK }, 'builds'],
  ['hidden files', { '.git/config.md': 'x', 'colours/.dusk.md': 'x', 'node_modules/a/book.md': 'x' }, 'builds'],
  [
    '400 stray files',
    Object.fromEntries(Array.from({ length: 400 }, (_, at) => [`drafts/a-${at}.md`, ''])),
    ['file/unknown-place'],
  ],
];

/** What only some systems' folders can hold. */
export const LINK_BOOKS: readonly HostileBook[] = [
  ['a link to a file of the system', { 'colours/dusk.md': { link: '/etc/passwd' } }, ['file/not-text']],
  ['a link to another recipe', { 'colours/other.md': { link: 'dawn.md' } }, ['file/not-text']],
  ['a link to what never ends', { 'colours/other.md': { link: '/dev/zero' } }, ['file/not-text']],
  ['a link to the folder above', { 'shelf/loop': { link: '..' } }, ['file/not-text']],
  ['a link to nothing', { 'colours/other.md': { link: 'nowhere.md' } }, ['file/not-text']],
  ['a link to itself', { 'colours/other.md': { link: 'other.md' } }, ['file/not-text']],
  [
    'a photo that is a link',
    { ...duskWith('photos: [a.jpg]'), 'photos/a.jpg': { link: '/etc/passwd' } },
    ['file/not-text'],
  ],
  ['a pipe that nobody fills', { 'colours/other.md': 'a pipe' }, ['file/not-text']],
  ['a photo that is a pipe', { ...duskWith('photos: [a.jpg]'), 'photos/a.jpg': 'a pipe' }, ['file/not-text']],
  ['a folder with the name of a recipe', { 'colours/other.md': 'a folder' }, 'builds'],
  ['a folder with the name of the book', { 'book.md': 'a folder' }, ['book/missing']],
];
