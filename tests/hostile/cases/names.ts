import { dusk, duskCup, duskWith, type HostileBook, instead } from '../hostile-book.ts';
import { file, type HostileFiles, SOUND_BOOK } from '../sound-book.ts';
import { PIXEL } from './pictures.ts';

const PEAT = SOUND_BOOK['shelf/colorants/peat.md']!;
const DUSK = SOUND_BOOK['colours/dusk.md']!;
const PLAIN = file('title: Other\nmold: minnow\ncups: { body: { plastic: 90 ml } }');
const named = (path: string, text = PLAIN): HostileFiles => ({ [path]: text });
/** A cup of a material that has a program's name. */
const holds = (name: string): HostileFiles => ({
  [`shelf/colorants/${name}.md`]: PEAT.replace('Peat', name),
  ...duskCup(`plastic: 120 ml, add: { ${name}: 9 drops }`),
  'colours/dawn.md': undefined,
});

/** Names that a program has for itself, and names of files. */
export const NAME_BOOKS: readonly HostileBook[] = [
  ['a material `constructor`', holds('constructor'), 'builds'],
  ['a material `prototype`', holds('prototype'), 'builds'],
  ['a material `hasownproperty`', holds('hasownproperty'), 'builds'],
  ['a material `then`', holds('then'), 'builds'],
  ['a material `undefined`', holds('undefined'), 'builds'],
  ['a material `null`', holds('null'), ['field/to-fill-in', 'recipe/unknown-material']],
  ['a material `true`', holds('true'), 'builds'],
  ['a material `0`', holds('0'), 'builds'],
  [
    'recipes with names of programs',
    {
      'colours/constructor.md': PLAIN,
      'colours/index.md': PLAIN.replace('Other', 'Index'),
      'colours/card.md': PLAIN.replace('Other', 'Card'),
    },
    'builds',
  ],
  [
    'a cup `constructor`',
    dusk('title: Dusk\nmold: minnow\ncups: { constructor: { plastic: 120 ml } }'),
    ['recipe/unknown-cup'],
  ],
  ['a cup `__proto__`', dusk('title: Dusk\nmold: minnow\ncups: { __proto__: { plastic: 120 ml } }'), ['field/unknown']],
  [
    'a cup `tostring`',
    dusk('title: Dusk\nmold: minnow\ncups: { toString: { plastic: 120 ml } }'),
    ['file/name', 'recipe/unknown-cup'],
  ],
  ['an amount of `__proto__`', duskCup('plastic: 120 ml, add: { __proto__: 9 drops }'), ['field/unknown']],
  [
    'an amount of `constructor`, which is not there',
    duskCup('plastic: 120 ml, add: { constructor: 9 drops }'),
    ['recipe/unknown-material'],
  ],
  ['an amount of `valueOf`', duskCup('plastic: 120 ml, add: { valueOf: 9 drops }'), ['recipe/unknown-material']],
  ['a field `__proto__`', duskWith('__proto__: { polluted: 1 }'), ['field/unknown']],
  ['a field `constructor`', duskWith('constructor: { prototype: { polluted: 1 } }'), ['field/unknown']],
  ['a field `toString`', duskWith('toString: x'), ['field/unknown']],
  ['a field `hasOwnProperty`', duskWith('hasOwnProperty: 1'), ['field/unknown']],
  [
    'a target of a plastic `constructor`',
    instead('targets/reed.md', 'mold:', 'plastic: constructor\nmold:'),
    ['target/unknown-plastic'],
  ],
  [
    'flake beside parts that have names of programs',
    instead(
      'targets/reed.md',
      'mold:',
      'flake: [{ colour: "#1d1c1b", size: 1 mm }]\nparts: { constructor: { over-white: "#a08050" } }\nmold:',
    ),
    ['target/flake-beside-parts'],
  ],
  ['from `__proto__`', dusk('title: Dusk\nfrom: __proto__'), ['field/value']],
  ['from `constructor`', dusk('title: Dusk\nfrom: constructor'), ['recipe/unknown-recipe']],
  [
    'a cup from `dawn/constructor`',
    dusk('title: Dusk\nmold: minnow\ncups: { body: { from: hush/constructor } }'),
    ['recipe/unknown-cup'],
  ],
  ['a mold `__proto__`', dusk('title: Dusk\nmold: __proto__\ncups: { body: { plastic: 90 ml } }'), ['field/value']],
  ['a pattern `constructor`', duskWith('pattern: constructor'), ['field/value']],
  ['a target `toString`', duskWith('for: toString'), ['field/value']],
  ['a plastic `constructor`', duskCup('plastic: 120 ml constructor'), ['recipe/unknown-plastic']],
  ['a unit `constructor`', duskCup('plastic: 120 constructor'), ['field/quantity']],
  [
    'a kind of look `__proto__`',
    named('shelf/colorants/peat.md', PEAT.replace('pigment', '__proto__')),
    ['field/value'],
  ],
  ['a file `__proto__.md`', named('colours/__proto__.md'), ['file/name']],
  ['capitals and spaces', named('colours/Old Dusk.md'), ['file/name']],
  ['letters of another script', named('colours/色.md'), ['file/name']],
  ['signs of an address', named('colours/a#b?c%2f.md'), ['file/name']],
  ['a line break', named('colours/a\nb.md'), ['file/name']],
  ['an order for a terminal', named('colours/\u001b[2Ja.md'), ['file/name']],
  ['a name of 200 letters', named(`colours/${'a'.repeat(200)}.md`), 'builds'],
  ['a hyphen at the end', named('colours/dusk-.md'), ['file/name']],
  ['only an ending', named('colours/.md'), 'builds'],
  [
    'two materials of one name',
    named('shelf/powders/peat.md', SOUND_BOOK['shelf/powders/frost.md']!),
    ['file/same-name'],
  ],
  ['a file in no folder of the book', named('colours/deep/dusk.md'), ['file/unknown-place']],
  [
    'names that Windows keeps for devices',
    {
      'colours/con.md': PLAIN,
      'shelf/powders/nul.md': SOUND_BOOK['shelf/powders/frost.md']!.replace('Frost', 'Nought'),
      'molds/com1.md': SOUND_BOOK['molds/minnow.md']!.replace('Minnow', 'Com'),
    },
    ['file/not-portable'],
  ],
  [
    'names that only begin as those of devices',
    {
      'colours/con-2.md': PLAIN,
      'colours/auxin.md': PLAIN.replace('Other', 'Auxin'),
      'colours/com10.md': PLAIN.replace('Other', 'Ten'),
    },
    'builds',
  ],
  ['a full stop at the end', named('colours/dusk..md'), ['file/name']],
  [
    'a photo with the name of a device',
    { ...duskWith('photos: [aux.png]'), 'photos/aux.png': PIXEL },
    ['file/not-portable'],
  ],
  [
    'photos with signs that Windows has for itself',
    {
      ...duskWith('photos: ["a:b.png", "c?.png", "d|.png"]'),
      'photos/a:b.png': PIXEL,
      'photos/c?.png': PIXEL,
      'photos/d|.png': PIXEL,
    },
    ['file/not-portable'],
  ],
  [
    'photos that differ in capitals alone',
    { ...duskWith('photos: [a.png, A.png]'), 'photos/a.png': PIXEL, 'photos/A.png': PIXEL },
    ['file/not-portable'],
  ],
  [
    'photos that differ in how an accent is written',
    { ...duskWith('photos: ["\u00e9.png", "e\u0301.png"]'), 'photos/\u00e9.png': PIXEL, 'photos/e\u0301.png': PIXEL },
    ['file/not-portable'],
  ],
  ['a second book', named('recipes/book.md', SOUND_BOOK['book.md']!), ['file/unknown-place']],
  ['another ending', named('colours/dusk.markdown', DUSK), ['file/extension']],
  [
    'a letter that only looks like another',
    duskCup('plastic: 120 ml, add: { pеat: 9 drops }'),
    ['recipe/unknown-material'],
  ],
  [
    'a name with a space that has no width',
    duskCup('plastic: 120 ml, add: { "pe\u200bat": 9 drops }'),
    ['file/unseen-sign', 'recipe/unknown-material'],
  ],
  ['a path for a name', dusk('title: Dusk\nfrom: ../../etc/passwd'), ['field/value']],
  ['a recipe named after a page', named('colours/a4.md'), 'builds'],
];
