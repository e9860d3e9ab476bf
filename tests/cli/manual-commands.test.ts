import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { projectFile } from '../book/sample.ts';
import { ROOT } from '../run-cupbook.ts';
import { leaveAsFound } from './leave-as-found.ts';

// The demo book is compiled once for all commands: that takes longer than anything they do with it. The commands are imported afresh for
// that, and no file after this one gets them so.
vi.resetModules();
vi.doMock('../../src/shell/load-book.ts', async (original) => {
  const { loadBook, ...rest } = await original<typeof import('../../src/shell/load-book.ts')>();
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

const { main } = await import('../../src/cli/main.ts');
vi.doUnmock('../../src/shell/load-book.ts');
afterAll(() => {
  vi.resetModules();
});

leaveAsFound();

/** What the manual shows of a command: its line, and the passages of its output between the signs for what is left out. */
const SHOWN = readdirSync(join(ROOT, 'site/manual'))
  .filter((name) => name.endsWith('.md'))
  .flatMap((name) => [
    ...projectFile(`site/manual/${name}`).matchAll(/^```console\n\$ npx cupbook (.+)\n([\s\S]*?)```/gm),
  ])
  .map(([, line, output]) => ({ line: line!, passages: output!.split(/^…\n/m).filter((passage) => passage !== '') }));

describe('the table of commands in the manual', () => {
  test('has a row for every command, with all its options', async () => {
    let help = '';
    vi.spyOn(console, 'log').mockImplementation((text: string) => {
      help += `${text}\n`;
    });
    await main(['help'], { root: ROOT });
    const names = [...help.matchAll(/^ {2}cupbook ([\w-]+)/gm)].map(([, name]) => name!);
    expect(names.length).toBeGreaterThan(10);
    for (const name of names) {
      const row = new RegExp(`^\\| .*\`${name}\\b.*$`, 'm').exec(projectFile('site/manual/commands.md'))?.[0];
      expect(row, name).toBeDefined();
      if (name === 'help' || name === 'version') continue;
      help = '';
      await main(['help', name], { root: ROOT });
      const options = [...help.matchAll(/^ {2}(--[\w-]+)/gm)].map(([, option]) => option!);
      for (const option of options.filter((each) => !['--recipes', '--help', '--trace'].includes(each)))
        expect(row).toContain(`\`${option}`);
    }
  });
});

describe('what the manual shows of the demo book', () => {
  test('is something of each command of matching', () => {
    expect(SHOWN.map(({ line }) => line.split(' ')[0])).toEqual(
      expect.arrayContaining(['match', 'next', 'let-down', 'substitute']),
    );
  });

  test.each(SHOWN)('npx cupbook $line prints it', async ({ line, passages }) => {
    let out = '';
    vi.spyOn(console, 'log').mockImplementation((text: string) => {
      out += `${text}\n`;
    });
    expect(await main(line.split(' '), { root: ROOT })).toBe(0);
    let from = 0;
    for (const passage of passages) {
      const at = out.indexOf(passage, from);
      expect(at, `${passage}\nis not in this order in\n${out}`).toBeGreaterThanOrEqual(0);
      from = at + passage.length;
    }
  });
});
