import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { treeHash } from '../../folder-tree.ts';
import type { PhotoResult } from './photo-result.ts';

/** Where results lie, outside of what is committed. */
const CACHE = 'node_modules/.cache/cupbook-photo';

/** What a photo's result hangs on: it is measured anew when any of it has changed. */
const PROGRAM = [
  'src/photo',
  'src/measuring-card',
  'src/render/measuring-card',
  'tests/photo/simulated',
  'tests/measure/photo',
];

/** Results by a key, one file each, that stay when a run is broken off. */
export class KeptResults {
  readonly folder: string;

  constructor(label?: string) {
    const hash = createHash('sha256').update(PROGRAM.map(treeHash).join(' ')).digest('hex');
    this.folder = join(CACHE, label ?? hash.slice(0, 12));
  }

  /** Whether a result is there. */
  has(key: string): boolean {
    return existsSync(join(this.folder, `${key}.json`));
  }

  /** Keeps the results of a key: whole or not at all. */
  keep(key: string, results: readonly PhotoResult[]): void {
    mkdirSync(this.folder, { recursive: true });
    const path = join(this.folder, `${key}.json`);
    writeFileSync(`${path}.${process.pid}`, JSON.stringify(results));
    renameSync(`${path}.${process.pid}`, path);
  }

  /** All results that are there, by set and seed. */
  all(): readonly PhotoResult[] {
    if (!existsSync(this.folder)) return [];
    return readdirSync(this.folder)
      .filter((name) => name.endsWith('.json'))
      .sort()
      .flatMap((name): readonly PhotoResult[] => JSON.parse(readFileSync(join(this.folder, name), 'utf8')));
  }
}
