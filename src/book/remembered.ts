/**
 * What one compile leaves for the next, so that a book of which one file was changed is not computed from the beginning. It
 * changes how long a compile takes and nothing else.
 *
 * @packageDocumentation
 */
import { type Diagnostic, hasErrors } from '../diagnostics/diagnostic.ts';
import { type Report, reportInto } from './report.ts';

/** A value, what it was computed from, and what was told on the way. */
interface Kept<T, V> {
  readonly value: T;
  readonly inputs: readonly unknown[];
  readonly looked: LookedUp<V>;
  readonly told: readonly Diagnostic[];
}

/** Values of one kind, each by what it was computed from. */
export class Remembered<T, V = never> {
  private before: ReadonlyMap<string, Kept<T, V>> = new Map();
  private now = new Map<string, Kept<T, V>>();

  /** Begins a compile: what the one before did not need is forgotten. */
  begin(): void {
    this.before = this.now;
    this.now = new Map();
  }

  /**
   * What `compute` gives; or what it gave before in this compile or the last one, told again, if all that it was computed from is the same.
   *
   * Nothing, and what an error was told of, is not kept: it may hang on a name that is not there.
   * @param name of the value among those of its kind
   * @param inputs all that it is computed from, compared by identity
   * @param shelf what it looks things up in: it hangs on those alone that it looks up
   */
  of<R extends T | undefined>(
    name: string,
    inputs: readonly unknown[],
    shelf: ReadonlyMap<string, V>,
    report: Report,
    compute: (report: Report, shelf: ReadonlyMap<string, V>) => R,
  ): T | R {
    const known = [this.now.get(name), this.before.get(name)].find(
      (kept) => kept && isSame(kept.inputs, inputs) && isSameIn(kept.looked, shelf),
    );
    if (known) {
      this.now.set(name, known);
      report.take(known.told);
      return known.value;
    }
    const told: Diagnostic[] = [];
    const watched = new Watched(shelf);
    const value = compute(reportInto(told), watched);
    report.take(told);
    if (value !== undefined && !hasErrors(told)) this.now.set(name, { value, inputs, looked: watched.lookedUp, told });
    return value;
  }
}

function isSame(before: readonly unknown[], now: readonly unknown[]): boolean {
  return before.length === now.length && before.every((input, index) => Object.is(input, now[index]));
}

/** What was looked up in a shelf, and found or not; the whole of it where all of it was looked at. No copy of it for each value. */
type LookedUp<V> = { readonly whole: ReadonlyMap<string, V> } | { readonly each: ReadonlyMap<string, V | undefined> };

/** Whether another shelf has the same where one was looked at. */
function isSameIn<V>(looked: LookedUp<V>, other: ReadonlyMap<string, V>): boolean {
  if ('whole' in looked && looked.whole.size !== other.size) return false;
  for (const [id, value] of 'whole' in looked ? looked.whole : looked.each) if (other.get(id) !== value) return false;
  return true;
}

/** A shelf that knows what was looked up in it. */
class Watched<V> implements ReadonlyMap<string, V> {
  private readonly shelf: ReadonlyMap<string, V>;
  private readonly each = new Map<string, V | undefined>();
  private isWhole = false;

  constructor(shelf: ReadonlyMap<string, V>) {
    this.shelf = shelf;
  }

  get lookedUp(): LookedUp<V> {
    return this.isWhole ? { whole: this.shelf } : { each: this.each };
  }

  get(id: string): V | undefined {
    const value = this.shelf.get(id);
    this.each.set(id, value);
    return value;
  }

  has(id: string): boolean {
    return this.get(id) !== undefined;
  }

  get size(): number {
    return this.all.size;
  }

  keys(): MapIterator<string> {
    return this.all.keys();
  }

  values(): MapIterator<V> {
    return this.all.values();
  }

  entries(): MapIterator<[string, V]> {
    return this.all.entries();
  }

  [Symbol.iterator](): MapIterator<[string, V]> {
    return this.all.entries();
  }

  forEach(use: (value: V, id: string, shelf: ReadonlyMap<string, V>) => void): void {
    this.all.forEach(use);
  }

  private get all(): ReadonlyMap<string, V> {
    this.isWhole = true;
    return this.shelf;
  }
}

/** For what looks nothing up. */
export const NOTHING: ReadonlyMap<string, never> = new Map<string, never>();
