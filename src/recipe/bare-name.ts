import { FOLDERS } from '../kinds/kinds.ts';

/**
 * The name of a file of the book from its path, however that is written: without its folder and `.md`. Other text as it is.
 *
 * @example bareName('./molds/minnow.md') // 'minnow'
 * @example bareName('colours\\smoke/body') // 'smoke/body'
 */
export function bareName(text: string): string {
  const path = text.replaceAll('\\', '/').replace(/^(?:\.{1,2}\/)+/, '');
  const folder = FOLDERS.find((name) => path.toLowerCase().startsWith(`${name}/`));
  return (folder === undefined ? path : path.slice(folder.length + 1)).replace(/\.md$/i, '');
}
