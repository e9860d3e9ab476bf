/**
 * What is wrong with a file or folder that the system does not let us read, in a diagnostic's words.
 *
 * Throws what is no error of the system.
 */
export function whyUnread(error: unknown, what: 'file' | 'folder'): { readonly found: string; readonly fix: string } {
  const code = error instanceof Error && 'code' in error ? String(error.code) : undefined;
  if (code === undefined) throw error;
  if (code === 'EACCES' || code === 'EPERM') {
    return {
      found: `a ${what} that you may not read`,
      fix: 'give yourself permission to read it, or move it out of the book',
    };
  }
  if (code === 'ENOENT') return { found: `a ${what} that was there a moment ago`, fix: 'run the same again' };
  return { found: `a ${what} that the system cannot read (${code})`, fix: 'see whether its disk is sound' };
}
