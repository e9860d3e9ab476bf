import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';
import { extname } from 'node:path';
import compression from 'compression';
import { callerOf } from './caller.ts';
import type { NearAddresses } from './near-addresses.ts';
import { OWN_FOLDER, type OwnPages, ownPage } from './own-pages.ts';
import { pageScriptElement } from './page-script.ts';
import { NO_SUCH_PAGE, type Reply, redirectTo, sendReply } from './reply.ts';
import { type RequestTarget, readTarget } from './request-target.ts';
import { sendFile, sendMade, sendPage } from './send-file.ts';
import { findSiteFile, isNotThere } from './site-file.ts';

/** Bytes of a file that is made when it is asked for, by its path from the root of a site; undefined where there is none. */
export type MadeFiles = (path: string) => Promise<Uint8Array> | undefined;

/** What the server answers from. */
export interface Answers extends OwnPages {
  /** Absolute folders: the maker's edition for this machine, the shared one for the network. */
  readonly editions: { readonly mine: string; readonly shared?: string };
  /** What is in no folder: asked before it. */
  readonly made?: { readonly mine: MadeFiles; readonly shared?: MadeFiles };
  /** Path that the book is served below, beginning and ending with `/`. */
  readonly base: string;
  /** The networks that may ask, as they are now; undefined where only this machine may. */
  near(): NearAddresses | undefined;
  /** Told of what went wrong in the program itself. */
  failed(error: unknown): void;
}

/** For every answer. */
const HEADERS: Readonly<Record<string, string>> = {
  'x-content-type-options': 'nosniff',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-frame-options': 'SAMEORIGIN',
};

/**
 * A name with a hash of the content, as the build gives to what pages load: it never has another content. One capital at least:
 * `alder-20260314.md` has a day at its end, and is written anew.
 */
const HASHED = /-(?=\d*[A-Z])[0-9A-Z]{8}\.\w+$/;

/** Largest page that is read whole, to have the script added, bytes. Common practice, no source. */
const LARGEST_PAGE = 8 * 1024 * 1024;

/** Time in which an answer must have been taken, ms: somebody who reads a byte a minute would hold a connection for days. */
const TAKEN_MS = 120_000;

/**
 * Answers that stay on this machine. Packing them costs more than it saves: 2.4 to 9 ms of a processor for a page of 80 to 310 kB (measured, by how it is packed), and
 * unpacking on top.
 */
const staysHere = new WeakSet<ServerResponse>();

/** A part of a file must arrive as it is in the file, and events at once. */
const compressed = compression({
  filter: (request, response) =>
    !staysHere.has(response) &&
    response.statusCode !== 206 &&
    response.getHeader('content-type') !== 'text/event-stream' &&
    compression.filter(request, response),
});

/** Answers requests; throws nothing, whatever is asked. */
export function answerFrom(answers: Answers): RequestListener {
  return (request, response) => {
    const failed = (error: unknown): void => {
      answers.failed(error);
      if (response.headersSent) response.destroy();
      else sendReply(response, { status: 500, text: 'The server could not answer this.' });
    };
    // A connection that is cut while it is answered.
    response.on('error', () => response.destroy());
    const late = setTimeout(() => response.destroy(), TAKEN_MS);
    response.on('close', () => clearTimeout(late));
    for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
    compressed(request, response, (error) => {
      if (error !== undefined) return failed(error);
      answer(request, response, answers, () => clearTimeout(late))
        .then((reply) => reply && sendReply(response, reply))
        .catch(failed);
    });
  };
}

/** Returns what is left to say; undefined where the answer is on its way. */
async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  answers: Answers,
  keepOpen: () => void,
): Promise<Reply | undefined> {
  const { base } = answers;
  const { method, headers, url = '' } = request;
  if (method !== 'GET' && method !== 'HEAD') {
    return {
      status: 405,
      text: 'This server only shows a book.',
      headers: { allow: 'GET, HEAD', connection: 'close' },
    };
  }
  if (headers['transfer-encoding'] !== undefined || Number(headers['content-length'] ?? 0) !== 0) {
    return { status: 413, text: 'This server takes nothing.', headers: { connection: 'close' } };
  }
  const caller = callerOf({ peer: request.socket.remoteAddress, headers }, answers.near());
  if (typeof caller !== 'string') return { status: caller.status, text: caller.why };
  if (caller === 'here') staysHere.add(response);

  const target = readTarget(url, base);
  if (target === 400) return { status: 400, text: 'The address cannot be read.' };
  if (target === 414) return { status: 414, text: 'The address is too long.' };
  if (target === 404 && url === '/') return redirectTo(base);
  const folder = `${base}${OWN_FOLDER}/`;
  if (target !== 404 && target.names[0] === OWN_FOLDER) {
    response.setHeader('cache-control', 'no-store');
    return ownPage(target.names.slice(1).join('/'), answers, { request, response, caller, folder, keepOpen });
  }

  const mine = caller === 'here' || answers.key?.holds(headers.cookie) === true;
  const site = mine ? answers.editions.mine : answers.editions.shared;
  if (site === undefined) return NO_SUCH_PAGE;
  // Whoever has opened this page has no hold on it. A browser takes this for a mistake where it cannot do it.
  if (caller === 'here') response.setHeader('cross-origin-opener-policy', 'same-origin');
  if (caller === 'network') response.setHeader('vary', 'Cookie');
  return sendOf(site, target, {
    made: mine ? answers.made?.mine : answers.made?.shared,
    request,
    response,
    element: pageScriptElement(folder, answers.live.version()),
    // What is the maker's alone is not to stay on a phone.
    caching: mine && caller === 'network' ? 'no-store' : 'no-cache',
  });
}

/** One request for a file of a site. */
interface Sending {
  readonly made: MadeFiles | undefined;
  readonly request: IncomingMessage;
  readonly response: ServerResponse;
  /** What is added to a page. */
  readonly element: string;
  /** `Cache-Control` of all that has no hash in its name. */
  readonly caching: string;
}

async function sendOf(site: string, target: RequestTarget | 404, sending: Sending): Promise<Reply | undefined> {
  const { request, response, caching } = sending;
  response.setHeader('cache-control', caching);
  const path = target === 404 || target.folder ? '' : target.names.join('/');
  const made = sending.made?.(path);
  if (made) {
    sendMade(request, response, await made, extname(path));
    return undefined;
  }
  const file = target === 404 ? undefined : await findSiteFile(site, target);
  if (file === 'folder' && target !== 404) return redirectTo(`${target.path}/${target.query}`);
  if (typeof file === 'object') {
    if (extname(file.path) === '.html' && file.bytes <= LARGEST_PAGE) {
      if (await isSent(sendPage(request, response, file, { status: 200, element: sending.element }))) return undefined;
    } else {
      if (HASHED.test(file.path)) response.setHeader('cache-control', 'private, max-age=31536000, immutable');
      const status = await sendFile(request, response, file);
      if (status === undefined) return undefined;
      response.setHeader('cache-control', caching);
      if (status !== 404) return { status, text: 'This part of the file cannot be had.' };
    }
  }
  const page = await findSiteFile(site, { names: ['404.html'], folder: false });
  const shown =
    typeof page === 'object' &&
    (await isSent(sendPage(request, response, page, { status: 404, element: sending.element })));
  return shown ? undefined : NO_SUCH_PAGE;
}

/** Whether a page was sent; false where its file went away meanwhile. */
async function isSent(page: Promise<void>): Promise<boolean> {
  try {
    await page;
    return true;
  } catch (error) {
    if (isNotThere(error)) return false;
    throw error;
  }
}
