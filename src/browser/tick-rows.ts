/**
 * Boxes beside the amounts of a batch, to tick off what is in the cup. They are kept over a reload, for that batch alone.
 *
 * @packageDocumentation
 */
import { html } from '../render/html.ts';

/** Told of the part once boxes stand before its amounts. */
export const TICKS_SHOWN = 'ticks-shown';

/** What is kept between visits: the batch, and the rows of it that are ticked. */
interface Kept {
  readonly batch: string;
  readonly ticked: readonly string[];
}

/** The amounts of a page, with boxes. */
export class TickRows {
  private readonly part: HTMLElement;
  // Two books of one host have pages of other paths.
  private readonly key = `cupbook ticks ${location.pathname}`;
  private kept: Kept;
  private batch = '';

  constructor(part: HTMLElement) {
    this.part = part;
    this.kept = keptAs(this.key);
    part.addEventListener('change', ({ target }) => {
      if (target instanceof HTMLInputElement && target.matches('.tick input')) this.keep();
    });
  }

  /**
   * Puts a box before each amount that has been drawn, ticked if it was in this batch. Ticks of another batch are forgotten with the first
   * of this one: a number on its way to another is no batch yet.
   *
   * @param batch what is planned, in words of its own
   */
  show(batch: string): void {
    this.batch = batch;
    for (const table of this.part.querySelectorAll('table.amounts:not(.has-ticks)')) {
      table.classList.add('has-ticks');
      table
        .querySelector('thead tr')!
        .insertAdjacentHTML(
          'afterbegin',
          html`<th class="tick" scope="col"><span class="unseen-words">Done</span></th>`.toString(),
        );
      for (const row of table.querySelectorAll<HTMLElement>('tbody tr')) this.addBox(row);
    }
    this.part.dispatchEvent(new Event(TICKS_SHOWN, { bubbles: true }));
  }

  private addBox(row: HTMLElement): void {
    const name = nameOf(row);
    const words = `${row.querySelector('.measure b')?.textContent ?? ''} ${titleOf(row)}`;
    row.insertAdjacentHTML(
      'afterbegin',
      html`<td class="tick"><label><input type="checkbox" autocomplete="off" aria-label="${words}" value="${name}"${this.isTicked(name) ? html` checked` : ''}></label></td>`.toString(),
    );
  }

  private isTicked(name: string): boolean {
    return this.kept.batch === this.batch && this.kept.ticked.includes(name);
  }

  private keep(): void {
    const ticked = [...this.part.querySelectorAll<HTMLInputElement>('.tick input:checked')].map(({ value }) => value);
    this.kept = { batch: this.batch, ticked };
    try {
      sessionStorage.setItem(this.key, JSON.stringify(this.kept));
    } catch {
      // A browser that keeps nothing shows them until the page is left.
    }
  }
}

const titleOf = (row: HTMLElement): string => row.querySelector('.amount-name')?.textContent ?? '';

/** A row by its colour, where there are several, its cup and its material. */
function nameOf(row: HTMLElement): string {
  const colour = row.closest<HTMLElement>('[data-colour]')?.dataset.colour ?? '';
  return `${colour}/${row.closest<HTMLElement>('[data-cup]')?.dataset.cup}/${row.dataset.material}`;
}

function keptAs(key: string): Kept {
  try {
    const { batch, ticked } = JSON.parse(sessionStorage.getItem(key) ?? '') as Partial<Kept>;
    if (typeof batch === 'string' && Array.isArray(ticked)) return { batch, ticked };
  } catch {
    // Nothing was kept, or something else was.
  }
  return { batch: '', ticked: [] };
}
