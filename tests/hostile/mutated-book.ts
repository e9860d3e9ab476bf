import fc from 'fast-check';
import { SOUND_BOOK } from './sound-book.ts';

type Texts = Readonly<Record<string, string>>;
/** Changes one thing of a book. */
type Mutation = (files: Texts) => Texts;

/** What may stand where a value stands: sound ones too, so that many a mutated book still builds. */
const VALUES = [
  '',
  '~',
  '{}',
  '[]',
  '[a, b]',
  '{ a: 1 }',
  'true',
  'no',
  '0',
  '-1',
  '1',
  '2',
  '12',
  '0.001',
  '1e9',
  '.nan',
  '.inf',
  '0x10',
  '9'.repeat(400),
  '1 ml',
  '60 ml',
  '90 ml supple',
  '120 ml',
  '1 l',
  '1/8 tsp',
  '3 drops',
  '9 drops',
  '1 g',
  '1 g per 100 ml',
  '3 %',
  '40 %',
  '100 %',
  '1/3',
  '2 mm',
  '12 mm',
  '0.015 in',
  '8 mm',
  '160 °C',
  '172 °C',
  '330 °C',
  '340 °F',
  '-300 °C',
  '2026-03-14',
  '2026-02-30',
  '"#000000"',
  '"#ffffff"',
  '"#c8a24a"',
  '#123456',
  'null',
  'dye',
  'pearl',
  'white',
  'clear',
  'measured',
  'solid',
  'laminate',
  'swirl',
  'layered',
  'core',
  'tipped',
  'craw',
  'worm',
  'strip',
  'hologram',
  'full',
  'look',
  'dusk',
  'dawn',
  'hush',
  'dusk/body',
  'dawn/back',
  'peat',
  'frost',
  'salt',
  'gold-hex',
  'supple',
  'minnow',
  'reed',
  '__proto__',
  'constructor',
  '"\\uD800"',
  '"a\\u0000b"',
  '"\\u202Egnp"',
  '"\\u200B"',
  '<script>alert(1)</script>',
  '"]]>\\"\'"',
  '*a',
  '&a b',
  '!!js/eval 1',
  '| x',
  "'",
  '"',
] as const;

/** Lines that may come into front matter. */
const LINES = [
  'publish: no',
  'publish: look',
  'baits: 40',
  'streak: 2 mm',
  'tags: [a, "b"]',
  'made: 2026-01-31',
  'x: y',
  '---',
  '...',
  '- a',
  '  - pour: 14 ml',
  '      - add: { frost: 1 g }',
  '      - plastic: 20 ml supple',
  '      - seen: { over-white: "#b09468" }',
  '    set: { peat: 1 drop }',
  '    without: peat',
  '  tip: { share: 10 %, plastic: 60 ml }',
  '  belly: { from: dusk/body, add: { peat: 2 drops } }',
  'from: hush',
  'cut: { of: peat, with: supple, one-in: 10 }',
  'bears: 1 heat',
  'gate: 0.5 mm',
  'method: injected',
  'manifold: 30 %',
  'rejects: 10 %',
  'effect: fluorescent',
  'use: softener',
  'order: core first',
  'apart: false',
  'flake: [{ colour: "#c8a24a", size: 0.4 mm, coverage: 10 % }]',
  '      - { reheat: true, held: 30 min }',
  '      - seen: { over-white: "#b09468", after: next day, wet: true }',
  'tools: { injector: { holds: 60 ml } }',
  'measuring-card: { scale: 60 mm, black: "#ffffff", greys: ["#cccccc", "#cccccc", { lab: [0, 0, 0] }, "#777777"] }',
  'for: reed',
  'mold: minnow',
  'price: 3',
  'pack: 1 l',
  'most: 1 %',
  'over-black: "#ffffff"',
  'thickness: 3 mm',
  'tolerance: 0.1',
  'fill: 100 %',
  'loss: 99 %',
  'left-in-cup: 0.1 ml',
  'units: { volume: fl oz, temperature: °F }',
  'tools: { drops: false, spoons: [] }',
  '\t',
  '# a',
  '<<: *a',
  'a: &a [*a]',
] as const;

/** Pieces that may come in anywhere. */
const PIECES = [
  '\0',
  '\uFEFF',
  '\r',
  '\n',
  '\n---\n',
  '---',
  '{',
  '}',
  '[',
  ']',
  ': ',
  ', ',
  '"',
  "'",
  '`',
  '*',
  '&',
  '!',
  '%',
  '@',
  '|',
  '>',
  '\u2028',
  '\ud800',
  '🎣',
  '</script>',
  '](javascript:x)',
  '<!--',
  '\u0301',
  '\u202e',
  '１',
  ' ',
] as const;

