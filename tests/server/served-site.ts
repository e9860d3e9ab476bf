import { mkdirSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { type BookServer, type ServerOptions, startServer } from '../../src/server/start-server.ts';
import { freePort } from '../free-port.ts';
import { temporaryFolder, writeFiles } from '../small-book.ts';

/** What the pages of a book may load. */
const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; base-uri 'none'";

/** A page as the book has them, with a word of its own. */
export const page = (word: string): string =>
  `<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n<meta http-equiv="Content-Security-Policy" content="${POLICY}">\n<title>${word}</title>\n</head>\n<body><p>${word}</p></body>\n</html>\n`;

/** Two editions of a site in a folder with others, which must never be seen. */
export interface ServedSite {
  readonly server: BookServer;
  /** Folder that holds both editions, and a secret. */
  readonly folder: string;
  readonly mine: string;
  readonly shared: string;
  /** What the server has told. */
  readonly log: readonly string[];
}

/** Serves two small editions until the test is finished; on a port that the test names, or a free one. */
export async function servedSite(options: Partial<ServerOptions> = {}): Promise<ServedSite> {
  const folder = temporaryFolder();
  const [mine, shared] = [join(folder, 'site'), join(folder, 'shared')];
  for (const [edition, word] of [
    [mine, 'mine'],
    [shared, 'shared'],
  ] as const) {
    mkdirSync(edition);
    await writeFiles(edition, {
      'index.html': page(`Home of ${word}`),
      '404.html': page(`Nothing here in ${word}`),
      'colours/bog-pool/index.html': page(`Bog Pool of ${word}`),
      'colours/bog-pool.md': '---\ntitle: Bog Pool\n---\n',
      'colours/bog-20260314.md': '---\ntitle: Bog of March\n---\n',
      'assets/find-2CW3AB7Z.js': `window.found = ${JSON.stringify(word.repeat(1000))};\n`,
      'pagefind/wasm.en.pagefind': 'bytes',
      'icon.svg': '<svg xmlns="http://www.w3.org/2000/svg"/>',
      'book.json': `${JSON.stringify({ word, long: 'colour '.repeat(1000) })}\n`,
      '.cupbook': 'secret mark\n',
      'plain/notes.txt': 'a folder without a page\n',
    });
  }
  await writeFiles(folder, { 'site-private/secret.txt': 'TOPSECRET', 'secret.txt': 'TOPSECRET' });
  const log: string[] = [];
  const server = await startServer({
    defaultPort: await freePort(),
    editions: { mine, shared },
    log: (line) => log.push(line),
    ...options,
  });
  onTestFinished(() => server.close());
  return { server, folder, mine, shared, log };
}

/** Whether this machine has the address `::1`. */
export const HAS_IPV6: boolean = Object.values(networkInterfaces()).some((addresses) =>
  addresses?.some(({ address }) => address === '::1'),
);
