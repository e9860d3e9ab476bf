import { createHash } from 'node:crypto';
import type { ReadStream } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { extname, resolve } from 'node:path';
import fresh from 'fresh';
import send from 'send';
import { OF_A_FILE } from './reply.ts';
import { isNotThere, type SiteFile } from './site-file.ts';

/**
 * Sends a file as it is, or the part of it that is asked for, or that nothing has changed.
 *
 * `send` and not a lighter handler: it answers for a file that goes away between the look at it and its first byte, where
 * others let the stream's error end the program; and here files change while they are served.
 *
 * @returns the status of a refusal (404, 412, 416) where nothing was sent yet
 */
export function sendFile(
  request: IncomingMessage,
  response: ServerResponse,
  { path, names }: SiteFile,
): Promise<number | undefined> {
  const root = resolve(path, ...names.map(() => '..'));
  const inside = names.map(encodeURIComponent).join('/');
  return new Promise((done) => {
    const stream = send(request, `/${inside}`, { root, index: false, dotfiles: 'deny', cacheControl: false });
    stream.on('error', (error: Error & { readonly status?: number; readonly headers?: Record<string, string> }) => {
      if (response.headersSent) {
        response.destroy();
        done(undefined);
        return;
      }
      for (const name of OF_A_FILE) response.removeHeader(name);
      for (const [name, value] of Object.entries(error.headers ?? {})) response.setHeader(name, value);
      done(isNotThere(error) ? 404 : (error.status ?? 500));
    });
    stream.on('stream', (file: ReadStream) => {
      // Another file in its place since its length was said: the rest would be waited for.
      file.on('end', () => {
        if (file.bytesRead < Number(response.getHeader('content-length'))) response.destroy();
      });
    });
    stream.on('directory', () => done(404));
    response.on('close', () => done(undefined));
    // A drawing that is opened by itself is a document, and could hold scripts.
    if (extname(path) === '.svg') response.setHeader('content-security-policy', DRAWING);
    stream.pipe(response);
  });
}

const DRAWING = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; sandbox; frame-ancestors 'self'";

/** Sends a page with an element added at the beginning of its head. */
export async function sendPage(
  request: IncomingMessage,
  response: ServerResponse,
  { path }: SiteFile,
  { status, element }: { readonly status: number; readonly element: string },
): Promise<void> {
  const page = Buffer.from(withElement(await readFile(path, 'utf8'), element));
  response.setHeader('content-type', 'text/html; charset=utf-8');
  response.setHeader('content-security-policy', "frame-ancestors 'self'");
  sendBytes(request, response, page, { status, etag: `W/"${hashOf(page)}"` });
}

/** What a file that is made when it is asked for may be, by the ending of its name. */
const MADE_TYPES: Readonly<Record<string, string>> = { '.webp': 'image/webp', '.jpg': 'image/jpeg' };

/** Sends a file that was made for this request, or that nothing has changed. */
export function sendMade(request: IncomingMessage, response: ServerResponse, bytes: Uint8Array, ending: string): void {
  response.setHeader('content-type', MADE_TYPES[ending] ?? 'application/octet-stream');
  sendBytes(request, response, bytes, { status: 200, etag: `"${hashOf(bytes)}"` });
}

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('base64url').slice(0, 22);

function sendBytes(
  request: IncomingMessage,
  response: ServerResponse,
  bytes: Uint8Array,
  { status, etag }: { readonly status: number; readonly etag: string },
): void {
  response.setHeader('etag', etag);
  if (status === 200 && fresh(request.headers, { etag })) {
    response.writeHead(304).end();
    return;
  }
  response.setHeader('content-length', bytes.length);
  response.writeHead(status).end(request.method === 'HEAD' ? undefined : bytes);
}

function withElement(html: string, element: string): string {
  return html.replace(/<head(?:\s[^>]*)?>/i, (head) => head + element);
}
