import { readFile, stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';

const gzipped = promisify(gzip);

/** A running server of a folder. */
export interface StaticServer {
  /** Where the folder is served, ending in `/`. */
  readonly address: string;
  close(): Promise<void>;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.md': 'text/markdown; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
};

/**
 * Serves a folder below a path, as a shared web host does: `index.html` for folders, `404.html` for what is not there.
 *
 * @param below path that begins and ends with `/`
 */
export async function serveFolder(folder: string, below: string): Promise<StaticServer> {
  const server = createServer((request, response) => {
    answer(folder, below, request, response).catch((error: unknown) => {
      response.writeHead(500).end(String(error));
    });
  });
  // A connection that is idle for long would be closed just as the next request is on its way.
  server.keepAliveTimeout = 0;
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}${below}`,
    close: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

async function answer(
  folder: string,
  below: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
  const inside = normalize(path).startsWith(below) ? normalize(path).slice(below.length) : undefined;
  const file = inside === undefined ? undefined : await fileOf(join(folder, inside), path.endsWith('/'));
  if (file === 'folder') {
    response.writeHead(301, { location: `${path}/` }).end();
  } else if (file === undefined) {
    response
      .writeHead(404, { 'content-type': TYPES['.html'] })
      .end(await readFile(join(folder, '404.html')).catch(() => ''));
  } else {
    const type = TYPES[extname(file)] ?? 'application/octet-stream';
    const content = await readFile(file);
    // As hosts do: what is text goes packed, where it may.
    const packs = /^text|json|javascript|svg/.test(type) && String(request.headers['accept-encoding']).includes('gzip');
    response
      .writeHead(200, { 'content-type': type, ...(packs && { 'content-encoding': 'gzip', vary: 'accept-encoding' }) })
      .end(packs ? await gzipped(content) : content);
  }
}

/** The file to send for a path; `folder` where the path of a folder lacks its last `/`. */
async function fileOf(path: string, slash: boolean): Promise<string | undefined> {
  const found = await stat(path).catch(() => undefined);
  if (found?.isFile()) return path;
  if (!found?.isDirectory()) return undefined;
  if (!slash) return 'folder';
  const index = join(path, 'index.html');
  return (await stat(index).catch(() => undefined)) ? index : undefined;
}
