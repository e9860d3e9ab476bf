import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type Browser, chromium as launcher } from 'playwright-core';
import { afterAll, describe, expect, onTestFinished, test } from 'vitest';
import { nearAddresses } from '../../src/server/near-addresses.ts';
import { chromium, whyNoChromium } from '../site/chromium.ts';
import { recordingProxy } from './recording-proxy.ts';
import { page as bookPage, servedSite } from './served-site.ts';

const ADDRESS = nearAddresses().own.find((address) => !address.includes(':'));

const why = whyNoChromium();
if (why !== undefined) console.warn(`The tests of the server in a browser are skipped: ${why}`);
const browser: Browser | undefined = why === undefined ? await launcher.launch(await chromium()) : undefined;
afterAll(() => browser?.close());

/** Opens a page in a profile of its own, which is gone after the test. */
async function opened(url: string) {
  const context = await browser!.newContext();
  onTestFinished(() => context.close());
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(url);
  return { context, page, errors };
}

/** Serves a page of somebody else's, on all addresses of this machine, until the test is finished; returns its port. */
async function otherSite(body: string): Promise<number> {
  const other = createServer((_request, response) => {
    response.writeHead(200, { 'content-type': 'text/html' }).end(`<!doctype html><body>${body}</body>`);
  });
  other.listen(0, '0.0.0.0');
  await once(other, 'listening');
  onTestFinished(() => {
    other.closeAllConnections();
    other.close();
  });
  return (other.address() as AddressInfo).port;
}

describe.skipIf(browser === undefined)('in a browser', () => {
  test('an open page is loaded anew when the book has changed, and only then', async () => {
    const { server } = await servedSite();
    const { page, errors } = await opened(server.url);
    await page.evaluate(() => {
      document.body.append('still here');
    });
    await page.waitForTimeout(300);
    expect(await page.textContent('body')).toContain('still here');
    await server.reload();
    await expect.poll(() => page.textContent('body')).not.toContain('still here');
    await server.reload();
    await page.waitForTimeout(300);
    expect(await page.textContent('body')).toContain('Home of mine');
    expect(errors).toEqual([]);
  });

  test('the page of what is not there is loaded anew when it is', async () => {
    const { server, mine } = await servedSite();
    const { page } = await opened(`${server.url}reed.html`);
    expect(await page.textContent('body')).toContain('Nothing here in mine');
    writeFileSync(`${mine}/reed.html`, bookPage('Reed Bed'));
    await server.reload();
    await expect.poll(() => page.textContent('body')).toContain('Reed Bed');
  });

  test('a tab follows the book only while it is seen, so that the seventh tab does not wait for a connection', async () => {
    const { server } = await servedSite();
    const { context, page } = await opened(server.url);
    // This browser takes every tab for seen.
    await context.addInitScript(() => {
      Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => window.name || 'hidden' });
    });
    for (let tab = 0; tab < 10; tab++) {
      await (await context.newPage()).goto(server.url);
    }
    await page.reload();
    await page.evaluate(() => document.body.append('still here'));
    await server.reload();
    await page.waitForTimeout(300);
    expect(await page.textContent('body')).toContain('still here');
    await page.evaluate(() => {
      window.name = 'visible';
      document.dispatchEvent(new Event('visibilitychange'));
    });
    await expect.poll(() => page.textContent('body')).not.toContain('still here');
  });
});

