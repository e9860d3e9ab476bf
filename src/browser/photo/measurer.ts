import { answerRequest } from './answer-request.ts';
import type { MeasureAnswer, MeasureRequest } from './measure-request.ts';

/** A browser has painted what is said by then. */
const PAINTED_MS = 30;

/** Has photos measured, one after the other: in a worker where the browser starts one, else in the page, once what is said is painted. */
export class Measurer {
  private readonly script: string;
  private worker: Worker | undefined;
  private last: Promise<unknown> = Promise.resolve();
  private mayWork = true;

  /** @param script where this script is: the worker's is the same */
  constructor(script: string) {
    this.script = script;
  }

  /** What a photo tells. Rejects where measuring fails. */
  ask(request: MeasureRequest): Promise<MeasureAnswer> {
    const answer = this.last.then(async () => (await this.inWorker(request)) ?? (await inPage(request)));
    this.last = answer.catch(() => undefined);
    return answer;
  }

  /** Undefined where no worker runs: a page that is opened from a disk may start none, and without a canvas of its own one can't read a photo. */
  private async inWorker(request: MeasureRequest): Promise<MeasureAnswer | undefined> {
    if (!this.mayWork || typeof OffscreenCanvas === 'undefined') return undefined;
    try {
      this.worker ??= new Worker(this.script);
    } catch {
      this.mayWork = false;
      return undefined;
    }
    const { worker } = this;
    const answer = await new Promise<MeasureAnswer | undefined>((resolve) => {
      worker.onmessage = ({ data }: MessageEvent<MeasureAnswer | undefined>) => resolve(data);
      worker.onerror = (event) => {
        event.preventDefault();
        resolve(undefined);
      };
      worker.postMessage(request);
    });
    if (answer !== undefined) return answer;
    // Some browsers start a worker, and only then say that it may not run; what fails in it may do in the page.
    worker.terminate();
    this.worker = undefined;
    this.mayWork = false;
    return undefined;
  }
}

async function inPage(request: MeasureRequest): Promise<MeasureAnswer> {
  await new Promise((resolve) => window.setTimeout(resolve, PAINTED_MS));
  return answerRequest(request);
}
