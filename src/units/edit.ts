/**
 * The edits that mend a text which is not read.
 *
 * @packageDocumentation
 */

/** A text to write in the place of one that is not read. */
export interface Edit {
  readonly text: string;
  /** What must hold for it to be the one that was meant, where that is not sure: `the comma marks decimals`. */
  readonly when?: string;
}

/**
 * Edits in the words of a diagnostic; undefined where there are none.
 *
 * @param otherwise what else may be written, in words
 *
 * @example writeFix([{ text: '1000 ml' }, { text: '1.000 ml', when: 'the comma marks decimals' }])
 * // 'write `1000 ml`, or `1.000 ml` if the comma marks decimals'
 */
export function writeFix(edits: readonly Edit[], otherwise?: string): string | undefined {
  const byReading = new Map<string | undefined, string[]>();
  for (const { text, when } of edits) byReading.set(when, [...(byReading.get(when) ?? []), `\`${text}\``]);
  const readings = [...byReading].map(([when, texts]) => either(texts) + (when === undefined ? '' : ` if ${when}`));
  const all = [...readings, ...(otherwise === undefined ? [] : [otherwise])];
  return all.length === 0 ? undefined : `write ${all.join(', or ')}`;
}

function either(texts: readonly string[]): string {
  return texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} or ${texts.at(-1)}`;
}

/** Edits of a part, told as those of the whole: with what stands before and after it. */
export function editsOfWhole(edits: readonly Edit[], before: string, after: string): readonly Edit[] {
  return edits.map((edit) => ({ ...edit, text: `${before}${edit.text}${after}` }));
}
