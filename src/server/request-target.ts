/** What a request asks for, from the path that the site is served below. */
export interface RequestTarget {
  /** Names of the path, decoded; none is empty. */
  readonly names: readonly string[];
  /** Whether the path ends in `/`, so that a folder is meant. */
  readonly folder: boolean;
  /** The path as it was written, without its query. */
  readonly path: string;
  /** With its `?`, or empty. */
  readonly query: string;
}

/** Longest target that is read, characters. A link into a plan of many batches has some hundred. */
const LONGEST_TARGET = 4096;

/** What no file of a site has in its name: signs that a system or another program takes for more than a name. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be in a name
const NO_NAME = /[\u0000-\u001f\u007f-\u009f/\\:*?"<>|]|[. ]$/;

/**
 * Reads the target of a request line. Throws nothing.
 *
 * @param base path that the site is served below, beginning and ending with `/`
 * @returns the target, or the status of a refusal: 414 too long, 400 nothing that a browser sends, 404 no path below `base`
 */
export function readTarget(target: string, base: string): RequestTarget | 400 | 404 | 414 {
  if (target.length > LONGEST_TARGET) return 414;
  // Only a path: not `http://host/path`, as a proxy is asked, nor `*`; and nothing that a browser would have encoded.
  if (!/^\/[\u0021-\u007e]*$/.test(target)) return 400;
  const end = target.search(/[?#]/);
  const path = end < 0 ? target : target.slice(0, end);
  const query = end < 0 || target[end] === '#' ? '' : target.slice(end);
  if (!path.startsWith(base)) return 404;
  const below = path.slice(base.length);
  const folder = below === '' || below.endsWith('/');
  const names = below === '' ? [] : (folder ? below.slice(0, -1) : below).split('/').map(decoded);
  if (!names.every((name) => name !== undefined)) return 400;
  if (names.some((name) => name === '' || NO_NAME.test(name))) return 404;
  return { names, folder, path, query };
}

/** A name of a path without its `%41`; undefined where it cannot be read. */
function decoded(name: string): string | undefined {
  try {
    return decodeURIComponent(name);
  } catch {
    return undefined;
  }
}
