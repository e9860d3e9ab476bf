import { distance } from 'fastest-levenshtein';

const wordsOf = (text: string): readonly string[] => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

/** All words of some texts, in lower case, each once. */
export function vocabularyOf(texts: Iterable<string>): ReadonlySet<string> {
  return new Set([...texts].flatMap(wordsOf));
}

/** Words of a text with which no known word begins. */
export function strangeWords(text: string, vocabulary: ReadonlySet<string>): readonly string[] {
  const known = [...vocabulary];
  return wordsOf(text).filter((word) => !known.some((each) => each.startsWith(word)));
}

/**
 * Words as they were most likely meant: each that is strange becomes the known one nearest to it, with about a third of its letters
 * changed at most, so that two letters that have changed places are found too.
 *
 * Returns undefined where nothing is near, or nothing was amiss.
 *
 * @example nearWords('canel swirl', vocabularyOf(['Canal Swirl'])) // 'canal swirl'
 */
export function nearWords(text: string, vocabulary: ReadonlySet<string>): string | undefined {
  const strange = new Set(strangeWords(text, vocabulary));
  const words = wordsOf(text);
  const meant = words.map((word) => {
    if (!strange.has(word)) return word;
    let fewest = Math.max(1, Math.round(word.length / 3)) + 1;
    let nearest = word;
    for (const each of vocabulary) {
      const edits = distance(word, each);
      if (edits < fewest) {
        fewest = edits;
        nearest = each;
      }
    }
    return nearest;
  });
  return meant.some((word, index) => word !== words[index]) ? meant.join(' ') : undefined;
}
