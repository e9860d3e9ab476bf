// Words that tell no colour from another (convention of this book).
const SMALL: ReadonlySet<string> = new Set(['a', 'an', 'and', 'for', 'in', 'of', 'the', 'with']);

/** What was typed, word by word; words in quotes belong together, and keep their quotes. */
export function wordsAndPhrases(words: string): readonly string[] {
  return words.match(/"[^"]*"|\S+/g) ?? [];
}

/**
 * What was typed as it is looked for: without small words, unless they are all there is. What stands in quotes stays whole.
 *
 * @example withoutSmallWords('brown with gold flake') // 'brown gold flake'
 */
export function withoutSmallWords(words: string): string {
  const telling = wordsAndPhrases(words).filter((word) => !SMALL.has(word.toLowerCase().replace(/[,.;:]+$/, '')));
  return telling.length === 0 ? words : telling.join(' ');
}
