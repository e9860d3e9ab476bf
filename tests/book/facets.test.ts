import { colorsNamed } from 'culori';
import { expect, test } from 'vitest';
import type { Appearance } from '../../src/book/model/colours.ts';
import { HUE_FAMILIES, hueFamily, hueFamilyOfAppearance, lookFacets } from '../../src/book/recipes/facets.ts';
import { luminance } from '../../src/matching/target/target-part.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { DESCRIBED_BAITS } from './described-baits.ts';

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

/** Where this book's bounds lie otherwise than the words of a described bait: between orange and brown, and between pink and peach. */
const DESCRIBED_OTHERWISE: Readonly<Record<string, Family>> = {
  'copper with fine metallic powder, dense': 'brown',
  'shrimp, pale fleshy pink, semi-opaque': 'orange',
};

function appearance(overWhite: string, overBlack: string): Appearance {
  const colour = (hex: string): Appearance['overWhite'] => ({ hex, lab: labFromHex(hex), mapped: false });
  const contrastRatio = luminance(colour(overBlack).lab) / luminance(colour(overWhite).lab);
  return { overWhite: colour(overWhite), overBlack: colour(overBlack), contrastRatio };
}

test('the described baits are a hundred, of every family', () => {
  expect(DESCRIBED_BAITS).toHaveLength(100);
  expect(new Set(DESCRIBED_BAITS.map(([, , , hue]) => hue))).toEqual(new Set(HUE_FAMILIES));
  for (const words of Object.keys(DESCRIBED_OTHERWISE)) expect(DESCRIBED_BAITS.map(([name]) => name)).toContain(words);
});

test.each(DESCRIBED_BAITS)(
  'a bait that is %s, %s over white and %s over black, is looked for under %s',
  (words, white, black, hue) => {
    expect(hueFamilyOfAppearance(appearance(white, black))).toBe(DESCRIBED_OTHERWISE[words] ?? hue);
  },
);

test('lookFacets of cups side by side has the largest first, and a clear one after all that have a colour', () => {
  const [clear, red, black] = [
    appearance('#f8f8f5', '#1a1a1a'),
    appearance('#d21a1e', '#cc171b'),
    appearance('#141414', '#121212'),
  ];
  const cups = [
    { body: red, share: 0.2 },
    { body: clear, share: 0.5 },
    { body: black, share: 0.3 },
  ];
  expect(lookFacets(black, 'swirl', cups).hueFamilies).toEqual(['black', 'red', 'clear']);
});
