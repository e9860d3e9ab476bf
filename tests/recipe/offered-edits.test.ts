import { describe, expect, test } from 'vitest';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';
import { readThing } from '../../src/recipe/read-thing.ts';
import { kindOfPath } from '../../src/recipe/source.ts';
import { compileWith, file } from '../book/sample.ts';

/** A file of the book with one value to be filled in. */
type Place = (value: string) => Readonly<Record<string, string>>;

const cup =
  (...lines: string[]): Place =>
  (value) => ({
    'colours/bog.md': file(
      `title: Bog\npattern: solid\nmold: minnow-3\ncups:\n  body:\n    plastic: 900 l supple\n${lines.map((line) => `    ${line.replace('?', value)}\n`).join('')}`,
    ),
  });
const shelf =
  (kind: 'plastics' | 'flakes' | 'colorants', front: string): Place =>
  (value) => ({ [`shelf/${kind}/new.md`]: file(`title: New\n${front.replace('?', value)}`) });
const mold =
  (front: string): Place =>
  (value) => ({ 'molds/new.md': file(`title: New\nbody: 40 mm\ncavity: 6 ml\n${front.replace('?', value)}`) });

const plastic: Place = (value) => ({
  'shelf/plastics/firm.md': file('title: Firm'),
  'colours/bog.md': file(
    `title: Bog\npattern: solid\nmold: minnow-3\ncups:\n  body:\n    plastic: ${value}\n    add: { peat: 1 drop }`,
  ),
});
const PLACES = {
  plastic,
  pour: cup('log:', '  - pour: ?'),
  heat: cup('add: { peat: 1 drop }', 'log:', '  - heat: ?'),
  add: cup('add:', '  peat: ?'),
  share: cup('add: { peat: 1 drop }', 'share: ?'),
  price: shelf('plastics', 'price: ?\npack: 1 l'),
  pack: shelf('plastics', 'price: 7\npack: ?'),
  stock: shelf('plastics', 'stock: ?'),
  density: shelf('plastics', 'density: ?'),
  size: shelf('flakes', 'size: ?\nlook: { colour: "#b8693a" }'),
  film: shelf('flakes', 'size: 1 mm\nfilm: ?\nlook: { colour: "#b8693a" }'),
  thin: mold('thin: ?'),
  cavities: mold('cavities: ?'),
} as const satisfies Readonly<Record<string, Place>>;
type Named = keyof typeof PLACES;

/** What is told of the value of a field by its file alone. */
const toldOfFile = (place: Named, value: string): readonly { readonly found: string; readonly fix?: string }[] => {
  const [[path, text] = ['', '']] = Object.entries(PLACES[place](value)).slice(-1);
  const { kind, id } = kindOfPath(path)!;
  const read = readThing(kind, id, { path, text });
  return 'kind' in read ? [] : read;
};

/** What is told of the value of a field in a book, without what is told of a whole cup or book. */
const told = (place: Named, value: string): readonly { readonly fix?: string; readonly message: string }[] =>
  compileWith(PLACES[place](value))
    .diagnostics.filter(({ code }) => code.startsWith('field/') || code.startsWith('front-matter/'))
    .map(({ found, expected, why, fix }) => ({
      message: `${found}, expected ${expected}, ${why}`,
      ...(fix === undefined ? {} : { fix }),
    }));

const NUMBERS = 'if the comma marks decimals';

