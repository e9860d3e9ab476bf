import { spawn } from 'node:child_process';
import { tmpdir, userInfo } from 'node:os';
import { join, resolve } from 'node:path';

/** The project's folder. A bundled benchmark lies in none, and is started in this one. */
export const ROOT: string = resolve(import.meta.dirname ?? 'tests', '..');

/** Where commands under test keep what can be made again, instead of where the user's lies. */
export const TEST_CACHE: string = join(tmpdir(), `cupbook-test-cache-${userInfo().username}`);

/** What a command came to. */
export interface Ran {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs `cupbook` as a person does, in a process of its own. */
export function runCupbook(line: readonly string[], from: string = ROOT): Promise<Ran> {
  // What npm and this run's own settings would say about the book's folder must not reach the command.
  const { CUPBOOK_RECIPES: _recipes, INIT_CWD: _from, ...env } = process.env;
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [resolve(ROOT, 'src/cli/cupbook.mjs'), ...line], {
      cwd: from,
      env: { ...env, XDG_CACHE_HOME: TEST_CACHE },
    });
    let stdout = '';
    let stderr = '';
    child.stdout.on('data', (text) => {
      stdout += text;
    });
    child.stderr.on('data', (text) => {
      stderr += text;
    });
    child.on('error', fail);
    child.on('close', (code) => done({ code, stdout, stderr }));
  });
}
