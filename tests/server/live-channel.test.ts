import { once } from 'node:events';
import { IncomingMessage, ServerResponse } from 'node:http';
import { connect, Socket } from 'node:net';
import { expect, onTestFinished, test, vi } from 'vitest';
import { liveChannel } from '../../src/server/live-channel.ts';
import { requestText } from './raw-request.ts';
import { servedSite } from './served-site.ts';

/** Follows the changes of a served book; what was said, without its frame. */
function following(url: string): { readonly said: string[]; readonly status: Promise<number>; end(): void } {
  const said: string[] = [];
  const stop = new AbortController();
  onTestFinished(() => stop.abort());
  const status = fetch(`${url}.serve/changes`, { signal: stop.signal }).then((response) => {
    const read = async (): Promise<void> => {
      for await (const part of response.body!.pipeThrough(new TextDecoderStream())) {
        said.push(...[...part.matchAll(/^data: (.*)$/gm)].map(([, version]) => version!));
      }
    };
    read().catch(() => undefined);
    return response.status;
  });
  return { said, status, end: () => stop.abort() };
}

test('the channel of changes tells the version of the book at once, and each one after', async () => {
  const { server } = await servedSite();
  const page = await (await fetch(server.url)).text();
  const version = /data-version="([\w-]+)"/.exec(page)?.[1];
  const one = following(server.url);
  await expect.poll(() => one.said).toEqual([version]);
  void server.reload();
  await expect.poll(() => one.said).toHaveLength(2);
  expect(await (await fetch(server.url)).text()).toContain(`data-version="${one.said[1]}"`);
  const other = following(server.url);
  await expect.poll(() => other.said).toEqual([one.said[1]]);
  expect((await servedVersion()) === version).toBe(false);
});

/** Of a book that is served anew: a page that was open meanwhile must be loaded again. */
async function servedVersion(): Promise<string | undefined> {
  const { server } = await servedSite();
  return /data-version="([\w-]+)"/.exec(await (await fetch(server.url)).text())?.[1];
}

test('the channel of changes is kept open for so many pages, and for others when those are gone', async () => {
  const { server } = await servedSite();
  const pages = Array.from({ length: 70 }, () => following(server.url));
  const statuses = await Promise.all(pages.map(({ status }) => status));
  expect(statuses.filter((status) => status === 200)).toHaveLength(64);
  expect(statuses.filter((status) => status === 503)).toHaveLength(6);
  for (const { end } of pages) end();
  await expect.poll(() => following(server.url).status).toBe(200);
});

test('the channel of changes lets go of whoever does not listen, and goes on', async () => {
  const { server } = await servedSite();
  const deaf = connect(Number(new URL(server.url).port), '127.0.0.1');
  deaf.on('error', () => deaf.destroy());
  deaf.write(requestText('/.serve/changes'));
  await once(deaf, 'readable');
  const listening = following(server.url);
  await expect.poll(() => listening.said.length).toBe(1);
  deaf.resetAndDestroy();
  for (let change = 0; change < 100; change++) void server.reload();
  await expect.poll(() => listening.said.length).toBe(101);
});

test('a change is over when as many pages follow anew as were told, and at last without those that are gone', async () => {
  vi.useFakeTimers();
  const live = liveChannel();
  onTestFinished(() => {
    live.close();
    vi.useRealTimers();
  });
  const follow = () => live.follow(new ServerResponse(new IncomingMessage(new Socket())), 'here');
  const over = vi.fn();
  const change = async (): Promise<void> => {
    live.reload().then(over, over);
    await vi.advanceTimersByTimeAsync(0);
  };
  await change();
  expect(over).toHaveBeenCalledTimes(1);
  follow();
  follow();
  await change();
  follow();
  await vi.advanceTimersByTimeAsync(0);
  expect(over).toHaveBeenCalledTimes(1);
  follow();
  await vi.advanceTimersByTimeAsync(0);
  expect(over).toHaveBeenCalledTimes(2);
  await change();
  expect(over).toHaveBeenCalledTimes(2);
  await vi.advanceTimersByTimeAsync(1000);
  expect(over).toHaveBeenCalledTimes(3);
});

test('close ends every channel', async () => {
  const { server } = await servedSite();
  const { status } = following(server.url);
  expect(await status).toBe(200);
  await server.close();
  await expect(fetch(server.url)).rejects.toThrow();
});
