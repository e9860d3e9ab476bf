import type { Thing } from '../recipe/read-thing.ts';
import type { Remembered } from './remembered.ts';
import type { Finding, Report } from './report.ts';

/**
 * What is computed of one thing of the book; undefined, and reported in its file, where that throws. Bounds of the fields keep nearly
 * all of it away; this is for numbers that only together are beyond what can be computed, so that one file never takes the
 * findings of the others with it.
 */
export function computed<T>(thing: Thing, report: Report, compute: () => T): T | undefined {
  try {
    return compute();
  } catch (error) {
    report.add('file/not-computed', thing, [], notComputed(error));
    return undefined;
  }
}

/**
 * What is computed of each of many things, by id, without those of which nothing is.
 *
 * @param inputs what it is computed from beside the thing, and `shelf`, in which it is looked up: see `Remembered`
 */
export function computedEach<T extends Thing, R, V>(
  things: ReadonlyMap<string, T>,
  remembered: Remembered<R, V>,
  { inputs = [], shelf }: { readonly inputs?: readonly unknown[]; readonly shelf: ReadonlyMap<string, V> },
  report: Report,
  compute: (thing: T, report: Report, shelf: ReadonlyMap<string, V>) => R | undefined,
): ReadonlyMap<string, R> {
  return new Map(
    [...things].flatMap(([id, thing]): [string, R][] => {
      const found = remembered.of(id, [thing, ...inputs], shelf, report, (telling, watched) =>
        computed(thing, telling, () => compute(thing, telling, watched)),
      );
      return found === undefined ? [] : [[id, found]];
    }),
  );
}

/** What is computed of a file that is no thing, such as a table. */
export function computedOf<T>(file: string, report: Report, compute: () => T): T | undefined {
  try {
    return compute();
  } catch (error) {
    report.tell('file/not-computed', file, notComputed(error));
    return undefined;
  }
}

function notComputed(error: unknown): Finding {
  const [first = ''] = (error instanceof Error ? error.message : String(error)).split('\n');
  return {
    found: 'numbers that together cannot be computed',
    expected: 'amounts, sizes and colours that a bench could have',
    why: `the computation stopped: ${first.length > 160 ? `${first.slice(0, 157)}…` : first}`,
    fix: 'look for a digit too many or a wrong unit in this file and in those that it names; if all of them are right, this program has a fault',
  };
}
