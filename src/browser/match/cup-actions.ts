/**
 * What can be done to a cup: add, pour and look, begin anew, take back.
 *
 * @packageDocumentation
 */

import { isEmpty } from '../../cup/ledger.ts';
import { leadsByWeight } from '../../matching/measure/best-tools.ts';
import { volumeInField } from '../../units/volume-field.ts';
import { type VolumeUnit, volumeText } from '../../units/volume-text.ts';
import { required } from '../../values/required.ts';
import type { HeatUnit } from '../../words/heats.ts';
import { nextAdditionText } from '../../words/next-addition.ts';
import { sentence } from '../../words/sentence-text.ts';
import { verdictText } from '../../words/verdict.ts';
import type { CupAdvice } from './ask.ts';
import { typedAmount } from './dose-text.ts';
import { type CupDraft, withoutRound } from './drafts.ts';
import { heatInField } from './heat-field.ts';
import { howOf, keptHow } from './how-seen.ts';
import { usualChip, wholeIn } from './how-seen-view.ts';
import { lastDone } from './log-view.ts';
import { type MeasuredColours, measuredText } from './measured-by.ts';
import { isMistyped } from './mistyped.ts';
import { dosedIn, logShelf } from './page-shelf.ts';
import { readRound, typedHow, volumeIn } from './read-forms.ts';
import type { MatchScreen } from './screen.ts';
import type { MatchState } from './state.ts';
import { isLoggedTwice, withoutWholeRound, withWholeRound } from './whole-round.ts';
import { begunAnew, doings, type WorkStep, withoutLastDone, withSteps } from './work.ts';
import { amountsOf, stepsOf } from './work-begun.ts';
import { colourText, type WorkColour } from './work-colour.ts';
import { cupNow, withLookChecked, withStepsBeforeLook } from './work-log.ts';

/** Actions on the cups. */
export class CupActions {
  private readonly state: MatchState;
  private readonly screen: MatchScreen;

  constructor(state: MatchState, screen: MatchScreen) {
    this.state = state;
    this.screen = screen;
  }

  /** Shows one of two cups. */
  open(index: number): void {
    const { state, screen } = this;
    screen.showOnly(index);
    state.saveDrafts();
    screen.part(`#cup-${index}-tab`).focus({ preventScroll: true });
    screen.part('[data-cups]').scrollIntoView({ block: 'start' });
    screen.say('');
  }

  /** Takes for poured what one shot of the mold takes. */
  pourOneShot(index: number): void {
    const { data, work } = this.state;
    const { shotMl: all } = required(data.molds, work.mold);
    const shotMl = wholeIn(this.state) ? all / 2 : all;
    this.takePour(index, { pour: volumeInField(shotMl, data.settings), pouredMl: shotMl });
    this.screen.say(`One shot: ${volumeText(shotMl, data.settings)}.`);
  }

  /** Takes how much was poured, as it is typed: of a finished bait from both cups alike. */
  takePour(index: number, poured: Pick<CupDraft, 'pour' | 'pouredMl'>): void {
    for (const at of wholeIn(this.state) ? this.state.work.cups.keys() : [index]) {
      const field = this.screen.part<HTMLInputElement>(`#cup-${at}-pour`);
      if (field.value !== poured.pour) field.value = poured.pour ?? '';
      field.removeAttribute('aria-invalid');
      this.state.draft(at, this.draftWith(at, poured));
    }
  }

  /** Says whether finished baits are looked at or cups by themselves; it holds until something else is said. */
  pourWhole(index: number, whole: boolean): void {
    const { state, screen } = this;
    state.whole = whole;
    state.saveDrafts();
    for (const at of state.work.cups.keys()) screen.showCup(at);
    screen.part(`#cup-${index}-pour`).focus({ preventScroll: true });
  }

  /** Puts a proposal into the log; of a finished bait the other cup is next, where something is to be added to it too. */
  take(index: number, proposal: number, weighing: boolean): void {
    const { data, work } = this.state;
    const steps = stepsOf(this.state.advice(index).next.proposals[proposal]!, data, weighing);
    const other = 1 - index;
    const says = 'Logged. Stir, pour a bait, look at it, and log the round.';
    this.log(index, steps, says, undefined, () => {
      if (!wholeIn(this.state) || !this.isAskedToAdd(other)) return says;
      this.screen.showOnly(other);
      return `Logged. Now the ${work.cups[other]!.name}.`;
    });
  }

  private isAskedToAdd(index: number): boolean {
    const { now, next } = this.state.advice(index);
    return now.seen !== undefined && (next.advice.kind === 'add' || next.proposals.length > 0);
  }

