import { colourFromPhotos } from '../photo/colour-from-photos.ts';
import type { CupActions } from './cup-actions.ts';
import { measuredSays } from './fields-view.ts';
import type { FileActions } from './file-actions.ts';
import { MOST } from './limits.ts';
import { measuredColours } from './measured-by.ts';
import { mistypedColour } from './read-forms.ts';
import type { RoomCheck } from './room-check.ts';
import type { MatchScreen } from './screen.ts';
import type { MatchState, SetupStep } from './state.ts';
import type { TargetActions } from './target-actions.ts';
import type { Arrangement } from './work.ts';
import { hexOfColour, typedColour } from './work-colour.ts';

/** What the events of the page lead to. */
export interface MatchActions {
  readonly target: TargetActions;
  readonly cup: CupActions;
  readonly file: FileActions;
  readonly room: RoomCheck;
}

/** Listens to the whole page at once, since its parts are drawn anew all the time. */
export function listen(state: MatchState, screen: MatchScreen, actions: MatchActions): void {
  const { root } = screen;
  root.addEventListener('input', (event) => onInput(event.target as HTMLInputElement, state, screen, actions));
  root.addEventListener('change', (event) => onChange(event.target as HTMLInputElement, screen, actions));
  root.addEventListener('click', (event) => {
    const button = (event.target as HTMLElement).closest('button');
    if (button) onClick(button, screen, actions);
  });
  root.addEventListener('keydown', onKey);
  // A telephone that is put away may never come back to the script.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') state.save(true);
  });
}

function onInput(control: HTMLInputElement, state: MatchState, screen: MatchScreen, actions: MatchActions): void {
  if (control.ariaInvalid === 'true') screen.unmark(control);
  const twin = control.dataset.hexOf;
  if (twin !== undefined) {
    const colour = typedColour(control.value);
    const picker = screen.part<HTMLInputElement>(`#${twin}`);
    // What is half typed is kept as well.
    if (control.closest('[data-round]')) draft(control, picker.name, control.value, state);
    if (colour === undefined) return;
    control.removeAttribute('aria-invalid');
    picker.value = hexOfColour(colour);
    if (!control.closest('[data-round]')) onInput(picker, state, screen, actions);
    return;
  }
  if (control.type === 'color') {
    const digits = screen.root.querySelector<HTMLInputElement>(`[data-hex-of="${control.id}"]`);
    if (digits && digits !== document.activeElement) digits.value = control.value;
  }
  if (control.closest('[data-side]')) {
    // A number or a text that is being typed is judged when it is done.
    if (control.type !== 'text') actions.target.takeSides();
  } else if (control.name === 'mixed') {
    const list = control.closest('ul')!.querySelectorAll<HTMLInputElement>(':checked');
    draft(
      control,
      'mixed',
      [...list].map(({ value }) => value),
      state,
    );
  } else if (control.name === 'pour') {
    actions.cup.takePour(indexOf(control), { pour: control.value });
  } else if (control.closest('[data-cup]') && !control.closest('[data-how]')) {
    draft(control, control.name, control.type === 'checkbox' ? control.checked : control.value, state);
  } else if (control.name === 'title') {
    state.work = { ...state.work, title: control.value.slice(0, MOST.title) };
    screen.showFile();
  }
}

function draft(
  control: HTMLElement,
  name: string,
  value: string | boolean | readonly string[],
  state: MatchState,
): void {
  const index = indexOf(control);
  // What is typed anew was not measured.
  const isColour = name === 'overWhite' || name === 'overBlack';
  const typed = isColour ? { measured: undefined } : {};
  const says = isColour ? control.closest('[data-round]')?.querySelector('[data-measured-says]') : undefined;
  if (says) says.textContent = measuredSays('round', undefined);
  state.draft(index, { ...state.drafts[index], ...typed, [name]: value });
}

function onChange(control: HTMLInputElement, screen: MatchScreen, { target, cup, file }: MatchActions): void {
  if (control.dataset.hexOf !== undefined) {
    const unsaid = control.value.trim() === '' && control.closest('[data-round]');
    const mistyped = unsaid ? undefined : mistypedColour(control.parentElement!);
    if (mistyped) screen.mark(mistyped);
  } else if (control.matches('[data-import-file]')) void file.importWork(control);
  else if (control.name === 'target') target.choose(control.value);
  else if (control.closest('[data-side]')) {
    if (control.name === 'sawBlack')
      control.closest('[data-side]')!.querySelector<HTMLElement>('[data-black]')!.hidden = !control.checked;
    target.takeSides();
    if (control.name !== 'flakeLoad') return;
    screen.showSides();
    screen.part(`#${control.id}`).focus();
  } else if (control.closest('[data-how]')) cup.lookedHow(indexOf(control));
  else if ((control.name === 'sawWhite' || control.name === 'sawBlack') && control.closest('[data-round]')) {
    screen.showCup(indexOf(control));
    screen.part(`#${control.id}`).focus();
  } else if (!control.closest('[data-cup]') && control.name !== 'title') target.takeFields();
}

