import type { ChipStart } from '../../book/chips/chip-start.ts';
import type { Photographed } from './file-lines.ts';

/** The choice of what is in the photos: a bait, a chip that the book asks for, or one of a product. */
export class PhotographedChoice {
  private readonly root: HTMLElement;
  private readonly asked: readonly ChipStart[];

  /**
   * @param root what has the fields of it
   * @param asked chips in the order of their options
   */
  constructor(root: HTMLElement, asked: readonly ChipStart[], onChange: () => void) {
    this.root = root;
    this.asked = asked;
    const wanted = new URLSearchParams(location.search).get('of');
    const options = [...this.select.options].map(({ value }) => value);
    if (wanted !== null && options.includes(wanted)) this.select.value = wanted;
    this.showFields();
    root.addEventListener('input', () => {
      this.showFields();
      onChange();
    });
  }

  /** Undefined of a bait. */
  get chosen(): Photographed | undefined {
    const { value } = this.select;
    if (value === 'product') {
      const text = (name: string): string =>
        this.root.querySelector<HTMLInputElement>(`[name="${name}"]`)!.value.trim();
      return { kind: 'label-chip', dose: text('dose'), thickness: text('thickness') };
    }
    const chip = this.asked[Number(value.replace('chip-', '')) - 1];
    return chip && { kind: 'own-chip', chip };
  }

  private get select(): HTMLSelectElement {
    return this.root.querySelector('select')!;
  }

  private showFields(): void {
    this.root.querySelector<HTMLElement>('[data-of-product]')!.hidden = this.select.value !== 'product';
  }
}
