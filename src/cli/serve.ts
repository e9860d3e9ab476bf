import { once } from 'node:events';
import { readFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { join, relative, resolve } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import type { Edition } from '../book/model/publish.ts';
import { Refusal } from '../diagnostics/refusal.ts';
import type { FirstFiles } from '../eleventy/plugin.ts';
import type { LaterFile } from '../output/later-file.ts';
import { pathInside } from '../output/path-inside.ts';
import type { SiteFile } from '../output/site-file.ts';
import { prepareOutput, putIntoSite, writeSite } from '../output/write-site.ts';
import { type BookServer, checkServer, isBasePath, startServer } from '../server/start-server.ts';
import { editionOutput } from '../shell/edition-output.ts';
import { printable } from '../shell/printable.ts';
import { defined } from '../values/defined.ts';
import { bookCache } from './book-cache.ts';
import type { Command, OptionValues } from './command.ts';
import { explainError, isRefusal } from './explain-error.ts';
import { followFolders } from './folder-changes.ts';
import { openBookText } from './open-book-text.ts';
import { builtText, renderedSite } from './run-eleventy.ts';

/** `cupbook serve` */
export const serveCommand: Command = {
  name: 'serve',
  usage: '[--port PORT] [--phone [--mine]] [--output DIR]',
  summary: 'build your own edition, show it in a browser, and follow every change of its files',
  words: [0, 0],
  options: {
    port: { value: 'PORT', help: 'port of the server (default: 8080, or the next free one)' },
    phone: { help: 'show the shared edition to phones in the same network, too, with a code to scan' },
    mine: { help: 'with --phone: a second code, which shows your own phone your own edition' },
    output: { value: 'DIR', help: 'folder for your own edition (default: one in your cache folder)' },
  },
  details:
    'On this computer it shows all of your book, what you do not publish too; without --phone nobody else can see it.\nWhile the book has errors, the last good pages stay.',
  async run(_words, values, { root, from, recipes }) {
    const asked = {
      ...(typeof values.port === 'string' ? { port: portOf(values.port) } : {}),
      ...(values.phone === true ? { phone: { mine: values.mine === true } } : {}),
    };
    checkMine(values);
    await checkServer(asked);
    const mine =
      typeof values.output === 'string' ? resolve(from, values.output) : join(await bookCache(recipes), 'mine');
    const shared = values.phone === true ? join(await bookCache(recipes), 'shared') : undefined;
    const outputOf = (edition: Edition, folder: string) => ({
      ...editionOutput(edition, folder, recipes),
      edition,
      served: true,
      later: new Map<string, LaterFile>(),
    });
    const own = outputOf('mine', mine);
    // First, so that what is withdrawn is gone from it soonest.
    const readers = shared === undefined ? undefined : outputOf('shared', shared);
    const outputs = readers ? [readers, own] : [own];
    for (const output of outputs) await prepareOutput(output);

    let server: BookServer | undefined;
    let stopped = false;
    const interrupted = Promise.race([once(process, 'SIGINT'), once(process, 'SIGTERM')]).then(() => {
      stopped = true;
    });
    const shown = relative(from, recipes) || recipes;
    const until = (): string => (server ? 'The pages stay as they are until it can be …' : 'Waiting until it can be …');
    const followed = followFolders([recipes, join(root, 'src'), join(root, 'site')], () =>
      console.error(`${shown} cannot be read now. ${until()}`),
    );
    try {
      while (!stopped) {
        const state = followed.state();
        let stood: readonly SiteFile[] = [];
        let drawn: readonly LaterFile[] = [];
        const onFirst = async ({ pages, later }: FirstFiles): Promise<void> => {
          if (!server || pages.length === 0 || stood.length > 0) return;
          // What goes wrong here is told when all is written.
          stood = await putIntoSite(pages, own).catch(() => []);
          if (stood.length === 0) return;
          drawn = [...own.later.values()];
          putLater(own.later, later);
          // Before the book is computed, meanwhile nothing is answered.
          await server.reload();
        };
        try {
          let address: string | undefined;
          for (const output of outputs) {
            const started = performance.now();
            const site = await renderedSite({ recipes, edition: output.edition, onFirst });
            if (output === own) stood = [];
            await writeSite(site.files, output);
            output.later.clear();
            putLater(output.later, site.later);
            address = site.address;
            const milliseconds = performance.now() - started;
            console.log(builtText({ ...site, milliseconds }, shownPath(output.folder, from)));
          }
          if (server) await server.reload();
          else {
            server = await startServer({
              ...asked,
              defaultPort: DEFAULT_PORT,
              editions: { mine, ...defined({ shared }) },
              made: { mine: madeFrom(own.later), ...(readers ? { shared: madeFrom(readers.later) } : {}) },
              base: pathOf(address),
              log: (line) => console.error(printable(line)),
            });
            console.log(openBookText(server, process.stdout.isTTY));
          }
        } catch (error) {
          // What came first was nearly that of a book which then had errors: the last good page comes back.
          if (stood.length > 0) {
            await putIntoSite(stood, own).catch(() => undefined);
            putLater(own.later, drawn);
            await server?.reload();
          }
          if (await Promise.race([interrupted.then(() => true), setTimeout(STOPPED_MS, false)])) break;
          const ofBook = isRefusal(error) && error.ofBook;
          if (!server && !ofBook) throw error;
          // Of a folder that is gone for a moment, `followed` tells.
          if (state !== undefined && followed.state() !== undefined)
            console.error(explainError(error, values.trace === true));
          if (server && shared !== undefined && ofBook) console.error(STILL_SHARED);
          if (!server) console.error(`Waiting for a change in ${shown} …`);
        }
        await Promise.race([followed.changeFrom(state), interrupted]);
      }
      return server ? 0 : 1;
    } finally {
      followed.close();
      await server?.close();
    }
  },
};

const DEFAULT_PORT = 8080;

function putLater(into: Map<string, LaterFile>, files: readonly LaterFile[]): void {
  for (const file of files) into.set(file.path, file);
}

/** Files that are made when they are asked for, as the server has them. */
function madeFrom(later: ReadonlyMap<string, LaterFile>): (path: string) => Promise<Uint8Array> | undefined {
  return (path) =>
    later
      .get(path)
      ?.make()
      .then((content) => (content instanceof Uint8Array ? content : readFile(content.copyOf)));
}

/** The last good pages stay for phones, too, and nobody would think of that who has just withdrawn a recipe. */
const STILL_SHARED =
  'Until then phones still see the pages from before, even of a recipe that you have just stopped publishing. To take them away now, press Ctrl+C.';

/** Path of a book's address: below it the links of its `404.html` lead somewhere. */
function pathOf(address: string | undefined): string {
  const path = address === undefined ? '/' : new URL(address).pathname;
  return isBasePath(path) ? path : '/';
}

/** Ctrl+C ends the programs that help a build, too, and their end may be heard of first: within so long, ms, it is no error. */
const STOPPED_MS = 100;

/** Refuses the code of one's own where it would show nothing, or be written down. */
function checkMine({ phone, mine }: OptionValues): void {
  if (mine !== true) return;
  if (phone !== true) {
    throw new Refusal(
      '--mine goes with --phone: on this computer your own edition is shown anyway. Add --phone, or leave --mine out.',
    );
  }
  if (!process.stdout.isTTY) {
    throw new Refusal(
      'The code of --mine holds a key that must be kept nowhere, and here it would go into a file or to another program. Run this in a terminal, or leave --mine out.',
    );
  }
}

/** A path as a person would write it: from here, or from the own home folder. */
function shownPath(path: string, from: string): string {
  if (pathInside(from, path) !== undefined) return relative(from, path) || path;
  const fromHome = pathInside(homedir(), path);
  return fromHome === undefined ? path : `~/${fromHome}`;
}

function portOf(text: string): number {
  const port = Number(text);
  if (Number.isInteger(port) && port >= 1 && port <= 65_535) return port;
  throw new Refusal(`The port must be a whole number from 1 to 65535, not "${text}".`);
}
