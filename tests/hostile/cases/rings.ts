import { dusk, type HostileBook } from '../hostile-book.ts';
import { file, type HostileFiles } from '../sound-book.ts';

const from = (title: string, parent: string): string => file(`title: ${title}\nfrom: ${parent}`);
const cups = (title: string, ...each: readonly string[]): string =>
  file(`title: ${title}\nmold: minnow\ncups: { ${each.join(', ')} }`);
const many = (count: number): readonly string[] =>
  Array.from({ length: count }, (_, at) => `c${at}: { plastic: 9 ml supple }`);
const chain = (length: number): HostileFiles =>
  Object.fromEntries(
    Array.from({ length }, (_, at) => [`colours/c-${at}.md`, from(`C ${at}`, at === 0 ? 'hush' : `c-${at - 1}`)]),
  );

const cut = (of: string, diluent: string, oneIn = '10', id = 'peat-cut'): HostileFiles => ({
  [`shelf/colorants/${id}.md`]: file(`title: ${id}\ncut: { of: ${of}, with: ${diluent}, one-in: ${oneIn} }`),
});
const MIXED_WITH_CUT: HostileFiles = {
  'colours/thin.md': cups('Thin', 'body: { plastic: 100 ml supple, add: { peat-cut: 3 drops } }'),
};

/** Recipes that come from each other, and what is hidden and named. */
export const RING_BOOKS: readonly HostileBook[] = [
  ['a recipe that comes from itself', dusk('title: Dusk\nfrom: dusk'), ['recipe/cycle']],
  ['two recipes that come from each other', { ...dusk('title: Dusk\nfrom: dawn') }, ['recipe/cycle']],
  ['a cup that comes from itself', { 'colours/ring.md': cups('Ring', 'body: { from: ring/body }') }, ['recipe/cycle']],
  [
    'cups that come from each other',
    { 'colours/ring.md': cups('Ring', 'back: { from: ring/body }', 'body: { from: ring/back }') },
    ['recipe/cycle'],
  ],
  [
    'a ring of three by cups',
    {
      'colours/a.md': cups('A', 'body: { from: b/body }'),
      'colours/b.md': cups('B', 'body: { from: c/body }'),
      'colours/c.md': cups('C', 'body: { from: a/body }'),
    },
    ['recipe/cycle'],
  ],
  ['a cut of itself', cut('peat-cut', 'softener'), ['material/cut']],
  [
    'cuts of each other',
    { ...cut('peat-thin', 'softener'), ...cut('peat-cut', 'softener', '2', 'peat-thin') },
    ['material/cut'],
  ],
  ['a cut thinned with itself', cut('peat', 'peat-cut'), ['material/cut']],
  ['a cut of what is not there', cut('nowhere', 'supple'), ['material/cut']],
  ['a cut of more parts than a number has', cut('peat', 'supple', '1e308'), ['field/value']],
  ['a cut of less than one part', cut('peat', 'supple', '-0.0'), ['field/value']],
  ['a cut of what there is no number for', cut('peat', 'supple', '.nan'), ['field/value']],
  ['a cut that is as thin as may be', { ...cut('peat', 'supple', '1000'), ...MIXED_WITH_CUT }, 'builds'],
  [
    'a cut that names what is hidden, in no recipe',
    { 'shelf/colorants/peat-cut.md': file('title: Zibeline\ncut: { of: peat, with: supple, one-in: 10 }', 'Gannet.') },
    'builds',
  ],
  ['a chain of 25', chain(25), 'builds'],
  ['a thousand cups', { 'colours/a.md': cups('A', ...many(1000)) }, ['field/too-long']],
  ['as many cups as there may be', { 'colours/a.md': cups('A', ...many(12)) }, ['recipe/pattern']],
  ['from a recipe that is not there', dusk('title: Dusk\nfrom: nowhere'), ['recipe/unknown-recipe']],
  ['from a cup that is not there', { 'colours/a.md': cups('A', 'body: { from: dusk/back }') }, ['recipe/unknown-cup']],
  ['from a path of three', { 'colours/a.md': cups('A', 'body: { from: dusk/body/x }') }, ['recipe/unknown-cup']],
  [
    'without what is not in the cup',
    { 'colours/a.md': cups('A', 'body: { from: dusk/body, without: salt }') },
    ['recipe/not-in-cup'],
  ],
  [
    'set of what is not in the cup',
    { 'colours/a.md': cups('A', 'body: { from: dusk/body, set: { salt: 1 g } }') },
    ['recipe/not-in-cup'],
  ],
  [
    'both amounts and rounds',
    { 'colours/a.md': cups('A', 'body: { plastic: 90 ml, add: { peat: 1 drop }, log: [{ pour: 3 ml }] }') },
    ['recipe/add-and-log'],
  ],
  [
    'neither plastic nor a parent',
    { 'colours/a.md': cups('A', 'body: { add: { peat: 1 drop } }') },
    ['recipe/no-plastic'],
  ],
  [
    'a plastic among the materials',
    { 'colours/a.md': cups('A', 'body: { plastic: 90 ml, add: { supple: 1 g } }') },
    ['recipe/plastic-as-material'],
  ],
  [
    'drops of a powder',
    { 'colours/a.md': cups('A', 'body: { plastic: 90 ml, add: { frost: 3 drops } }') },
    ['recipe/wrong-measure'],
  ],
  [
    '12 cups of a laminate',
    {
      'colours/a.md': cups('A', ...Array.from({ length: 12 }, (_, at) => `c${at}: { plastic: 9 ml }`)).replace(
        'mold',
        'pattern: laminate\nmold',
      ),
    },
    ['recipe/pattern'],
  ],
  ['no cups at all', { 'colours/a.md': cups('A') }, ['recipe/no-cups']],
  [
    'for a target that is a recipe',
    { 'colours/a.md': cups('A', 'body: { plastic: 90 ml }').replace('mold', 'for: dawn\nmold') },
    ['recipe/unknown-target'],
  ],
  [
    'a hidden recipe that a published text names',
    { 'book.md': file('title: Two Banks', 'Try Zibeline.') },
    ['publish/named'],
  ],
  ['all hidden', { 'book.md': file('title: Two Banks\npublish: no') }, 'builds'],
];
