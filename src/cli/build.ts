import { relative, resolve } from 'node:path';
import type { BuiltSite } from '../eleventy/plugin.ts';
import { checkApart, checkOutput, swapOutput, writeFiles } from '../output/output-folder.ts';
import type { Command } from './command.ts';
import { builtText, DEFAULT_OUTPUT, eleventyFor } from './run-eleventy.ts';

/** `cupbook build` */
export const buildCommand: Command = {
  name: 'build',
  usage: '[--output DIR]',
  summary: 'write the book as a site, to be put on any web server',
  words: [0, 0],
  options: { output: { value: 'DIR', help: `folder for the site (default: ${DEFAULT_OUTPUT})` } },
  details: 'The site of before stays as it is until the new one is complete. A book with errors builds nothing.',
  async run(_words, values, { root, from, recipes }) {
    const started = performance.now();
    const output = typeof values.output === 'string' ? resolve(from, values.output) : resolve(root, DEFAULT_OUTPUT);
    checkApart(recipes, output);
    await checkOutput(output);
    let built: BuiltSite | undefined;
    await swapOutput(output, async (aside) => {
      const eleventy = eleventyFor({
        root,
        recipes,
        edition: 'shared',
        output: aside,
        mode: 'build',
        onBuilt: (site) => {
          built = site;
        },
      });
      await eleventy.toJSON();
      await writeFiles(aside, built?.files ?? []);
    });
    if (!built) throw new Error('Eleventy ended without a site');
    console.log(builtText({ ...built, milliseconds: performance.now() - started }, relative(from, output) || output));
    return 0;
  },
};
