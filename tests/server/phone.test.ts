import { describe, expect, test } from 'vitest';
import { nearAddresses } from '../../src/server/near-addresses.ts';
import { rawRequest, requestText } from './raw-request.ts';
import { servedSite } from './served-site.ts';

const [ADDRESS] = nearAddresses().own;

/** Serves to the network, and asks from it: from this machine by the address that others use. */
async function phoned(mine: boolean) {
  const { server, log } = await servedSite({ phone: { mine } });
  const { port, hostname, host } = new URL(server.phoneUrl!);
  return {
    server,
    log,
    ask: (target: string, headers: Readonly<Record<string, string>> = {}) =>
      rawRequest({ hostname: hostname.replace(/^\[|\]$/g, ''), port }, requestText(target, { host, ...headers })),
  };
}

test('without a phone, nothing listens for the network', async () => {
  const { server } = await servedSite();
  expect(server).not.toHaveProperty('phoneUrl');
  expect(server).not.toHaveProperty('mineUrl');
  if (ADDRESS === undefined) return;
  expect(await rawRequest({ hostname: ADDRESS, port: new URL(server.url).port }, requestText('/'))).toMatchObject({
    status: 0,
  });
});

// Each asks by an address that another machine would use.
describe.skipIf(ADDRESS === undefined)('for a phone (needs a network card with an address)', () => {
  test('the network gets the shared edition, and this machine the maker’s', async () => {
    const { server, ask } = await phoned(false);
    expect(server).not.toHaveProperty('mineUrl');
    expect(await ask('/')).toMatchObject({ status: 200, body: expect.stringContaining('Home of shared') });
    expect((await ask('/book.json')).body).toContain('"word":"shared"');
    expect((await ask('/no-such-page')).text).toContain('Nothing here in shared');
    expect(await (await fetch(server.url)).text()).toContain('Home of mine');
    // As a tunnel to this machine would ask.
    const passedOn = await fetch(server.url, { headers: { 'x-forwarded-for': '203.0.113.9' } });
    expect(await passedOn.text()).toContain('Home of shared');
  });

  test('without --mine no key opens anything', async () => {
    const { ask } = await phoned(false);
    expect(await ask('/.serve/key', { 'x-cupbook-key': '' })).toMatchObject({ status: 404 });
    expect(await ask('/', { cookie: 'cupbook-8080=' })).toMatchObject({ body: expect.stringContaining('shared') });
  });

  test('the key in the address of the second code opens the maker’s edition, once it has become a cookie', async () => {
    const { server, ask, log } = await phoned(true);
    const url = new URL(server.mineUrl!);
    const [, key] = /^#key=([\w-]{22})$/.exec(url.hash)!;
    expect(`${url.origin}${url.pathname}`).toBe(server.phoneUrl);

    const opened = await ask('/.serve/key', { 'x-cupbook-key': key! });
    expect(opened).toMatchObject({ status: 200, headers: { 'cache-control': 'no-store' } });
    const cookie = opened.headers['set-cookie']!.split(';')[0]!;
    const mine = await ask('/', { cookie });
    expect(mine.body).toContain('Home of mine');
    // It does not stay on the phone, nor is it taken for what somebody without the cookie gets.
    expect(mine.headers).toMatchObject({ 'cache-control': 'no-store', vary: 'Cookie, Accept-Encoding' });
    expect((await ask('/book.json', { cookie })).headers['cache-control']).toBe('no-store');
    expect((await ask('/')).headers).toMatchObject({ 'cache-control': 'no-cache', vary: 'Cookie, Accept-Encoding' });
    expect((await ask('/')).body).toContain('Home of shared');
    expect(log.join()).not.toContain(key);
  });

  test('another page cannot use the cookie or the key', async () => {
    const { server, ask } = await phoned(true);
    const key = new URL(server.mineUrl!).hash.slice('#key='.length);
    const cookie = (await ask('/.serve/key', { 'x-cupbook-key': key })).headers['set-cookie']!.split(';')[0]!;
    for (const headers of [
      { origin: 'http://evil.example' },
      { origin: `http://${ADDRESS}:1` },
      { origin: 'null' },
      { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'cors' },
      { host: 'evil.example' },
    ] as Record<string, string>[]) {
      expect((await ask('/', { cookie, ...headers })).status).toBe(403);
      const exchanged = await ask('/.serve/key', { 'x-cupbook-key': key, ...headers });
      expect(exchanged.status).toBe(403);
      expect(exchanged.headers).not.toHaveProperty('set-cookie');
    }
    // A browser asks before it sends such a header to another origin, and is not answered.
    const preflight = await ask('/.serve/key', {
      method: 'OPTIONS',
      'access-control-request-headers': 'x-cupbook-key',
    });
    expect(preflight.status).toBe(405);
    expect(preflight.text).not.toMatch(/access-control/i);
    // Only as a header of a GET: not in an address, where it would be written down on the way.
    for (const [target, more] of [
      [`/.serve/key?key=${key}`, {}],
      [`/.serve/key/${key}`, {}],
      [`/?key=${key}`, {}],
      ['/.serve/key', { method: 'HEAD', 'x-cupbook-key': key }],
    ] as const) {
      expect((await ask(target, more)).headers).not.toHaveProperty('set-cookie');
    }
  });

  test('wrong keys are refused, and after ten of them the right one too', async () => {
    const { server, ask } = await phoned(true);
    const key = new URL(server.mineUrl!).hash.slice('#key='.length);
    const statuses: number[] = [];
    for (let tries = 0; tries < 12; tries++) {
      const answer = await ask('/.serve/key', {
        'x-cupbook-key': key.replace(/^./, (first) => (first === 'A' ? 'B' : 'A')),
      });
      statuses.push(answer.status);
      expect(answer.headers).not.toHaveProperty('set-cookie');
    }
    expect(statuses).toEqual([...Array(10).fill(403), 429, 429]);
    expect((await ask('/.serve/key', { 'x-cupbook-key': key })).status).toBe(429);
  });
});
