import { vi } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { type Ran, ROOT } from '../run-cupbook.ts';

/**
 * Runs a command line in this process, and keeps what it says: for what a command does, where a process of its own would be
 * started for nothing. Files that use it call `leaveAsFound()`.
 */
export async function runHere(line: readonly string[], from: string = ROOT): Promise<Ran> {
  const ran = { stdout: '', stderr: '' };
  const log = vi.spyOn(console, 'log').mockImplementation((text: string) => {
    ran.stdout += `${text}\n`;
  });
  const error = vi.spyOn(console, 'error').mockImplementation((text: string) => {
    ran.stderr += `${text}\n`;
  });
  const here = process.cwd();
  try {
    process.chdir(from);
    return { code: await main(line, { root: ROOT }), ...ran };
  } finally {
    process.chdir(here);
    log.mockRestore();
    error.mockRestore();
  }
}
