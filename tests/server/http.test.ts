import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { nearAddresses } from '../../src/server/near-addresses.ts';
import { rawRequest, requestText } from './raw-request.ts';
import { servedSite } from './served-site.ts';

/** Asks a served site as it is written. */
async function asking(): Promise<(target: string, headers?: Record<string, string>) => ReturnType<typeof rawRequest>> {
  const { server } = await servedSite();
  const { port } = new URL(server.url);
  return (target, headers) => rawRequest({ hostname: '127.0.0.1', port }, requestText(target, headers));
}

test.each(['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'TRACE', 'PROPFIND', 'CONNECT'])(
  'the server takes GET and HEAD, and no %s',
  async (method) => {
    const ask = await asking();
    expect(await ask(method === 'CONNECT' ? 'localhost:80' : '/', { method })).toMatchObject({
      status: 405,
      headers: { allow: 'GET, HEAD', connection: expect.stringMatching(/^close$/i) },
    });
  },
);

test('HEAD tells of a page, a file, and what is not there as GET does, without its body', async () => {
  const ask = await asking();
  for (const target of ['/', '/book.json', '/no-such-page']) {
    const [get, head] = [await ask(target), await ask(target, { method: 'HEAD' })];
    expect(head.body).toBe('');
    expect({ ...head.headers, date: '' }).toEqual({ ...get.headers, date: '' });
    expect(head.status).toBe(get.status);
    expect(Number(get.headers['content-length'])).toBe(get.body.length);
  }
});

test('a request with a body is refused, and its connection closed', async () => {
  const ask = await asking();
  for (const [name, value] of [
    ['content-length', '5'],
    ['transfer-encoding', 'chunked'],
  ] as const) {
    expect(await ask('/', { [name]: value })).toMatchObject({ status: 413, headers: { connection: 'close' } });
  }
});

test('a page, and what it loads, are told again only when they have changed', async () => {
  const ask = await asking();
  for (const target of ['/', '/book.json']) {
    const { headers } = await ask(target);
    expect(headers['cache-control']).toBe('no-cache');
    const again = await ask(target, { 'if-none-match': headers.etag! });
    expect([again.status, again.body, again.headers['cache-control']]).toEqual([304, '', 'no-cache']);
    expect((await ask(target, { 'if-none-match': '"other"' })).status).toBe(200);
  }
  const { headers } = await ask('/book.json');
  expect((await ask('/book.json', { 'if-modified-since': headers['last-modified']! })).status).toBe(304);
  expect((await ask('/book.json', { 'if-match': '"other"' })).status).toBe(412);
});

test('a file that has a hash of its content in its name may be kept for ever, and no other', async () => {
  const ask = await asking();
  expect((await ask('/assets/find-2CW3AB7Z.js')).headers['cache-control']).toBe('private, max-age=31536000, immutable');
  expect((await ask('/assets/find-2CW3AB7Y.js')).headers['cache-control']).toBe('no-cache');
  // The file of a recipe that is named after a day.
  expect(await ask('/colours/bog-20260314.md')).toMatchObject({
    status: 200,
    headers: { 'cache-control': 'no-cache' },
  });
});

test('a part of a file is sent as it is in the file', async () => {
  const { server, mine } = await servedSite();
  const whole = readFileSync(join(mine, 'book.json'), 'latin1');
  const { port } = new URL(server.url);
  const part = (range: string, more = {}) =>
    rawRequest(
      { hostname: '127.0.0.1', port },
      requestText('/book.json', { range, 'accept-encoding': 'gzip, br', ...more }),
    );
  const size = whole.length;
  expect(await part('bytes=5-1999')).toMatchObject({
    status: 206,
    body: whole.slice(5, 2000),
    headers: { 'content-range': `bytes 5-1999/${size}` },
  });
  expect(await part('bytes=-7')).toMatchObject({ status: 206, body: whole.slice(-7) });
  expect(await part(`bytes=${size}-`)).toMatchObject({
    status: 416,
    headers: { 'content-range': `bytes */${size}`, 'content-type': 'text/plain; charset=utf-8' },
  });
  // Several parts, no numbers, or a file that is another by now: the whole.
  for (const range of ['bytes=0-1,5-6', 'bytes=x-y', 'lines=1-2']) expect((await part(range)).status).toBe(200);
  expect((await part('bytes=0-1', { 'if-range': '"other"' })).status).toBe(200);
});

test('what stays on this machine is not packed', async () => {
  const ask = await asking();
  const { headers } = await ask('/book.json', { 'accept-encoding': 'gzip, br' });
  expect(headers['content-encoding']).toBeUndefined();
  expect(Number(headers['content-length'])).toBeGreaterThan(7000);
});

// What a tunnel passes on counts as the network.
test.skipIf(nearAddresses().own.length === 0)(
  'for the network, what becomes smaller is packed for whoever can unpack it',
  async () => {
    const { server } = await servedSite({ phone: { mine: false } });
    const ask = (target: string, headers: Readonly<Record<string, string>> = {}) =>
      rawRequest(
        { hostname: '127.0.0.1', port: new URL(server.url).port },
        requestText(target, { 'x-forwarded-for': '203.0.113.9', ...headers }),
      );
    const plain = await ask('/book.json');
    expect(plain.headers['content-encoding']).toBeUndefined();
    for (const [encoding, unpack] of [
      ['br', brotliDecompressSync],
      ['gzip', gunzipSync],
    ] as const) {
      const packed = await ask('/book.json', { 'accept-encoding': encoding });
      expect(packed.headers).toMatchObject({ 'content-encoding': encoding, vary: 'Cookie, Accept-Encoding' });
      const bytes = Buffer.from(unchunked(packed.body), 'latin1');
      expect(bytes.length).toBeLessThan(plain.body.length / 4);
      expect(unpack(bytes).toString('latin1')).toBe(plain.body);
    }
  },
);

/** What a body is that was sent in pieces, each with its length before it. */
function unchunked(body: string): string {
  const [, length, rest = ''] = /^([0-9a-f]+)\r\n([\s\S]*)$/.exec(body) ?? [];
  const count = Number.parseInt(length ?? '0', 16);
  return count === 0 ? '' : rest.slice(0, count) + unchunked(rest.slice(count + 2));
}

test('every answer tells the browser to take it for what it is, and for no other page', async () => {
  const ask = await asking();
  for (const target of ['/', '/book.json', '/no-such-page', '/.serve/page.js', '/%', '/colours/bog-pool']) {
    expect((await ask(target)).headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'cross-origin-resource-policy': 'same-origin',
      'referrer-policy': 'no-referrer',
      'x-frame-options': 'SAMEORIGIN',
    });
  }
  expect((await ask('/')).headers['content-security-policy']).toBe("frame-ancestors 'self'");
  // A drawing that is opened by itself could hold scripts.
  expect((await ask('/icon.svg')).headers['content-security-policy']).toContain("default-src 'none'");
});

