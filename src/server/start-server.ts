import { createServer, type RequestListener, type Server } from 'node:http';
import { Refusal } from '../diagnostics/refusal.ts';
import { answerFrom } from './answer.ts';
import { boundConnections } from './bound-connections.ts';
import { listen } from './listen.ts';
import { liveChannel } from './live-channel.ts';
import { makersKey } from './makers-key.ts';
import { nearAddresses } from './near-addresses.ts';
import { oneAtATime } from './one-at-a-time.ts';

/** What to serve, and to whom. */
export interface ServerOptions {
  /** A port that was asked for: refused if it is taken. */
  readonly port?: number;
  /** Where no port was asked for: the next free one from here. */
  readonly defaultPort: number;
  /** Absolute folders. They may be changed file by file while they are served. */
  readonly editions: { readonly mine: string; readonly shared?: string };
  /** Absent: this machine alone. Else the network gets the shared edition; with `mine`, a key to the maker's is made. */
  readonly phone?: { readonly mine: boolean };
  /** Path that the book is served below, beginning and ending with `/`; default `/`. */
  readonly base?: string;
  /** Told in a sentence what a person should know. */
  log(line: string): void;
}

/** A running server. */
export interface BookServer {
  /** For this machine. */
  readonly url: string;
  /** For a phone in the same network. */
  readonly phoneUrl?: string;
  /** For the maker's own phone: its fragment holds the key. Never to be kept anywhere. */
  readonly mineUrl?: string;
  /** Has open pages loaded anew. */
  reload(): void;
  close(): Promise<void>;
}

/** Mishaps that are told. */
const MOST_TOLD = 20;

/**
 * Serves a book: to this machine alone, or to its network too.
 *
 * Refuses a port that is taken, and a phone where this machine is in no network.
 */
export async function startServer({
  port: asked,
  defaultPort,
  editions,
  phone,
  base = '/',
  log,
}: ServerOptions): Promise<BookServer> {
  const [address] = phone ? nearAddresses().own : [];
  if (phone && address === undefined) {
    throw new Refusal('This computer is in no network that a phone could be in too. Join one, or leave --phone out.');
  }
  const live = liveChannel();
  const bound = boundConnections();
  // Until all addresses listen.
  let answer: RequestListener = (_request, response) => response.destroy();
  const make = (): Server => {
    const server = createServer({ connectionsCheckingInterval: 1000 });
    bound(server);
    server.on('request', (request, response) => answer(request, response));
    return server;
  };
  const network = address?.includes(':') ? '::' : '0.0.0.0';
  const listening = await listen(make, phone ? (network === '::' ? ['::'] : [network, '::1']) : ['127.0.0.1', '::1'], {
    defaultPort,
    ...(asked === undefined ? {} : { port: asked }),
  });
  const { port, servers } = listening;
  if (asked === undefined && port !== defaultPort)
    log(`Port ${defaultPort} is used by another program, so this is ${port}.`);
  const key = phone?.mine ? makersKey(port, base) : undefined;
  const told = new Set<string>();
  const answers = answerFrom({
    editions,
    base,
    live,
    ...(key ? { key } : {}),
    near: () => (phone ? nearAddresses() : undefined),
    failed(error) {
      const line = `The server could not answer a request: ${error instanceof Error ? error.message : error}`;
      // Once each: whoever finds what goes wrong could else fill the screen with it.
      if (told.size < MOST_TOLD && !told.has(line)) log(line);
      if (told.size < MOST_TOLD) told.add(line);
    },
  });
  answer = oneAtATime(answers);

  const at = (host: string): string => `http://${host.includes(':') ? `[${host}]` : host}:${port}${base}`;
  return {
    url: at('localhost'),
    ...(address === undefined ? {} : { phoneUrl: at(address) }),
    ...(address === undefined || !key ? {} : { mineUrl: `${at(address)}#key=${key.key}` }),
    reload: live.reload,
    async close() {
      live.close();
      await Promise.all(
        servers.map((server) => {
          const closed = new Promise((done) => server.close(done));
          server.closeAllConnections();
          return closed;
        }),
      );
    },
  };
}
