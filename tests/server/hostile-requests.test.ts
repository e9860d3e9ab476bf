import { readdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rawRequest } from './raw-request.ts';
import { type ServedSite, servedSite } from './served-site.ts';

const METHODS = ['POST', 'get', 'CONNECT', 'OPTIONS', 'TRACE', 'PRI', 'M-SEARCH', 'G\u0000T', ''];
const PATHS = [
  '/',
  '/index.html',
  '/book.json',
  '/colours/bog-pool',
  '/.serve/key',
  '/.serve/page.js',
  '/.cupbook',
  '/linked',
  '*',
];
const SIGNS = [
  '%',
  '%00',
  '%2f',
  '%2e%2e',
  '..',
  '../',
  '/',
  '//',
  '?',
  ';',
  ':',
  '%c0%af',
  'site-private/secret.txt',
  '404.html',
  'a'.repeat(300),
];
const SIGNS_UNREADABLE = ['%%', '..\\', '#', '\u0000', '\t', ' ', '\u00ff', '%ff', '%u002e', 'a'.repeat(5000)];
const STARTS = ['', 'http://localhost', 'http://evil.example', '//evil.example', 'file://', 'localhost:80'];
const VERSIONS = ['HTTP/1.1', 'HTTP/1.0', 'HTTP/2.0', 'HTTP/9', 'http/1.1', ''];
const FIELDS = [
  'Host: evil.example',
  'Range: bytes=0-0',
  'Range: bytes=0-0,5-,-1',
  'Range: bytes=99999999999999999999-',
  'If-None-Match: *',
  'If-Match: "x"',
  'If-Modified-Since: yesterday',
  'Accept-Encoding: br;q=x, *;q=0',
  'Accept-Encoding: gzip',
  'Content-Length: 5',
  'Transfer-Encoding: chunked',
  'Expect: 100-continue',
  'Connection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13',
  'Cookie: =;;cupbook-1=; %',
  'Origin: null',
  'Sec-Fetch-Site: cross-site',
  'X-Cupbook-Key: \u00e9',
];
const FIELDS_UNREADABLE = [
  'Host:',
  'Content-Length: -1',
  'Transfer-Encoding: chunked\r\nContent-Length: 3',
  'Expect: nothing',
  'no colon',
  ' folded: yes',
  `X: ${'y'.repeat(20_000)}`,
];
const ENDS = ['\r\n\r\n', '\r\n', '\n\n', ''];

/** One of the first, or once in ten of the others, which are seldom let through. */
const mostly = (usual: readonly string[], others: readonly string[]): fc.Arbitrary<string> =>
  fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...usual) }, { weight: 1, arbitrary: fc.constantFrom(...others) });

/** A request: of the parts of which such are made, or of any bytes. */
const REQUEST = fc.oneof(
  {
    weight: 9,
    arbitrary: fc
      .tuple(
        mostly(['GET', 'GET', 'HEAD'], METHODS),
        mostly([''], STARTS),
        fc.constantFrom(...PATHS),
        fc.array(mostly(SIGNS, SIGNS_UNREADABLE), { maxLength: 2 }),
        mostly(['HTTP/1.1'], VERSIONS),
        fc.array(mostly(FIELDS, FIELDS_UNREADABLE), { maxLength: 2 }),
        mostly(['\r\n\r\n'], ENDS),
      )
      .map(([method, start, path, signs, version, fields, end]) =>
        Buffer.from(
          `${method} ${start}${path}${signs.join('')} ${version}\r\n${['Host: localhost', 'Connection: close', ...fields].join('\r\n')}${end}`,
        ),
      ),
  },
  { weight: 1, arbitrary: fc.uint8Array({ maxLength: 200 }) },
);

/** Files, connections, … that this process holds open; not a number where the system does not show it. */
function openThings(): number {
  try {
    return readdirSync('/proc/self/fd').length;
  } catch {
    return Number.NaN;
  }
}

/** A site with what must not be seen, in a folder and behind a link. */
async function guardedSite(): Promise<ServedSite & { readonly host: { hostname: string; port: string } }> {
  const site = await servedSite();
  symlinkSync(join(site.folder, 'site-private'), join(site.mine, 'linked'));
  return { ...site, host: { hostname: '127.0.0.1', port: new URL(site.server.url).port } };
}

test('10,000 requests that nobody should send show nothing, end nothing, and leave nothing open', async () => {
  const { host, server, log } = await guardedSite();
  await (await fetch(server.url)).text();
  const before = openThings();
  const requests = fc.sample(REQUEST, 10_000);
  const statuses = new Map<number, number>();
  const work = async (): Promise<void> => {
    for (let bytes = requests.pop(); bytes; bytes = requests.pop()) {
      const { status, text } = await rawRequest(host, bytes, { ends: !Buffer.from(bytes).includes('\r\n\r\n') });
      statuses.set(status, (statuses.get(status) ?? 0) + 1);
      if (/TOPSECRET|secret mark|notes\.txt|\bat .*:\d+:\d+|node:|Error:/.test(text))
        expect.fail(`${bytes}\n\n${text}`);
    }
  };
  await Promise.all(Array.from({ length: 48 }, work));
  expect([...statuses.keys()].filter((status) => status >= 500)).toEqual([]);
  // It was not only what cannot be read that was tried.
  for (const status of [200, 302, 304, 400, 403, 404, 405, 413, 416])
    expect(statuses.get(status), `${status}`).toBeGreaterThan(0);
  expect(log).toEqual([]);
  expect((await fetch(server.url)).status).toBe(200);
  await expect.poll(() => openThings() > before + 5).toBe(false);
});
