/**
 * The words of a text as they are read: what markup, entities and accents make of their letters.
 *
 * @packageDocumentation
 */

import { decodeHTML } from 'entities';
import { defined } from '../../values/defined.ts';

/** A word where it stands. */
export interface Word {
  /** Where it begins and ends in the text. */
  readonly start: number;
  readonly end: number;
  /** In small letters without accents, and as German spells it without: `grunling`, `gruenling`. */
  readonly spellings: readonly [string, string];
  readonly hasCapital: boolean;
  /** A capital behind a small letter: `GreyGhost`. */
  readonly isCamel: boolean;
  /** What stands between it and the word before it. */
  readonly before: string;
}

/** Seen by nobody: soft hyphens, spaces without width, marks of direction, fillers. */
const UNSEEN = /\p{Default_Ignorable_Code_Point}+/gu;

const ENTITY = /&(?:#\d{1,7}|#x[\da-f]{1,6}|[a-z][a-z\d]{1,31});/giu;

/** Markup and apostrophes in the middle of a word. */
const WITHIN = /(?<=[\p{L}\p{N}\p{M}])(?:[*~`\\]+|['\u2018\u2019\u02BC])(?=[\p{L}\p{N}])/gu;

/** Where a link leads: passed over, `[Grey](x.md) Ghost` reads as a name. */
const LEADS_TO = /\]\([^)\n]*\)/g;

const WORD = /[\p{L}\p{N}][\p{L}\p{N}\p{M}]*/gu;

/** Letters without an accent that comes off, and those that German spells with two: without and with that. */
const SPELLED: Readonly<Record<string, readonly [string, string]>> = {
  ...{ ä: ['a', 'ae'], ö: ['o', 'oe'], ü: ['u', 'ue'], ß: ['ss', 'ss'], å: ['a', 'aa'], æ: ['ae', 'ae'] },
  ...{ ø: ['o', 'oe'], œ: ['oe', 'oe'], ł: ['l', 'l'], đ: ['d', 'd'], ð: ['d', 'd'], þ: ['th', 'th'], ı: ['i', 'i'] },
};

function spelled(word: string, way: 0 | 1): string {
  const small = [...word.normalize('NFKC').toLowerCase().normalize('NFC')];
  const letters = small.map((letter) => SPELLED[letter]?.[way] ?? letter).join('');
  return letters.normalize('NFD').replace(/\p{M}/gu, '');
}

function spellingsOf(word: string): readonly [string, string] {
  if (!/^[a-z0-9]+$/i.test(word)) return [spelled(word, 0), spelled(word, 1)];
  const small = word.toLowerCase();
  return [small, small];
}

/** A text of which parts were replaced, with the place that each of its units had before; without `at` nothing was. */
interface Edited {
  readonly text: string;
  readonly at?: readonly number[];
}

function edited({ text, at }: Edited, pattern: RegExp, instead: (part: string) => string): Edited {
  let [left, from] = ['', 0];
  const places: number[] = [];
  const keep = (to: number): void => {
    left += text.slice(from, to);
    for (let place = from; place < to; place++) places.push(at?.[place] ?? place);
  };
  for (const { 0: part, index } of text.matchAll(pattern)) {
    const put = instead(part);
    keep(index);
    left += put;
    for (let unit = 0; unit < put.length; unit++) places.push(at?.[index] ?? index);
    from = index + part.length;
  }
  if (from === 0) return { text, ...defined({ at }) };
  keep(text.length);
  places.push(at?.[text.length] ?? text.length);
  return { text: left, at: places };
}

/** The words of a text; of its links with what they lead to, or as a reader sees them. */
export function wordsOf(text: string, links: 'whole' | 'read' = 'whole'): readonly Word[] {
  const shown = links === 'whole' ? text : text.replace(LEADS_TO, (link) => ' '.repeat(link.length));
  const seen = edited(edited({ text: shown }, ENTITY, decodeHTML), UNSEEN, () => '');
  const { text: read, at } = edited(seen, WITHIN, () => '');
  const words: Word[] = [];
  let gap = 0;
  for (const { 0: word, index } of read.matchAll(WORD)) {
    const end = index + word.length;
    words.push({
      start: at?.[index] ?? index,
      end: at?.[end] ?? end,
      spellings: spellingsOf(word),
      hasCapital: /\p{Lu}/u.test(word),
      isCamel: /\p{Ll}\p{Lu}/u.test(word),
      before: read.slice(gap, index),
    });
    gap = end;
  }
  return words;
}
