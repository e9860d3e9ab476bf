import { colorsNamed } from 'culori';
import { expect, test } from 'vitest';
import { type HUE_FAMILIES, hueFamily } from '../../src/book/recipes/facets.ts';
import { labFromHex } from '../../src/optics/display.ts';

type Family = (typeof HUE_FAMILIES)[number];

/** Words of the names of colours in CSS Color Module Level 4, section 6.1, by the family that they say. */
const WORDS: readonly (readonly [RegExp, Family])[] = [
  [/red|crimson|firebrick|maroon/, 'red'],
  [/orange|coral$/, 'orange'],
  [/brown|sienna|chocolate|peru/, 'brown'],
  [/yellow|gold$|goldenrod|khaki/, 'yellow'],
  [/green|olive|lime/, 'green'],
  [/blue|navy|cyan|aqua$/, 'blue'],
  [/purple|violet|orchid|plum|magenta|fuchsia|indigo|lavender$|thistle/, 'purple'],
  [/pink/, 'pink'],
  [/gr[ae]y|silver/, 'grey'],
  [/white|snow|ivory/, 'white'],
  [/black/, 'black'],
];

/** Names that are no everyday word for what they name: a blue so pale that it is white, and greys and blues of slate. */
const NOT_MEANT = /^(?:aliceblue|antiquewhite|navajowhite)$|slate/;

/** Where this book's bounds lie otherwise than a name: a brown that is strong or light, or a rose. */
const OTHERWISE: Readonly<Record<string, Family>> = {
  brown: 'red',
  chocolate: 'orange',
  lightcoral: 'pink',
  rosybrown: 'pink',
  sandybrown: 'orange',
};

const named = Object.entries(colorsNamed as Readonly<Record<string, number>>).flatMap(([name, rgb]) => {
  const families = WORDS.filter(([word]) => word.test(name)).map(([, family]) => family);
  const hex = `#${rgb.toString(16).padStart(6, '0')}`;
  return families.length === 1 && !NOT_MEANT.test(name) ? [[name, hex, families[0]!] as const] : [];
});

test('more than half of the colours that CSS names say a family', () => {
  expect(named.length).toBeGreaterThan(Object.keys(colorsNamed).length / 2);
});

test.each(named)('hueFamily of the colour that CSS calls %s, %s, is %s', (name, hex, family) => {
  expect(hueFamily(labFromHex(hex))).toBe(OTHERWISE[name] ?? family);
});

test('hueFamily calls no blue a purple, however dark or strong', () => {
  for (const hex of ['#0000ff', '#1e3a8a', '#172554', '#2f5fb3', '#0a1a40'])
    expect([hex, hueFamily(labFromHex(hex))]).toEqual([hex, 'blue']);
});