describe.skipIf(browser === undefined || ADDRESS === undefined)(
  'on a phone (needs a browser, and a network card with an address)',
  () => {
    /** A served book of which all that goes over the wire is recorded. */
    async function wired() {
      const site = await servedSite({ phone: { mine: true } });
      const wire = await recordingProxy(ADDRESS!, Number(new URL(site.server.url).port));
      const { hash } = new URL(site.server.mineUrl!);
      const at = `http://${ADDRESS}:${wire.port}/`;
      return { ...site, wire, at, key: hash.slice('#key='.length), mineUrl: `${at}${hash}` };
    }

    test('whoever scans the second code sees the maker’s edition; the key goes over the wire once, and stays nowhere', async () => {
      const { wire, at, key, mineUrl, log } = await wired();
      const { page, context, errors } = await opened(mineUrl);
      await expect.poll(() => page.textContent('body')).toContain('Home of mine');
      expect(page.url()).toBe(at);
      await page.goto(`${at}colours/bog-pool/`);
      expect(await page.textContent('body')).toContain('Bog Pool of mine');
      await page.goto(`${at}no-such-page`);
      expect(await page.textContent('body')).toContain('Nothing here in mine');
      await page.goBack();
      await page.goBack();
      expect(page.url()).toBe(at);

      const sent = wire.sent();
      expect(sent.split(key)).toHaveLength(2);
      expect(sent).toMatch(
        new RegExp(`^GET /\\.serve/key HTTP/1\\.1\\r\\n(?:.*\\r\\n)*x-cupbook-key: ${key}\\r\\n`, 'im'),
      );
      expect(sent).not.toMatch(/^referer:.*key/im);
      expect(wire.received()).not.toContain(key);
      expect(log.join()).not.toContain(key);
      const kept = await page.evaluate(() => [
        document.cookie,
        location.href,
        document.referrer,
        JSON.stringify({ ...localStorage }),
        JSON.stringify({ ...sessionStorage }),
        JSON.stringify(history.state),
        document.documentElement.outerHTML,
      ]);
      expect(kept[0]).toBe('');
      expect(kept.join()).not.toContain(key);
      const cookies = await context.cookies();
      expect(cookies).toMatchObject([{ httpOnly: true, sameSite: 'Strict', expires: -1, path: '/' }]);
      expect(cookies[0]!.value).not.toBe(key);
      expect(errors.filter((error) => !error.includes('404'))).toEqual([]);
    });

    test('a phone that has the book open already sees the maker’s edition once it scans the code', async () => {
      const { at, mineUrl } = await wired();
      const { page } = await opened(at);
      expect(await page.textContent('body')).toContain('Home of shared');
      await page.evaluate((url) => location.assign(url), mineUrl);
      await expect.poll(() => page.textContent('body')).toContain('Home of mine');
      expect(page.url()).toBe(at);
    });

    test('a phone that was led to the code by a page of another site keeps the maker’s edition', async () => {
      const { at, mineUrl } = await wired();
      const port = await otherSite(`<a href="${mineUrl}">open</a>`);
      const { page } = await opened(`http://127.0.0.1:${port}/`);
      await page.click('a');
      await expect.poll(() => page.textContent('body')).toContain('Home of mine');
      await page.reload();
      expect(await page.textContent('body')).toContain('Home of mine');
      expect(page.url()).toBe(at);
    });

    test('without the code a phone sees the shared edition', async () => {
      const { at } = await wired();
      const { page, context } = await opened(at);
      expect(await page.textContent('body')).toContain('Home of shared');
      expect(await context.cookies()).toEqual([]);
    });

    test.each([
      ['an old one', 'A'.repeat(22), 'This code is from an earlier start. Scan the one that is on the screen now.'],
      ['half a code', 'A'.repeat(9), 'The code was not read whole. Scan it again.'],
    ])('a phone that scanned %s is told so, and sees the shared edition', async (_what, key, told) => {
      const { at } = await wired();
      const { page } = await opened(`${at}#key=${key}`);
      await expect.poll(() => page.getByRole('alert').textContent()).toContain(told);
      expect(await page.textContent('body')).toContain('Home of shared');
      expect(page.url()).toBe(at);
    });

    test('no page of another site, or of another port, reads the maker’s edition by the cookie of its reader', async () => {
      const { wire, at, mineUrl } = await wired();
      const { page, context } = await opened(mineUrl);
      await expect.poll(() => page.textContent('body')).toContain('Home of mine');
      const { value } = (await context.cookies())[0]!;
      // Its own stream of changes, which brings the cookie, may still be about to begin.
      await page.close();

      const port = await otherSite('');
      for (const host of ['127.0.0.1', ADDRESS]) {
        const before = wire.sent().length;
        const other = await context.newPage();
        await other.goto(`http://${host}:${port}/`);
        const got = await other.evaluate(async (book) => {
          const element = (name: string, source: string): Promise<string> =>
            new Promise((done) => {
              const made = document.createElement(name) as HTMLImageElement;
              made.onload = () => done(`${name} loaded`);
              made.onerror = () => done(`${name} failed`);
              made.src = book + source;
              document.body.append(made);
            });
          const text = async (init: RequestInit): Promise<string> =>
            fetch(book, init).then(
              (answer) => answer.text(),
              () => 'fetch failed',
            );
          const events = new Promise((done) => {
            const source = new EventSource(`${book}.serve/changes`, { withCredentials: true });
            source.onmessage = () => done('events came');
            source.onerror = () => done('events failed');
          });
          const frame = document.createElement('iframe');
          frame.src = book;
          const framed = new Promise<string>((done) => {
            frame.onload = () => {
              try {
                done(`frame read: ${frame.contentDocument?.body.textContent}`);
              } catch {
                done('frame failed');
              }
            };
          });
          document.body.append(frame);
          return Promise.all([
            text({ credentials: 'include' }),
            text({ credentials: 'include', mode: 'no-cors' }),
            element('script', 'assets/find-2CW3AB7Z.js').then(
              (outcome) => `${outcome} ${String((window as { found?: string }).found)}`,
            ),
            element('img', 'icon.svg'),
            events,
            framed,
          ]);
        }, at);
        expect(got.join('\n')).not.toMatch(/mine|shared|loaded|came/);
        // The browser does not even send the cookie from another site; a port of the same host counts as the same one.
        if (host === '127.0.0.1') expect(wire.sent().slice(before)).not.toContain(value);
        await other.close();
      }
    });
  },
);
