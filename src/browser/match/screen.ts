import { dayOf } from '../../book/day-of.ts';
import { type Html, html } from '../../render/html.ts';
import { chips } from '../../render/swatch/chip.ts';
import { sentence } from '../../render/words.ts';
import { volumeInField } from '../../units/volume-field.ts';
import { defined } from '../../values/defined.ts';
import { markBegun } from './begun-mark.ts';
import { cupView } from './cup-view.ts';
import { clearFault, FAULT, showFault } from './fault-beside.ts';
import { measuredSays, sidesView } from './fields-view.ts';
import { howSeenView, wholeIn } from './how-seen-view.ts';
import type { LearnedFile } from './learned-file.ts';
import type { Mistyped } from './mistyped.ts';
import { baitOf } from './page-shelf.ts';
import { firstView, viewsOf } from './proposal-view.ts';
import { redraw } from './redraw.ts';
import { sidesQuestionView } from './sides-question.ts';
import { SlowWork } from './slow-work.ts';
import type { MatchState, SetupStep } from './state.ts';
import { tabsView, unsaidView } from './tabs-view.ts';
import { isSaid, sideOf } from './work.ts';
import { recipeFile, type TakenFile } from './work-recipe.ts';
import { targetFile } from './work-target.ts';

/** Puts the state on the page. */
export class MatchScreen {
  readonly root: HTMLElement;
  readonly slow: SlowWork;
  private readonly state: MatchState;

  /** @param learned what the book has learned, loaded when a cup is first to be judged */
  constructor(root: HTMLElement, state: MatchState, learned: LearnedFile) {
    this.root = root;
    this.state = state;
    this.slow = new SlowWork(state, learned, this.part('[data-cups]'), (text) => this.say(text));
  }

  part<T extends HTMLElement>(selector: string): T {
    return this.root.querySelector<T>(selector)!;
  }

  say(text: string): void {
    for (const fault of this.root.querySelectorAll('.match-fault')) clearFault(fault);
    const says = this.part('[data-says]');
    says.classList.remove('unseen-words');
    says.textContent = text;
  }

  /** Says something that stands on the page already to who cannot see it. */
  tell(text: string): void {
    this.part('[data-heard]').textContent = text;
  }

  /** Says what is wrong with something typed, and marks it. Nothing moves for it: a finger may be on its way to a button. */
  mark({ fault, at }: Mistyped): void {
    this.say(fault);
    at.setAttribute('aria-invalid', 'true');
  }

  /** Takes the mark of something typed wrong away, once it is typed anew. */
  unmark(at: HTMLElement): void {
    at.removeAttribute('aria-invalid');
    if (at.getAttribute('aria-describedby') === FAULT) this.say('');
  }