/** What is written, and the edit that is offered; undefined where none can be. */
const WRITTEN: Readonly<Record<string, readonly (readonly [Named, string, string | undefined])[]>> = {
  'a plastic whose amount has a fault keeps its name': [
    ['plastic', '4 fl ozz firm', 'write `4 fl oz firm`'],
    ['plastic', '4 cupps firm', 'write `4 cups firm`'],
    ['plastic', '12 cl firm', 'write `120 ml firm`'],
    ['plastic', '8 oz firm', 'write `8 fl oz firm`'],
    ['plastic', '1,234.5 ml supple', 'write `1234.5 ml supple`'],
    ['plastic', '120 ml of supple', 'write `120 ml supple`'],
    ['plastic', '1,5 cups of Supple', 'write `1.5 cups supple`'],
    ['plastic', '12 cl of firm', 'write `120 ml firm`'],
    ['plastic', '123.45ml Supple', 'write `123.45 ml supple`'],
    ['plastic', '120 firm', 'write `120 ml firm` or `120 fl oz firm`'],
    [
      'plastic',
      '1,500 firm',
      `write \`1500 ml firm\` or \`1500 fl oz firm\`, or \`1.500 ml firm\` or \`1.500 fl oz firm\` ${NUMBERS}`,
    ],
    ['plastic', '12 cl', 'write `120 ml`'],
    ['plastic', '100000 l supple', 'correct the number or the unit'],
    ['plastic', '4 fluid ounzes', 'write `4 fluid ounces`'],
    ['plastic', '8 oz', 'write `8 fl oz`'],
  ],
  'a number that stands alone is taken whole, or not at all': [
    ['price', '1 250', 'write `1250`'],
    ['price', '"1 250 €"', 'write `1250`'],
    ['price', '12 000.50', 'write `12000.50`'],
    ['price', '1.234,50', 'write `1234.50`'],
    ['price', '1,234.50', 'write `1234.50`'],
    ['price', '$1,250', `write \`1250\`, or \`1.250\` ${NUMBERS}`],
    ['price', "CHF 1'250.–", 'write `1250`'],
    ['price', 'Fr. 5.50', 'write `5.50`'],
    ['price', '7½', undefined],
    ['price', '5k', undefined],
    ['price', '1 25', undefined],
    ['price', '12.5.3', undefined],
    ['price', '5 for 2', undefined],
    ['price', '-5 €', undefined],
    ['cavities', '1,000', 'write `1000`'],
    ['cavities', '4 baits', 'write `4`'],
    ['cavities', '4,5', undefined],
  ],
  'an amount whose number has gaps, groups or a comma': [
    ['pour', '1,234.5 ml', 'write `1234.5 ml`'],
    ['pour', '1.000,5 ml', 'write `1000.5 ml`'],
    ['add', '1 000.5 g', 'write `1000.5 g`'],
    ['pour', '1,500', `write \`1500 ml\` or \`1500 fl oz\`, or \`1.500 ml\` or \`1.500 fl oz\` ${NUMBERS}`],
    [
      'pack',
      '1,500',
      `write \`1500 ml\` or \`1500 g\`, or \`1.500 ml\` or \`1.500 g\` ${NUMBERS}, or the unit that was counted`,
    ],
    ['stock', '20', 'write `20 ml` or `20 g`, or the unit that was counted'],
    ['pour', '1,5 mll', 'write `1.5 ml`'],
    ['pour', '12,000,000 ml', 'correct the number or the unit'],
    ['add', '1,500', 'write `1500 drops` if drops are meant, or the unit that was counted'],
    ['share', '0,4', 'write `40%`'],
    ['share', '172', undefined],
    ['heat', '2000', 'correct the number or the unit'],
    ['heat', '340 °', 'write `340 °F`'],
    ['heat', '340', 'write `340 °F`'],
    ['heat', '200 °', 'write `200 °C` or `200 °F`'],
    ['heat', '340 degrees F', 'write `340 °F`'],
    ['add', '2,5', 'write the unit that was counted'],
    ['heat', '600', 'write `600 °F`'],
  ],
  'a unit that the book does not know': [
    ['thin', '1 cm', 'write `10 mm`'],
    ['thin', '40 thou', 'write `0.04 in`'],
    ['thin', '1 km', 'correct the number or the unit'],
    ['film', '25 µm', 'write `0.025 mm`'],
    ['film', '2 mil', 'write `0.002 in` if thousandths of an inch are meant'],
    ['pour', '12 cl', 'write `120 ml`'],
    ['pour', '1 dl', 'write `100 ml`'],
    ['pour', '12 cc', 'write `12 ml`'],
    ['pour', '50 µl', 'write `0.05 ml`'],
    ['pour', '0.1 kl', 'write `100 l`'],
    ['pour', '2 m', undefined],
    ['pour', '2 dram', undefined],
    ['add', '10 d', undefined],
    ['stock', '1/2 jar', undefined],
    ['add', '3 dl', 'write `300 ml`'],
    ['size', '35', 'write `0.035 in` if thousandths are meant'],
    ['size', '1,500', `write \`1.500 mm\` ${NUMBERS}`],
  ],
  'a density is offered within its bounds': [
    ['density', '1,1', 'write `1.1 g/ml`'],
    ['density', '1,1 g/ml', 'write `1.1 g/ml`'],
    ['density', '0.98', 'write `0.98 g/ml`'],
    ['density', '30', 'correct the number'],
    ['density', '1,250', `write \`1.250 g/ml\` ${NUMBERS}`],
  ],
  'a rate is mended in one edit': [
    ['add', 'a drop per oz', 'write `1 drop per 1 fl oz`'],
    ['add', '1,5 drops per 2,5 ml', 'write `1.5 drops per 2.5 ml`'],
    ['add', '10 drops/100 ml', 'write `10 drops per 100 ml`'],
    ['add', '10 drops in 4 oz', 'write `10 drops per 4 fl oz`'],
    ['add', '10 drops per cl', 'write `10 drops per 10 ml`'],
    ['add', '0.5%/cup', 'write `0.5%`'],
    ['add', '10 dorps / oz', 'write `10 drops per 1 fl oz`'],
    ['add', '12 dorps per 4 mll', 'write `12 drops per 4 ml`'],
    ['add', '12 drops per 1 dl', 'write `12 drops per 100 ml`'],
  ],
};