  /** Answers what went in before a round whose colour moved with nothing logged. */
  answer(index: number, wentIn: 'proposed' | 'else' | 'nothing'): void {
    const { data, work } = this.state;
    if (wentIn === 'else') {
      this.state.draft(index, this.draftWith(index, { beforeRound: true }));
      this.screen.showCup(index);
      this.screen.part(`#cup-${index}-material`).focus();
      this.screen.say('Log what went in; it goes before the round.');
      return;
    }
    const number = cupNow(work, index, logShelf(data)).rounds.at(-1)?.number;
    if (wentIn === 'nothing') {
      this.logBefore(index, [{ do: 'add', amounts: [] }], `Logged: nothing went in before round ${number}.`);
      return;
    }
    const proposed = this.state.advice(index).unlogged?.proposed;
    if (!proposed) return;
    const steps = stepsOf(proposed, data, leadsByWeight(proposed));
    this.logBefore(index, steps, `Logged, before round ${number}.`);
  }

  beginAfresh(index: number, weighing: boolean): void {
    const { data, work } = this.state;
    const recipe = this.state.advice(index).next.startAgain;
    if (!recipe) return;
    const begun = begunAnew(work, index, [
      { do: 'add', recipe: true, amounts: amountsOf(recipe.cups[0]!.amounts, data, weighing) },
    ]);
    if (this.state.put(begun)) this.show(index, 'A new cup. It keeps what the old one taught.');
  }

  noteRound(index: number): void {
    if (wholeIn(this.state)) {
      this.noteWhole(index);
      return;
    }
    const { data, work, drafts } = this.state;
    const now = cupNow(work, index, logShelf(data));
    const round = this.screen.part(`[data-cup="${index}"] [data-round]`);
    const { pouredMl } = drafts[index] ?? {};
    const steps = readRound(round, now.volumeMl, data.settings, pouredMl, this.state.looked?.thicknessMm);
    if (isMistyped(steps)) {
      this.screen.complain(steps);
      return;
    }
    const see = steps.find((step) => step.do === 'see');
    const { measured } = drafts[index] ?? {};
    const taken = measured
      ? steps.map((step) => (step.do === 'see' && (step.overWhite || step.overBlack) ? { ...step, measured } : step))
      : steps;
    // Asked once: what is answered here is what the next round begins with.
    if (see) this.state.looked = keptHow(see);
    round.querySelector<HTMLDetailsElement>('[data-how]')!.open = false;
    const { pour = '' } = drafts[index] ?? {};
    this.log(index, taken, 'The round is logged.', withoutRound(drafts[index] ?? {}));
    for (const at of work.cups.keys())
      if (!this.state.drafts[at]?.pour) this.state.draft(at, { ...this.state.drafts[at], pour });
  }

  /** Logs a shot of both cups, with what was seen of each side of it. */
  private noteWhole(index: number): void {
    const { state, screen } = this;
    const { data, work, drafts } = state;
    const shelf = logShelf(data);
    const round = (at: number): HTMLElement => screen.part(`[data-cup="${at}"] [data-round]`);
    const poured = screen.part<HTMLInputElement>(`#cup-${index}-pour`);
    const sides: (readonly WorkStep[])[] = [];
    for (const at of work.cups.keys()) {
      const steps = readRound(
        round(at),
        cupNow(work, at, shelf).volumeMl,
        data.settings,
        drafts[index]?.pouredMl,
        undefined,
      );
      if (isMistyped(steps)) {
        screen.complain(steps);
        return;
      }
      sides.push(steps);
    }
    if (!sides.every((steps) => steps.some((step) => step.do === 'pour'))) {
      screen.complain({ fault: 'A finished bait takes plastic from both cups: how much from each?', at: poured });
      return;
    }
    const logged = withWholeRound(work, sides, shelf, drafts);
    const anew = isLoggedTwice(work, logged, shelf) ? sides.map((steps) => [NOTHING_WENT_IN, ...steps]) : undefined;
    if (anew && !window.confirm(NOTHING_LOGGED)) {
      screen.say('Log what went in first: “I added this”, or “I added something else”.');
      return;
    }
    if (!state.put(anew ? withWholeRound(work, anew, shelf, drafts) : logged)) return;
    const see = sides.flat().find((step) => step.do === 'see');
    if (see) state.looked = keptHow(see);
    for (const at of work.cups.keys()) state.draft(at, { ...withoutRound(drafts[at] ?? {}), pour: poured.value });
    screen.showOnly(0);
    this.show(0, 'The round is logged.');
  }

