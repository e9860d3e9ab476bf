import { randomBytes } from 'node:crypto';
import type { ServerResponse } from 'node:http';
import type { Caller } from './caller.ts';

/** Tells open pages that the book has changed. */
export interface LiveChannel {
  /** What a page is of; another one after each change, and after each start of the server. */
  version(): string;
  /** Keeps a response open and tells it each version; returns false where there are too many already. */
  follow(response: ServerResponse, caller: Caller): boolean;
  /** Tells all that the book has changed; resolves when as many follow anew, or soon after where fewer do. */
  reload(): Promise<void>;
  close(): void;
}

/** Open pages at once. A page follows only while it is seen, so these are screens and not tabs. */
const MOST: Readonly<Record<Caller, number>> = { here: 64, network: 32 };

/** Time between two signs of life, ms: often enough that a connection is not taken for dead. */
const BEAT_MS = 15_000;

/** So long a change waits for pages that are loaded anew, ms: one that is left for another never comes. Common practice, no source. */
const LOADED_MS = 300;

/** Opens a channel of server-sent events (HTML Standard, section 9.2). */
export function liveChannel(): LiveChannel {
  const start = randomBytes(6).toString('base64url');
  let changes = 0;
  const open = new Map<ServerResponse, Caller>();
  const followed = new Set<() => void>();
  const version = (): string => `${start}-${changes}`;
  const say = (text: string): void => {
    for (const response of open.keys()) {
      // Somebody who does not read what is said would have it heaped up here.
      if (response.writableNeedDrain) response.destroy();
      else response.write(text);
    }
  };
  const beat = setInterval(() => say(': \n\n'), BEAT_MS);
  beat.unref();
  return {
    version,
    follow(response, caller) {
      if ([...open.values()].filter((other) => other === caller).length >= MOST[caller]) return false;
      open.set(response, caller);
      response.on('close', () => open.delete(response));
      response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' });
      response.write(`retry: 1000\ndata: ${version()}\n\n`);
      for (const told of followed) told();
      return true;
    },
    reload() {
      changes += 1;
      let awaited = open.size;
      say(`data: ${version()}\n\n`);
      return new Promise((done) => {
        const end = (): void => {
          clearTimeout(late);
          followed.delete(told);
          done();
        };
        const told = (): void => {
          awaited -= 1;
          if (awaited <= 0) end();
        };
        const late = setTimeout(end, LOADED_MS);
        if (awaited === 0) end();
        else followed.add(told);
      });
    },
    close() {
      clearInterval(beat);
      for (const response of open.keys()) response.end();
    },
  };
}
