import { writeFile } from 'node:fs/promises';
import { DISK, type Effects } from '../../src/output/effects.ts';
import type { World } from '../../src/output/world.ts';
import { asWriter, type Writer, writerState } from '../../src/output/writer.ts';

/** Where a run was killed: nothing of it is done any more, no tidying up either. */
export class Killed extends Error {}

/** What changes a disk. */
const CHANGES: readonly (keyof Effects)[] = ['makeFolder', 'make', 'settle', 'rename', 'remove', 'removeFolder'];

/** A disk that does not wait for its hardware: whether what was written survives is for `settle` to be called in time, not for how long it takes. */
export const QUICK_DISK: Effects = {
  ...DISK,
  async make(file, content) {
    if (typeof content === 'string' || content instanceof Uint8Array) await writeFile(file, content, { flag: 'wx' });
    else await DISK.make(file, content);
  },
  async settle() {
    // Nothing is waited for.
  },
};

/** A disk at which everything stops at the n-th change: that one is not made, or for a file half of it. */
export function stoppedDisk(n: number, disk: Effects = QUICK_DISK): { readonly disk: Effects; reached(): boolean } {
  let changes = 0;
  const stopped = new Proxy(disk, {
    get(target, name: keyof Effects) {
      return async (...given: readonly never[]) => {
        if (changes >= n) throw new Killed();
        if (CHANGES.includes(name)) changes += 1;
        if (changes >= n) {
          const [file, content] = given as unknown as [string, unknown];
          if (name === 'make' && typeof content === 'string')
            await writeFile(file, content.slice(0, content.length / 2));
          throw new Killed();
        }
        return (target[name] as (...words: readonly never[]) => Promise<unknown>)(...given);
      };
    },
  });
  return { disk: stopped, reached: () => changes >= n };
}

/** A disk that refuses some change as a system does. */
export function refusingDisk(refused: (name: keyof Effects, path: string) => string | undefined): Effects {
  return new Proxy(QUICK_DISK, {
    get(target, name: keyof Effects) {
      return async (...given: readonly never[]) => {
        const code = refused(name, String(given[0]));
        if (code !== undefined) throw Object.assign(new Error(code), { code, syscall: name, path: given[0] });
        return (target[name] as (...words: readonly never[]) => Promise<unknown>)(...given);
      };
    },
  });
}

/** Has a writer of its own do something on a disk. */
export function on(
  disk: Effects,
  stateOf: World['stateOf'] = writerState,
): <T>(act: (world: World) => Promise<T>) => Promise<T> {
  return (act) =>
    asWriter((writer: Writer) =>
      act({ disk, writer, stateOf, pause: (ms) => new Promise((done) => setTimeout(done, ms / 20)) }),
    );
}
