/** A line of a terminal that is written over again and again; a file gets nothing of it. */
export interface StatusLine {
  /** Shows a text in the place of the last one. */
  show(text: string): void;
  /** Shows "120 of 600 pages", at most ten times a second. */
  count(done: number, total: number, things: string): void;
  /** Leaves the line empty for what comes next. */
  clear(): void;
}

/** Least time between two counts, ms. */
const EVERY_MS = 100;

const ERASE = '\r\u001b[K';

/** Makes a status line for long work. */
export function statusLine(stream: NodeJS.WriteStream = process.stderr): StatusLine {
  let counted = Number.NEGATIVE_INFINITY;
  let shown = false;
  const show = (text: string): void => {
    if (!stream.isTTY) return;
    stream.write(`${ERASE}${text}`);
    shown = true;
  };
  return {
    show,
    count(done, total, things) {
      const now = performance.now();
      if (now - counted < EVERY_MS) return;
      counted = now;
      show(`${done} of ${total} ${things}`);
    },
    clear() {
      if (shown) stream.write(ERASE);
      shown = false;
    },
  };
}
