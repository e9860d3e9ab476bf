/**
 * The worker that stands between the pages of a book and the network: see `kept-pages.ts`.
 *
 * @packageDocumentation
 */
import { answered, canKeep, type KeptPages } from './kept-pages.ts';

interface LastingEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}

interface FetchEvent extends LastingEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

/** The worker's own global, which is typed as that of a page. */
interface WorkerScope {
  readonly registration: { readonly scope: string };
  skipWaiting(): Promise<void>;
  addEventListener(kind: 'install', hear: (event: LastingEvent) => void): void;
  addEventListener(kind: 'fetch', hear: (event: FetchEvent) => void): void;
  addEventListener(kind: 'message', hear: (event: LastingEvent & { readonly data: readonly string[] }) => void): void;
}

const worker = self as unknown as WorkerScope;
const book = worker.registration.scope;

/** Two books of one host keep theirs apart. */
const opened = (): Promise<Cache> => caches.open(`cupbook ${book}`);

async function answer(request: Request, event: LastingEvent): Promise<Response> {
  const pages: KeptPages = { kept: await opened(), book, load: fetch, after: (work) => event.waitUntil(work) };
  return answered(request, pages);
}

/** Has some addresses loaded, and thereby kept. One that can't be had now is kept when it is opened. */
async function keepAll(addresses: readonly string[], event: LastingEvent): Promise<void> {
  const requests = addresses.map((address) => new Request(address)).filter((request) => canKeep(request, book));
  await Promise.allSettled(requests.map((request) => answer(request, event)));
}

worker.addEventListener('install', (event) => {
  event.waitUntil(Promise.all([worker.skipWaiting(), keepAll([book, `${book}care/`], event)]));
});

// A page tells what it has loaded before there was a worker.
worker.addEventListener('message', (event) => event.waitUntil(keepAll(event.data, event)));

worker.addEventListener('fetch', (event) => {
  if (canKeep(event.request, book)) event.respondWith(answer(event.request, event));
});
