import type { Server } from 'node:http';
import type { Socket } from 'node:net';

/** Connections at once, to one server. */
const MOST = 512;

/** Connections at once from one address. A browser opens six. */
const MOST_FROM_ONE = 128;

const SECOND = 1000;

/**
 * Bounds what connections may cost: how many there are, how long one may take to ask, to be answered, or say nothing.
 * Answers what is no request that a browser would send.
 */
export function boundConnections(server: Server): void {
  server.maxConnections = MOST;
  server.headersTimeout = 10 * SECOND;
  server.requestTimeout = 10 * SECOND;
  server.keepAliveTimeout = 5 * SECOND;
  // Nothing received or sent for so long. The channel of changes says something more often.
  server.timeout = 60 * SECOND;
  server.maxHeadersCount = 100;

  const from = new Map<string, number>();
  server.on('connection', (socket: Socket) => {
    const address = socket.remoteAddress ?? '';
    const open = (from.get(address) ?? 0) + 1;
    from.set(address, open);
    socket.on('close', () => {
      const left = (from.get(address) ?? 1) - 1;
      if (left > 0) from.set(address, left);
      else from.delete(address);
    });
    if (open > MOST_FROM_ONE) socket.destroy();
  });
  server.on('connect', (_request, socket) => {
    socket.on('error', () => socket.destroy());
    socket.end('HTTP/1.1 405 Method Not Allowed\r\nAllow: GET, HEAD\r\nConnection: close\r\nContent-Length: 0\r\n\r\n');
  });
}
