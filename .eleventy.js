import { bundle } from './src/cli/bundle.mjs';

/**
 * Pages are written by the plugin in `src/eleventy/`, from a folder of recipes that Eleventy itself never reads:
 * a recipe comes from anybody, and must not run as a template. `CUPBOOK_RECIPES` names another folder, and
 * `CUPBOOK_EDITION=mine` asks for the maker's own copy.
 */
export default async function (eleventyConfig) {
  // Bundled at every start and at every change of src/, under a name of its content: Node would keep the old module.
  const [plugin, drawThread] = await Promise.all(
    ['src/eleventy/plugin.ts', 'src/shell/pictures/draw-thread.ts'].map(bundle),
  );
  const { default: cupbook } = await import(plugin);
  eleventyConfig.addPlugin(cupbook, {
    recipes: process.env.CUPBOOK_RECIPES || 'recipes',
    edition: process.env.CUPBOOK_EDITION || 'shared',
    drawThread,
  });
  eleventyConfig.addWatchTarget('./src/', { resetConfig: true });
  eleventyConfig.setQuietMode(true);
}

export const config = {
  dir: { input: 'site', output: '_site' },
  templateFormats: ['11ty.js'],
  markdownTemplateEngine: false,
  htmlTemplateEngine: false,
};
