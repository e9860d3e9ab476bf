import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

/** Who holds the key to the maker's edition. */
export interface MakersKey {
  /** 128 random bits in base64url, for the code on the screen; new at each start and written nowhere. */
  readonly key: string;
  /**
   * Changes a key for a cookie.
   *
   * @param from address of who tries
   * @returns the value for `Set-Cookie`; 403 for a wrong key, 429 for the next one after too many
   */
  admit(key: string, from: string): string | 403 | 429;
  /** Whether a `Cookie` field holds the cookie that was given. */
  holds(cookies: string | undefined): boolean;
}

const KEY_BYTES = 16;

/** Wrong keys that one address may send. A person scans a code, and never guesses. */
const MOST_WRONG = 10;

/** Addresses that are remembered for having sent a wrong key. */
const MOST_REMEMBERED = 1000;

/**
 * Makes a key.
 *
 * The cookie holds another secret than the key, so that what is sent with every request is not what is on the screen.
 *
 * @param port part of the cookie's name: a browser gives the cookies of one host to all of its ports
 * @param path that the cookie is for
 */
export function makersKey(port: number, path: string): MakersKey {
  const key = randomBytes(KEY_BYTES).toString('base64url');
  const secret = randomBytes(KEY_BYTES).toString('base64url');
  const name = `cupbook-${port}`;
  const wrong = new Map<string, number>();
  return {
    key,
    admit(tried, from) {
      const before = wrong.get(from) ?? 0;
      if (before >= MOST_WRONG) return 429;
      if (isSame(tried, key)) return `${name}=${secret}; Path=${path}; HttpOnly; SameSite=Strict`;
      wrong.delete(from);
      wrong.set(from, before + 1);
      for (const oldest of wrong.keys()) {
        if (wrong.size <= MOST_REMEMBERED) break;
        wrong.delete(oldest);
      }
      return 403;
    },
    holds(cookies) {
      const sent = cookies?.split(/; */).find((pair) => pair.startsWith(`${name}=`));
      return isSame(sent?.slice(name.length + 1) ?? '', secret);
    },
  };
}

/** Whether two texts are the same, in a time that does not tell how much of them is. */
function isSame(one: string, other: string): boolean {
  const [a, b] = [one, other].map((text) => createHash('sha256').update(text).digest());
  return a !== undefined && b !== undefined && timingSafeEqual(a, b);
}
