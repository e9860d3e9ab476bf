import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** "cupbook 0.1.0" */
export function versionText(root: string): string {
  const { name, version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Record<string, string>;
  return `${name} ${version}`;
}
