import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mentions, nameIndex } from '../../src/book/publish/name-in-text.ts';

const found = (text: string, name = 'Grey Ghost'): readonly (readonly [string, boolean])[] =>
  mentions(text, nameIndex([{ name, of: name }])).map(({ text: words, sure }) => [words, sure]);
const surely = (text: string, name?: string): readonly boolean[] => found(text, name).map(([, sure]) => sure);

test.each([
  'Like Grey Ghost.',
  'grey ghost',
  'GREY GHOST',
  'Grey\nGhost',
  'Grey\r\n  Ghost',
  '> Grey\n> Ghost',
  '*Grey* Ghost',
  '**Grey** _Ghost_',
  '_Grey Ghost_',
  'G**rey Gh**ost',
  'grey-ghost',
  'colours/grey-ghost.md',
  'Grey_Ghost',
  'Grey\u00A0Ghost',
  'Grey&nbsp;Ghost',
  'Gr&#101;y Gh&#x6f;st',
  'Grey–Ghost',
  'Ｇｒｅｙ Ghost',
  'Gr\u00ADey Gho\u200Bst',
  'Gr&shy;ey Ghost',
  'Gr\u180Eey Gh\uFE0Fo\u{E0020}st',
  'Grey Ghost’s',
  'Grey-Ghost-grey',
  'GreyGhost',
  'greyghost',
  '#GREYGHOST',
  'Grey Ghosts',
  'the greyghosts',
  'Ghost Grey',
  'Ghost, Grey',
  'ghost-grey',
  'Grey.Ghost',
  'grey/ghost',
  '[Grey](other.md) [Ghost](more.md)',
])('mentions(%j) is the name for sure', (text) => {
  expect(surely(text)).toEqual([true]);
});

test.each(['Grey. Ghost', 'grey, ghost', 'a ghost grey as rain', 'gre yghost', 'gre yg host'])(
  'mentions(%j) may be the name',
  (text) => {
    expect(surely(text)).toEqual([false]);
  },
);

test.each(['Agrey ghost', 'grey and ghost', 'grey\n\n=\n\nghost', 'greyer ghost', 'ghost of grey'])(
  'mentions(%j) is nothing',
  (text) => {
    expect(found(text)).toEqual([]);
  },
);

test.each([
  'Grünling Wraith',
  'Grün**ling** Wraith',
  'Gr&#252;nling Wraith',
  'Gr&uuml;nling Wraith',
  'Gru\u0308nling Wraith',
  'Grunling Wraith',
  'gruenling wraith',
  'GRÜNLING-WRAITHS',
  'Grünling`Wraith`',
  'Wraith Grünling',
  'Grünling.Wraith',
  'gruenlingwraith',
])('mentions(%j) is Grünling Wraith for sure', (text) => {
  expect(surely(text, 'Grünling Wraith')).toEqual([true]);
  // Whichever way the secret itself is spelled.
  expect(surely(text, 'Gruenling Wraith').length + surely(text, 'Grunling Wraith').length).toBeGreaterThan(0);
});

test('mentions(text) say where they stand in the text as it is written', () => {
  const text = 'So &amp; so: Gr&#252;n**ling** Wraith!';
  const [mention] = mentions(text, nameIndex([{ name: 'Grünling Wraith', of: 'it' }]));
  expect(mention).toEqual({ of: 'it', start: 13, end: 37, text: 'Gr&#252;n**ling** Wraith', sure: true });
});

test('mentions(name, written by its letters and marks apart) is the name all the same', () => {
  expect(found('Cafe\u0301 Noir, cafe\u0301 noir', 'Café Noir')).toHaveLength(2);
  expect(found("Nell's Umbrella, Nells Umbrella", 'Nell’s Umbrella')).toHaveLength(2);
});

test('mentions(a single word) is sure with a capital and as a file, else perhaps the everyday word', () => {
  expect(found('Smoke, SMOKE, Smokes and smoke', 'Smoke')).toEqual([
    ['Smoke', true],
    ['SMOKE', true],
    ['Smokes', true],
    ['smoke', false],
  ]);
  expect(found('[that](smoke.md) and colours/smoke', 'Smoke')).toEqual([
    ['smoke', true],
    ['smoke', true],
  ]);
  expect(found('smoked, smoke-grey, asmoke', 'Smoke')).toEqual([]);
});

test('mentions(words run together) is an everyday word where there is one, but for its capitals', () => {
  expect(found('by nightfall, NightFall', 'Night Fall')).toEqual([
    ['nightfall', false],
    ['NightFall', true],
  ]);
});

test('mentions(a letter) is only the name of a file', () => {
  expect(found("It's S, and a `s.md`", 's')).toEqual([['s', true]]);
});

test('mentions(a name without capitals of its own) stands without spaces around it', () => {
  expect(found('これは灰色幽霊です', '灰色幽霊')).toEqual([['灰色幽霊', true]]);
});

test('law: a name is found in any text around it, however its letters are written', () => {
  const dressed = (letter: string, how: number): string =>
    [
      letter,
      letter.toUpperCase(),
      `&#${letter.codePointAt(0)};`,
      `**${letter}**`,
      `${letter}\u200B`,
      `\u00AD${letter}`,
    ][how]!;
  fc.assert(
    fc.property(
      fc.array(fc.nat(5), { minLength: 9, maxLength: 9 }),
      fc.constantFrom(' ', '-', '_', '\n', '&nbsp;', ' *', '', '.'),
      fc.constantFrom('', 'Over the weir. ', '> ', '(', '“'),
      (ways, between, before) => {
        const written = [...'greyghost'].map((letter, at) => dressed(letter, ways[at]!));
        const text = `${before}${written.slice(0, 4).join('')}${between}${written.slice(4).join('')}, and rain`;
        const [mention] = mentions(text, nameIndex([{ name: 'Grey Ghost', of: 'it' }]));
        expect(mention?.sure, text).toBe(true);
      },
    ),
    { numRuns: 500 },
  );
});
