/**
 * The bench page: matching in the browser, with the same code as the build and the commands. Nothing is sent anywhere.
 *
 * @packageDocumentation
 */
import type { BenchPageData } from '../render/pages/bench.ts';
import { newWork } from './bench/ask.ts';
import { CupActions } from './bench/cup-actions.ts';
import { readDrafts } from './bench/drafts.ts';
import { listen } from './bench/events.ts';
import { FileActions, strangerIn } from './bench/file-actions.ts';
import { isNoWork, readWork } from './bench/read-work.ts';
import { BenchScreen } from './bench/screen.ts';
import { BenchState } from './bench/state.ts';
import { openStore } from './bench/store.ts';
import { TargetActions } from './bench/target-actions.ts';
import { pageData } from './page-data.ts';

/** The match that was kept, or a new one, and why that is. */
async function stateOf(
  data: BenchPageData,
): Promise<{ readonly state: BenchState; readonly refused: string | undefined }> {
  // Two books of one host must not share their work.
  const book = new URL(document.documentElement.dataset.root ?? './', location.href).href;
  const [store, typing] = await Promise.all([openStore(book), openStore(`${book}#draft`)]);
  const [kept, typed] = await Promise.all([store, typing].map((each) => each?.read().catch(() => undefined)));
  const read = kept === undefined ? undefined : readWork(kept);
  const refused = read && (isNoWork(read) ? 'The match that was kept here cannot be read.' : strangerIn(read, data));
  const usable = refused === undefined && read !== undefined && !isNoWork(read);
  const drafts = readDrafts(usable ? typed : undefined);
  return {
    state: new BenchState(data, usable ? read : newWork(data), drafts, { work: store, drafts: typing }),
    refused,
  };
}

async function start(root: HTMLElement, data: BenchPageData): Promise<void> {
  const { state, refused } = await stateOf(data);
  const screen = new BenchScreen(root, state);
  state.onLoss = () => screen.say('The browser could not keep this step: export the match before you leave the page.');
  const target = new TargetActions(state, screen);
  const file = new FileActions(state, screen, () => target.mayReplace());
  listen(state, screen, { target, cup: new CupActions(state, screen), file });
  screen.showAll();
  root.hidden = false;
  if (state.findsAgain && state.work.cups.some(({ steps }) => steps.length === 0)) target.find();
  if (refused !== undefined) screen.say(`${refused} It stays there until something is changed in this new one.`);
  if (state.keepsNothing) screen.say('This browser keeps nothing here: export the match before you leave the page.');
}

const root = document.querySelector<HTMLElement>('[data-bench]');
const data = pageData<BenchPageData>('[data-bench-data]');
if (root !== null && data !== undefined) void start(root, data);