  /** Says what keeps a button from doing its work, and leads there. */
  complain(mistyped: Mistyped): void {
    const step = mistyped.at.closest<HTMLElement>('[data-step]')?.dataset.step;
    if (step !== undefined && !this.state.inProgress) this.goTo(step as SetupStep);
    const cup = mistyped.at.closest<HTMLElement>('[data-cup]')?.dataset.cup;
    if (cup !== undefined) this.showOnly(Number(cup));
    for (let fold = mistyped.at.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
      fold.open = true;
    this.mark(mistyped);
    const isBeside = showFault(mistyped.fault, mistyped.at);
    // Who hears it has it from there all the same.
    this.part('[data-says]').classList.toggle('unseen-words', isBeside);
    mistyped.at.focus();
  }

  /** Shows a question of the setup, alone before the first cup and among the others after it. */
  goTo(at: SetupStep): void {
    this.state.at = at;
    if (this.state.inProgress) this.part<HTMLDetailsElement>('[data-setup]').open = true;
    this.showStep();
    this.lead(this.part(`[data-step="${at}"] h2`));
  }

  /** Begins where something is, and not at the foot of what was there before. */
  private lead(head: HTMLElement): void {
    head.focus({ preventScroll: true });
    head.scrollIntoView({ block: 'start' });
  }

  private showStep(): void {
    const { at, inProgress } = this.state;
    // Photos lead to the next question by themselves: what stands below a long one stays where it is.
    const setup = this.part('[data-setup]');
    setup.style.minHeight = inProgress ? '' : `${setup.offsetHeight}px`;
    for (const step of this.root.querySelectorAll<HTMLElement>('[data-step]'))
      step.hidden = !inProgress && step.dataset.step !== at;
  }

  /** Shows one of two cups. */
  showOnly(index: number): void {
    this.state.shown = index;
    for (const cup of this.root.querySelectorAll<HTMLElement>('[data-cup]'))
      cup.hidden = Number(cup.dataset.cup) !== index && this.state.work.cups.length > 1;
    for (const tab of this.root.querySelectorAll<HTMLElement>(`[role="tab"]`)) {
      const isShown = Number(tab.dataset.tab) === index;
      tab.setAttribute('aria-selected', String(isShown));
      tab.tabIndex = isShown ? 0 : -1;
    }
  }

  /** Leads to where the recipe is named and saved. */
  showSave(): void {
    this.lead(this.part('#match-take'));
  }

  showAll(): void {
    this.showStep();
    this.showFields();
    this.showSides();
    this.showFirst();
    this.showCups();
  }

  showFields(): void {
    const { work, data } = this.state;
    const set = (name: string, value: string): void => {
      const field = this.part<HTMLInputElement | HTMLSelectElement>(`[name="${name}"]`);
      field.value = value;
      field.removeAttribute('aria-invalid');
    };
    set('target', work.target ?? '');
    set('tolerance', String(work.tolerance));
    set('mold', work.mold);
    set('plastic', work.plastic);
    set('plasticMl', volumeInField(work.plasticMl, data.settings));
    set('title', work.title);
    // Readers are not told what is left.
    const inStock = this.root.querySelector<HTMLInputElement>('[name="inStock"]');
    if (inStock) inStock.checked = work.inStock;
    const boxes = [...this.root.querySelectorAll<HTMLInputElement>('[name="shelf"]')];
    for (const box of boxes) box.checked = !work.without.includes(box.value);
    this.part('[data-shelf-count]').textContent = `${boxes.filter(({ checked }) => checked).length} of ${boxes.length}`;
    // Of a target with one part nothing else can be made than one cup.
    const parts = data.targets.find(({ id }) => id === work.target)?.parts.length;
    for (const kind of this.root.querySelectorAll<HTMLButtonElement>('[data-kind]')) {
      kind.setAttribute('aria-pressed', String(kind.dataset.kind === work.arrangement));
      kind.disabled = parts !== undefined && (kind.dataset.kind === 'solid') !== (parts === 1);
    }
  }

  showSides(): void {
    redraw(this.part('[data-sides]'), sidesView(this.state.work, this.state.data));
    this.showSidesQuestion();
  }

  showSidesQuestion(): void {
    redraw(this.part('[data-sides-question]'), sidesQuestionView(this.state.work, this.state.data));
  }

  /** The colours of the sides alone, while their fields are being used. */
  showSwatches(): void {
    this.showSidesQuestion();
    for (const [index, side] of this.state.work.sides.entries()) {
      this.part(`[data-side="${index}"] [data-measured-says]`).textContent = measuredSays('side', side.measured);
      this.part(`[data-side="${index}"] .match-swatch`).innerHTML = isSaid(side)
        ? chips([viewsOf(side)], '').toString()
        : '';
    }
  }

  showFirst(): void {
    redraw(
      this.part('[data-first]'),
      firstView(this.state.answers, this.state.work.sides, this.state, baitOf(this.state.work, this.state.data)),
    );
  }

  /** The cups, above everything else as soon as there is work in progress. */
  showCups(): void {
    const { work, inProgress } = this.state;
    const many = work.cups.length > 1;
    const shown = many ? this.state.shown : 0;
    const was = this.root.hasAttribute('data-begun');
    this.root.toggleAttribute('data-begun', inProgress);
    markBegun(inProgress);
    if (was !== inProgress) this.part<HTMLDetailsElement>('[data-setup]').open = !inProgress;
    this.showStep();
    if (inProgress && !this.state.taught) {
      this.showFile();
      this.slow.whenTaught(() => this.showCups());
      return;
    }
    redraw(
      this.part('[data-cups]'),
      inProgress
        ? html`${tabsView(work, shown)}${work.cups.map(
            ({ name }, index) =>
              html`<section class="part match-cup" id="cup-${index}" data-cup="${index}"${many ? html` role="tabpanel"` : ''} aria-labelledby="cup-${index}-head"${many && index !== shown ? html` hidden` : ''}><h2${many ? html` class="unseen-words"` : ''} id="cup-${index}-head" tabindex="-1">${many ? sentence(name) : 'The cup'}</h2><div class="match-cup-shown" data-cup-shown data-round>${this.cup(index)}</div></section>`,
          )}`
        : '',
    );
    this.showFile();
  }

  /** How a test pour was looked at, in the form of each cup; in that which is being filled in it stays unfolded. */
  showHow(filledIn: number): void {
    const used = document.activeElement;
    // What is typed in it is taken now, not while it goes.
    if (used instanceof HTMLElement && used.closest('[data-how-shown]')) used.blur();
    const { looked, data } = this.state;
    for (const [index] of this.state.work.cups.entries()) {
      const shown = this.part(`[data-cup="${index}"] [data-how-shown]`);
      redraw(shown, howSeenView(looked, `cup-${index}-how`, data.settings, wholeIn(this.state)));
      if (index === filledIn) shown.querySelector('details')!.open = true;
    }
    // Within a fold that was shut it could not be used.
    if (used?.id) document.getElementById(used.id)?.focus({ preventScroll: true });
  }

  /** A cup; with it the other one of a finished bait, which is seen in front of it. */
  showCup(index: number): void {
    const { work } = this.state;
    for (const at of work.arrangement === 'together' ? work.cups.keys() : [index])
      redraw(this.part(`[data-cup="${at}"] [data-cup-shown]`), this.cup(at));
    this.showFile();
  }

  private cup(index: number): Html {
    const { work, data, drafts } = this.state;
    if (!isSaid(sideOf(work, index))) return unsaidView(work, index);
    const advice = this.state.advice(index);
    const { now, aim } = advice;
    const { lookNow, aloneNow, roundsSeen } = this.state.solver!;
    const look = lookNow(advice, work, data);
    const { thicknessMm } = this.state.looked ?? {};
    const alone =
      aim.moved(thicknessMm) && !now.seen && !wholeIn(this.state)
        ? aloneNow(advice, work, data, thicknessMm)
        : undefined;
    return cupView(
      {
        index,
        work,
        cup: work.cups[index]!,
        side: sideOf(work, index),
        advice,
        ...defined({ look, alone }),
        rounds: roundsSeen(advice, work, data),
        draft: drafts[index] ?? {},
      },
      this.state,
    );
  }

  /** What there is to take away, once there is something. */
  showFile(): void {
    const { recipe, target } = this.files();
    this.part('[data-take-away]').hidden = !this.state.hasLog;
    this.part('[data-file-name]').textContent =
      `Put it into the book as colours/${recipe.name}${target ? `, and with it the target that it is for, as targets/${target.name}` : ''}.`;
    this.part('[data-file="recipe"]').textContent = recipe.text;
    this.part('[data-file="target"]').textContent = target?.text ?? '';
    this.part('[data-take-target]').hidden = target === undefined;
  }

  /** The recipe's file, and that of a target which was described. */
  files(): { readonly recipe: TakenFile; readonly target: TakenFile | undefined } {
    const made = dayOf(new Date());
    const { work, data } = this.state;
    const target = targetFile(work, new Set(data.targets.map(({ id }) => id)), data.settings);
    const id = target?.name.replace(/\.md$/, '') ?? work.target;
    return {
      recipe: recipeFile(work, { made, taken: new Set(data.recipes), target: id, unit: data.settings }),
      target,
    };
  }
}
