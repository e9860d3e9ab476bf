/**
 * The Match page: matching in the browser, with the same code as the build and the commands. Nothing is sent anywhere.
 *
 * @packageDocumentation
 */
import type { MatchPageData } from '../render/pages/match.ts';
import { CupActions } from './match/cup-actions.ts';
import { readDrafts } from './match/drafts.ts';
import { listen } from './match/events.ts';
import { FileActions } from './match/file-actions.ts';
import { KeptMatch } from './match/kept-match.ts';
import { keptWork } from './match/kept-work.ts';
import { askToLast } from './match/lasting-store.ts';
import { LearnedFile } from './match/learned-file.ts';
import { RoomCheck } from './match/room-check.ts';
import { MatchScreen } from './match/screen.ts';
import { MatchState } from './match/state.ts';
import { type Kept, openStore } from './match/store.ts';
import { tabChannel } from './match/tab-channel.ts';
import { TargetActions } from './match/target-actions.ts';
import { newWork } from './match/work-begun.ts';
import { pageData } from './page-data.ts';

const LOST =
  'This match was changed in another tab, and this page now shows that version. Your last step here was not saved: please redo it.';

/** What keeps the match of this book; undefined where the browser keeps nothing. */
async function keeperOf(book: string): Promise<{ readonly keeper: KeptMatch; readonly kept: Kept } | undefined> {
  const store = await openStore(book);
  const kept = await store?.read().catch(() => undefined);
  return store && kept && { keeper: new KeptMatch(store, tabChannel(book), kept), kept };
}

/** The match that was kept, or a new one, and what there is to say of it. */
function stateOf(
  data: MatchPageData,
  keeps: Awaited<ReturnType<typeof keeperOf>>,
): { readonly state: MatchState; readonly says: string } {
  const kept = keptWork(keeps?.kept ?? {}, data);
  if (kept !== undefined && !('fault' in kept))
    return { state: new MatchState(data, kept.work, kept.drafts, keeps?.keeper), says: kept.says };
  return {
    state: new MatchState(data, newWork(data), readDrafts(undefined), keeps?.keeper),
    says: kept === undefined ? '' : `${kept.fault} It stays there until something is changed in this new one.`,
  };
}

/** Shows what another tab has done, as soon as this one is seen. */
function followTabs(keeper: KeptMatch, state: MatchState, screen: MatchScreen): void {
  keeper.onNewer = (texts, unkept) => {
    const kept = keptWork(texts, state.data);
    if (kept === undefined) return;
    if ('fault' in kept) {
      screen.say(kept.fault);
      return;
    }
    const lost = state.takeOver(kept.work, kept.drafts) || unkept;
    screen.showAll();
    screen.say(lost ? LOST : kept.says);
  };
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void keeper.follow();
  });
}

/** Hides the page's work until the browser has painted without it. */
async function unseen(root: HTMLElement): Promise<void> {
  root.style.visibility = 'hidden';
  await new Promise((painted) => {
    requestAnimationFrame(() => setTimeout(painted));
    // Of a page that nobody sees nothing is painted.
    setTimeout(painted, 100);
  });
}

async function start(root: HTMLElement, data: MatchPageData): Promise<void> {
  // Two books of one host must not share their work.
  const keeps = await keeperOf(new URL(document.documentElement.dataset.root ?? './', location.href).href);
  const { state, says } = stateOf(data, keeps);
  const screen = new MatchScreen(root, state, new LearnedFile(root.dataset.learned!, root.dataset.solver!.split(' ')));
  state.onFull = () => screen.say('This log is full. Take the recipe away, export the match, and begin a new one.');
  const target = new TargetActions(state, screen);
  const file = new FileActions(state, screen, () => target.mayReplace());
  const room = new RoomCheck(document.querySelector<HTMLDetailsElement>('[data-room]')!);
  listen(state, screen, { target, cup: new CupActions(state, screen), file, room });
  // What is drawn anew in another place is not seen to move.
  if (state.inProgress) await unseen(root);
  screen.showAll();
  root.inert = false;
  root.style.visibility = '';
  if (state.findsAgain && state.work.cups.some(({ steps }) => steps.length === 0)) target.find();
  if (says !== '') screen.say(says);
  if (keeps === undefined) {
    screen.say('This browser saves nothing here: export the match before you leave the page.');
    return;
  }
  keeps.keeper.onLoss = () =>
    screen.say('The browser couldn’t save this step: export the match before you leave the page.');
  keeps.keeper.onKept = () => {
    if (!state.hasLog) return;
    keeps.keeper.onKept = () => {};
    void askToLast(Date.now());
  };
  followTabs(keeps.keeper, state, screen);
}

const root = document.querySelector<HTMLElement>('[data-match]');
const data = pageData<MatchPageData>('[data-match-data]');
if (root !== null && data !== undefined) void start(root, data);
