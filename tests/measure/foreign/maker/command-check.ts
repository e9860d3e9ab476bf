import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Source } from '../../../../src/recipe/source.ts';
import { runCupbook } from '../../../run-cupbook.ts';

/** Asks every 20th question once more by the real command, of a book in a folder, and throws where the answer is another one. */
export class CommandCheck {
  static readonly #every = 20;
  #asked = 0;
  /** How often it was asked. */
  compared = 0;

  /**
   * Counts a question, and compares it if its turn has come.
   *
   * @param answer what the same question gave in process: of `match` all its answers, of `next` the one
   */
  async compare(command: 'match' | 'next', of: string, sources: readonly Source[], answer: unknown): Promise<void> {
    this.#asked++;
    if (this.#asked % CommandCheck.#every !== 0) return;
    const folder = mkdtempSync(join(tmpdir(), 'cupbook-foreign-'));
    try {
      for (const { path, text } of sources) {
        mkdirSync(dirname(join(folder, path)), { recursive: true });
        writeFileSync(join(folder, path), text);
      }
      const { stdout, stderr } = await runCupbook([command, of, '--json', '--recipes', folder]);
      const told = answersOf(stdout, command);
      const here = JSON.stringify(command === 'match' ? recipesOf(answer) : [answer]);
      if (JSON.stringify(told) !== JSON.stringify(JSON.parse(here)))
        throw new Error(
          `\`${command} ${of}\` answers otherwise than the book in process; ${stderr || 'both are JSON'}`,
        );
      this.compared++;
    } finally {
      rmSync(folder, { recursive: true });
    }
  }
}

function answersOf(stdout: string, command: 'match' | 'next'): readonly unknown[] {
  const told: unknown = JSON.parse(stdout);
  return fieldOf(told, command === 'match' ? 'recipe' : 'next');
}

function recipesOf(answers: unknown): readonly unknown[] {
  return fieldOf(answers, 'recipe');
}

function fieldOf(list: unknown, name: string): readonly unknown[] {
  if (!Array.isArray(list)) throw new TypeError('the command gave no list');
  return list.map((each: unknown) =>
    typeof each === 'object' && each !== null ? Object.entries(each).find(([key]) => key === name)?.[1] : undefined,
  );
}
