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
  readonly shelf: Watched<V>;
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
   * What `compute` gives; or what it gave in the last compile, told again, if all that it was computed from is the same.
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
    const last = this.before.get(name);
    if (last && isSame(last.inputs, inputs) && last.shelf.isSameIn(shelf)) {
      this.now.set(name, last);
      report.take(last.told);
      return last.value;
    }
    const told: Diagnostic[] = [];
    const watched = new Watched(shelf);
    const value = compute(reportInto(told), watched);
    report.take(told);
    if (value !== undefined && !hasErrors(told)) this.now.set(name, { value, inputs, shelf: watched, told });
    return value;
  }
}

function isSame(before: readonly unknown[], now: readonly unknown[]): boolean {
  return before.length === now.length && before.every((input, index) => Object.is(input, now[index]));
}

/** A map that knows what was looked up in it. */
class Watched<V> extends Map<string, V> {
  private readonly looked = new Set<string>();
  private isWhole = false;

  override get(id: string): V | undefined {
    this.looked.add(id);
    return super.get(id);
  }

  override has(id: string): boolean {
    this.looked.add(id);
    return super.has(id);
  }

  override keys(): MapIterator<string> {
    this.isWhole = true;
    return super.keys();
  }

  override values(): MapIterator<V> {
    this.isWhole = true;
    return super.values();
  }

  override entries(): MapIterator<[string, V]> {
    this.isWhole = true;
    return super.entries();
  }

  override [Symbol.iterator](): MapIterator<[string, V]> {
    return this.entries();
  }

  override forEach(use: (value: V, id: string, map: Map<string, V>) => void): void {
    this.isWhole = true;
    super.forEach(use);
  }

  /** Whether another map has the same where this one was looked at. */
  isSameIn(other: ReadonlyMap<string, V>): boolean {
    if (this.isWhole && super.size !== other.size) return false;
    for (const id of this.isWhole ? super.keys() : this.looked) if (super.get(id) !== other.get(id)) return false;
    return true;
  }
}

/** For what looks nothing up. */
export const NOTHING: ReadonlyMap<string, never> = new Map<string, never>();
