import { createServer, type RequestListener, type Server } from 'node:http';
import { isIPv4 } from 'node:net';
import { Refusal } from '../diagnostics/refusal.ts';
import { defined } from '../values/defined.ts';
import { answerFrom, type MadeFiles } from './answer.ts';
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
  /** Files of the editions that lie in no folder, and are made when they are asked for. */
  readonly made?: { readonly mine: MadeFiles; readonly shared?: MadeFiles };
  /** Absent: this machine alone. Else the network gets the shared edition; with `mine`, a key to the maker's is made. */
  readonly phone?: { readonly mine: boolean };
  /** Path that the book is served below, one for which `isBasePath`; default `/`. */
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
  /** Other addresses of this machine, under one of which a phone may reach it if not under that. */
  readonly otherPhoneUrls?: readonly string[];
  /** For the maker's own phone: its fragment holds the key. Never to be kept anywhere. */
  readonly mineUrl?: string;
  /** Has open pages loaded anew; resolves when they are, or soon after where one is not. */
  reload(): Promise<void>;
  close(): Promise<void>;
}

/** Whether a book can be served below a path: it begins and ends with `/`, and means the same in an address, a page and a cookie. */
export function isBasePath(path: string): boolean {
  return /^\/(?:(?!\.{1,2}\/)[\w.~%-]+\/)*$/.test(path);
}

/** What is asked of a server. */
type Asked = Pick<ServerOptions, 'port' | 'phone'>;

/** Refuses what `startServer` would refuse, before anything is made for it: a port that is taken, a phone without a network. */
export async function checkServer({ port, phone }: Asked): Promise<void> {
  const addresses = addressesFor(phone);
  if (port === undefined) return;
  const { servers } = await listen(createServer, addresses.listening, { port, defaultPort: port });
  await Promise.all(servers.map((server) => new Promise((done) => server.close(done))));
}

/** Addresses to listen on, and those under which a phone may reach this machine. */
function addressesFor(phone: ServerOptions['phone']): {
  readonly listening: readonly [string, ...string[]];
  readonly phones: readonly string[];
} {
  if (!phone) return { listening: ['127.0.0.1', '::1'], phones: [] };
  const { own } = nearAddresses();
  if (own.length === 0) {
    throw new Refusal('This computer is in no network that a phone could be in too. Join one, or leave --phone out.');
  }
  const phones = own.filter((address) => isIPv4(address));
  return phones.length > 0 ? { listening: ['0.0.0.0', '::1'], phones } : { listening: ['::'], phones: own };
}

/** Mishaps that are told. */
const MOST_TOLD = 20;

/** Tells each mishap once, and no more than some: whoever finds what goes wrong could else fill the screen with it. */
function toldOnce(log: (line: string) => void): (error: unknown) => void {
  const told = new Set<string>();
  return (error) => {
    const line = `The server could not answer a request: ${error instanceof Error ? error.message : error}`;
    if (told.size >= MOST_TOLD || told.has(line)) return;
    told.add(line);
    log(line);
  };
}

/**
 * Serves a book: to this machine alone, or to its network too.
 *
 * Refuses a port that is taken, and a phone where this machine is in no network. Throws RangeError for a base that is no such path.
 */
export async function startServer({
  port: asked,
  defaultPort,
  editions,
  made,
  phone,
  base = '/',
  log,
}: ServerOptions): Promise<BookServer> {
  if (!isBasePath(base)) throw new RangeError(`The path is ${base}. Give one that begins and ends with /.`);
  const { listening, phones } = addressesFor(phone);
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
  const { port, servers } = await listen(make, listening, {
    defaultPort,
    ...defined({ port: asked }),
  });
  if (asked === undefined && port !== defaultPort) {
    log(`Port ${defaultPort} is used by another program, so this is ${port}.`);
  }
  const key = phone?.mine ? makersKey(port, base) : undefined;
  const failed = toldOnce(log);
  // A connection that cannot be taken, as when too many files are open, is no reason to end.
  for (const server of servers) server.on('error', failed);
  const answers = answerFrom({
    editions,
    ...defined({ made }),
    base,
    live,
    ...(key ? { key } : {}),
    near: () => (phone ? nearAddresses() : undefined),
    failed,
  });
  answer = oneAtATime(answers);

  const at = (host: string): string => `http://${host.includes(':') ? `[${host}]` : host}:${port}${base}`;
  const [phoneUrl, ...otherPhoneUrls] = phones.map(at);
  return {
    url: at('localhost'),
    ...(phoneUrl === undefined ? {} : { phoneUrl, otherPhoneUrls }),
    ...(phoneUrl === undefined || !key ? {} : { mineUrl: `${phoneUrl}#key=${key.key}` }),
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