test('a page is sent as it was written, but for the script at the beginning of its head', async () => {
  const { server, mine } = await servedSite();
  const sent = await (await fetch(server.url)).text();
  const script = /<script src="\/\.serve\/page\.js" data-version="[\w-]+"><\/script>/;
  expect(sent).toMatch(script);
  expect(sent.replace(script, '')).toBe(readFileSync(join(mine, 'index.html'), 'utf8'));
  expect((await (await fetch(`${server.url}book.json`)).text()).includes('script')).toBe(false);
});

test.each([
  '/..%2fsite-private/secret.txt',
  '/%2e%2e/site-private/secret.txt',
  '/../secret.txt',
  '/..%5csecret.txt',
  '/%2e%2e%2fsecret.txt',
  '/colours/../../secret.txt',
  '/.cupbook',
  '/%2ecupbook',
  '/./.cupbook',
  '/plain/',
  '/plain',
  '/book.json/',
  '/index.html/',
  '/colours/',
  '/assets',
])('%s shows nothing, no file beside the site, no mark, no list', async (target) => {
  const ask = await asking();
  const { status, text } = await ask(target);
  expect(status).toBe(404);
  expect(text).toContain('Nothing here in mine');
  expect(text).not.toMatch(/TOPSECRET|secret mark|notes\.txt|find-2CW/);
});

test('the name of another host is turned away, as are pages of others', async () => {
  const ask = await asking();
  for (const headers of [
    { host: 'attacker.example' },
    { host: 'attacker.example:8080', origin: 'http://attacker.example:8080' },
    { origin: 'http://attacker.example' },
    { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors' },
  ] as Record<string, string>[]) {
    for (const target of ['/', '/book.json', '/assets/find-2CW3AB7Z.js', '/.serve/changes', '/.serve/page.js']) {
      const { status, text } = await ask(target, headers);
      expect([target, headers, status]).toEqual([target, headers, 403]);
      expect(text).not.toMatch(/mine|access-control/i);
    }
  }
});
