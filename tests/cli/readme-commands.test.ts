import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { projectFile } from '../book/sample.ts';
import { ROOT } from '../run-cupbook.ts';

// The demo book is compiled once for all commands: that takes longer than anything they do with it.
vi.mock('../../src/eleventy/load-book.ts', async (original) => {
  const { loadBook, ...rest } = await original<typeof import('../../src/eleventy/load-book.ts')>();
  const known = new Map<string, ReturnType<typeof loadBook>>();
  return {
    ...rest,
    loadBook: (folder: string) => {
      const result = known.get(folder) ?? loadBook(folder);
      known.set(folder, result);
      return result;
    },
  };
});

const here = process.cwd();
beforeEach(() => {
  vi.stubEnv('CUPBOOK_RECIPES', undefined);
  vi.stubEnv('INIT_CWD', undefined);
});
afterEach(() => {
  vi.unstubAllEnvs();
  vi.restoreAllMocks();
  process.chdir(here);
});

/** What the README shows of a command: its line, and the passages of its output between the signs for what is left out. */
const SHOWN = [...projectFile('README.md').matchAll(/^```console\n\$ npm run (.+)\n([\s\S]*?)```/gm)].map(
  ([, line, output]) => ({ line: line!, passages: output!.split(/^…\n/m).filter((passage) => passage !== '') }),
);

describe('what the README shows of the demo book', () => {
  test('is something of each command of matching', () => {
    expect(SHOWN.map(({ line }) => line.split(' ')[0])).toEqual(
      expect.arrayContaining(['match', 'next', 'thin', 'substitute']),
    );
  });

  test.each(SHOWN)('npm run $line prints it', async ({ line, passages }) => {
    let out = '';
    vi.spyOn(console, 'log').mockImplementation((text: string) => {
      out += `${text}\n`;
    });
    expect(
      await main(
        line.split(' ').filter((word) => word !== '--'),
        { root: ROOT },
      ),
    ).toBe(0);
    let from = 0;
    for (const passage of passages) {
      const at = out.indexOf(passage, from);
      expect(at, `${passage}\nis not in this order in\n${out}`).toBeGreaterThanOrEqual(0);
      from = at + passage.length;
    }
  });
});
