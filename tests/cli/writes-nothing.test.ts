import { lstatSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT, runCupbook } from '../run-cupbook.ts';
import { smallBook, temporaryFolder } from '../small-book.ts';

/** Every entry below a folder with its time, which changes when something is put into it or taken out. */
function timesBelow(folder: string): readonly string[] {
  const { mtimeMs, size } = lstatSync(folder);
  const inside = lstatSync(folder).isDirectory() ? readdirSync(folder) : [];
  return [`${folder} ${mtimeMs} ${size}`, ...inside.flatMap((name) => timesBelow(join(folder, name)))];
}

test.each([[['check']], [['check', '--json']], [['batch', 'bog-pool']], [['explain']]])(
  '%j writes nothing: neither to the book nor to the folder of the program',
  async (line) => {
    const book = await smallBook();
    const state = (): readonly string[] => [
      ...timesBelow(book),
      ...timesBelow(join(ROOT, 'src')),
      ...readdirSync(ROOT).sort(),
      String(lstatSync(ROOT).mtimeMs),
    ];
    const before = state();
    expect(await runCupbook([...line, '--recipes', book])).toMatchObject({ code: 0, stderr: '' });
    expect(state()).toEqual(before);
  },
);

test('a build writes only to its output and to the cache of its user', async () => {
  const book = await smallBook();
  const before = [timesBelow(book), timesBelow(join(ROOT, 'src')), readdirSync(ROOT).sort()];
  const output = join(temporaryFolder(), 'site');
  expect(await runCupbook(['build', '--recipes', book, '--output', output])).toMatchObject({ code: 0 });
  expect([timesBelow(book), timesBelow(join(ROOT, 'src')), readdirSync(ROOT).sort()]).toEqual(before);
});
