import fc from 'fast-check';
import { expect, test } from 'vitest';
import { codeOf, unseenSigns, withoutUnseen } from '../../src/recipe/unseen-signs.ts';

test.each([
  ['\u200b', ['U+200B invisible']],
  ['Perch\u202egnp.exe', ['U+202E turning']],
  ['a\u2066b\u2069c', ['U+2066 turning', 'U+2069 turning']],
  ['a\u0000b\u001b[2Jc', ['U+0000 control', 'U+001B control']],
  ['a\u0085b\u2028c', ['U+0085 control', 'U+2028 control']],
  ['a\ufeffb', ['U+FEFF invisible']],
  ['half \ud800 of one', ['U+D800 control']],
  ['\u3164', ['U+3164 invisible']],
  ['Perch\u200e', ['U+200E turning']],
  ['Perch \u200d', ['U+200D invisible']],
  ['\ufe0fPerch', ['U+FE0F invisible']],
  ['P\u{e0041}erch', ['U+E0041 invisible']],
])('%j holds what is not seen', (text, found) => {
  expect(unseenSigns(text).map(({ sign, kind }) => `${codeOf(sign)} ${kind}`)).toEqual(found);
});

test.each([
  ['plain words, tabs\tand\r\nlines'],
  ['a family of emoji', '👩‍👩‍👧‍👦'],
  ['a skin colour and a profession', '👩🏽‍🔬 and 🏃🏾‍♂️'],
  ['a heart on fire', '❤️‍🔥'],
  ['a digit in a box', '1️⃣'],
  ['the flag of a part of a land', '🏴\u{e0067}\u{e0062}\u{e0073}\u{e0063}\u{e0074}\u{e007f}'],
  ['a non-joiner in a Persian word', 'می\u200cخواهم'],
  ['a non-joiner in a German word', 'Auf\u200clage'],
  ['a joiner in a Hindi word', 'क्\u200dष'],
  ['a mark of direction in Hebrew', 'שלום (a)\u200f!'],
  ['where a Thai word ends', 'ปลา\u200bน้ำจืด'],
  ['where a word may be broken', 'Kenn\u00adzeichen'],
])('%s lives', (...texts) => {
  for (const text of texts) expect(unseenSigns(text)).toEqual([]);
});

test('withoutUnseen(text) has none left, and takes nothing else', () => {
  const sign = fc.constantFrom('\u200b', '\u202e', '\u2066', '\0', '\u001b', '\u200d', '\ufe0f', '\ud800', '\u{e0067}');
  const piece = fc.oneof(fc.string({ unit: 'grapheme', maxLength: 4 }), sign, fc.constantFrom('👩', '🏴', 'm', ' '));
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
      const text = pieces.join('');
      const kept = withoutUnseen(text);
      expect(unseenSigns(kept)).toEqual([]);
      expect(unseenSigns(text).length === 0).toBe(kept === text);
      const seen = (each: string): string => each.replace(/\p{C}|\ufe0f/gu, '');
      expect(seen(kept)).toBe(seen(text));
    }),
  );
});
