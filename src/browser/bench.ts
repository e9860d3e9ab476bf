/**
 * At the bench: the cups of the page's batch one a screen, struck off with a thumb, with a timer and the screen kept awake. What is struck off is
 * what is ticked on the page.
 *
 * @packageDocumentation
 */
import { html } from '../render/html.ts';
import { BenchClock } from './bench-clock.ts';
import { KeptAwake } from './kept-awake.ts';
import { TICKS_SHOWN } from './tick-rows.ts';

const HASH = '#bench';
/** Chosen once, for every page. */
const BY_KEY = 'cupbook bench by';

const textOf = (part: ParentNode, selector: string): string => part.querySelector(selector)?.textContent?.trim() ?? '';

/** Storage may be refused, as in a private window. */
function kept(storage: 'localStorage' | 'sessionStorage', key: string): string | null {
  try {
    return window[storage].getItem(key);
  } catch {
    return null;
  }
}

function keep(storage: 'localStorage' | 'sessionStorage', key: string, text: string): void {
  try {
    window[storage].setItem(key, text);
  } catch {
    // It then holds until the page is left.
  }
}

function start(dialog: HTMLDialogElement, opens: HTMLElement): void {
  const part = <T extends HTMLElement = HTMLElement>(name: string): T =>
    dialog.querySelector<T>(`[data-bench-${name}]`)!;
  const cupKey = `cupbook bench cup ${location.pathname}`;
  const clock = new BenchClock(
    { time: part('time'), ring: part('ring'), run: part('run'), zero: part('zero'), up: part('up') },
    { read: (key) => kept('sessionStorage', key), write: (key, text) => keep('sessionStorage', key, text) },
  );
  const awake = new KeptAwake(part('lit'), part('awake'));
  let at = 0;
  let hasPushed = false;

  const cups = (): readonly HTMLElement[] => [...document.querySelectorAll<HTMLElement>('.cup:has(.tick)')];
  const current = (): HTMLElement | undefined => cups()[at];
  const bySpoons = (): boolean => dialog.querySelector<HTMLInputElement>('[name="bench-by"][value="spoons"]')!.checked;

  const showHeat = (cup: HTMLElement): void => {
    const said = part('heat-said');
    const own = cup.querySelector('.heat');
    said.hidden = own === null;
    said.replaceChildren(...(own === null ? [] : [own.cloneNode(true)]));
    for (const heat of dialog.querySelectorAll<HTMLElement>('[data-bench-heat]'))
      heat.hidden = own !== null || heat.dataset.benchHeat !== cup.dataset.cup;
  };

  const show = (): void => {
    const all = cups();
    const cup = current();
    if (cup === undefined) return;
    const colour = textOf(cup.closest('[data-colour]') ?? document.createElement('div'), 'h2');
    const [name = '', share = ''] = ['h3 > span:not(.dot, .cup-share)', '.cup-share'].map((of) => textOf(cup, of));
    part('name').textContent = colour === '' ? name : `${colour}: ${name}`;
    part('place').textContent =
      `${all.length === 1 ? '' : `Cup ${at + 1} of ${all.length}. `}${share.replace(/:$/, '')}`;
    showHeat(cup);
    const isMeasured = cup.querySelector('.weighs') !== null;
    const canWeigh = cup.dataset.weighable !== undefined;
    part('by').hidden = ![...all].some((each) => each.dataset.weighable !== undefined && each.querySelector('.weighs'));
    part('unweighable').hidden = bySpoons() || canWeigh || !isMeasured;
    const weighs = !bySpoons() && canWeigh;
    part('rows').replaceChildren(...[...cup.querySelectorAll('tbody tr')].map((row) => rowOf(row, weighs)));
    const notes = [...cup.querySelectorAll(weighs ? '.fine:not(.rounding)' : '.fine')];
    part('notes').replaceChildren(...notes.map((note) => note.cloneNode(true)));
    part('turn').hidden = all.length === 1;
    part<HTMLButtonElement>('back').disabled = at === 0;
    part<HTMLButtonElement>('next').disabled = at === all.length - 1;
  };

  const rowOf = (row: Element, weighs: boolean): Element => {
    const hasWeight = row.querySelector('.weighs') !== null;
    const amount = textOf(row, weighs && hasWeight ? '.exact' : '.measure b');
    const notes = weighs && hasWeight ? [] : [...row.querySelectorAll('.or:not(.weighs, .flakes, .by-weight)')];
    const box = row.querySelector<HTMLInputElement>('.tick input')!;
    const item = document.createElement('li');
    item.innerHTML =
      html`<label class="bench-row"><input type="checkbox" autocomplete="off"${box.checked ? html` checked` : ''}><span class="bench-what"><b class="bench-amount">${amount}</b> <span class="bench-material">${textOf(row, '.amount-name')}</span>${notes.map((note) => html` <span class="bench-note">${note.textContent}</span>`)}</span></label>`.toString();
    item.querySelector('input')!.addEventListener('change', ({ target }) => {
      strike(box, (target as HTMLInputElement).checked);
      sayStruck(textOf(row, '.amount-name'), box.checked);
    });
    return item;
  };

  const strike = (box: HTMLInputElement, isStruck: boolean): void => {
    box.checked = isStruck;
    box.dispatchEvent(new Event('change', { bubbles: true }));
  };

  const sayStruck = (name: string, isStruck: boolean): void => {
    const boxes = [...current()!.querySelectorAll<HTMLInputElement>('.tick input')];
    const left = boxes.filter(({ checked }) => !checked).length;
    const rest = left === 0 ? 'All of this cup is in.' : `${left} to go.`;
    part('says').textContent = `${name} ${isStruck ? 'struck off' : 'not in yet'}. ${rest}`;
  };

  const turnTo = (cup: number): void => {
    at = Math.min(Math.max(cup, 0), Math.max(cups().length - 1, 0));
    keep('sessionStorage', cupKey, String(at));
    show();
    part('cup').scrollTop = 0;
    part('name').focus();
  };

  const sync = (): void => {
    if (location.hash !== HASH) {
      if (dialog.open) dialog.close();
      return;
    }
    if (cups().length === 0) return;
    if (!dialog.open) {
      dialog.showModal();
      awake.begin();
      turnTo(Number(kept('sessionStorage', cupKey)) || 0);
    } else show();
  };

  opens.hidden = false;
  opens.querySelector('button')!.addEventListener('click', () => {
    if (cups().length === 0) {
      document.querySelector<HTMLElement>('[name="baits"]')?.focus();
      return;
    }
    hasPushed = location.hash !== HASH;
    if (hasPushed) location.hash = HASH;
    sync();
  });
  part('leave').addEventListener('click', () => dialog.close());
  dialog.addEventListener('close', () => {
    awake.end();
    if (location.hash === HASH) {
      if (hasPushed) history.back();
      else history.replaceState(history.state, '', location.pathname + location.search);
    }
    hasPushed = false;
    opens.querySelector('button')!.focus();
  });
  part('back').addEventListener('click', () => turnTo(at - 1));
  part('next').addEventListener('click', () => turnTo(at + 1));
  part('again').addEventListener('click', () => {
    for (const box of current()!.querySelectorAll<HTMLInputElement>('.tick input:checked')) strike(box, false);
    show();
    part('says').textContent = 'Nothing of this cup is struck off.';
  });
  const aid = part<HTMLButtonElement>('aid');
  const firstAid = dialog.querySelector<HTMLElement>('#bench-aid')!;
  aid.addEventListener('click', () => {
    firstAid.hidden = !firstAid.hidden;
    aid.setAttribute('aria-expanded', String(!firstAid.hidden));
    if (!firstAid.hidden) firstAid.focus();
  });
  const by = kept('localStorage', BY_KEY);
  for (const radio of dialog.querySelectorAll<HTMLInputElement>('[name="bench-by"]')) {
    radio.checked = radio.value === (by === 'scale' ? 'scale' : 'spoons');
    radio.addEventListener('change', () => {
      keep('localStorage', BY_KEY, radio.value);
      show();
    });
  }
  const steps = document.querySelector('.work .steps');
  if (steps !== null) part('steps').append(steps.cloneNode(true));
  part('steps').hidden = steps === null;
  clock.begin();
  window.addEventListener('hashchange', sync);
  document.addEventListener(TICKS_SHOWN, sync);
  sync();
}

const dialog = document.querySelector<HTMLDialogElement>('[data-bench]');
const opens = document.querySelector<HTMLElement>('[data-bench-open]');
if (dialog !== null && opens !== null) start(dialog, opens);
