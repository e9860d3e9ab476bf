import { expect, test } from 'vitest';
import { showProgress } from '../../src/eleventy/progress.ts';

function stream(isTTY: boolean): { readonly stream: NodeJS.WriteStream; readonly written: string[] } {
  const written: string[] = [];
  return { stream: { isTTY, write: (text: string) => written.push(text) } as unknown as NodeJS.WriteStream, written };
}

async function countTo(total: number, isTTY: boolean): Promise<readonly string[]> {
  const { stream: out, written } = stream(isTTY);
  const progress = showProgress(total, 'pages', out);
  for (let step = 1; step < total; step += 1) progress.step();
  await new Promise((resolve) => setTimeout(resolve, 150));
  progress.step();
  progress.end();
  return written;
}

test('showProgress(total) counts on a terminal, and clears its line', async () => {
  expect(await countTo(3, true)).toEqual(['\r3 of 3 pages', '\r\u001b[K']);
});

test('showProgress(total) writes nothing into a file', async () => {
  expect(await countTo(3, false)).toEqual([]);
});