// What these do goes by the numbers of the target and the cup.
const BY_NUMBERS = [
  'find',
  'plain',
  'use',
  'take',
  'wentIn',
  'lookedAgain',
  'afresh',
  'noteRound',
  'addElse',
  'addPlastic',
  'save',
  'download',
  'copy',
  'export',
] as const;

function onKey(event: KeyboardEvent): void {
  const tab = (event.target as HTMLElement).closest('[role="tab"]');
  const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
  if (!tab || step === undefined) return;
  const tabs = [...tab.parentElement!.querySelectorAll<HTMLElement>('[role="tab"]')];
  tabs[(tabs.indexOf(tab as HTMLElement) + step + tabs.length) % tabs.length]!.click();
}

function onClick(button: HTMLButtonElement, screen: MatchScreen, { target, cup, file, room }: MatchActions): void {
  const { dataset } = button;
  const mistyped = BY_NUMBERS.some((name) => name in dataset) ? target.mistyped() : undefined;
  if (mistyped) {
    screen.complain(mistyped);
    return;
  }
  const weighing = dataset.weighing !== undefined;
  if (dataset.find !== undefined) target.find();
  else if (dataset.loadAgain !== undefined) screen.showCups();
  else if (dataset.kind !== undefined) target.arrange(dataset.kind as Arrangement);
  else if (dataset.go !== undefined) target.goTo(dataset.go as SetupStep);
  else if (dataset.tab !== undefined) cup.open(Number(dataset.tab));
  else if (dataset.poured !== undefined) cup.pourWhole(indexOf(button), dataset.poured === 'whole');
  else if (dataset.oneShot !== undefined) cup.pourOneShot(indexOf(button));
  else if (dataset.toSave !== undefined) screen.showSave();
  else if (dataset.photoFor !== undefined) void takeFromPhoto(button, { target, cup }, screen);
  else if (dataset.addFlake !== undefined) target.addFlake(sideOf(button));
  else if (dataset.removeFlake !== undefined) target.removeFlake(sideOf(button), Number(dataset.removeFlake));
  else if (dataset.sidesSeen !== undefined) target.sidesSeen(dataset.sidesSeen as 'apart' | 'together');
  else if (dataset.plain !== undefined) room.before(() => target.beginPlain());
  else if (dataset.use !== undefined)
    room.before(() => target.use(Number(dataset.use), Number(dataset.proposal), weighing));
  else if (dataset.take !== undefined) cup.take(indexOf(button), Number(dataset.take), weighing);
  else if (dataset.wentIn !== undefined) cup.answer(indexOf(button), dataset.wentIn as 'proposed' | 'else' | 'nothing');
  else if (dataset.lookedAgain !== undefined) cup.lookedAgain(indexOf(button));
  else if (dataset.afresh !== undefined) room.before(() => cup.beginAfresh(indexOf(button), weighing));
  else if (dataset.noteRound !== undefined) cup.noteRound(indexOf(button));
  else if (dataset.addElse !== undefined) cup.addElse(indexOf(button));
  else if (dataset.addPlastic !== undefined) cup.addPlastic(indexOf(button));
  else if (dataset.undo !== undefined) cup.undo(indexOf(button));
  else if (dataset.save !== undefined) file.save();
  else if (dataset.download !== undefined) file.downloadFile(dataset.download as 'recipe' | 'target');
  else if (dataset.copy !== undefined) void file.copyFile(dataset.copy as 'recipe' | 'target');
  else if (dataset.export !== undefined) file.exportWork();
  else if (dataset.import !== undefined) screen.part<HTMLInputElement>('[data-import-file]').click();
  else if (dataset.clear !== undefined) file.clear();
}

/** A target's own error limits a match more than anything else does, so it is worth three photos. */
const PHOTOS_OF_A_TARGET = 3;

/** Takes what was measured on the card, or puts a colour that was touched where one can be typed, as if it had been. */
async function takeFromPhoto(
  button: HTMLButtonElement,
  { target, cup }: Pick<MatchActions, 'target' | 'cup'>,
  screen: MatchScreen,
): Promise<void> {
  const field = button.dataset.photoFor!;
  const ofTarget = button.closest('[data-side]') !== null;
  const at = ofTarget ? sideOf(button) : Number(button.dataset.of ?? indexOf(button));
  const found = await colourFromPhotos(ofTarget ? PHOTOS_OF_A_TARGET : 1, 'at-once');
  if (found === undefined) return;
  if (found.kind === 'measured') {
    (ofTarget ? target : cup).takeMeasured(at, measuredColours(found));
    return;
  }
  const digits = screen.part<HTMLInputElement>(`[data-hex-of="${field}"]`);
  digits.value = found.hex;
  for (const event of ['input', 'change']) digits.dispatchEvent(new Event(event, { bubbles: true }));
  screen.part(`[data-photo-for="${field}"]`).focus();
}

function indexOf(control: HTMLElement): number {
  return Number(control.closest<HTMLElement>('[data-cup]')!.dataset.cup);
}

function sideOf(control: HTMLElement): number {
  return Number(control.closest<HTMLElement>('[data-side]')!.dataset.side);
}
