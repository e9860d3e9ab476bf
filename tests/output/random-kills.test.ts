import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
// @ts-expect-error: plain JavaScript, without types
import { bundle } from '../../src/cli/bundle.mjs';
import { prepareOutput, writeSite } from '../../src/output/write-site.ts';
import { temporaryFolder, writeFiles } from '../small-book.ts';
import { numberedSite } from './numbered-site.ts';
import { filesOf, outputAt, passingBelow, type Texts, textsBelow } from './sites.ts';

/** Some dozens in `npm test`, and those of the long run besides. */
const KILLS = process.env.LAWS_SEED === undefined ? 36 : 200;

test.each<{ readonly what: string; readonly served: boolean; readonly theirs: Texts }>([
  { what: 'in a folder of its own', served: false, theirs: {} },
  { what: 'that is served', served: true, theirs: {} },
  { what: "among others' files", served: false, theirs: { '.git/HEAD': 'ref', 'pages/3/mine.txt': 'theirs' } },
])('a process that writes a site $what and is killed at any moment leaves a whole one', async ({ served, theirs }) => {
  const parent = temporaryFolder();
  const folder = join(parent, 'site');
  await writeSite(filesOf(numberedSite(1)), outputAt(folder));
  await writeFiles(folder, theirs);
  const code = (await bundle('tests/output/endless-writer.ts')) as string;
  const pauses = fc.sample(fc.integer({ min: 0, max: 120 }), Math.ceil(KILLS / 3));
  let [held, last] = [1, 1];
  for (const pause of pauses) {
    const child = spawn(process.execPath, ['--input-type=module', '-e', `await import(${JSON.stringify(code)})`], {
      env: { ...process.env, FOLDER: folder, SERVED: served ? 'yes' : 'no', FIRST: String(last + 1) },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const ended = once(child, 'close');
    let said = '';
    child.stdout.on('data', (text) => {
      said += text;
    });
    await Promise.race([once(child.stdout, 'data'), ended]);
    await new Promise((done) => setTimeout(done, pause));
    child.kill('SIGKILL');
    expect((await ended)[1]).toBe('SIGKILL');

    await prepareOutput(outputAt(folder, { served }));
    const begun = Number(said.trim().split('\n').at(-1));
    const left = textsBelow(folder);
    const site = Object.fromEntries(Object.entries(left).filter(([path]) => !(path in theirs)));
    const number = Number(site['index.html']!.slice('site '.length));
    expect([begun === last + 1 ? held : begun - 1, begun]).toContain(number);
    expect(site).toEqual(numberedSite(number));
    expect(left).toMatchObject(theirs);
    expect(passingBelow(parent)).toEqual([]);
    [held, last] = [number, begun];
  }
  expect(last).toBeGreaterThan(KILLS / 3);
});
