/**
 * Finds names of things in a text, however they are written there: in any case, with or without accents, in the plural, with markup, entities or
 * signs between and within their words, run together, torn apart, or the other way round.
 *
 * @packageDocumentation
 */
import { CLOSED_COMPOUNDS } from '../../tables/closed-compounds.ts';
import { type Word, wordsOf } from './words-of-text.ts';

/** A place in a text that may be a name. */
export interface Mention<T> {
  /** Whose name. */
  readonly of: T;
  /** Where it begins and ends in the text. */
  readonly start: number;
  readonly end: number;
  readonly text: string;
  /** It is the name; else it may be something else: an everyday word, or the same words in another sense. */
  readonly sure: boolean;
}

/** A name that is looked for. */
interface Sought<T> {
  readonly of: T;
  readonly words: readonly Word[];
}

/** Names to look for in many texts. */
export interface NameIndex<T> {
  /** By the spellings of their first and of their last word. */
  readonly byFirst: ReadonlyMap<string, readonly Sought<T>[]>;
  readonly byLast: ReadonlyMap<string, readonly Sought<T>[]>;
  /** By all their letters in one. */
  readonly byLetters: ReadonlyMap<string, readonly Sought<T>[]>;
  /** The first letters of these, up to three: most words of a text begin none. */
  readonly begins: ReadonlySet<string>;
  /** In letters that have no capitals, which stand between others without spaces. */
  readonly uncased: readonly { readonly of: T; readonly letters: string }[];
}

// Shorter single words are letters and articles; they only count as the name of a file.
const SHORTEST_WORD = 3;

/** A name that is torn into more pieces is not read as one. */
const MOST_PIECES = 3;

