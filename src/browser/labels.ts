/**
 * The choice of labels: date and lot of all, and how many of each colour, on as many sheets as they take.
 *
 * @packageDocumentation
 */
import { counted } from '../render/words.ts';
import { afterPause } from './page-data.ts';
import { sheetsOf } from './sheets-of.ts';

const choice = document.querySelector<HTMLElement>('[data-labels]');
const papers = document.querySelector<HTMLElement>('.papers');
const status = document.querySelector<HTMLElement>('[data-sheets]');
const first = papers?.querySelector<HTMLElement>('.sheet');

if (choice && papers && status && first) {
  const perSheet = Number(choice.dataset.labels);
  const labels = [...papers.querySelectorAll<HTMLElement>('.bag-label')];
  const fields = [...choice.querySelectorAll<HTMLInputElement>('input[type=number]')];
  const written = [...choice.querySelectorAll<HTMLInputElement>('[data-of]')];
  const most = Number(fields[0]?.max);

  const lay = (): void => {
    const wanted = fields.map(({ valueAsNumber }) => Math.min(most, Math.max(0, Math.floor(valueAsNumber) || 0)));
    const sheets = sheetsOf(wanted, perSheet).map((places) => {
      const sheet = first.cloneNode(false) as HTMLElement;
      sheet.append(...places.map((label) => labels[label]!.cloneNode(true)));
      return sheet;
    });
    papers.replaceChildren(...sheets);
    for (const { dataset, value } of written)
      for (const place of papers.querySelectorAll(`[data-${dataset.of}]`)) place.textContent = value.trim();
    status.textContent = counted(sheets.length, 'sheet');
    for (const button of document.querySelectorAll<HTMLButtonElement>('[data-print]')) {
      button.disabled = sheets.length === 0;
    }
  };

  choice.addEventListener('input', afterPause(lay));
  choice.addEventListener('click', ({ target }) => {
    const each = (target as Element).closest<HTMLElement>('[data-each]')?.dataset.each;
    if (each === undefined) return;
    for (const field of fields) field.value = each;
    lay();
  });
  choice.hidden = false;
}
