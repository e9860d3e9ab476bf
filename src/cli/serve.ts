import { once } from 'node:events';
import { join, relative, resolve } from 'node:path';
import { Refusal } from '../diagnostics/refusal.ts';
import type { BuiltSite } from '../eleventy/plugin.ts';
import type { Command } from './command.ts';
import { explainError, isRefusal } from './explain-error.ts';
import { changeIn, folderState, watchForMissed } from './missed-changes.ts';
import { builtText, DEFAULT_OUTPUT, eleventyFor } from './run-eleventy.ts';

/** `cupbook serve` */
export const serveCommand: Command = {
  name: 'serve',
  usage: '[--port PORT] [--output DIR]',
  summary: 'build the book, show it in a browser, and follow every change of its files',
  words: [0, 0],
  options: {
    port: { value: 'PORT', help: 'port of the server (default: 8080, or the next free one)' },
    output: { value: 'DIR', help: `folder for the site (default: ${DEFAULT_OUTPUT})` },
  },
  details:
    'Everybody in the same network can read the book while it runs. While the book has errors, the last good pages stay.',
  async run(_words, values, { root, from, recipes }) {
    const port = typeof values.port === 'string' ? portOf(values.port) : undefined;
    const output = resolve(from, typeof values.output === 'string' ? values.output : resolve(root, DEFAULT_OUTPUT));
    const interrupted = Promise.race([once(process, 'SIGINT'), once(process, 'SIGTERM')]);
    const onBuilt = (built: BuiltSite): void => console.log(builtText(built, relative(from, output) || output));
    const shown = relative(from, recipes) || recipes;

    for (;;) {
      let watching = false;
      const onFailed = (error: unknown): void => {
        // Of a folder that is gone for a moment, the watch tells.
        if (watching && folderState(recipes) !== undefined) console.error(explainError(error, values.trace === true));
      };
      let built: string | undefined;
      const onStart = (): void => {
        built = folderState(recipes);
      };
      const eleventy = eleventyFor({
        root,
        recipes,
        edition: 'shared',
        output,
        mode: 'serve',
        onStart,
        onBuilt,
        onFailed,
      });
      try {
        await eleventy.init();
        const rebuild = await eleventy.watch();
        watching = true;
        // Eleventy itself only builds again for what was added or changed: a removed recipe would stay in the book.
        eleventy.watcher.on('unlink', (path) => void rebuild(path));
        const endWatch = watchForMissed(recipes, () => built, {
          changed: () => void rebuild(join(recipes, 'book.md')),
          gone: () => console.error(`${shown} cannot be read now. The pages stay as they are until it can be …`),
        });
        await eleventy.serve(port);
        await interrupted;
        watching = false;
        endWatch();
        await eleventy.stopWatch();
        return 0;
      } catch (error) {
        if (!isRefusal(error) || !error.ofBook) throw error;
        console.error(`${explainError(error, false)}\nWaiting for a change in ${shown} …`);
        const gone = (): void => console.error(`${shown} cannot be read now. Waiting until it can be …`);
        if (!(await changeIn(recipes, built ?? folderState(recipes), gone, interrupted))) return 1;
      }
    }
  },
};

function portOf(text: string): number {
  const port = Number(text);
  if (Number.isInteger(port) && port >= 1 && port <= 65_535) return port;
  throw new Refusal(`The port must be a whole number from 1 to 65535, not "${text}".`);
}
