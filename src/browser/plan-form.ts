import type { ColourLine } from './plan-address.ts';
import { baitsFrom, type PlanLine } from './planned-batch.ts';

/** The lines of the plan page's form: a colour, its mold, how many baits. */
export class PlanForm {
  /** Told when a line has changed, was added or taken out. */
  onChange: () => void = () => {};
  private readonly list: HTMLElement;
  private readonly template: HTMLElement;
  private readonly usual: ReadonlyMap<string, PlanLine>;
  /** Of the line that was made last: names of fields are never used again. */
  private latest = 1;

  /** @param usual mold and batch of each recipe */
  constructor(form: HTMLFormElement, usual: ReadonlyMap<string, PlanLine>) {
    this.list = form.querySelector<HTMLElement>('[data-lines]')!;
    this.template = this.list.querySelector<HTMLElement>('[data-line]')!.cloneNode(true) as HTMLElement;
    this.usual = usual;
    this.name();
    form.addEventListener('input', ({ target }) => this.changed(target as HTMLElement));
    form.addEventListener('click', ({ target }) => {
      const button = (target as HTMLElement).closest('button');
      if (button?.matches('[data-add]')) this.add().querySelector('select')?.focus();
      else if (button?.matches('[data-remove]')) this.remove(button);
      else return;
      this.name();
      this.onChange();
    });
  }

  /** What the lines say; undefined where one has no number of baits. */
  read(): readonly ColourLine[] | undefined {
    const lines = this.lines().map((line) => ({
      recipe: fieldOf(line, 'recipe').value,
      mold: fieldOf(line, 'mold').value,
      baits: baitsFrom(fieldOf(line, 'baits').value),
    }));
    const complete = lines.flatMap(({ baits, ...line }) => (baits === undefined ? [] : [{ ...line, baits }]));
    return complete.length < lines.length ? undefined : complete;
  }

  /** Puts other lines in the place of those that are there. */
  write(lines: readonly ColourLine[]): void {
    for (const line of this.lines().slice(lines.length)) line.remove();
    while (this.lines().length < lines.length) this.add();
    for (const [index, line] of this.lines().entries()) {
      const { recipe, mold, baits } = lines[index]!;
      fieldOf(line, 'recipe').value = recipe;
      fieldOf(line, 'mold').value = mold;
      fieldOf(line, 'baits').value = String(baits);
    }
    this.name();
  }

  private changed(control: HTMLElement): void {
    const line = control.closest<HTMLElement>('[data-line]');
    if (line !== null && control.getAttribute('name') === 'recipe') {
      const usual = this.usual.get(fieldOf(line, 'recipe').value);
      if (usual !== undefined) fieldOf(line, 'mold').value = usual.mold;
      this.name();
    }
    this.onChange();
  }

  private add(): HTMLElement {
    const line = this.template.cloneNode(true) as HTMLElement;
    this.latest++;
    const renamed = (id: string): string => id.replace(/\d+$/, String(this.latest));
    for (const element of line.querySelectorAll('[id]')) element.id = renamed(element.id);
    for (const label of line.querySelectorAll('label')) label.htmlFor = renamed(label.htmlFor);
    this.list.append(line);
    return line;
  }

  private remove(button: HTMLElement): void {
    button.closest('[data-line]')?.remove();
    this.list.querySelector('select')?.focus();
  }

  /** Tells the lines apart for who hears them, and hides what would take out the only one. */
  private name(): void {
    const lines = this.lines();
    for (const [index, line] of lines.entries()) {
      line.querySelector('legend')!.textContent = `Line ${index + 1}`;
      const recipe = fieldOf(line, 'recipe') as HTMLSelectElement;
      const remove = line.querySelector<HTMLElement>('[data-remove]')!;
      remove.hidden = lines.length < 2;
      remove.setAttribute('aria-label', `Remove ${recipe.selectedOptions[0]?.text ?? `line ${index + 1}`}`);
    }
  }

  private lines(): readonly HTMLElement[] {
    return [...this.list.querySelectorAll<HTMLElement>('[data-line]')];
  }
}

function fieldOf(line: HTMLElement, name: string): HTMLInputElement | HTMLSelectElement {
  return line.querySelector<HTMLInputElement | HTMLSelectElement>(`[name="${name}"]`)!;
}
