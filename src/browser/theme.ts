/**
 * What must be known before the first paint: light or dark, as the system has it or as the reader chose, and whether a match goes on; and what
 * every page has that opens and closes, and what is kept of it.
 *
 * @packageDocumentation
 */

import { closeWhenLeft } from './closes.ts';
import { keepOffline } from './keeps-offline.ts';
import { markAsLeft } from './match/begun-mark.ts';

const KEY = 'book-theme';
const CHOICES = ['system', 'light', 'dark'] as const;
type Choice = (typeof CHOICES)[number];

const WORDS: Readonly<Record<Choice, string>> = {
  system: 'Theme: system',
  light: 'Theme: light',
  dark: 'Theme: dark',
};

/** Storage may be refused, as in a private window or from a file. */
function stored(): Choice {
  try {
    const text = localStorage.getItem(KEY);
    return CHOICES.find((choice) => choice === text) ?? 'system';
  } catch {
    return 'system';
  }
}

function store(choice: Choice): void {
  try {
    localStorage.setItem(KEY, choice);
  } catch {
    // The choice then holds for this page alone.
  }
}

function apply(choice: Choice): void {
  if (choice === 'system') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = choice;
}

let choice = stored();
apply(choice);
markAsLeft();
document.documentElement.dataset.scripted = '';
closeWhenLeft();
keepOffline();

document.addEventListener('DOMContentLoaded', () => {
  const button = document.querySelector<HTMLButtonElement>('[data-theme-switch]');
  if (button === null) return;
  button.textContent = WORDS[choice];
  button.closest<HTMLElement>('[hidden]')?.removeAttribute('hidden');
  button.addEventListener('click', () => {
    choice = CHOICES[(CHOICES.indexOf(choice) + 1) % CHOICES.length]!;
    store(choice);
    apply(choice);
    button.textContent = WORDS[choice];
  });
});
