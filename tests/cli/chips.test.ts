import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { smallBook } from '../small-book.ts';
import { leaveAsFound } from './leave-as-found.ts';
import { runHere } from './run-here.ts';

leaveAsFound();
const here = process.cwd();

async function cupbook(line: readonly string[]): Promise<{ readonly code: number | null; out: string; err: string }> {
  const { code, stdout, stderr } = await runHere(line, here);
  return { code, out: stdout, err: stderr };
}

const CHALK = '---\ntitle: Chalk\nlook: { kind: white, colour: "#f2f1ee", dose: 10 drops per 100 ml }\n---\n';

test('chips names the chip that teaches most, and for what', async () => {
  const folder = await smallBook({ 'shelf/colorants/chalk.md': CHALK });
  const { code, out, err } = await cupbook(['chips', '--count', '1', '--recipes', folder]);
  expect({ code, err }).toEqual({ code: 0, err: '' });
  expect(out).toMatch(
    /^\d+ drops? of Peat(?: and \d+ drops? of Chalk)? in 100 ml, 6 mm thick: .+\n {2}for chips\/peat-/,
  );
});

test('chips --write starts the files, writes over none, and the book waits for them to be filled in', async () => {
  const folder = await smallBook({ 'shelf/colorants/chalk.md': CHALK });
  const ask = async (...more: string[]): ReturnType<typeof cupbook> =>
    cupbook(['chips', '--count', '2', ...more, '--recipes', folder]);
  const files = (): readonly string[] => readdirSync(join(folder, 'chips')).sort();
  expect((await ask('--write')).code).toBe(0);
  const first = files();
  expect(first).toHaveLength(2);
  const texts = first.map((name) => readFileSync(join(folder, 'chips', name), 'utf8'));
  expect((await ask('--write')).code).toBe(0);
  expect(files()).toHaveLength(4);
  expect(first.map((name) => readFileSync(join(folder, 'chips', name), 'utf8'))).toEqual(texts);
  const check = await cupbook(['check', '--recipes', folder]);
  expect(check.code).toBe(0);
  expect(check.out).toContain('4 files wait to be filled in');
});

test('a chip that was filled in is asked for no more, and what is left to learn is less', async () => {
  const folder = await smallBook({ 'shelf/colorants/chalk.md': CHALK });
  const ask = async (...more: string[]): Promise<readonly { gain: number; title: string; file: { path: string } }[]> =>
    JSON.parse((await cupbook(['chips', '--json', '--count', '1', ...more, '--recipes', folder])).out);
  const [before] = await ask('--write');
  const path = join(folder, before!.file.path);
  writeFileSync(
    path,
    readFileSync(path, 'utf8')
      .replace(/over-white: {2}#.*/, 'over-white: "#b99a72"')
      .replace(/over-black: {2}#.*/, 'over-black: "#4a3d2d"'),
  );
  expect((await cupbook(['check', '--strict', '--recipes', folder])).code).toBe(0);
  const [after] = await ask();
  expect(after?.title).not.toBe(before!.title);
  expect(after?.gain ?? 0).toBeLessThan(before!.gain);
});

test.each([
  [['--count', '0'], '--count takes a whole number from 1 to 12, not "0".'],
  [['--count', '13'], '--count takes a whole number from 1 to 12, not "13".'],
])('chips %s is refused', async (options, sentence) => {
  const { code, err } = await cupbook(['chips', ...options, '--recipes', await smallBook()]);
  expect({ code, err }).toEqual({ code: 1, err: expect.stringContaining(sentence) });
});
