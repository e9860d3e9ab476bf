import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { join, resolve } from 'node:path';
import { onTestFinished } from 'vitest';
import { freePort } from '../free-port.ts';
import { ROOT, TEST_CACHE } from '../run-cupbook.ts';
import { temporaryFolder } from '../small-book.ts';

/** A server for a book, as a person starts it. */
export interface Serving {
  readonly book: string;
  readonly address: string;
  /** Folder of one's own edition. */
  readonly site: string;
  readonly child: ChildProcess;
  said(): string;
}

/**
 * Starts a server on a free port; it is gone after the test.
 *
 * @param more of the command line
 * @param how what starts a program; by itself, with pipes in the place of a screen and a keyboard
 */
export async function serve(
  book: string,
  more: readonly string[] = [],
  how: (program: readonly string[]) => readonly string[] = (program) => program,
  cache: string = TEST_CACHE,
): Promise<Serving> {
  const port = await freePort();
  const site = join(temporaryFolder(), 'site');
  const line = ['serve', '--recipes', book, '--output', site, '--port', String(port), ...more];
  const [program, ...words] = how([process.execPath, resolve(ROOT, 'src/cli/cupbook.mjs'), ...line]);
  const child = spawn(program!, words, { cwd: ROOT, env: { ...process.env, XDG_CACHE_HOME: cache } });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.setEncoding('utf8');
    stream.on('data', (text) => {
      said += text;
    });
  }
  onTestFinished(async () => {
    if (child.exitCode === null && child.kill('SIGKILL')) await once(child, 'close');
  });
  return { book, address: `http://localhost:${port}/`, site, child, said: () => said };
}

/** Status and text of a page; status 0 while nothing answers. */
export async function get(url: string): Promise<{ readonly status: number; readonly text: string }> {
  try {
    const response = await fetch(url);
    return { status: response.status, text: await response.text() };
  } catch {
    return { status: 0, text: '' };
  }
}

export const statusOf = (url: string) => async (): Promise<number> => (await get(url)).status;
