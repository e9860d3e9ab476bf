/**
 * What a reader has opened of a book, kept on the device: it is there again where there is no network, as in a shed.
 *
 * @packageDocumentation
 */

/** A `Cache`, as far as it is used here. */
export type Kept = Pick<Cache, 'match' | 'put' | 'delete' | 'keys'>;

/** How a request is answered. */
export interface KeptPages {
  readonly kept: Kept;
  /** Address of the book, ending in `/`. */
  readonly book: string;
  /** Asks the network; rejects where there is none. */
  load(request: Request): Promise<Response>;
  /** Has work finished after the answer is given. */
  after(work: Promise<unknown>): void;
}

/** Files of each sort that are kept, the last ones: about 20 MB of a book with many photos. Convention of this book. */
const MOST = 300;

/** Whether a request can be answered from what is kept: of another host, of something sent, of a part of a file or of news it can't. */
export function canKeep({ method, url, headers }: Pick<Request, 'method' | 'url' | 'headers'>, book: string): boolean {
  const hasEnd = !headers.has('range') && headers.get('accept') !== 'text/event-stream';
  return method === 'GET' && url.startsWith(book) && hasEnd;
}

/**
 * The answer to a request that can be kept. What pages load has a hash in its name and is never asked for twice; anything else is as it is now,
 * and as it was last where there is no network.
 *
 * Rejects where there is no network and nothing kept, unless a page was to be opened: then the answer says so.
 */
export async function answered(request: Request, { kept, book, load, after }: KeptPages): Promise<Response> {
  const name = nameOf(request.url);
  const neverChanges = name.startsWith(`${book}assets/`);
  const there = neverChanges ? await kept.match(name) : undefined;
  if (there) return there;
  try {
    const response = await load(request);
    if (response.status === 200) after(keep(kept, name, response.clone(), `${book}assets/`));
    return response;
  } catch (error) {
    const last = await kept.match(name);
    if (last) return last;
    if (request.mode === 'navigate') return notHere(book);
    throw error;
  }
}

/** One name for a page, whatever batch or filter its address asks for: the page’s script reads that from the address. */
function nameOf(url: string): string {
  const { origin, pathname } = new URL(url);
  return origin + pathname;
}

async function keep(kept: Kept, name: string, response: Response, assets: string): Promise<void> {
  await kept.put(name, response);
  const isAsset = name.startsWith(assets);
  const alike = (await kept.keys()).filter(({ url }) => url.startsWith(assets) === isAsset);
  // Those put in first come first.
  for (const { url } of alike.slice(0, Math.max(0, alike.length - MOST))) await kept.delete(url);
}

function notHere(book: string): Response {
  const page = `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><meta name="color-scheme" content="light dark"><title>No network</title><h1>No network</h1><p>This device hasn’t opened this page before. What it has opened is still here: begin with <a href="${book}">all colours</a>, or with <a href="${book}care/">first aid and cautions</a>.</p></html>`;
  return new Response(page, { status: 503, headers: { 'content-type': 'text/html; charset=utf-8' } });
}
