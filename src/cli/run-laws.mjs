// Checks the laws of the tests on other input than `npm test` does: `npm run laws [rounds] [first seed]`. Ends at the first that fails.
import { spawnSync } from 'node:child_process';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { ROOT } from './bundle.mjs';

const [rounds, first] = [process.argv[2] ?? '10', process.argv[3] ?? String(Date.now() % 1_000_000)].map(Number);
if (!(Number.isInteger(rounds) && rounds > 0 && Number.isInteger(first))) {
  console.error('Give a number of rounds, and if you like the first seed: `npm run laws 20 4711`.');
  process.exit(1);
}

const tests = (await readdir(join(ROOT, 'tests'), { recursive: true })).filter((name) => name.endsWith('.test.ts'));
const texts = await Promise.all(tests.map((name) => readFile(join(ROOT, 'tests', name), 'utf8')));
const laws = tests
  .filter((name, at) => texts[at].includes("'fast-check'") || /^hostile[/\\]/.test(name))
  .map((name) => `tests/${name.replaceAll('\\', '/')}`);

const vitest = join(ROOT, 'node_modules/vitest/vitest.mjs');
for (let round = 0; round < rounds; round += 1) {
  const seed = first + round;
  console.log(`\nround ${round + 1} of ${rounds}, LAWS_SEED=${seed}`);
  const run = spawnSync(
    process.execPath,
    [vitest, 'run', '--config', 'tests/vitest.config.ts', '--project', 'core', '--reporter=minimal', ...laws],
    { cwd: ROOT, stdio: 'inherit', env: { ...process.env, LAWS_SEED: String(seed), LAWS_TIMES: '10' } },
  );
  if (run.status !== 0) {
    console.error(`\nFailed. Once more with the same input: npm run laws 1 ${seed}`);
    process.exit(1);
  }
}
