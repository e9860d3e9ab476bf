import { html } from '../../render/html.ts';
import type { LearnedFile } from './learned-file.ts';
import { redraw } from './redraw.ts';
import type { MatchState } from './state.ts';

const LOADING = 'Getting what this book has learned of your shelf…';
const NOT_LOADED =
  'This page couldn’t get what the book has learned of your shelf, and can’t judge a cup without it. Your match is safe: check the connection, then try again.';
/** A browser has painted by then. */
const PAINTED_MS = 30;

/** What the page has to wait for: what the book has learned, once, and every answer that takes long. */
export class SlowWork {
  private readonly state: MatchState;
  private readonly learned: LearnedFile;
  private readonly cups: HTMLElement;
  private readonly say: (text: string) => void;

  /**
   * @param cups where the cups are shown
   * @param say tells the maker something
   */
  constructor(state: MatchState, learned: LearnedFile, cups: HTMLElement, say: (text: string) => void) {
    this.state = state;
    this.learned = learned;
    this.cups = cups;
    this.say = say;
  }

  /** Does what needs that the book has learned: at once where it is there, else as soon as it is loaded, and never where it cannot be. */
  whenTaught(run: () => void): void {
    if (this.state.taught) {
      run();
      return;
    }
    this.showInstead(html`<p>${LOADING}</p>`);
    void this.load().then((isThere) => {
      if (isThere) run();
    });
  }

  private async load(): Promise<boolean> {
    const { state, learned } = this;
    try {
      const { packed, solver } = await learned.load();
      state.solver = solver;
      state.taught ??= solver.taughtData(state.data, packed);
      return true;
    } catch {
      this.showInstead(
        html`<p>${NOT_LOADED}</p><p class="match-buttons"><button type="button" data-load-again>Try again</button></p>`,
      );
      this.say(NOT_LOADED);
      return false;
    }
  }

  /** In the place of the cups, where there are any: they cannot be judged yet. */
  private showInstead(shown: ReturnType<typeof html>): void {
    if (this.state.inProgress) redraw(this.cups, shown);
  }

  /** Does slow work once the words for it are painted. As long as it is waited for, no cup takes anything. */
  afterPaint(says: string, run: () => void): void {
    this.say(says);
    this.cups.inert = true;
    window.setTimeout(() => {
      this.cups.inert = false;
      run();
    }, PAINTED_MS);
  }
}
