import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { inject } from 'vitest';
import type { Book } from '../../src/book/model.ts';
import { PAGES } from '../../src/render/pages.ts';

let published: Book | undefined;

/** The book as it was published. */
export function book(): Book {
  published ??= JSON.parse(readFileSync(join(inject('site'), 'book.json'), 'utf8')) as Book;
  return published;
}

/** Every page of the built book, by kind, as paths from its root. */
export function pagesByKind(): readonly { readonly kind: string; readonly urls: readonly string[] }[] {
  return PAGES.map(({ kind, items, url }) => ({ kind, urls: items(book()).map((item) => url(item)) }));
}

/** The browser that runs for all tests. Close the connection after the file. */
export const connect = (): Promise<Browser> => chromium.connect(inject('browser'));

/** An open page that keeps a record of what must not happen. */
export interface Visit {
  readonly page: Page;
  /** Errors of scripts, of the console and of requests to this host, in their order. */
  readonly errors: readonly string[];
  /** Requests that left for another host. */
  readonly foreign: readonly string[];
  close(): Promise<void>;
}

/** Parts that stay so only until a page's script has begun, and drawn what it draws of itself. */
const NOT_BEGUN =
  '[data-find] [data-fields]:disabled, [data-plan] [data-fields]:disabled, [data-planner] form[hidden], [data-match][inert], [data-photograph][hidden], [data-plan] ~ [data-plan-result]:empty';

/** Passes the room check of the page Match, which is asked for once an evening. */
function passRoom(): void {
  if (!location.protocol.startsWith('http')) return;
  localStorage.setItem('cupbook-room', JSON.stringify({ ticked: [], at: Date.now(), ready: true }));
}

/** Opens a page of the book, or of the one that is served at `from`, in a fresh profile, with the room checked unless it is not to be, and waits until it has come to rest. */
export async function visit(
  browser: Browser,
  path: string,
  { roomIsReady = true, ...options }: BrowserContextOptions & { readonly roomIsReady?: boolean } = {},
  from: string = inject('address'),
): Promise<Visit> {
  const context = await browser.newContext(options);
  if (roomIsReady) await context.addInitScript(passRoom);
  const page = await context.newPage();
  const errors: string[] = [];
  const foreign: string[] = [];
  // What is shown in the place of any missing page cannot know how deep it is.
  const address = path === '404.html' ? inject('hosted') : from;
  page.on('pageerror', (error) => errors.push(`${path}: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') errors.push(`${path}: ${message.text()}`);
  });
  page.on('request', (request) => {
    const url = request.url();
    if (!/^(?:data|blob|about):/.test(url) && !url.startsWith(address)) foreign.push(url);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) errors.push(`${path}: ${response.status()} ${response.url()}`);
  });
  await page.goto(address + path, { waitUntil: 'load' });
  if (options.javaScriptEnabled !== false)
    await page.locator(NOT_BEGUN).first().waitFor({ state: 'detached', timeout: 60_000 });
  return { page, errors, foreign, close: () => context.close() };
}
