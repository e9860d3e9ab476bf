/**
 * The choice of labels: how many of each colour, on as many sheets as they take.
 *
 * @packageDocumentation
 */
import { counted } from '../render/words.ts';
import { sheetsOf } from './sheets-of.ts';

const form = document.querySelector<HTMLFormElement>('[data-labels]');
const papers = document.querySelector<HTMLElement>('.papers');
const status = document.querySelector<HTMLElement>('[data-sheets]');
const first = papers?.querySelector<HTMLElement>('.sheet');

if (form && papers && status && first) {
  const perSheet = Number(form.dataset.labels);
  const most = Number(form.querySelector<HTMLInputElement>('input')?.max);
  const labels = [...papers.querySelectorAll<HTMLElement>('.bag-label')];
  const fields = [...form.querySelectorAll<HTMLInputElement>('input')];

  const lay = (): void => {
    const wanted = fields.map(({ valueAsNumber }) => Math.min(most, Math.max(0, Math.floor(valueAsNumber) || 0)));
    const sheets = sheetsOf(wanted, perSheet).map((places) => {
      const sheet = first.cloneNode(false) as HTMLElement;
      sheet.append(...places.map((label) => labels[label]!.cloneNode(true)));
      return sheet;
    });
    papers.replaceChildren(...sheets);
    status.textContent = counted(sheets.length, 'sheet');
    for (const button of document.querySelectorAll<HTMLButtonElement>('[data-print]')) {
      button.disabled = sheets.length === 0;
    }
  };

  form.addEventListener('input', lay);
  form.addEventListener('submit', (event) => event.preventDefault());
  form.addEventListener('reset', () => window.setTimeout(lay, 0));
  form.querySelector('[data-none]')!.addEventListener('click', () => {
    for (const field of fields) field.value = '0';
    lay();
  });
  form.hidden = false;
  // A browser may have kept numbers from the last visit.
  lay();
}
