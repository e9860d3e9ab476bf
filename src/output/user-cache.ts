import { homedir, tmpdir, userInfo } from 'node:os';
import { isAbsolute, join } from 'node:path';

/** The world that a cache folder depends on. */
export interface UserSurroundings {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}

/**
 * Folder for what can be made again, of the user who runs this: `XDG_CACHE_HOME` where it is set, else what the system
 * is used to.
 *
 * Source: XDG Base Directory Specification 0.8, and the guidelines of Apple and Microsoft (from memory).
 */
export function userCache({ platform, env, home }: UserSurroundings = here()): string {
  const named = env.XDG_CACHE_HOME;
  // The specification says that a relative path must be taken for none.
  if (named !== undefined && isAbsolute(named)) return join(named, 'cupbook');
  if (platform === 'darwin') return join(home, 'Library/Caches/cupbook');
  if (platform === 'win32') return join(env.LOCALAPPDATA || join(home, 'AppData/Local'), 'cupbook');
  return join(home, '.cache/cupbook');
}

function here(): UserSurroundings {
  return { platform: process.platform, env: process.env, home: homedir() || join(tmpdir(), userInfo().username) };
}
