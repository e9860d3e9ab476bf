import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nearAddresses } from '../../src/server/near-addresses.ts';
import { SMALL_BOOK, smallBook, temporaryFolder } from '../small-book.ts';
import { leaveAsFound } from './leave-as-found.ts';
import { runHere } from './run-here.ts';
import { askedFiles, drawnFiles, writtenFiles } from './served-files.ts';
import { serve } from './serving.ts';

leaveAsFound();

/** Sequences of edits, and edits in each. */
const [SEQUENCES, EDITS] = process.env.LAWS_SEED === undefined ? [2, 14] : [4, 60];

const LONGEST_MS = SEQUENCES * (60_000 + EDITS * 5000);

const NAMES = ['reed', 'sedge', 'alder', 'hollow'] as const;

const edit = fc.record({
  name: fc.constantFrom(...NAMES),
  kind: fc.constantFrom('write', 'publish', 'remove', 'away and back', 'half', 'broken', 'checkout', 'look'),
  publish: fc.constantFrom('full', 'look', 'no'),
  drops: fc.integer({ min: 1, max: 30 }),
  pause: fc.integer({ min: 0, max: 900 }),
});

/** What is done to one file, or to all. */
type Edit = ReturnType<(typeof edit)['generate']>['value'];

const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

const recipe = (name: string, drops: number, publish: string): string =>
  SMALL_BOOK['colours/bog-pool.md']!.replace('Bog Pool', `${name} ${drops}`)
    .replace('12 drops', `${drops} drops`)
    .replace('pattern', `publish: ${publish}\npattern`);

/** The same with a log and a look, which teaches the shelf. */
const looked = (name: string, drops: number, publish: string): string =>
  recipe(name, drops, publish).replace(
    / {4}add:\n.*\n/,
    `    log:\n      - { add: { peat: ${drops} drops }, pour: 10 ml, seen: { over-white: "#8${drops % 10}5a2f" } }\n`,
  );

async function make(book: string, { name, kind, publish, drops, pause: ms }: Edit): Promise<void> {
  const file = join(book, `colours/${name}.md`);
  const text = recipe(name, drops, publish);
  if (kind === 'write') writeFileSync(file, text);
  else if (kind === 'publish' && existsSync(file))
    writeFileSync(file, readFileSync(file, 'utf8').replace(/publish: \w+/, `publish: ${publish}`));
  else if (kind === 'look') writeFileSync(file, looked(name, drops, publish));
  else if (kind === 'remove') rmSync(file, { force: true });
  else if (kind === 'away and back' && existsSync(file)) {
    renameSync(file, join(book, 'kept'));
    await pause(ms);
    renameSync(join(book, 'kept'), file);
  } else if (kind === 'half' || kind === 'broken') {
    writeFileSync(file, kind === 'half' ? text.slice(0, text.length / 2) : text.replace('peat', 'paet'));
    await pause(ms);
    writeFileSync(file, text);
  } else if (kind === 'checkout') {
    // Another state of all files, put there by a program: the folder goes, and one of the same name comes.
    const others = NAMES.filter((other) => other !== name).slice(0, 2);
    renameSync(join(book, 'colours'), join(book, '.old'));
    await pause(ms / 4);
    mkdirSync(join(book, 'colours'));
    for (const other of others) writeFileSync(join(book, `colours/${other}.md`), recipe(other, drops, publish));
    rmSync(join(book, '.old'), { recursive: true });
  }
}

/** The folder for phones too, where this machine is in a network that a phone could be in. */
const network = nearAddresses().own.length > 0;

test(
  'whatever is done to the files of a book while it is served, in the end the server shows what a build of it would',
  async () => {
    for (const edits of fc.sample(fc.array(edit, { minLength: EDITS, maxLength: EDITS }), SEQUENCES)) {
      const cache = temporaryFolder();
      const { book, site, address, child, said } = await serve(
        await smallBook(),
        network ? ['--phone'] : [],
        (program) => program,
        cache,
      );
      await expect.poll(said).toContain('The book is open at');
      for (const one of edits) {
        await make(book, one);
        await pause(one.pause);
      }
      const clean = temporaryFolder();
      for (const line of [
        ['--mine', '--output', join(clean, 'mine')],
        ['--output', join(clean, 'shared')],
      ])
        expect(await runHere(['build', '--recipes', book, ...line])).toMatchObject({ code: 0 });
      await expect.poll(() => writtenFiles(site)).toEqual(writtenFiles(join(clean, 'mine')));
      const drawn = drawnFiles(join(clean, 'mine'));
      expect(await askedFiles(address, Object.keys(drawn))).toEqual(drawn);
      if (network) {
        const [ofBook] = readdirSync(join(cache, 'cupbook')).filter((name) => !['photos', 'pictures'].includes(name));
        await expect
          .poll(() => writtenFiles(join(cache, 'cupbook', ofBook!, 'shared')))
          .toEqual(writtenFiles(join(clean, 'shared')));
      }
      expect(said()).not.toMatch(/^\s+at |stopped at an error|not there/m);
      child.kill('SIGINT');
    }
  },
  LONGEST_MS,
);
