import { countAlike, nearestFix, slips } from '../diagnostics/nearest-name.ts';
import { KINDS } from '../kinds/kinds.ts';

/** Names of the files that a field may name; undefined where they are not known. */
export type NamesOf = (field: string) => readonly string[] | undefined;

/** A name of another file that is not written as one. */
export interface WrittenName {
  /** As it is written. */
  readonly written: string;
  /** The name that it makes. */
  readonly slug: string;
  /** What stands before it in the same value, `120 ml `. */
  readonly before: string;
}

/** So many names are listed; of more a maker looks into the folder. */
const MOST_LISTED = 8;

/** Recipes whose names differ by more are two. */
const MOST_SLIPS = 2;

/** Folder of what a field names. */
const FOLDER_OF: Readonly<Record<string, string>> = {
  mold: KINDS.mold.folder,
  from: KINDS.recipe.folder,
  for: KINDS.target.folder,
  plastic: KINDS.plastic.folder,
  of: KINDS.colorant.folder,
};

/** Names that are there, to stand after a folder: ` (minnow-3, grub-2)`; nothing where there are none or too many. */
export function namesThere(names: readonly string[]): string {
  return names.length === 0 || names.length > MOST_LISTED ? '' : ` (${[...names].sort().join(', ')})`;
}

/**
 * The edit for a name that is not written as one: the file that is meant, where there is one. A number or a colour is made no file of.
 *
 * @param field the field that holds it
 */
export function referenceFix(
  field: string,
  { written, slug, before }: WrittenName,
  namesOf: NamesOf,
): { readonly expected?: string; readonly fix?: string; readonly nearest?: string } {
  const names = namesOf(field);
  const folder = FOLDER_OF[field];
  if (names === undefined) return slug === '' ? {} : { fix: `write \`${before}${slug}\`` };
  const list = namesThere(names);
  const expected =
    folder === undefined || list === '' || before !== ''
      ? {}
      : { expected: `the name of a file in ${folder}/${list}, without its folder and \`.md\`` };
  const near = names.includes(slug)
    ? { nearest: slug }
    : nearestFix(
        slug,
        // A recipe that has the name of this one as a word may well be derived from it.
        names.filter((name) => countAlike(slug, name) && (field !== 'from' || slips(slug, name) <= MOST_SLIPS)),
      );
  if (near) return { ...expected, fix: `write \`${before}${near.nearest}\``, nearest: near.nearest };
  const isName = /^[a-z]/.test(slug) && /^[\p{L}\p{M}\s'’_-]{1,60}[\p{L}\p{N}\s'’_-]*$/u.test(written);
  if (!isName || folder === undefined) return { ...expected, fix: 'write such a name, or remove the line' };
  return { ...expected, fix: `create ${folder}/${slug}.md, and write \`${before}${slug}\` here` };
}