describe.each(Object.entries(WRITTEN))('%s', (_, rows) => {
  test.each(rows)('%s: %s → %s', (place, value, fix) => {
    const [first, ...more] = told(place, value);
    expect(first?.message).toBeDefined();
    expect(more).toEqual([]);
    expect(first?.fix).toBe(fix);
    for (const [, edit] of fix?.matchAll(/`([^`]*)`/g) ?? [])
      expect({ edit, told: told(place, edit!) }).toEqual({ edit, told: [] });
  });
});

test('what is offered for a number of any form and any unit near one of the book is read', () => {
  const numbers = [
    '1,5',
    '1,500',
    '1.234,5',
    '1 250',
    '1,234.5',
    ',5',
    '12',
    '1/2',
    'a',
    '1 1/2',
    '2½',
    '1.2.3',
    '0,05',
  ];
  const units = [
    '',
    ' mll',
    ' cl',
    ' dl',
    ' cm',
    ' cc',
    ' oz',
    ' ozz',
    ' kl',
    ' thou',
    ' dorps',
    ' mil',
    ' pct',
    ' °',
    ' kgs',
    ' tspn',
  ];
  for (const place of [
    'pour',
    'add',
    'thin',
    'pack',
    'size',
    'share',
    'density',
    'price',
    'cavities',
    'stock',
  ] as const) {
    const refused = numbers.flatMap((number) =>
      units.flatMap((unit) => {
        const value = `${number}${unit}`;
        const edits = toldOfFile(place, value).flatMap(({ fix }) => [...(fix?.matchAll(/`([^`]*)`/g) ?? [])]);
        return edits.flatMap(([, edit]) => toldOfFile(place, edit!).map(({ found }) => `${value} → ${edit}: ${found}`));
      }),
    );
    expect({ place, refused }).toEqual({ place, refused: [] });
  }
});

test('the example book, from which each of these starts, has no fault', () => {
  expect(compileWith(EXAMPLE_BOOK).diagnostics).toEqual([]);
});