  /** Takes what photos of a test pour say, into its form. */
  takeMeasured(index: number, { overWhite, overBlack, by }: MeasuredColours): void {
    const text = (colour: WorkColour | undefined): string => (colour === undefined ? '' : colourText(colour));
    this.state.draft(
      index,
      this.draftWith(index, {
        overWhite: text(overWhite),
        overBlack: text(overBlack),
        sawWhite: overWhite !== undefined,
        sawBlack: overBlack !== undefined,
        measured: by,
      }),
    );
    this.screen.showCup(index);
    this.screen.part(`[data-cup]:not([hidden]) [data-of="${index}"]`).focus({ preventScroll: true });
    this.screen.say(`Seen: ${measuredText(by)}.`);
  }

  /** Takes an answer to how a test pour was looked at; it is the same for every cup. */
  lookedHow(index: number): void {
    const { state, screen } = this;
    const block = screen.part(`[data-cup="${index}"] [data-round]`);
    const { value: what } = block.querySelector<HTMLSelectElement>('[name="howWhat"]')!;
    const isChip = what === 'chip';
    const isWhole = what === 'whole';
    const isAnother = wholeIn(state) !== undefined && wholeIn(state) !== isWhole;
    const { chip, ...typed } = typedHow(block);
    const { settings } = state.data;
    const before = state.looked?.thicknessMm;
    const how = howOf({ ...typed, ...(isChip ? { chip: chip ?? usualChip(settings) } : {}) }, settings, before);
    if (typeof how === 'string') {
      screen.mark({ fault: how, at: block.querySelector<HTMLInputElement>('[name="howChip"]')! });
      return;
    }
    state.looked = how;
    if (isAnother) state.whole = isWhole;
    state.saveDrafts();
    if (isAnother) for (const at of state.work.cups.keys()) screen.showCup(at);
    screen.showHow(index);
  }

  addElse(index: number): void {
    const { screen } = this;
    const { work, data, materials } = this.state;
    const cup = screen.part(`[data-cup="${index}"]`);
    const select = cup.querySelector<HTMLSelectElement>('[name="material"]')!;
    const at = cup.querySelector<HTMLInputElement>('[name="amount"]')!;
    const now = cupNow(work, index, logShelf(data));
    if (isEmpty(now.cup) && !this.isBeforeRound(index)) {
      screen.complain({ fault: 'The cup is empty: add plastic first, or start a new cup.', at });
      return;
    }
    const plastic = Object.entries(now.cup.plastics);
    const ml = plastic.reduce((sum, [, each]) => sum + each, 0);
    const grams = plastic.reduce((sum, [id, each]) => sum + each * required(materials, id).density, 0);
    const amount = typedAmount(at.value, required(dosedIn(data), select.value), { ml, grams });
    if ('fault' in amount) screen.complain({ fault: amount.fault, at });
    else this.logElse(index, { do: 'add', amounts: [amount] }, this.draftWith(index, { amount: '' }));
  }

  addPlastic(index: number): void {
    const at = this.screen.part(`[data-cup="${index}"]`).querySelector<HTMLInputElement>('[name="addedMl"]')!;
    const ml = volumeIn(at, 'addedMl', this.state.data.settings);
    if (typeof ml !== 'number') {
      this.screen.complain(ml);
      return;
    }
    this.logElse(index, { do: 'plastic', ml }, this.draftWith(index, { addedMl: '' }));
  }

  /** Says of the last look, which the shelf cannot make, that it was looked at again. */
  lookedAgain(index: number): void {
    const { data, work } = this.state;
    const checked = withLookChecked(work, index, logShelf(data));
    if (this.state.put(checked)) this.show(index, 'Your look stays as it is.');
  }

  /** Takes back what was done last, all of it, a shot of both cups from both; a round is put back into its form, to be mended. */
  undo(index: number): void {
    const { state, screen } = this;
    const { settings } = state.data;
    const { steps } = state.work.cups[index]!;
    const shelf = logShelf(state.data);
    const what = lastDone(steps, cupNow(state.work, index, shelf).rounds);
    const last = doings(steps).at(-1) ?? [];
    const ofBoth = withoutWholeRound(state.work, index, shelf);
    state.work = ofBoth?.work ?? withoutLastDone(state.work, index);
    state.begun = true;
    const seen = [...last, ...(ofBoth?.other ?? [])].find((step) => step.do === 'see');
    if (seen) state.looked = keptHow(seen);
    if (ofBoth) {
      state.whole = true;
      state.draft(1 - index, this.draftWith(1 - index, draftOf(ofBoth.other, settings)));
      screen.showCup(1 - index);
    }
    const isRound = last.some((step) => step.do === 'pour' || step.do === 'see' || step.do === 'heat');
    state.draft(index, this.draftWith(index, isRound ? draftOf(last, settings) : { mixed: [] }));
    const back = isRound ? ' It is in the form again.' : '';
    this.show(index, `Undone: ${what}${ofBoth ? ', in both cups' : ''}.${back}`);
  }

