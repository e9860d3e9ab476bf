import { describe, expect, test } from 'vitest';
import { mentions, normalized } from '../../src/book/name-in-text.ts';

const found = (text: string, name = 'Grey Ghost'): readonly (readonly [string, boolean])[] =>
  mentions(normalized(text), name).map(({ text: words, sure }) => [words, sure]);

describe('mentions', () => {
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
    'grey-ghost',
    'colours/grey-ghost.md',
    'Grey_Ghost',
    'Grey\u00A0Ghost',
    'Grey&nbsp;Ghost',
    'Grey–Ghost',
    'Ｇｒｅｙ Ghost',
    'Gr\u00ADey Gho\u200Bst',
    'Grey Ghost’s',
    'Grey-Ghost-grey',
    'GreyGhost',
  ])('mentions(%j) is the name for sure', (text) => {
    expect(found(text).map(([, sure]) => sure)).toEqual([true]);
  });
  test.each(['Grey Ghosts', 'Agrey ghost', 'grey and ghost', 'Grey. Ghost', 'grey, ghost'])(
    'mentions(%j) is nothing',
    (text) => {
      expect(found(text)).toEqual([]);
    },
  );
  test('mentions(name, written by its letters and marks apart) is the name all the same', () => {
    expect(found('Cafe\u0301 Noir, cafe\u0301 noir', 'Café Noir')).toHaveLength(2);
    expect(found("Nell's Umbrella", 'Nell’s Umbrella')).toHaveLength(1);
  });
  test('mentions(a single word) is sure with a capital and as a file, else perhaps the everyday word', () => {
    expect(found('Smoke, SMOKE and smoke', 'Smoke')).toEqual([
      ['Smoke', true],
      ['SMOKE', true],
      ['smoke', false],
    ]);
    expect(found('[that](smoke.md) and colours/smoke', 'Smoke')).toEqual([
      ['smoke', true],
      ['smoke', true],
    ]);
    expect(found('smoked, smoke-grey, asmoke', 'Smoke')).toEqual([]);
  });
  test('mentions(words run together in lower case) is perhaps an everyday word', () => {
    expect(found('by nightfall', 'Night Fall')).toEqual([['nightfall', false]]);
  });
  test('mentions(a letter) is only the name of a file', () => {
    expect(found("It's S, and a `s.md`", 's')).toEqual([['s', true]]);
  });
  test('mentions(a name without capitals of its own) stands without spaces around it', () => {
    expect(found('これは灰色幽霊です', '灰色幽霊')).toEqual([['灰色幽霊', true]]);
  });
});
