import { afterEach, beforeEach, vi } from 'vitest';
import { TEST_CACHE } from '../run-cupbook.ts';

/** Every test of the file starts without the settings of whoever runs it, and leaves the working folder as it was. */
export function leaveAsFound(): void {
  const here = process.cwd();
  beforeEach(() => {
    vi.stubEnv('CUPBOOK_RECIPES', undefined);
    vi.stubEnv('INIT_CWD', undefined);
    vi.stubEnv('XDG_CACHE_HOME', TEST_CACHE);
  });
  afterEach(() => {
    vi.unstubAllEnvs();
    vi.restoreAllMocks();
    process.chdir(here);
  });
}
