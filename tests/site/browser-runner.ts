import { readFileSync } from 'node:fs';
import { type RunnerTask, type RunnerTestFile, TestRunner } from 'vitest';

/** Runs the tests of the site. Where this machine has no browser for them, those that need one are skipped; the others check the built files all the same. */
export default class BrowserRunner extends TestRunner {
  onCollected(files: readonly RunnerTestFile[]): void {
    if (this.injectValue('browser') !== '') return;
    for (const file of files) if (needsBrowser(file)) skip(file);
  }
}

function needsBrowser({ filepath }: RunnerTestFile): boolean {
  return /\bconnect\(\)/.test(readFileSync(filepath, 'utf8'));
}

function skip(task: RunnerTask): void {
  task.mode = 'skip';
  if ('tasks' in task) for (const inner of task.tasks) skip(inner);
}
