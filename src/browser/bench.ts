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
import { FileActions } from './bench/file-actions.ts';
import { isNoWork, readWork } from './bench/read-work.ts';
import { BenchScreen } from './bench/screen.ts';
import { settledWork } from './bench/settle-work.ts';
import { BenchState } from './bench/state.ts';
import { openStore } from './bench/store.ts';
import { TargetActions } from './bench/target-actions.ts';
import { pageData } from './page-data.ts';

/** The match that was kept, or a new one, and what there is to say of it. */
async function stateOf(data: BenchPageData): Promise<{ readonly state: BenchState; readonly says: string }> {
  // Two books of one host must not share their work.
  const book = new URL(document.documentElement.dataset.root ?? './', location.href).href;
  const [store, typing] = await Promise.all([openStore(book), openStore(`${book}#draft`)]);
  const [kept, typed] = await Promise.all([store, typing].map((each) => each?.read().catch(() => undefined)));
  const stores = { work: store, drafts: typing };
  const anew = (says: string): { readonly state: BenchState; readonly says: string } => ({
    state: new BenchState(data, newWork(data), readDrafts(undefined), stores),
    says,
  });
  if (kept === undefined) return anew('');
  const read = readWork(kept);
  const settled = isNoWork(read) ? { fault: 'The match that was kept here cannot be read.' } : settledWork(read, data);
  return 'fault' in settled
    ? anew(`${settled.fault} It stays there until something is changed in this new one.`)
    : { state: new BenchState(data, settled.work, readDrafts(typed), stores), says: settled.says };
}

async function start(root: HTMLElement, data: BenchPageData): Promise<void> {
  const { state, says } = await stateOf(data);
  const screen = new BenchScreen(root, state);
  state.onLoss = () => screen.say('The browser could not keep this step: export the match before you leave the page.');
  state.onFull = () => screen.say('This log is full. Take the recipe away, export the match, and begin another one.');
  const target = new TargetActions(state, screen);
  const file = new FileActions(state, screen, () => target.mayReplace());
  listen(state, screen, { target, cup: new CupActions(state, screen), file });
  screen.showAll();
  root.hidden = false;
  if (state.findsAgain && state.work.cups.some(({ steps }) => steps.length === 0)) target.find();
  if (says !== '') screen.say(says);
  if (state.keepsNothing) screen.say('This browser keeps nothing here: export the match before you leave the page.');
}

const root = document.querySelector<HTMLElement>('[data-bench]');
const data = pageData<BenchPageData>('[data-bench-data]');
if (root !== null && data !== undefined) void start(root, data);
