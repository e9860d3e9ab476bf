import { relative } from 'node:path';
import { Eleventy } from '@11ty/eleventy';
import type { Edition } from '../book/model.ts';
import type { BuiltSite } from '../eleventy/plugin.ts';

/** Folder of the site, from the project's folder, where none is named. */
export const DEFAULT_OUTPUT = '_site';

/** One run of Eleventy on a book. */
export interface EleventyRun {
  readonly root: string;
  readonly recipes: string;
  readonly edition: Edition;
  /** Absolute. */
  readonly output: string;
  readonly mode: 'build' | 'serve';
  /** Told before every build. */
  readonly onStart?: () => void;
  /** Told after every build. */
  readonly onBuilt: (built: BuiltSite) => void;
  /** Told of every build that fails; the first one throws as well. */
  readonly onFailed?: (error: unknown) => void;
}

/**
 * Eleventy with the project's own configuration, for a book and an output. The project's folder must be the current one.
 *
 * It is silent: what a person must know is said by the plugin, by the two listeners, or by the error that it throws.
 */
export function eleventyFor({
  root,
  recipes,
  edition,
  output,
  mode,
  onStart,
  onBuilt,
  onFailed,
}: EleventyRun): Eleventy {
  process.env.CUPBOOK_RECIPES = recipes;
  process.env.CUPBOOK_EDITION = edition;
  // From the project's folder, since Eleventy takes an absolute path for a relative one. As `cli`, since else the
  // output that the configuration names would win.
  const eleventy = new Eleventy(undefined, relative(root, output), {
    source: 'cli',
    configPath: '.eleventy.js',
    quietMode: true,
    runMode: mode,
    config: (config) => {
      if (onStart) config.on('eleventy.before', onStart);
      config.on('cupbook.built', onBuilt);
    },
  });
  eleventy.disableLogger();
  eleventy.errorHandler.initialMessage = () => undefined;
  eleventy.errorHandler.log = (error) => onFailed?.(error);
  // It would set the exit code, which is the command's to say.
  eleventy.errorHandler.fatal = eleventy.errorHandler.log;
  return eleventy;
}

/** "26 recipes, 32 materials → _site in 2.1 s" */
export function builtText({ recipes, materials, milliseconds }: BuiltSite, where: string): string {
  const count = (number: number, thing: string): string => `${number} ${thing}${number === 1 ? '' : 's'}`;
  return `${count(recipes, 'recipe')}, ${count(materials, 'material')} → ${where} in ${(milliseconds / 1000).toFixed(1)} s`;
}
