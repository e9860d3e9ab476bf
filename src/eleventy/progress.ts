/** A line that counts, on a terminal. */
export interface Progress {
  step(): void;
  /** Clears the line. */
  end(): void;
}

/** Least time between two writings of the line, ms. */
const EVERY_MS = 100;

/** Shows "120 of 600 pages" while something long runs, on a terminal only; a log file gets nothing. */
export function showProgress(total: number, things: string, stream: NodeJS.WriteStream = process.stderr): Progress {
  let done = 0;
  let shown = performance.now();
  let dirty = false;
  return {
    step() {
      done += 1;
      if (!stream.isTTY || performance.now() - shown < EVERY_MS) return;
      shown = performance.now();
      dirty = true;
      stream.write(`\r${done} of ${total} ${things}`);
    },
    end() {
      if (dirty) stream.write('\r\u001b[K');
      dirty = false;
    },
  };
}
