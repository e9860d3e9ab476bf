/** The thread that draws pictures: takes an `Order` after another, and answers each with an `Answer`. */
import { parentPort, workerData } from 'node:worker_threads';
import { DrawnMasters, type Masters, PictureFiles } from './draw.ts';
import type { Answer, Order } from './drawing-threads.ts';

/** Masters that are kept, since more sizes of the same bait may be asked for: each is some 8 MB. */
const MOST_KEPT = 6;

const kept = new Map<string, Masters>();
const drawn = new DrawnMasters();
const files = new PictureFiles((workerData as { readonly fonts: readonly string[] }).fonts);

function mastersOf({ bait, pictured, wanted }: Order): Masters {
  const both = wanted.some(({ kind }) => kind === 'other');
  const last = kept.get(bait);
  const masters = last && (last.far || !both) ? last : drawn.of(pictured.bait, both);
  kept.delete(bait);
  kept.set(bait, masters);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT) kept.delete(oldest!);
  return masters;
}

async function answerTo(order: Order): Promise<Answer> {
  const pictures: Answer['pictures'][number][] = [];
  for (const { kind, words } of order.wanted) {
    try {
      pictures.push({ bytes: await files.file(mastersOf(order), order.pictured, kind, words) });
    } catch (error) {
      pictures.push({ fault: error instanceof Error ? (error.stack ?? error.message) : String(error) });
    }
  }
  return { pictures };
}

parentPort!.on('message', (order: Order) => {
  // One after the other: what is drawn shares its memory.
  last = last.then(() => answerTo(order)).then((answer) => parentPort!.postMessage(answer));
});
let last: Promise<unknown> = Promise.resolve();
