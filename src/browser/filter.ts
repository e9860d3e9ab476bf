/**
 * The wall of colours narrows while a reader writes; Enter goes on to the find page.
 *
 * @packageDocumentation
 */
import { counted } from '../render/words.ts';

const input = document.querySelector<HTMLInputElement>('[data-filter]');
const count = document.querySelector<HTMLElement>('[data-filter-count]');
const groups = [...document.querySelectorAll<HTMLElement>('[data-filter-group]')].map((element) => ({
  element,
  tiles: [...element.querySelectorAll<HTMLElement>('[data-words]')].map((tile) => ({
    tile,
    text: `${tile.textContent} ${tile.dataset.words}`.toLowerCase(),
  })),
}));

function narrow(asked: string): void {
  const words = asked
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  let shown = 0;
  for (const { element, tiles } of groups) {
    for (const { tile, text } of tiles) {
      const fits = words.every((word) => text.includes(word));
      tile.hidden = !fits;
      if (fits) shown++;
    }
    element.hidden = tiles.every(({ tile }) => tile.hidden);
  }
  if (count !== null)
    count.textContent =
      words.length === 0 ? '' : `${counted(shown, 'colour')} shown. Press Enter to search the whole book.`;
}

if (input !== null) {
  input.addEventListener('input', () => narrow(input.value));
  // A reader who comes back finds the field as it was left.
  if (input.value !== '') narrow(input.value);
}
