import type { RequestListener } from 'node:http';
import type { Socket } from 'node:net';

/** Requests that may wait on one connection. A browser sends one after the other, so that at most one overtakes an end. */
const MOST_WAITING = 8;

/**
 * Answers the requests of each connection one after the other.
 *
 * Node begins with all that arrive at once: one packet of 2,000 small requests would read and pack 2,000 pages, and what
 * was opened for an answer that is never begun would stay open.
 */
export function oneAtATime(answer: RequestListener): RequestListener {
  const waiting = new WeakMap<Socket, (() => void)[]>();
  return (request, response) => {
    const { socket } = request;
    if (socket.destroyed) return;
    const start = (): void => {
      response.on('close', () => {
        const next = socket.destroyed ? undefined : waiting.get(socket)?.shift();
        if (next) next();
        else waiting.delete(socket);
      });
      answer(request, response);
    };
    const before = waiting.get(socket);
    if (!before) {
      waiting.set(socket, []);
      start();
    } else if (before.length < MOST_WAITING) before.push(start);
    else socket.destroy();
  };
}
