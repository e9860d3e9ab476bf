import type { Html } from '../../render/html.ts';
import { unitsKeptIn } from '../../render/unbroken.ts';

/** Draws a part of the page anew under the maker's hands: what was unfolded stays so, and so does the field in use. */
export function redraw(part: HTMLElement, drawn: Html | string): void {
  const folds = (): readonly HTMLDetailsElement[] => [...part.querySelectorAll('details')];
  const unfolded = new Set(folds().flatMap((fold) => (fold.open ? [nameOf(fold)] : [])));
  const used = document.activeElement;
  const id = used !== null && part.contains(used) ? used.id : '';
  const caret = used instanceof HTMLInputElement ? ([used.selectionStart, used.selectionEnd] as const) : undefined;
  part.innerHTML = unitsKeptIn(drawn.toString());
  for (const fold of folds()) if (unfolded.has(nameOf(fold))) fold.open = true;
  const again = id === '' ? null : document.getElementById(id);
  again?.focus({ preventScroll: true });
  // Only a field of text has a caret that can be set.
  if (again instanceof HTMLInputElement && caret && caret[0] !== null) again.setSelectionRange(...caret);
}

function nameOf(fold: HTMLDetailsElement): string {
  return `${fold.closest<HTMLElement>('[data-cup]')?.dataset.cup} ${fold.closest<HTMLElement>('[data-side]')?.dataset.side} ${fold.className}`;
}