/** Paths that a file may be moved or copied to. */
const PATHS = [
  'colours/other.md',
  'colours/Other.md',
  'colours/peat.md',
  'shelf/powders/peat.md',
  'shelf/flakes/salt.md',
  'molds/grub.md',
  'targets/dusk.md',
  'book.md',
  'x.md',
  'shelf/measurements.csv',
  'colours/a.txt',
  'colours/con.md',
] as const;

const at = fc.nat(10_000);
const from = <T>(list: readonly T[]): fc.Arbitrary<T> => fc.constantFrom(...list);
const which = from(Object.keys(SOUND_BOOK));

/** A mutation of the text of one file, if it is still there. */
const ofText =
  (path: string, change: (text: string) => string): Mutation =>
  (files) => {
    const text = files[path];
    return text === undefined ? files : { ...files, [path]: change(text) };
  };
const ofLines = (path: string, change: (lines: string[], places: number) => void): Mutation =>
  ofText(path, (text) => {
    const lines = text.split('\n');
    change(lines, lines.length);
    return lines.join('\n');
  });

/** Exchanges a word or number of the text. */
const word = fc.tuple(which, at, from(VALUES)).map(([path, place, value]) =>
  ofText(path, (text) => {
    const words = [...text.matchAll(/"[^"]*"|[^\s,{}[\]:"]+/g)];
    const found = words[place % Math.max(1, words.length)];
    return found ? text.slice(0, found.index) + value + text.slice(found.index + found[0].length) : text;
  }),
);
/** Exchanges all that stands behind a field's name. */
const value = fc.tuple(which, at, from(VALUES)).map(([path, place, text]) =>
  ofLines(path, (lines, count) => {
    lines[place % count] = lines[place % count]!.replace(/: .*$/, () => `: ${text}`);
  }),
);
const line = fc
  .tuple(which, at, from(LINES))
  .map(([path, place, text]) => ofLines(path, (lines, count) => lines.splice(place % count, 0, text)));
const noLine = fc
  .tuple(which, at)
  .map(([path, place]) => ofLines(path, (lines, count) => lines.splice(place % count, 1)));
const twice = fc
  .tuple(which, at, at)
  .map(([path, one, other]) => ofLines(path, (lines, count) => lines.splice(other % count, 0, lines[one % count]!)));
const indent = fc.tuple(which, at, fc.constantFrom('', ' ', '  ', '\t')).map(([path, place, space]) =>
  ofLines(path, (lines, count) => {
    lines[place % count] = space + lines[place % count]!.trimStart();
  }),
);
const piece = fc
  .tuple(which, at, from(PIECES))
  .map(([path, place, text]) =>
    ofText(path, (all) => all.slice(0, place % (all.length + 1)) + text + all.slice(place % (all.length + 1))),
  );
const cut = fc
  .tuple(which, at, fc.nat(30))
  .map(([path, place, length]) =>
    ofText(path, (text) => text.slice(0, place % (text.length + 1)) + text.slice((place % (text.length + 1)) + length)),
  );
const graft = fc.tuple(which, which, at, fc.nat(120)).map(
  ([path, other, place, length]): Mutation =>
    (files) => {
      const [text, source] = [files[path], files[other]];
      if (text === undefined || source === undefined) return files;
      const here = place % (text.length + 1);
      return { ...files, [path]: text.slice(0, here) + source.slice(here, here + length) + text.slice(here) };
    },
);
const gone = which.map(
  (path): Mutation =>
    ({ [path]: _, ...files }) =>
      files as Texts,
);
const moved = fc.tuple(which, from(PATHS), fc.boolean()).map(
  ([path, to, stays]): Mutation =>
    (files) => {
      const { [path]: text, ...others } = files;
      return text === undefined ? files : { ...(stays ? files : (others as Texts)), [to]: text };
    },
);

const mutation = fc.oneof(
  { arbitrary: word, weight: 6 },
  { arbitrary: value, weight: 4 },
  { arbitrary: line, weight: 4 },
  { arbitrary: fc.oneof(noLine, twice, indent, piece, cut, graft), weight: 5 },
  { arbitrary: fc.oneof(gone, moved), weight: 1 },
);

/** The sound book with one to four things changed, as its texts by path. */
export const mutatedBook: fc.Arbitrary<Texts> = fc
  .array(mutation, { minLength: 1, maxLength: 4 })
  .map((mutations) => mutations.reduce((files, mutate) => mutate(files), SOUND_BOOK as Texts));
