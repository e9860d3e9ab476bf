/**
 * What can be done with the target and the shelf: choose, describe, ask for first recipes.
 *
 * @packageDocumentation
 */

import { ROUNDING_ML } from '../../cup/ledger.ts';
import { noLessThan } from '../../units/volume-field.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { afterPause } from '../page-data.ts';
import { leastPlasticMl } from './least-plastic.ts';
import { within } from './limits.ts';
import { type MeasuredColours, measuredText } from './measured-by.ts';
import { isMistyped, type Mistyped } from './mistyped.ts';
import { logShelf } from './page-shelf.ts';
import { mistypedColour, readFields, readSides } from './read-forms.ts';
import type { MatchScreen } from './screen.ts';
import { NEW_FLAKE, type WorkFlake } from './side-flake.ts';
import { unlikeSidesOf } from './sides-question.ts';
import type { MatchState, SetupStep } from './state.ts';
import { type Arrangement, unsaidSide, type Work, type WorkSide, withSides } from './work.ts';
import { withBookTarget, withRecipe } from './work-begun.ts';

/** Actions on the target and the shelf. */
export class TargetActions {
  private readonly state: MatchState;
  private readonly screen: MatchScreen;
  private readonly showCupsSoon = afterPause(() => this.showCups(), 400);

  constructor(state: MatchState, screen: MatchScreen) {
    this.state = state;
    this.screen = screen;
  }

  /** Asks before a log is thrown away. */
  mayReplace(): boolean {
    return !this.state.hasLog || window.confirm('This throws away the log of this match. Go on?');
  }

  choose(id: string): void {
    const { state, screen } = this;
    if (!this.mayReplace()) {
      screen.showFields();
      return;
    }
    state.work = withBookTarget(state.work, id, state.data);
    state.drafts = [];
    state.answers = [];
    if (state.work.target !== undefined) state.at = 'cup';
    screen.showAll();
    const { title } = state.data.targets.find((each) => each.id === id) ?? { title: undefined };
    screen.say(title === undefined ? 'Describe the target by its colours.' : `The target is ${title}.`);
  }

  arrange(arrangement: Arrangement): void {
    const { state, screen } = this;
    const { sides } = state.work;
    const first = sides[0]!;
    const wanted = arrangement === 'solid' ? 1 : 2;
    if (wanted < sides.length && !this.mayReplace()) {
      screen.showFields();
      return;
    }
    // Nobody has said yet what the second one looks like.
    const { overWhite: _, overBlack: __, measured: ___, flakes: ____, ...unsaid } = first;
    const two =
      sides.length === 2
        ? sides
        : [
            { ...first, name: 'back' },
            { ...unsaid, name: 'belly' },
          ];
    this.seenAs(arrangement, wanted === 1 ? [{ ...first, name: 'body' }] : two);
  }

  /** Takes an answer to how the two sides were seen. */
  sidesSeen(arrangement: 'apart' | 'together'): void {
    const { state, screen } = this;
    const { work } = state;
    if (arrangement === 'together') {
      state.work = { ...work, whole: true };
      screen.showSidesQuestion();
    } else this.seenAs('apart', work.sides);
    screen.say(arrangement === 'apart' ? 'Each side counts by itself.' : 'Both are sides of one bait.');
    screen.part('#match-target').focus();
  }

  /** A target of the book that is seen otherwise than its file says is no longer the book's. */
  private seenAs(arrangement: Arrangement, sides: readonly WorkSide[]): void {
    const { state, screen } = this;
    const { target, whole: _, ...described } = state.work;
    const same = target !== undefined && arrangement === state.work.arrangement;
    state.work = withSides({ ...described, ...(same ? { target } : {}), arrangement }, sides);
    state.answers = [];
    screen.showFields();
    screen.showSides();
    screen.showFirst();
    this.showCups();
  }

  /** The first of the target's and the cup's fields that holds what it may not: what is worked out goes by them all. */
  mistyped(): Mistyped | undefined {
    const { root } = this.screen;
    const { work, data } = this.state;
    const fields = this.readFields();
    const sides = readSides(root, work.sides, data.settings);
    const found = [mistypedColour(this.screen.part('[data-sides]')), fields, sides].flatMap((read) =>
      read !== undefined && isMistyped(read) ? [read] : [],
    );
    const inOrder = [...root.querySelectorAll('input')];
    return found.sort((one, other) => inOrder.indexOf(one.at) - inOrder.indexOf(other.at))[0];
  }

  /** Goes to a question about the target and the cup, once what is asked before it was answered. */
  goTo(at: SetupStep): void {
    const mistyped = at === 'target' ? undefined : this.mistyped();
    if (mistyped) this.screen.complain(mistyped);
    else this.screen.goTo(at);
  }

  private readFields(): Work | Mistyped {
    const { state, screen } = this;
    const read = readFields(screen.root, state.work, state.data.settings);
    if (isMistyped(read)) return read;
    const least = leastPlasticMl(read, logShelf(state.data));
    if (read.plasticMl >= least - ROUNDING_ML) return read;
    return {
      fault: `More than that was poured from a cup: it started with at least ${noLessThan(least, state.data.settings)}.`,
      at: screen.part<HTMLInputElement>('[name="plasticMl"]'),
    };
  }

