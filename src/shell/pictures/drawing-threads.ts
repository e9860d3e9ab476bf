import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import type { PictureKind } from '../../render/picture-files.ts';
import type { LinkWords, Pictured } from './pictured.ts';

/** A picture that is wanted. */
export interface Wanted {
  readonly kind: PictureKind;
  /** Of a shared link. */
  readonly words?: LinkWords;
}

/** Pictures of a bait for a thread to draw. */
export interface Order {
  /** Name of the bait; the same for the same pictures. */
  readonly bait: string;
  readonly pictured: Pictured;
  readonly wanted: readonly Wanted[];
}

/** What a thread has made of an order, in its order: the bytes of a file, or why it could not be drawn. */
export interface Answer {
  readonly pictures: readonly ({ readonly bytes: Uint8Array } | { readonly fault: string })[];
}

/** Draws pictures somewhere else, so that nothing waits for it but who wants them. */
export interface Drawing {
  /** Of the program that draws: another one may draw otherwise. */
  readonly version: string;
  /** Bytes of a picture’s file. Rejects with the reason where it cannot be drawn. */
  draw(bait: string, pictured: Pictured, wanted: Wanted): Promise<Uint8Array>;
}

/** Threads at most, and baits that wait before there is another one. */
const MOST_THREADS = 2;
const WAITING = 8;

/** Threads of which nobody has wanted anything are ended after so long, ms: one holds some 200 MB. */
const IDLE_MS = 300_000;

/** What waits for pictures of a bait. */
interface Waiting {
  readonly pictured: Pictured;
  readonly wanted: { readonly wanted: Wanted; done(bytes: Uint8Array): void; failed(error: Error): void }[];
}

/**
 * Draws in threads of this process: in one, or in two where much is to be drawn. All that waits for pictures of one bait is drawn together.
 * None is begun before something is wanted, and none keeps the process from ending.
 *
 * @param script address of the bundled `draw-thread.ts`
 * @param fonts files of the fonts of titles
 */
export function drawingThreads(script: string, fonts: readonly string[]): Drawing {
  const waiting = new Map<string, Waiting>();
  const idle: Thread[] = [];
  let threads = 0;
  let rest: NodeJS.Timeout | undefined;

  const freeThread = (): Thread | undefined => {
    const free = idle.pop();
    if (free || threads === MOST_THREADS || (threads > 0 && waiting.size <= WAITING)) return free;
    threads += 1;
    return new Thread(script, fonts);
  };
  const begin = (): void => {
    for (const [bait, one] of waiting) {
      const thread = freeThread();
      if (!thread) return;
      waiting.delete(bait);
      void carryOut(thread, bait, one);
    }
  };
  const carryOut = async (thread: Thread, bait: string, { pictured, wanted }: Waiting): Promise<void> => {
    clearTimeout(rest);
    try {
      const { pictures } = await thread.answer({ bait, pictured, wanted: wanted.map((each) => each.wanted) });
      for (const [at, picture] of pictures.entries()) {
        if ('bytes' in picture) wanted[at]!.done(picture.bytes);
        else wanted[at]!.failed(new Error(picture.fault));
      }
      idle.push(thread);
    } catch (error) {
      threads -= 1;
      for (const { failed } of wanted) failed(error as Error);
    }
    rest = setTimeout(() => {
      threads -= idle.length;
      for (const each of idle.splice(0)) each.end();
    }, IDLE_MS).unref();
    begin();
  };

  return {
    version: createHash('sha256').update(script).digest('hex').slice(0, 16),
    draw: (bait, pictured, wanted) =>
      new Promise((done, failed) => {
        const one = waiting.get(bait) ?? { pictured, wanted: [] };
        one.wanted.push({ wanted, done, failed });
        waiting.set(bait, one);
        // What is wanted at the same moment is drawn together.
        setImmediate(begin);
      }),
  };
}

/** A thread that draws one order at a time, and keeps the process alive only meanwhile. */
class Thread {
  readonly #worker: Worker;

  constructor(script: string, fonts: readonly string[]) {
    this.#worker = new Worker(new URL(script), { workerData: { fonts } });
    this.#worker.unref();
  }

  /** Rejects where the thread ends before it has answered. */
  async answer(order: Order): Promise<Answer> {
    const worker = this.#worker;
    const over = new AbortController();
    worker.ref();
    worker.postMessage(order);
    try {
      const ended = once(worker, 'exit', over).then((): never => {
        throw new Error('The thread that draws has ended.');
      });
      const [answer] = await Promise.race([once(worker, 'message', over), ended]);
      return answer as Answer;
    } finally {
      over.abort();
      worker.unref();
    }
  }

  end(): void {
    void this.#worker.terminate();
  }
}
