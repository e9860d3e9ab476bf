/** Why a sentence among the fields is wrong. */
export const NOTES_WHY = 'it reads like a sentence of the notes, and they stand below the second `---`';

const END_ABOVE = 'write `---` on a line of its own above it';
const BELOW = 'move it below the second `---`';

/** Fewer words may be a value. */
const LEAST_WORDS = 4;

/** Whether a text among the fields reads like a sentence of the notes, not like `name: value`. */
export function isSentence(text: string): boolean {
  const words = text.trim().split(/\s+/);
  return (
    words.length >= LEAST_WORDS && words.every((word) => !/[{}[\]"#]/.test(word)) && !/^[\w-]+:?\s+[\d"]/.test(text)
  );
}

/** The edit for a sentence, by whether fields stand below it. */
export function sentenceFix(fieldsBelow: boolean): string {
  return fieldsBelow ? BELOW : END_ABOVE;
}

/** The edit for notes that slid into the front matter, such as `Colours: for the slow end of the canal.`; undefined for anything else. */
export function notesFix(key: string, data: unknown, allowed: readonly string[]): string | undefined {
  const value = (data as Record<string, unknown>)[key];
  if (!isSentence(typeof value === 'string' ? `${key}: ${value}` : value === null ? key : '')) return undefined;
  const keys = Object.keys(data as object);
  return sentenceFix(keys.slice(keys.indexOf(key) + 1).some((name) => allowed.includes(name)));
}
