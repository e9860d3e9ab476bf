/**
 * What leaves the page and comes into it: the recipe's file, and a match to go on with elsewhere.
 *
 * @packageDocumentation
 */

import { freeName } from '../../book/read/free-name.ts';
import { exportedText } from './fit-work.ts';
import { MOST } from './limits.ts';
import { isNoWork, readWork } from './read-work.ts';
import type { MatchScreen } from './screen.ts';
import { settledWork } from './settle-work.ts';
import type { MatchState } from './state.ts';
import { unsaidSide, type Work } from './work.ts';
import { newWork, withCupOf } from './work-begun.ts';

// A character has at most three bytes.
const MOST_BYTES = 3 * MOST.exported;

/** Actions on files. */
export class FileActions {
  private readonly state: MatchState;
  private readonly screen: MatchScreen;
  private readonly mayReplace: () => boolean;

  constructor(state: MatchState, screen: MatchScreen, mayReplace: () => boolean) {
    this.state = state;
    this.screen = screen;
    this.mayReplace = mayReplace;
  }

  downloadFile(which: 'recipe' | 'target'): void {
    const { name, text } = this.screen.files()[which]!;
    this.download(name, text, 'text/markdown');
  }

  /** All that the book needs of the match: the recipe, and with it a target that was described. */
  save(): void {
    const { recipe, target } = this.screen.files();
    if (target) this.download(target.name, target.text, 'text/markdown');
    this.download(recipe.name, recipe.text, 'text/markdown');
    this.screen.say(target ? `${recipe.name} and ${target.name} are saved.` : `${recipe.name} is saved.`);
  }

  exportWork(): void {
    const { work } = this.state;
    this.download(`${freeName(work.title, new Set())}-match.json`, exportedText(work), 'application/json');
  }

  async copyFile(which: 'recipe' | 'target'): Promise<void> {
    try {
      await navigator.clipboard.writeText(this.screen.files()[which]!.text);
      this.screen.say(`The ${which} is copied.`);
    } catch {
      // Without leave for the clipboard the text is marked, to be copied by hand.
      window.getSelection()?.selectAllChildren(this.screen.part(`[data-file="${which}"]`));
      this.screen.say(`The ${which} is selected: copy it by hand.`);
    }
  }

  async importWork(control: HTMLInputElement): Promise<void> {
    const file = control.files?.[0];
    if (!file) return;
    const text = file.size > MOST_BYTES ? '' : await file.text();
    control.value = '';
    const read = readWork(text);
    const settled = isNoWork(read) ? read : settledWork(read, this.state.data);
    if ('fault' in settled) this.screen.say(settled.fault);
    else if (this.mayReplace()) this.replace(settled.work, `Match imported. ${settled.says}`.trim());
  }

  clear(): void {
    if (!this.mayReplace()) return;
    this.replace(withCupOf(newWork(this.state.data), this.state.work), 'A new match.');
    // The button stands at the foot of a page whose head it has changed.
    this.screen.part('#match-target').focus();
  }

  private replace(work: Work, says: string): void {
    const { state, screen } = this;
    state.drafts = [];
    state.answers = [];
    state.begun = false;
    state.shown = 0;
    state.work = work;
    state.at = unsaidSide(work) === undefined ? 'cup' : 'target';
    screen.showAll();
    screen.say(says);
  }

  private download(name: string, text: string, type: string): void {
    const url = URL.createObjectURL(new Blob([text], { type }));
    const anchor = document.createElement('a');
    anchor.href = url;
    anchor.download = name;
    anchor.click();
    // The browser reads the address after the click.
    window.setTimeout(() => URL.revokeObjectURL(url), 10_000);
    this.screen.say(`${name} is saved.`);
  }
}
