import type { IncomingMessage, ServerResponse } from 'node:http';
import { type Caller, isOfOtherPage } from './caller.ts';
import type { LiveChannel } from './live-channel.ts';
import type { MakersKey } from './makers-key.ts';
import { KEY_HEADER, pageScript } from './page-script.ts';
import { NO_SUCH_PAGE, type Reply } from './reply.ts';

/** Folder of what the server answers by itself. No file of a site is in it, since none has a name that begins with a dot. */
export const OWN_FOLDER = '.serve';

/** What the server answers by itself. */
export interface OwnPages {
  readonly live: LiveChannel;
  /** Absent: nobody in the network may have the maker's edition. */
  readonly key?: MakersKey;
}

/**
 * Answers for `page.js`, the script of the pages; `changes`, the channel of changes; `key`, which changes a key for a
 * cookie.
 *
 * @param name below the folder
 * @param folder path of the folder, ending in `/`
 * @returns a reply to send; undefined where the response stays open
 */
export function ownPage(
  name: string,
  { live, key }: OwnPages,
  { request, response, caller, folder, keepOpen }: OwnRequest,
): Reply | undefined {
  if (isOfOtherPage(request.headers)) return { status: 403, text: 'Only a page of this book may ask for this.' };
  if (name === 'page.js') return { status: 200, text: pageScript(folder), type: 'text/javascript; charset=utf-8' };
  if (request.method !== 'GET') return NO_SUCH_PAGE;
  if (name === 'changes') {
    if (!live.follow(response, caller)) return { status: 503, text: 'Too many pages follow the book already.' };
    keepOpen();
    return undefined;
  }
  return name === 'key' && key ? changeKey(key, request) : NO_SUCH_PAGE;
}

/** A request for what the server answers by itself. */
interface OwnRequest {
  readonly request: IncomingMessage;
  readonly response: ServerResponse;
  readonly caller: Caller;
  readonly folder: string;
  /** Lets the answer take as long as it will. */
  keepOpen(): void;
}

function changeKey(key: MakersKey, { headers, socket }: IncomingMessage): Reply {
  const tried = headers[KEY_HEADER];
  const admitted = key.admit(typeof tried === 'string' ? tried : '', socket.remoteAddress ?? '');
  if (typeof admitted === 'string') return { status: 200, text: 'Welcome.', headers: { 'set-cookie': admitted } };
  const why =
    admitted === 429
      ? 'Too many wrong codes came from here. Stop the server, start it again, and scan the new code.'
      : 'This code is from an earlier start. Scan the one that is on the screen now.';
  return { status: admitted, text: why };
}
