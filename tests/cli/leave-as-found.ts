import { afterEach, beforeEach, vi } from 'vitest';

/** Every test of the file starts without the settings of whoever runs it, and leaves the working folder as it was. */
export function leaveAsFound(): void {
  const here = process.cwd();
  beforeEach(() => {
    vi.stubEnv('CUPBOOK_RECIPES', undefined);
    vi.stubEnv('INIT_CWD', undefined);
  });
  afterEach(() => {
    vi.unstubAllEnvs();
    vi.restoreAllMocks();
    process.chdir(here);
  });
}
