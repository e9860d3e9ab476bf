/** A file that is left out of the sound part of a book. */
export interface LeftOut {
  readonly path: string;
  /** The files that it needs and that are left out, too, or missing. None: it has errors itself, or could not be read. */
  readonly needs: readonly string[];
  /** Where only some lines of a table are left out: these, from 1. */
  readonly lines?: readonly number[];
}

/**
 * What is left out of a book, by path: files that cannot be used, and all that needs one, in any number of steps.
 *
 * @param needs what each file needs that can be used by itself, by path
 * @param faulty files that cannot be used
 * @example leftOut(new Map([['child.md', ['broken.md']]]), ['broken.md']).get('child.md') // { path: 'child.md', needs: ['broken.md'] }
 */
export function leftOut(
  needs: ReadonlyMap<string, readonly string[]>,
  faulty: Iterable<string>,
): ReadonlyMap<string, LeftOut> {
  const needing = new Map<string, string[]>();
  const out = new Map<string, LeftOut>([...faulty].map((path) => [path, { path, needs: [] }]));
  const gone = [...out.keys()];
  const isFaulty = new Set(gone);
  for (const [path, wanted] of needs) {
    for (const each of new Set(wanted)) {
      const others = needing.get(each);
      if (others) others.push(path);
      else {
        needing.set(each, [path]);
        if (!needs.has(each) && !isFaulty.has(each)) gone.push(each);
      }
    }
  }
  for (const without of gone) {
    for (const path of needing.get(without) ?? []) {
      if (isFaulty.has(path)) continue;
      const known = out.get(path);
      if (!known) gone.push(path);
      out.set(path, { path, needs: [...(known?.needs ?? []), without] });
    }
  }
  return new Map([...out].map(([path, { needs: causes }]) => [path, { path, needs: causes.toSorted() }]));
}
