import { also, dusk, duskCup, duskWith, type HostileBook, instead } from '../hostile-book.ts';
import { file, type HostileFiles } from '../sound-book.ts';

const amount = (text: string): HostileFiles => duskCup(`plastic: 120 ml, add: { peat: ${text} }`);
const baits = (text: string): HostileFiles => duskWith(`baits: ${text}`);
const made = (text: string): HostileFiles => duskWith(`made: ${text}`);
const pouredAt = (low: string, high: string): HostileFiles =>
  instead('shelf/plastics/supple.md', 'from: 160 °C, to: 175 °C', `from: ${low}, to: ${high}`);
const logged = (heat: string): HostileFiles => instead('colours/dusk.md', '171 °C', heat);
const cavity = (text: string): HostileFiles => instead('molds/minnow.md', 'cavity: 5 ml', `cavity: ${text}`);
const peat = (part: string, other: string): HostileFiles => instead('shelf/colorants/peat.md', part, other);
const shares = (...each: readonly string[]): HostileFiles =>
  dusk(
    `title: Dusk\nmold: minnow\npattern: laminate\ncups:\n${each.map((share, at) => `  c${at}: { share: ${share}, plastic: 60 ml }`).join('\n')}`,
  );

/** Numbers, amounts and days that no bench has. */
export const NUMBER_BOOKS: readonly HostileBook[] = [
  ['an amount that is no number', amount('.nan'), ['field/quantity']],
  ['an amount without end', amount('.inf'), ['field/quantity']],
  ['a NaN of drops', amount('NaN drops'), ['field/quantity']],
  ['an Infinity of drops', amount('Infinity drops'), ['field/quantity']],
  ['1e999 drops', amount('1e999 drops'), ['field/quantity']],
  ['1e-999 drops', amount('1e-999 drops'), ['field/quantity']],
  ['a divisor of 0', amount('1/0 g'), ['field/quantity']],
  ['0/0', amount('0/0 g'), ['field/quantity']],
  ['less than nothing', amount('-5 drops'), ['field/quantity']],
  ['another minus', amount('−5 drops'), ['field/quantity']],
  ['nothing of it', amount('0 drops'), ['field/quantity']],
  ['digits of another script', amount('٣ drops'), ['field/quantity']],
  ['wide digits', amount('３ drops'), ['field/quantity']],
  ['a fraction sign', amount('½ tsp'), 'builds'],
  ['two points', amount('1.2.3 g'), ['field/quantity']],
  ['1,200 digits', amount(`${'9'.repeat(1200)} drops`), ['field/quantity']],
  ['1,200 digits after the point', amount(`0.${'0'.repeat(1200)}1 g`), ['field/quantity']],
  ['grams per nothing', amount('1 g per 0 ml'), ['field/quantity']],
  ['grams per grams per grams', amount('1 g per 1 g per 1 g'), ['field/quantity']],
  ['no unit', amount('9'), ['field/quantity']],
  ['a unit alone', amount('drops'), ['field/quantity']],
  ['a temperature in the place of an amount', amount('160 °C'), ['field/quantity']],
  ['more than a ton', amount('1000000 kg'), ['field/quantity']],
  ['a cup of a thousandth of a thousandth', duskCup('plastic: 0.000000001 ml'), ['field/quantity']],
  ['a million litres', duskCup('plastic: 1000000 l'), ['field/quantity']],
  ['a salt of more than the plastic', amount('120 %'), ['recipe/more-than-plastic', 'recipe/over-full']],
  ['a third of it colorant', amount('33 %'), ['recipe/overloaded']],
  ['baits as a program counts', baits('0x10'), ['field/type']],
  ['baits as an old program counts', baits('0o17'), ['field/type']],
  ['baits by a power of ten', baits('1e3'), ['field/type']],
  ['drops by a power of ten', amount('1e3 drops'), ['field/quantity']],
  ['a plastic poured at a heat of the other scale', pouredAt('330 °C', '350 °C'), ['plastic/heat']],
  ['a plastic poured at no heat', pouredAt('1 °C', '2 °C'), ['plastic/heat']],
  ['a plastic poured from hot to less hot', pouredAt('177 °C', '165 °C'), ['plastic/range']],
  [
    'a plastic that stands more than any',
    instead('shelf/plastics/supple.md', 'highest: 185 °C', 'highest: 450 °C'),
    ['plastic/heat'],
  ],
  ['a log in the other scale', logged('340 °C'), ['recipe/heat-scale']],
  ['a cup that was held hot for days', logged('171 °C\n        held: 90 h'), ['recipe/held-long']],
  ['a cup that was held hot for no time', logged('171 °C\n        held: 0 min'), ['field/quantity']],
  ['a cup that was held hot for a unit of length', logged('171 °C\n        held: 6 m'), ['field/quantity']],
  ['a colour that bears no heat', peat('look:', 'bears: 0 heats\nlook:'), ['field/quantity']],
  ['a colour that bears half a heat', peat('look:', 'bears: 1.5 heats\nlook:'), ['field/quantity']],
  ['a colour that bears its melt', peat('look:', 'bears: 1 heat\nlook:'), 'builds'],
  ['a log of a cup that burnt', logged('480 °C'), ['recipe/burnt']],
  ['a year to come', made('2062-03-14'), ['field/day-to-come']],
  ['half a bait', baits('0.5'), ['field/type']],
  ['no bait', baits('0'), ['field/type']],
  ['fewer than no baits', baits('-3'), ['field/type']],
  ['1e18 baits', baits('1e18'), ['field/type']],
  ['baits that are no number', baits('.nan'), ['field/type']],
  ['baits without end', baits('.inf'), ['field/type']],
  ['the 29th of February of a common year', made('2026-02-29'), ['field/date']],
  ['the day nought', made('0000-00-00'), ['field/date']],
  ['the 13th month', made('2026-13-01'), ['field/date']],
  ['a year of five digits', made('12026-01-01'), ['field/date']],
  ['a day with a time', made('2026-01-01T00:00:00Z'), ['field/date']],
  ['a day as a number', made('20260101'), ['field/date']],
  ['shares of 200 %', shares('100 %', '100 %'), ['recipe/shares', 'recipe/unknown-cup']],
  ['shares of nothing', shares('0 %', '100 %'), ['field/quantity']],
  ['a share of less than nothing', shares('-20 %', '120 %'), ['field/quantity']],
  [
    'shares that leave nothing',
    shares('50 %', '50 %', '1 %'),
    ['recipe/pattern', 'recipe/shares', 'recipe/unknown-cup'],
  ],
  ['a cavity of nothing', cavity('0 ml'), ['field/quantity']],
  ['a cavity of a swimming pool', cavity('2500000 l'), ['field/quantity']],
  ['a mold thinner than an atom', instead('molds/minnow.md', 'body: 10 mm', 'body: 0.00000001 mm'), ['field/quantity']],
  ['a thin part thicker than the body', instead('molds/minnow.md', 'thin: 2 mm', 'thin: 20 mm'), ['mold/thickness']],
  ['a colour of three digits', peat('"#5b4327"', '"#abc"'), ['field/colour']],
  ['a colour that is a comment', peat('"#5b4327"', '#5b4327'), ['front-matter/syntax']],
  ['a colour of letters', peat('"#5b4327"', '"#zzzzzz"'), ['field/colour']],
  ['a colour by name', peat('"#5b4327"', 'peru'), ['field/colour']],
  ['a price of less than nothing', peat('price: 8', 'price: -8'), ['field/type']],
  ['a price without end', peat('price: 8', 'price: .inf'), ['field/type']],
  ['a stock of less than nothing', peat('stock: 12 ml', 'stock: -1 ml'), ['field/quantity']],
  ['a dose of nothing', peat('dose: 12 drops per 100 ml', 'dose: 0 drops per 100 ml'), ['field/quantity']],
  ['a temperature below the absolute zero', peat('highest: 190 °C', 'highest: -300 °C'), ['field/quantity']],
  ['a temperature without a unit', peat('highest: 190 °C', 'highest: 190'), ['field/quantity']],
  ['a temperature of the sun', peat('highest: 190 °C', 'highest: 5500 °C'), ['field/quantity']],
  ['a loss of everything', also('book.md', 'loss: 100 %'), 'builds'],
  ['a tolerance of nothing', also('book.md', 'tolerance: 0'), ['field/type']],
  [
    'a measuring card of half its size, with one grey',
    also('book.md', 'measuring-card: { scale: 40 mm, greys: ["#808080"] }'),
    ['book/measuring-card'],
  ],
  ['a cup that is filled with less than stays in it', also('book.md', 'left-in-cup: 400 ml'), ['book/left-in-cup']],
  [
    '100 spoons of one size',
    instead('book.md', 'scale: 0.01 g', `scale: 0.01 g, spoons: [${'1 tsp,'.repeat(100)}]`),
    'builds',
  ],
  ['a scale of a ton', instead('book.md', 'scale: 0.01 g', 'scale: 1000 kg'), 'builds'],
  [
    'more poured than there was',
    dusk(
      'title: Dusk\nmold: minnow\ncups: { body: { plastic: 100 ml, log: [{ add: { peat: 1 drop } }, { pour: 500 ml }] } }',
    ),
    ['recipe/over-poured'],
  ],
  [
    '90 pours of the last drop',
    dusk(
      `title: Dusk\nmold: minnow\ncups:\n  body:\n    plastic: 100 ml\n    log:\n      - add: { peat: 3 drops }\n${'      - pour: 1.1 ml\n'.repeat(90)}`,
    ),
    'builds',
  ],
  ['flake of a metre', instead('shelf/flakes/gold-hex.md', 'size: 0.015 in', 'size: 1 m'), ['field/quantity']],
  [
    'flake finer than light',
    instead('shelf/flakes/gold-hex.md', 'size: 0.015 in', 'size: 0.0000001 in'),
    ['field/quantity'],
  ],
  ['a chip of nothing', { 'chips/peat.md': file('title: Peat\nplastic: 100 ml') }, ['chip/unseen']],
  [
    'a chip of 90 steps, of a drop each',
    {
      'chips/peat.md': file(
        `title: Peat\nplastic: 100 ml\nlog:\n${'  - { add: { peat: 1 drop }, seen: { over-white: "#b09468", thickness: 1000 mm } }\n'.repeat(90)}`,
      ),
    },
    ['recipe/overloaded'],
  ],
  [
    'a chip of more colour than plastic',
    { 'chips/peat.md': file('title: Peat\nplastic: 1 ml\nadd: { peat: 500 drops }\nseen: { over-white: "#a08050" }') },
    ['recipe/more-than-plastic'],
  ],
  [
    'a chip that comes from a recipe',
    { 'chips/peat.md': file('title: Peat\nfrom: dusk\nplastic: 1 ml\nseen: { over-white: "#000000" }') },
    ['field/unknown'],
  ],
];
