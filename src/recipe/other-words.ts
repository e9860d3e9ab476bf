import { ADDITIVE_USES, USE_NAMES } from '../kinds/additive-uses.ts';
import { METHOD_NAMES, METHODS } from '../patterns/methods.ts';
import { PATTERN_NAMES, PATTERNS } from '../patterns/patterns.ts';

/** Words that makers use for one that the book has: common practice, no source. */
const OTHER_WORDS: ReadonlyMap<string, string> = new Map<string, string>([
  ...PATTERN_NAMES.flatMap((name) => PATTERNS[name].alsoCalled.map((word) => [word, name] as const)),
  ...METHOD_NAMES.flatMap((name) => METHODS[name].alsoCalled.map((word) => [word, name] as const)),
  ...USE_NAMES.flatMap((name) => ADDITIVE_USES[name].alsoCalled.map((word) => [word, name] as const)),
  ['crayfish', 'craw'],
  ['overnight', 'next day'],
  ['1 day', 'next day'],
  ['one day', 'next day'],
  ['24 h', 'next day'],
  ['fahrenheit', '°F'],
  ['f', '°F'],
  ['celsius', '°C'],
  ['c', '°C'],
  ['uv', 'fluorescent'],
  ['glow in the dark', 'glow'],
  ['phosphorescent', 'glow'],
  ['chameleon', 'shift'],
  ['when', 'after'],
  ['colour', 'over-white'],
  ['color', 'over-white'],
]);

/** The edit for a word of another's, where the book's word for it is allowed. */
export function otherWord(
  word: string,
  allowed: readonly string[],
): { readonly fix: string; readonly nearest: string } | undefined {
  const nearest = OTHER_WORDS.get(word.toLowerCase());
  return nearest !== undefined && allowed.includes(nearest) ? { fix: `write \`${nearest}\``, nearest } : undefined;
}