  /** Takes over the fields of the cup and the shelf. */
  takeFields(): void {
    const { state, screen } = this;
    const before = state.work;
    const read = this.readFields();
    if (isMistyped(read)) {
      screen.mark(read);
      return;
    }
    state.work = read;
    if (read.mold !== before.mold && read.target === undefined) {
      const thicknessMm = within('thicknessMm', required(state.data.molds, read.mold).bodyMm);
      state.work = withSides(
        read,
        read.sides.map((side) => ({ ...side, thicknessMm })),
      );
      screen.showSides();
    }
    screen.say('');
    screen.showFields();
    this.forgetAnswers();
    this.showCups();
  }

  /** Takes over the described target: one that is changed by hand is no longer the book's. */
  takeSides(): void {
    const { state, screen } = this;
    const sides = readSides(screen.root, state.work.sides, state.data.settings);
    if (isMistyped(sides)) {
      screen.mark(sides);
      return;
    }
    if (!mistypedColour(screen.part('[data-sides]'))) {
      screen.say('');
      for (const each of screen.part('[data-sides]').querySelectorAll('[aria-invalid]'))
        each.removeAttribute('aria-invalid');
    }
    const { target: _, ...described } = state.work;
    state.work = withSides(described, sides);
    screen.part<HTMLSelectElement>('[name="target"]').value = '';
    screen.showSwatches();
    this.forgetAnswers();
    this.showCupsSoon();
  }

  /** Takes what photos of a target say: both colours, how sure they are, and its flake where it shows any. */
  takeMeasured(index: number, { overWhite, overBlack, by, flakes }: MeasuredColours): void {
    const { state, screen } = this;
    const { target: _, ...described } = state.work;
    const measured = (side: WorkSide): WorkSide => {
      const { overWhite: white, overBlack: __, measured: ___, ...others } = side;
      return {
        ...others,
        // Seen over black alone, the white is still to be said, and counts as typed.
        ...defined({
          overWhite: overWhite ?? white,
          overBlack,
          measured: overWhite === undefined ? undefined : by,
        }),
        ...(flakes.length > 0 ? { flakes } : {}),
      };
    };
    state.work = withSides(
      described,
      state.work.sides.map((side, at) => (at === index ? measured(side) : side)),
    );
    screen.part<HTMLSelectElement>('[name="target"]').value = '';
    screen.showSides();
    this.forgetAnswers();
    this.showCups();
    const unsaid = unsaidSide(state.work);
    const whose = state.work.sides.length > 1 ? `The ${state.work.sides[index]!.name}` : 'The target';
    if (unsaid === undefined && state.at === 'target' && !state.inProgress && !unlikeSidesOf(state.work, state.data))
      screen.goTo('cup');
    else screen.part(`#side-${unsaid ?? index}-measure`).focus();
    screen.say(`${whose} is ${measuredText(by)}.`);
  }

  addFlake(index: number): void {
    const flakes = this.state.work.sides[index]!.flakes ?? [];
    this.putFlakes(index, [...flakes, NEW_FLAKE]);
    this.screen.part(`#side-${index}-flake-${flakes.length}-colour`).focus();
  }

  removeFlake(index: number, flake: number): void {
    this.putFlakes(
      index,
      (this.state.work.sides[index]!.flakes ?? []).filter((_, at) => at !== flake),
    );
    this.screen.part(`[data-side="${index}"] [data-add-flake]`).focus();
  }

  private putFlakes(index: number, flakes: readonly WorkFlake[]): void {
    const { state, screen } = this;
    const { target: _, ...described } = state.work;
    state.work = withSides(
      described,
      state.work.sides.map((side, at) => (at === index ? { ...side, flakes } : side)),
    );
    screen.part<HTMLSelectElement>('[name="target"]').value = '';
    screen.showSides();
    this.forgetAnswers();
  }

  find(): void {
    const { state, screen } = this;
    const says = 'Looking through your shelf…';
    screen.say(says);
    screen.slow.whenTaught(() =>
      screen.slow.afterPaint(says, () => {
        state.answers = state.solver!.firstAnswers(state.work, state.taught!);
        state.saveDrafts();
        screen.showFirst();
        if (!state.inProgress) screen.goTo('first');
        const found = state.answers.reduce((sum, { recipe }) => sum + recipe.proposals.length, 0);
        screen.say(found === 0 ? 'No recipe found.' : found === 1 ? 'One recipe found.' : `${found} recipes found.`);
      }),
    );
  }

  beginPlain(): void {
    const { state, screen } = this;
    state.beginPlain();
    this.showCups();
    screen.slow.whenTaught(() => screen.part('#cup-0-head').focus());
  }

  use(answer: number, proposal: number, weighing: boolean): void {
    const { state, screen } = this;
    const recipe = state.answers[answer]!.recipe.proposals[proposal]!;
    const replaced = recipe.cups.length > 1 ? state.work.cups : [state.work.cups[answer]!];
    if (
      replaced.some(({ steps }) => steps.length > 0) &&
      !window.confirm('This starts the cup over with the recipe. Go on?')
    )
      return;
    if (!state.put(withRecipe(state.work, answer, recipe, state.data, weighing))) return;
    const begun = recipe.cups.length > 1 ? [...state.work.cups.keys()] : [answer];
    for (const at of begun) state.draft(at, { ...state.drafts[at], mixed: [] });
    void state.save();
    screen.showCups();
    screen.showOnly(begun[0]!);
    screen.part(`#cup-${begun[0]}-head`).focus();
    screen.say('Mix this, pour a bait, look at it, and log the round.');
  }

  private showCups(): void {
    this.screen.showCups();
  }

  private forgetAnswers(): void {
    if (this.state.answers.length === 0) return;
    this.state.answers = [];
    this.screen.showFirst();
  }
}
