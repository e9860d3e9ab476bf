import type { Server } from 'node:http';
import type { Socket } from 'node:net';
import { isLoopback, plainAddress } from './loopback.ts';

/** What connections may take up. */
export interface ConnectionBounds {
  /** Connections at once from this machine. */
  readonly here: number;
  /** Connections at once from the network, apart from those of this machine. */
  readonly network: number;
  /** Connections at once from one address of the network. A browser opens six. */
  readonly address: number;
  /** Time in which a request must have arrived, ms. */
  readonly requestMs: number;
  /** Time in which something must have been received or sent, ms. The channel of changes says something more often. */
  readonly silentMs: number;
}

/** Common practice, no source: some ten times what a household's browsers take. */
const BOUNDS: ConnectionBounds = { here: 256, network: 192, address: 48, requestMs: 10_000, silentMs: 60_000 };

/**
 * Bounds what connections may cost: how many there are, how long one may take to ask, and how long it may be silent.
 *
 * @returns puts a server under the bounds; the connections of all such servers count together
 */
export function boundConnections(bounds: ConnectionBounds = BOUNDS): (server: Server) => void {
  const open = new Map<string, number>();
  const of = (name: string): number => open.get(name) ?? 0;
  const close = (name: string): void => {
    if (of(name) > 1) open.set(name, of(name) - 1);
    else open.delete(name);
  };
  return (server) => {
    server.headersTimeout = bounds.requestMs;
    server.requestTimeout = bounds.requestMs;
    server.timeout = bounds.silentMs;
    server.on('connection', (socket: Socket) => {
      const address = plainAddress(socket.remoteAddress ?? '');
      const here = isLoopback(address);
      const names = here ? ['here'] : ['network', address];
      for (const name of names) open.set(name, of(name) + 1);
      socket.on('close', () => names.forEach(close));
      if (here ? of('here') > bounds.here : of('network') > bounds.network || of(address) > bounds.address) {
        socket.destroy();
      }
    });
    server.on('connect', (_request, socket) => {
      socket.on('error', () => socket.destroy());
      socket.end(
        'HTTP/1.1 405 Method Not Allowed\r\nAllow: GET, HEAD\r\nConnection: close\r\nContent-Length: 0\r\n\r\n',
      );
    });
  };
}
