import type { ServerResponse } from 'node:http';

/** An answer of the server's own, in a sentence for the person who reads it. */
export interface Reply {
  readonly status: number;
  readonly text: string;
  /** Default: plain text. */
  readonly type?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

/** For what is not there, and for what nobody is to know whether it is. */
export const NO_SUCH_PAGE: Reply = { status: 404, text: 'There is no such page in this book.' };

/** Leads to another path of this server. */
export function redirectTo(path: string): Reply {
  return { status: 302, text: `This page is at ${path}`, headers: { location: path } };
}

/** What a file that could not be sent after all may have said of itself. */
export const OF_A_FILE = [
  'accept-ranges',
  'content-length',
  'content-range',
  'content-security-policy',
  'content-type',
  'etag',
  'last-modified',
] as const;

/** Sends a reply. */
export function sendReply(response: ServerResponse, { status, text, type, headers = {} }: Reply): void {
  const body = Buffer.from(`${text}\n`);
  response.writeHead(status, {
    ...headers,
    'content-type': type ?? 'text/plain; charset=utf-8',
    'content-length': body.length,
  });
  response.end(body);
}
