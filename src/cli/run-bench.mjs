// Runs the benchmarks of tests/measure one after another, so that none slows another: `npm run bench [part of a name]`.
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { bundle, ROOT } from './bundle.mjs';

const wanted = process.argv[2] ?? '';
const files = (await readdir(join(ROOT, 'tests/measure'))).filter((name) => name.endsWith('.bench.ts')).sort();
const chosen = files.filter((name) => name.includes(wanted));

if (chosen.length === 0) {
  console.error(`No benchmark is called "${wanted}". There are: ${files.join(', ') || 'none'}.`);
  process.exitCode = 1;
}
for (const name of chosen) {
  console.log(`\n${name}`);
  await import(await bundle(`tests/measure/${name}`));
}
