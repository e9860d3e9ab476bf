import { relative, resolve } from 'node:path';
import type { Edition } from '../book/model/publish.ts';
import { madeNow } from '../output/later-file.ts';
import { prepareOutput, writeSite } from '../output/write-site.ts';
import { editionOutput } from '../shell/edition-output.ts';
import type { Command } from './command.ts';
import { builtText, DEFAULT_OUTPUT, renderedSite } from './run-eleventy.ts';

/** Folder of the maker's edition, from the project's folder, where none is named. */
const MINE_OUTPUT = '_mine';

/** `cupbook build` */
export const buildCommand: Command = {
  name: 'build',
  usage: '[--output DIR] [--mine]',
  summary: 'write the book as a site for any web server',
  words: [0, 0],
  options: {
    output: { value: 'DIR', help: `folder for the site (default: ${DEFAULT_OUTPUT}; with --mine: ${MINE_OUTPUT})` },
    mine: { help: 'your own edition, with all that you do not publish; not for a web server' },
  },
  details:
    'The old site stays until the new one is complete, and nothing else in the folder is touched. A book with errors is not built.',
  async run(_words, values, { root, from, recipes }) {
    const started = performance.now();
    const edition: Edition = values.mine ? 'mine' : 'shared';
    const folder =
      typeof values.output === 'string'
        ? resolve(from, values.output)
        : resolve(root, values.mine ? MINE_OUTPUT : DEFAULT_OUTPUT);
    const output = editionOutput(edition, folder, recipes);
    await prepareOutput(output);
    const site = await renderedSite({ recipes, edition });
    await writeSite([...(await madeNow(site.later)), ...site.files], output);
    console.log(builtText({ ...site, milliseconds: performance.now() - started }, relative(from, folder) || folder));
    return 0;
  },
};
