import type { ParseArgsConfig } from 'node:util';

/** Values of a command's options, by name; absent where they were not given. */
export type OptionValues = Readonly<Record<string, string | boolean | undefined>>;

/** Where a command runs. */
export interface Surroundings {
  /** The project's folder, which holds `src/` and `site/`. */
  readonly root: string;
  /** The folder that paths of the command line start from. */
  readonly from: string;
  /** The book's folder, absolute. */
  readonly recipes: string;
}

/** One option of the command line. */
export interface Option {
  /** What it is for, for the help. */
  readonly help: string;
  /** What its value is called in the help, `DIR`. Absent: it is a switch. */
  readonly value?: string;
}

/** One command of the command line. */
export interface Command {
  readonly name: string;
  /** What follows the name, `NAME [--kind KIND]`; empty for none. */
  readonly usage: string;
  readonly summary: string;
  readonly options: Readonly<Record<string, Option>>;
  /** How many words it takes besides its options, at least and at most. */
  readonly words: readonly [number, number];
  /** More for the command's own help, whole lines. */
  readonly details?: string;
  /** What it still prints on the standard output where it stops at an error: whoever asked for JSON gets JSON. */
  refused?(line: readonly string[], sentence: string): string | undefined;
  /** Does it and returns the exit code. */
  run(words: readonly string[], values: OptionValues, surroundings: Surroundings): Promise<number> | number;
}

/** Options in the form of `parseArgs`. */
export function parseArgsOptions(options: Readonly<Record<string, Option>>): NonNullable<ParseArgsConfig['options']> {
  return Object.fromEntries(
    Object.entries(options).map(([name, { value }]) => [
      name,
      { type: value === undefined ? 'boolean' : 'string' } as const,
    ]),
  );
}
