import { randomFrom } from '../values/random-from.ts';

/** A path of a file with what tells it from the same file of an earlier build, which a browser may still have. */
export function stampedPath(path: string, text: string): string {
  return `${path}?${Math.floor(randomFrom(text)() * 2 ** 32).toString(36)}`;
}
