import { spawn } from 'node:child_process';
import type { Job } from './options.ts';

/** Keeps books in processes of their own, so many at once; says which could not be kept. */
export async function runJobs(jobs: readonly Job[], atOnce: number, label: string): Promise<readonly string[]> {
  const waiting = [...jobs];
  const failed: string[] = [];
  const work = async (): Promise<void> => {
    for (let job = waiting.shift(); job; job = waiting.shift()) {
      const name = `${job.condition}, seed ${job.seed}, ${job.recipes} recipes`;
      const start = performance.now();
      const code = await runOne(job, label);
      if (code !== 0) failed.push(name);
      console.log(`  ${name}: ${code === 0 ? '' : 'FAILED, '}${((performance.now() - start) / 1000).toFixed(0)} s`);
    }
  };
  await Promise.all(Array.from({ length: atOnce }, work));
  return failed;
}

function runOne({ condition, seed, recipes }: Job, label: string): Promise<number | null> {
  const line = [
    '--condition',
    condition,
    '--seed',
    String(seed),
    '--recipes',
    String(recipes),
    '--label',
    label,
    '--one',
  ];
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, ['src/cli/run-bench.mjs', 'foreign', ...line], {
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    child.on('error', fail);
    child.on('close', done);
  });
}