  private draftWith(index: number, changed: CupDraft): CupDraft {
    return { ...this.state.drafts[index], ...changed };
  }

  /** Puts steps into the log; what was typed for them is a draft no longer once they are there. */
  private log(
    index: number,
    steps: readonly WorkStep[],
    says: string,
    draft?: CupDraft,
    then: () => string = () => says,
  ): void {
    if (!this.state.put(withSteps(this.state.work, index, ...steps))) return;
    if (draft) this.state.draft(index, draft);
    this.show(index, says, then);
  }

  /** Puts something else into the log, where it was said to have gone in. */
  private logElse(index: number, step: WorkStep, draft: CupDraft): void {
    if (this.isBeforeRound(index)) this.logBefore(index, [step], 'Logged, before the round.', draft);
    else this.log(index, [step], 'Logged.', draft);
  }

  /** Whether the maker says that something went in before the last round. */
  private isBeforeRound(index: number): boolean {
    const cup = this.screen.part(`[data-cup="${index}"]`);
    return cup.querySelector<HTMLInputElement>('[name="beforeRound"]')?.checked === true;
  }

  private logBefore(index: number, steps: readonly WorkStep[], says: string, draft?: CupDraft): void {
    const { work, data } = this.state;
    if (!this.state.put(withStepsBeforeLook(work, index, steps, logShelf(data)))) return;
    if (draft) this.state.draft(index, draft);
    this.show(index, says);
  }

  /** Tells who cannot see it what stands at the top of a cup that was looked at. */
  private tellVerdict(index: number): void {
    const { state, screen } = this;
    const { now, next } = state.advice(index);
    const words = now.seen && next.advice.kind !== 'ask-what-went-in' ? nextWords(next, state.data.settings) : '';
    screen.tell(words);
  }

  private show(index: number, says: string, then: () => string = () => says): void {
    // What was done is kept before the page can be left.
    const { state, screen } = this;
    state.save();
    screen.showFile();
    const { work } = state;
    screen.slow.afterPaint('Working it out…', () => {
      // Who has changed the match meanwhile has shown it.
      if (state.work !== work) return;
      screen.showCup(index);
      this.tellVerdict(index);
      const asks = screen.root.querySelector<HTMLElement>(`#cup-${index}-asks`);
      const done = then();
      (asks ?? screen.part(`[data-cup]:not([hidden]) > h2`)).focus();
      screen.say(done);
      if (asks) screen.tell(asks.textContent);
    });
  }
}

const NOTHING_WENT_IN: WorkStep = { do: 'add', amounts: [] };
const NOTHING_LOGGED =
  'Nothing has been logged since the last shot. If nothing went into either cup, go on; if something did, cancel and log it first.';

/** The verdict on a cup, and what to do with it. */
function nextWords(next: CupAdvice['next'], units: VolumeUnit & HeatUnit): string {
  const says = nextAdditionText(next, units);
  return next.now && next.advice.kind !== 'leave-it' ? `${sentence(verdictText(next.now))}. ${says}` : says;
}

/** A round as it was typed. */
function draftOf(round: readonly WorkStep[], unit: VolumeUnit & HeatUnit): CupDraft {
  const pour = round.find((step) => step.do === 'pour');
  const see = round.find((step) => step.do === 'see');
  const { celsius, again, heldMinutes } = round.find((step) => step.do === 'heat') ?? {};
  return {
    heat: celsius === undefined ? '' : heatInField(celsius, unit.temperature),
    again: String(again ?? 0),
    held: String(heldMinutes ?? ''),
    pour: pour === undefined ? '0' : volumeInField(pour.ml, unit),
    pouredMl: pour?.ml,
    sawWhite: see?.overWhite !== undefined,
    sawBlack: see?.overBlack !== undefined,
    overWhite: see?.overWhite === undefined ? '' : colourText(see.overWhite),
    overBlack: see?.overBlack === undefined ? '' : colourText(see.overBlack),
    measured: see?.measured,
    note: see?.note ?? '',
  };
}
