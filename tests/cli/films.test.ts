import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { bareRows, MEASUREMENTS, MIX, row, table } from '../book/film-tables.ts';
import { BLACK } from '../optics/fit/synthetic-films.ts';
import { type Ran, runCupbook } from '../run-cupbook.ts';
import { temporaryFolder, writeFiles } from '../small-book.ts';

async function films(...options: readonly string[]): Promise<Ran & { readonly folder: string }> {
  const folder = temporaryFolder();
  await writeFiles(folder, {
    'm.csv': MEASUREMENTS,
    'f.csv': table(...bareRows('x', MIX)),
    'rust.csv': table(row('x', { rust: 1 }, 'film_on_black', BLACK)),
  });
  return { ...(await runCupbook(['films', ...options], folder)), folder };
}

test('cupbook films --out writes the predictions and says what they rest on', async () => {
  const { code, stdout, stderr, folder } = await films('--measurements', 'm.csv', '--films', 'f.csv', '--out', 'p.csv');
  expect({ code, stdout, stderr }).toEqual({
    code: 0,
    stdout: '',
    stderr: 'Predicted 2 from 3 measured films (6 views) of 2 paints.\n',
  });
  expect(readFileSync(join(folder, 'p.csv'), 'utf8').trimEnd().split('\n')).toHaveLength(3);
});

test('cupbook films prints without --out, ends with 1 on errors in the tables and with 2 where a table is not named', async () => {
  const { code, stdout } = await films('--measurements', 'm.csv', '--films', 'f.csv');
  expect({ code, head: stdout.slice(0, 23) }).toEqual({ code: 0, head: 'sample,surface,L,a,b,X,' });
  expect(await films('--measurements', 'm.csv', '--films', 'rust.csv')).toMatchObject({
    code: 1,
    stderr: expect.stringContaining('Unexpected paint `rust`'),
  });
  expect(await films('--measurements', 'm.csv')).toMatchObject({
    code: 2,
    stderr: 'The option --films is missing: give it a file.\n',
  });
});
