/**
 * Small pieces of the sentences that matching speaks in.
 *
 * @packageDocumentation
 */

/** "this", "this and that", "this, that and the other". */
export function listed(words: readonly string[], last = 'and'): string {
  if (words.length <= 1) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

/** A colour difference as it is said: "1.4". */
export function differenceText(deltaE: number): string {
  return deltaE.toFixed(1);
}
