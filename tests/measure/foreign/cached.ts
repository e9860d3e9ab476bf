import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { treeHash } from '../../folder-tree.ts';
import type { BookResult } from './book-result.ts';

/** Where results lie, outside of what is committed. */
const CACHE = 'node_modules/.cache/cupbook-foreign';

/** The folder for results of this program: of any other program's none is taken for its own. */
export function labelOfProgram(): string {
  const both = ['src', 'tests/measure/foreign'].map((folder) => treeHash(folder)).join(' ');
  return createHash('sha256').update(both).digest('hex').slice(0, 12);
}

/** Results of books, one file each, that stay when a run is broken off. */
export class Cached {
  readonly folder: string;

  constructor(label: string) {
    this.folder = join(CACHE, label);
  }

  /** Whether a book of so many recipes is there. */
  has(condition: string, seed: number, recipes: number): boolean {
    return existsSync(this.#path(condition, seed, recipes));
  }

  /** Keeps a result: whole or not at all. */
  keep(result: BookResult): void {
    mkdirSync(this.folder, { recursive: true });
    const path = this.#path(result.condition, result.seed, result.recipes);
    writeFileSync(`${path}.${process.pid}`, JSON.stringify(result));
    renameSync(`${path}.${process.pid}`, path);
  }

  /** All results, by condition and seed. */
  all(): readonly BookResult[] {
    if (!existsSync(this.folder)) return [];
    return readdirSync(this.folder)
      .filter((name) => name.endsWith('.json'))
      .sort()
      .map((name): BookResult => JSON.parse(readFileSync(join(this.folder, name), 'utf8')));
  }

  #path(condition: string, seed: number, recipes: number): string {
    return join(this.folder, `${condition}-${String(seed).padStart(3, '0')}-${recipes}.json`);
  }
}
