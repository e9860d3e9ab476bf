import { describe, expect, test } from 'vitest';
import { answered, canKeep, type Kept, type KeptPages } from '../../src/browser/kept-pages.ts';

const BOOK = 'https://club.example/book/';

/** A cache that holds texts, in the order in which they were last put in, as browsers keep them. */
class TextCache implements Kept {
  readonly held = new Map<string, Response>();
  async match(name: RequestInfo | URL): Promise<Response | undefined> {
    return this.held.get(String(name))?.clone();
  }
  async put(name: RequestInfo | URL, response: Response): Promise<void> {
    this.held.delete(String(name));
    this.held.set(String(name), response);
  }
  async delete(name: RequestInfo | URL): Promise<boolean> {
    return this.held.delete(String(name));
  }
  async keys(): Promise<readonly Request[]> {
    return [...this.held.keys()].map((name) => new Request(name));
  }
}

/** A network that has these files, and tells what it was asked for; `undefined`: there is none. */
function device(files: Readonly<Record<string, string>> | undefined, kept = new TextCache()) {
  const asked: string[] = [];
  const work: Promise<unknown>[] = [];
  const pages: KeptPages = {
    kept,
    book: BOOK,
    after: (each) => work.push(each),
    load: async ({ url }) => {
      asked.push(url.slice(BOOK.length));
      if (files === undefined) throw new TypeError('no network');
      const text = files[url.slice(BOOK.length).replace(/\?.*/, '')];
      return new Response(text ?? 'missing', { status: text === undefined ? 404 : 200 });
    },
  };
  const open = async (path: string, mode: RequestMode = 'same-origin'): Promise<string> => {
    const request = Object.defineProperty(new Request(BOOK + path), 'mode', { value: mode });
    const answer = await answered(request, pages);
    await Promise.all(work);
    return answer.text();
  };
  return { asked, kept, open };
}

describe('answered(…)', () => {
  test('is the page as it is now, and without a network as it was last, whatever batch is asked for', async () => {
    const { kept, open } = device({ 'colours/smoke/': 'old' });
    expect(await open('colours/smoke/')).toBe('old');
    expect(await device({ 'colours/smoke/': 'new' }, kept).open('colours/smoke/?baits=48')).toBe('new');
    expect(await device(undefined, kept).open('colours/smoke/?baits=60')).toBe('new');
  });

  test('asks once for what has a hash in its name', async () => {
    const { asked, open } = device({ 'assets/book-AB12.css': 'body {}' });
    await open('assets/book-AB12.css');
    expect(await open('assets/book-AB12.css')).toBe('body {}');
    expect(asked).toEqual(['assets/book-AB12.css']);
  });

  test('keeps nothing that is missing', async () => {
    const { kept, open } = device({});
    expect(await open('colours/gone/')).toBe('missing');
    expect([...kept.held.keys()]).toEqual([]);
  });

  test('without a network and nothing kept, a page says so and leads to first aid; anything else fails', async () => {
    const { open } = device(undefined);
    expect(await open('colours/smoke/', 'navigate')).toContain(`href="${BOOK}care/"`);
    await expect(open('book.json')).rejects.toThrow('no network');
  });

  test('keeps the last 300 pages and pictures, and what they load beside them', async () => {
    const names = Array.from({ length: 305 }, (_, index) => `colours/c${index}/`);
    const { kept, open } = device(Object.fromEntries([...names, 'assets/book-AB12.css'].map((name) => [name, name])));
    await open('assets/book-AB12.css');
    for (const name of names) await open(name);
    await open(names[2]!);
    const held = [...kept.held.keys()].map((name) => name.slice(BOOK.length));
    expect(held).toHaveLength(301);
    expect(held).toContain('assets/book-AB12.css');
    expect(names.filter((name) => !held.includes(name))).toEqual([0, 1, 3, 4, 5].map((index) => `colours/c${index}/`));
  });
});

test('what is sent, of another host, a part of a file or news is not kept', () => {
  const request = (path: string, init: RequestInit = {}): Request => new Request(path, init);
  expect(canKeep(request(`${BOOK}colours/smoke/`), BOOK)).toBe(true);
  expect(canKeep(request(`${BOOK}colours/smoke/`, { method: 'POST' }), BOOK)).toBe(false);
  expect(canKeep(request('https://club.example/other/'), BOOK)).toBe(false);
  expect(canKeep(request(`${BOOK}photos/bait.jpg`, { headers: { range: 'bytes=0-9' } }), BOOK)).toBe(false);
  expect(canKeep(request(`${BOOK}events`, { headers: { accept: 'text/event-stream' } }), BOOK)).toBe(false);
});
