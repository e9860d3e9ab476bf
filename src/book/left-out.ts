/** A file that is left out of a book. */
export interface LeftOut {
  readonly path: string;
  /** The files that it needs and that are left out, too, or missing. None: it is left out for what is in it, or could not be read. */
  readonly needs: readonly string[];
  /** Errors, its own or of what it needs; or else nothing but fields that are still empty. */
  readonly why: 'errors' | 'to-fill-in';
  /** Where only some lines of a table are left out: these, from 1. */
  readonly lines?: readonly number[];
}

/**
 * What is left out of a book, by path: files that cannot be used, and all that needs one, in any number of steps.
 *
 * @param needs what each file needs that can be used by itself, by path
 * @param faulty files that cannot be used
 * @param waiting files that cannot be used until they are filled in
 * @example leftOut(new Map([['child.md', ['broken.md']]]), ['broken.md']).get('child.md') // { path: 'child.md', needs: ['broken.md'], why: 'errors' }
 */
export function leftOut(
  needs: ReadonlyMap<string, readonly string[]>,
  faulty: Iterable<string>,
  waiting: Iterable<string> = [],
): ReadonlyMap<string, LeftOut> {
  const wrong = new Set(faulty);
  const own = new Set([...wrong, ...waiting]);
  const missing = [...needs.values()].flat().filter((path) => !needs.has(path) && !own.has(path));
  const forErrors = needing(needs, [...wrong, ...missing], own);
  const all = needing(needs, [...own, ...missing], own);
  const out = (path: string, causes: Iterable<string>): readonly [string, LeftOut] => [
    path,
    { path, needs: [...causes].sort(), why: wrong.has(path) || forErrors.has(path) ? 'errors' : 'to-fill-in' },
  ];
  return new Map([...[...own].map((path) => out(path, [])), ...[...all].map(([path, causes]) => out(path, causes))]);
}

/** What needs one of the files that are gone, in any number of steps, with what it is that each lacks. */
function needing(
  needs: ReadonlyMap<string, readonly string[]>,
  gone: readonly string[],
  own: ReadonlySet<string>,
): ReadonlyMap<string, ReadonlySet<string>> {
  const askers = new Map<string, string[]>();
  for (const [path, wanted] of needs) {
    for (const each of new Set(wanted)) {
      const others = askers.get(each);
      if (others) others.push(path);
      else askers.set(each, [path]);
    }
  }
  const lacking = new Map<string, Set<string>>();
  const queue = [...new Set(gone)];
  for (const without of queue) {
    for (const path of askers.get(without) ?? []) {
      if (own.has(path)) continue;
      const known = lacking.get(path);
      if (known) known.add(without);
      else {
        lacking.set(path, new Set([without]));
        queue.push(path);
      }
    }
  }
  return lacking;
}
