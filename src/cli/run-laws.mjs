// Checks the laws of the tests on other input than `npm test` does: `npm run laws [rounds] [first seed] [part of a path]`. Ends at the
// first that fails.
import { spawnSync } from 'node:child_process';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { ROOT } from './bundle.mjs';

const rounds = Number(process.argv[2] ?? 10);
const first = Number(process.argv[3] ?? Date.now() % 1_000_000);
const part = process.argv[4] ?? '';
if (!(Number.isInteger(rounds) && rounds > 0 && Number.isInteger(first))) {
  console.error(
    'Give a number of rounds, and if you like the first seed, and a part of the path of the tests: `npm run laws 20 4711 optics`.',
  );
  process.exit(1);
}

const tests = (await readdir(join(ROOT, 'tests'), { recursive: true }))
  .filter((name) => name.endsWith('.test.ts'))
  .map((name) => name.replaceAll('\\', '/'));
const texts = await Promise.all(tests.map((name) => readFile(join(ROOT, 'tests', name), 'utf8')));
const laws = tests
  .filter((name, at) => texts[at].includes("'fast-check'") || name.startsWith('hostile/'))
  .map((name) => `tests/${name}`)
  .sort();
const chosen = laws.filter((name) => name.includes(part));
if (chosen.length === 0) {
  console.error(`No laws are in a file with "${part}" in its path. There are:\n${laws.join('\n')}`);
  process.exit(1);
}

console.log(`${chosen.length} of ${laws.length} files with laws; all of them take minutes a round.`);
const vitest = join(ROOT, 'node_modules/vitest/vitest.mjs');
for (let round = 0; round < rounds; round += 1) {
  const seed = first + round;
  console.log(`\nround ${round + 1} of ${rounds}, LAWS_SEED=${seed}`);
  const started = performance.now();
  const run = spawnSync(
    process.execPath,
    [vitest, 'run', '--config', 'tests/vitest.config.ts', '--project', 'core', '--reporter=minimal', ...chosen],
    { cwd: ROOT, stdio: 'inherit', env: { ...process.env, LAWS_SEED: String(seed), LAWS_TIMES: '10' } },
  );
  const seconds = (performance.now() - started) / 1000;
  const left = rounds - round - 1;
  console.log(
    `round ${round + 1} took ${lasting(seconds)}${left > 0 ? `; ${left} more, about ${lasting(left * seconds)}` : ''}`,
  );
  if (run.status !== 0) {
    console.error(`\nFailed. Once more with the same input: ${['npm run laws 1', seed, part].join(' ').trim()}`);
    process.exit(1);
  }
}

function lasting(seconds) {
  return seconds < 100 ? `${seconds.toFixed(0)} s` : `${(seconds / 60).toFixed(0)} min`;
}
