import { Eleventy } from '@11ty/eleventy';
import type { Edition } from '../book/model/publish.ts';
import type { BuiltSite, FirstFiles } from '../eleventy/plugin.ts';

/** Folder of the site, from the project's folder, where none is named. */
export const DEFAULT_OUTPUT = '_site';

/** What is to be rendered. */
export interface Rendering {
  readonly recipes: string;
  readonly edition: Edition;
  /** Takes what is ready of the maker's own edition before the book is, nearly as it will be. */
  readonly onFirst?: (first: FirstFiles) => Promise<void>;
}

/**
 * A book as the files of a site, rendered by Eleventy with the project's own configuration. Each time by a new one, which reads the
 * program and its templates anew. The project's folder must be the current one.
 *
 * Eleventy is silent: what a person must know is said by the plugin, or by the error that is thrown.
 */
export async function renderedSite({ recipes, edition, onFirst }: Rendering): Promise<BuiltSite> {
  process.env.CUPBOOK_RECIPES = recipes;
  process.env.CUPBOOK_EDITION = edition;
  let built: BuiltSite | undefined;
  const eleventy = new Eleventy(undefined, undefined, {
    source: 'script',
    configPath: '.eleventy.js',
    quietMode: true,
    runMode: 'build',
    config: (config) => {
      config.on('cupbook.built', (site: BuiltSite) => {
        built = site;
      });
      if (onFirst) config.on('cupbook.first', onFirst);
    },
  });
  eleventy.disableLogger();
  eleventy.errorHandler.initialMessage = () => undefined;
  eleventy.errorHandler.log = () => undefined;
  // It would set the exit code, which is the command's to say.
  eleventy.errorHandler.fatal = eleventy.errorHandler.log;
  await eleventy.toJSON();
  if (!built) throw new Error('Eleventy ended without a site');
  return built;
}

/** "26 recipes, 32 materials → _site in 2.1 s" */
export function builtText(
  { recipes, materials, milliseconds }: Pick<BuiltSite, 'recipes' | 'materials' | 'milliseconds'>,
  where: string,
): string {
  const count = (number: number, thing: string): string => `${number} ${thing}${number === 1 ? '' : 's'}`;
  return `${count(recipes, 'recipe')}, ${count(materials, 'material')} → ${where} in ${(milliseconds / 1000).toFixed(1)} s`;
}