/** What may stand between two words of a name without parting them: spaces, line ends, dashes, and the signs of Markdown for emphasis and quotes. */
const JOINT = /^[\s_*~`\\>\p{Pd}"'[\]“”‘’]*$/u;

/** A full stop, a comma or another sign that parts words, with spaces: it may be the end of a sentence. */
const PARTED = /^[\s_*~`\\>"'[\]“”‘’]*[.,;:/|&+·•…!?()][\s_*~`\\>"'[\]“”‘’]*$/u;

/** The words of a title or an id, in small letters. */
export function nameWords(name: string): readonly string[] {
  return wordsOf(name).map(({ spellings }) => spellings[0]);
}

/** Names, ready to be looked for in many texts. */
export function nameIndex<T>(names: readonly { readonly name: string; readonly of: T }[]): NameIndex<T> {
  const [byFirst, byLast, byLetters] = [0, 1, 2].map(() => new Map<string, Sought<T>[]>()) as [
    Map<string, Sought<T>[]>,
    Map<string, Sought<T>[]>,
    Map<string, Sought<T>[]>,
  ];
  const put = (map: Map<string, Sought<T>[]>, keys: readonly string[], sought: Sought<T>): void => {
    for (const key of new Set(keys)) {
      const there = map.get(key);
      if (there === undefined) map.set(key, [sought]);
      else there.push(sought);
    }
  };
  const uncased: { readonly of: T; readonly letters: string }[] = [];
  for (const { name, of } of names) {
    const words = wordsOf(name);
    const [first, last] = [words[0], words.at(-1)];
    if (first === undefined || last === undefined) continue;
    if (!/[\p{Lu}\p{Ll}\p{N}]/u.test(name)) {
      uncased.push({ of, letters: lettersOf(words, 0) });
      continue;
    }
    const sought = { of, words };
    put(byFirst, forms(first.spellings), sought);
    put(byLast, forms(last.spellings), sought);
    put(byLetters, forms([lettersOf(words, 0), lettersOf(words, 1)]), sought);
  }
  const begins = new Set([...byLetters.keys()].flatMap((key) => [1, 2, 3].map((count) => key.slice(0, count))));
  return { byFirst, byLast, byLetters, begins, uncased };
}

const lettersOf = (words: readonly Word[], way: 0 | 1): string => words.map(({ spellings }) => spellings[way]).join('');

/** Spellings of a word, and of what it may be the plural of. */
function forms(spellings: readonly [string, string]): readonly string[] {
  const [plain, german] = spellings;
  if (plain === german && !plain.endsWith('s')) return [plain];
  return (plain === german ? [plain] : spellings).flatMap((word) => [
    word,
    ...(/..ies$/.test(word) ? [`${word.slice(0, -3)}y`] : []),
    ...(/..(?:s|x|z|ch|sh)es$/.test(word) ? [word.slice(0, -2)] : []),
    ...(/..[^s]s$/.test(word) ? [word.slice(0, -1)] : []),
  ]);
}

function isSame(one: Word, other: Word): boolean {
  const known = forms(one.spellings);
  return forms(other.spellings).some((form) => known.includes(form));
}

/** Every place where one of the names stands in a text, in the order of the text. */
export function mentions<T>(text: string, index: NameIndex<T>): readonly Mention<T>[] {
  const whole = mentionsAmong(wordsOf(text), text, index);
  // Link by link as a reader sees it, where there is one.
  const read = text.includes('](') ? mentionsAmong(wordsOf(text, 'read'), text, index) : [];
  const kept: Mention<T>[] = [];
  const last = new Map<T, Mention<T>>();
  for (const one of [...whole, ...read, ...uncasedMentions(text, index)].sort(byPlace)) {
    const before = last.get(one.of);
    // A part of what is told already.
    if (before !== undefined && before.end > one.start && (before.sure || !one.sure)) continue;
    kept.push(one);
    last.set(one.of, one);
  }
  return kept;
}

function byPlace(one: Mention<unknown>, other: Mention<unknown>): number {
  return one.start - other.start || Number(other.sure) - Number(one.sure);
}

function mentionsAmong<T>(words: readonly Word[], text: string, index: NameIndex<T>): readonly Mention<T>[] {
  const mayBegin = (form: string): boolean => index.begins.has(form.slice(0, 3));
  return words.flatMap((word, at): readonly Mention<T>[] => {
    const isPiece = word.spellings.some(mayBegin);
    if (!isPiece && !forms(word.spellings).some((form) => index.byLast.has(form))) return [];
    const found = new Map<T, { readonly sure: boolean; readonly count: number }>();
    const note = (of: T, count: number, sure: boolean): void => {
      if (!found.get(of)?.sure) found.set(of, { sure, count });
    };
    const near = forms(word.spellings);
    for (const { of, words: name } of soughtIn(index.byFirst, near)) {
      const here = words.slice(at, at + name.length);
      if (here.length < name.length || !name.every((each, place) => isSame(each, here[place]!))) continue;
      const single = name.length === 1 ? singleWord(here[0]!, words[at + 1], text) : jointOf(here);
      if (single !== undefined) note(of, name.length, single);
    }
    for (const { of, words: name } of soughtIn(index.byLast, near)) {
      const here = words.slice(at, at + name.length);
      const turned = name.toReversed();
      if (name.length < 2 || here.length < name.length || !turned.every((each, place) => isSame(each, here[place]!)))
        continue;
      const joint = jointOf(here);
      if (joint === undefined) continue;
      // As in an index: `Ghost, Grey`.
      const listed = here.slice(1).every(({ before }) => JOINT.test(before) || /^\s*,\s*$/.test(before));
      note(of, name.length, isTogether(here) || (listed && here.every(({ hasCapital }) => hasCapital)));
    }
    for (let count = 1; isPiece && count <= MOST_PIECES && at + count <= words.length; count++) {
      const here = words.slice(at, at + count);
      if (count > 1 && jointOf(here.slice(-2)) !== true) break;
      const joined = forms([lettersOf(here, 0), lettersOf(here, 1)]);
      for (const { of, words: name } of soughtIn(index.byLetters, joined)) {
        if (found.has(of) || (count === 1 && name.length === 1)) continue;
        const everyday = count > 1 || joined.some((form) => CLOSED_COMPOUNDS.has(form));
        note(of, count, !everyday || word.isCamel);
      }
    }
    return [...found].map(([of, { sure, count }]) => {
      const { start } = word;
      const { end } = words[at + count - 1]!;
      return { of, start, end, text: text.slice(start, end), sure };
    });
  });
}

function soughtIn<T>(map: ReadonlyMap<string, readonly Sought<T>[]>, keys: readonly string[]): ReadonlySet<Sought<T>> {
  return new Set(keys.flatMap((key) => map.get(key) ?? []));
}

/** Whether words stand together as a name, `true` for sure; undefined where something parts them. */
function jointOf(words: readonly Word[]): boolean | undefined {
  const between = words.slice(1).map(({ before }) => before);
  if (between.every((gap) => JOINT.test(gap))) return true;
  if (!between.every((gap) => JOINT.test(gap) || PARTED.test(gap))) return undefined;
  // `Grey.Ghost` and `grey/ghost` are one; `grey. Ghost` may be two sentences.
  return isTogether(words);
}

/** Whether there is no space between words: `Grey.Ghost`, `ghost-grey`. */
const isTogether = (words: readonly Word[]): boolean => words.slice(1).every(({ before }) => !/\s/.test(before));

/** A name of one word: for sure with a capital or as the name of a file; undefined where it is a part of another word, or too short. */
function singleWord(word: Word, next: Word | undefined, text: string): boolean | undefined {
  const [before, behind] = [text.slice(0, word.start), text.slice(word.end)];
  if (/(?:colours|targets)\/$/.test(before) || /^\.md\b/.test(behind)) return true;
  if (word.end - word.start < SHORTEST_WORD) return undefined;
  if (word.hasCapital) return true;
  // `smoke` in `smoke-grey` is a part of another word.
  return /\p{Pd}$/u.test(word.before) || (next !== undefined && /^\p{Pd}/u.test(next.before)) ? undefined : false;
}

function uncasedMentions<T>(text: string, { uncased }: NameIndex<T>): readonly Mention<T>[] {
  return uncased.flatMap(({ of, letters }) =>
    [...text.normalize('NFKC').matchAll(new RegExp(letters.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'), 'gu'))].map(
      ({ 0: found, index: start }) => ({ of, start, end: start + found.length, text: found, sure: true }),
    ),
  );
}
