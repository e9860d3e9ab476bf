/**
 * The bench page: matching in the browser, with the same code as the build and the commands. Nothing is sent anywhere.
 *
 * @packageDocumentation
 */
import { html } from '../render/html.ts';
import type { BenchPageData, BenchPageMaterial } from '../render/pages/bench.ts';
import { chips } from '../render/swatch/chip.ts';
import { sentence } from '../render/words.ts';
import {
  adviceFor,
  amountsOf,
  type FirstAnswer,
  firstAnswers,
  newWork,
  withBookTarget,
  withRecipe,
} from './bench/ask.ts';
import { typedAmount } from './bench/dose-text.ts';
import { isNoWork, readWork } from './bench/read-work.ts';
import { openStore, type WorkStore } from './bench/store.ts';
import { adviceView, firstView, logView, type RoundDraft, roundForms, sidesView } from './bench/view.ts';
import {
  type Arrangement,
  aimOf,
  begunAnew,
  type Work,
  type WorkSide,
  type WorkStep,
  withoutLastStep,
  withSides,
  withSteps,
} from './bench/work.ts';
import { freeName, recipeFile } from './bench/work-recipe.ts';
import { afterPause, pageData } from './page-data.ts';

class BenchPage {
  private work: Work;
  private drafts: readonly RoundDraft[] = [];
  private answers: readonly FirstAnswer[] = [];
  /** Cups that are shown though nothing was put in yet. */
  private begun = false;
  private readonly data: BenchPageData;
  private readonly materials: ReadonlyMap<string, BenchPageMaterial>;
  private readonly root: HTMLElement;
  private readonly store: WorkStore | undefined;
  private readonly draftStore: WorkStore | undefined;
  private readonly saveSoon = afterPause(() => void this.save(), 250);

  constructor(
    root: HTMLElement,
    data: BenchPageData,
    work: Work,
    stores: readonly (WorkStore | undefined)[],
    drafts: readonly RoundDraft[],
  ) {
    this.root = root;
    this.data = data;
    this.work = work;
    this.drafts = drafts;
    [this.store, this.draftStore] = stores;
    this.materials = new Map(data.materials.map((material) => [material.id, material]));
  }

  start(): void {
    const { root } = this;
    root.addEventListener('input', (event) => this.onInput(event.target as HTMLInputElement));
    root.addEventListener('change', (event) => this.onChange(event.target as HTMLInputElement));
    root.addEventListener('click', (event) => {
      const button = (event.target as HTMLElement).closest('button');
      if (button) this.onClick(button);
    });
    // A telephone that is put away may never come back to the script.
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'hidden') void this.save();
    });
    this.showAll();
    root.hidden = false;
    if (!this.store) this.say('This browser keeps nothing here: export the match before you leave the page.');
  }

  private part<T extends HTMLElement>(selector: string): T {
    return this.root.querySelector<T>(selector)!;
  }

  private say(text: string): void {
    this.part('[data-says]').textContent = text;
  }

  private async save(): Promise<void> {
    try {
      await this.store?.write(JSON.stringify(this.work));
      await this.draftStore?.write(JSON.stringify(this.drafts));
    } catch {
      this.say('The browser could not keep this step: export the match before you leave the page.');
    }
  }

  private change(work: Work): void {
    this.work = work;
    this.saveSoon();
    this.showFile();
  }

  // What is shown

  private showAll(): void {
    this.showFields();
    this.showSides();
    this.showFirst();
    this.showCups();
    this.showFile();
  }

  private showFields(): void {
    const { work, data } = this;
    const set = (name: string, value: string): void => {
      this.part<HTMLInputElement | HTMLSelectElement>(`[name="${name}"]`).value = value;
    };
    set('target', work.target ?? '');
    set('arrangement', work.arrangement);
    set('tolerance', String(work.tolerance));
    set('mold', work.mold);
    set('plastic', work.plastic);
    set('plasticMl', String(work.plasticMl));
    set('title', work.title);
    this.part<HTMLInputElement>('[name="inStock"]').checked = work.inStock;
    const boxes = [...this.root.querySelectorAll<HTMLInputElement>('[name="shelf"]')];
    for (const box of boxes) box.checked = !work.without.includes(box.value);
    this.part('[data-shelf-count]').textContent = `${boxes.filter(({ checked }) => checked).length} of ${boxes.length}`;
    // Of a target with one part nothing else can be made than one cup.
    const parts = data.targets.find(({ id }) => id === work.target)?.parts.length;
    for (const option of this.part<HTMLSelectElement>('[name="arrangement"]').options) {
      option.disabled = parts !== undefined && (option.value === 'solid') !== (parts === 1);
    }
  }

  private showSides(): void {
    this.part('[data-sides]').innerHTML = sidesView(this.work).toString();
  }

  private showFirst(): void {
    this.part('[data-first]').innerHTML = firstView(this.answers, this.work.sides, this.shown).toString();
  }

  private get shown(): { data: BenchPageData; materials: ReadonlyMap<string, BenchPageMaterial> } {
    return { data: this.data, materials: this.materials };
  }

  private showCups(): void {
    const { work } = this;
    const some = this.begun || work.cups.some(({ steps }) => steps.length > 0);
    this.part('[data-cups]').innerHTML = some
      ? html`${work.cups.map(
          ({ name }, index) =>
            html`<section class="part bench-cup" data-cup="${index}" aria-labelledby="cup-${index}-head"><h2 id="cup-${index}-head" tabindex="-1">${index === 0 ? '4. ' : ''}${work.cups.length > 1 ? sentence(name) : 'The cup'}</h2><div data-cup-shown></div></section>`,
        )}`.toString()
      : '';
    if (some) for (const index of work.cups.keys()) this.showCup(index);
  }

  private showCup(index: number): void {
    const { work, shown } = this;
    const side = aimOf(work, index);
    const { now, next } = adviceFor(work, index, this.data);
    const seen = work.cups[index]!.steps.findLast((step) => step.do === 'see');
    const last = now.seen && seen?.do === 'see' ? seen : undefined;
    const compared = last
      ? html`<div class="bench-pair bench-large">${chips([colours(side), colours(last)], 'Target on the left, as it was seen on the right; over white above, over black below')}</div>`
      : '';
    this.part(`[data-cup="${index}"] [data-cup-shown]`).innerHTML =
      html`${compared}${adviceView(side, now, next, shown)}${roundForms(index, this.drafts[index] ?? {}, side, shown)}${logView(work.cups[index]!.steps, now, shown)}`.toString();
  }

  private showFile(): void {
    const { name, text } = this.file();
    this.part('[data-file-name]').textContent = `Put it into the book as colours/${name}.`;
    this.part('[data-file]').textContent = text;
  }

  private file(): ReturnType<typeof recipeFile> {
    const now = new Date();
    const two = (number: number): string => String(number).padStart(2, '0');
    const made = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
    return recipeFile(this.work, { made, taken: new Set(this.data.recipes) });
  }

  // What is done

  private onInput(control: HTMLInputElement): void {
    const twin = control.dataset.hexOf;
    if (twin !== undefined) {
      const picker = this.part<HTMLInputElement>(`#${twin}`);
      if (!/^#[0-9a-f]{6}$/i.test(control.value)) return;
      picker.value = control.value.toLowerCase();
      this.onInput(picker);
      return;
    }
    if (control.type === 'color') {
      const digits = this.root.querySelector<HTMLInputElement>(`[data-hex-of="${control.id}"]`);
      if (digits && digits !== document.activeElement) digits.value = control.value;
    }
    if (control.closest('[data-side]')) this.readSides();
    else if (control.closest('[data-round]')) this.readDraft(control);
    else if (control.name === 'title') this.change({ ...this.work, title: control.value });
  }

  private onChange(control: HTMLInputElement): void {
    if (control.matches('[data-import-file]')) void this.importFile(control);
    else if (control.name === 'target') this.chooseTarget(control.value);
    else if (control.name === 'arrangement') this.arrange(control.value as Arrangement);
    else if (control.name === 'sawBlack' && control.closest('[data-side]')) {
      this.readSides();
      this.showSides();
      this.part(`#${control.id}`).focus();
    } else if ((control.name === 'sawWhite' || control.name === 'sawBlack') && control.closest('[data-round]')) {
      this.showCup(this.indexOf(control));
      this.part(`#${control.id}`).focus();
    } else if (!control.closest('[data-side], [data-cup]') && control.name !== 'title') this.readFields();
  }

  private onClick(button: HTMLButtonElement): void {
    const { dataset } = button;
    if (dataset.find !== undefined) this.find();
    else if (dataset.plain !== undefined) this.beginPlain();
    else if (dataset.use !== undefined) this.use(Number(dataset.use), Number(dataset.proposal));
    else if (dataset.take !== undefined) this.take(this.indexOf(button), Number(dataset.take));
    else if (dataset.afresh !== undefined) this.beginAfresh(this.indexOf(button));
    else if (dataset.noteRound !== undefined) this.noteRound(this.indexOf(button));
    else if (dataset.addElse !== undefined) this.addElse(this.indexOf(button));
    else if (dataset.addPlastic !== undefined) this.addPlastic(this.indexOf(button));
    else if (dataset.undo !== undefined) this.undo(this.indexOf(button));
    else if (dataset.download !== undefined) this.download(this.file().name, this.file().text, 'text/markdown');
    else if (dataset.copy !== undefined) void this.copy();
    else if (dataset.export !== undefined)
      this.download(
        `${freeName(this.work.title, new Set())}-match.json`,
        `${JSON.stringify(this.work, null, 2)}\n`,
        'application/json',
      );
    else if (dataset.import !== undefined) this.part<HTMLInputElement>('[data-import-file]').click();
    else if (dataset.clear !== undefined) this.clear();
  }

  private indexOf(control: HTMLElement): number {
    return Number(control.closest<HTMLElement>('[data-cup]')!.dataset.cup);
  }

  private readFields(): void {
    const value = (name: string): string => this.part<HTMLInputElement>(`[name="${name}"]`).value;
    const number = (name: string, usual: number): number => {
      const read = Number(value(name));
      return Number.isFinite(read) && read > 0 ? read : usual;
    };
    const boxes = [...this.root.querySelectorAll<HTMLInputElement>('[name="shelf"]')];
    const before = this.work;
    this.change({
      ...before,
      tolerance: number('tolerance', before.tolerance),
      mold: value('mold'),
      plastic: value('plastic'),
      plasticMl: number('plasticMl', before.plasticMl),
      inStock: this.part<HTMLInputElement>('[name="inStock"]').checked,
      without: boxes.filter(({ checked }) => !checked).map((box) => box.value),
    });
    const { mold } = this.work;
    if (mold !== before.mold && this.work.target === undefined) {
      const thicknessMm = this.data.molds.find(({ id }) => id === mold)!.bodyMm;
      this.change(
        withSides(
          this.work,
          this.work.sides.map((side) => ({ ...side, thicknessMm })),
        ),
      );
      this.showSides();
    }
    this.showFields();
    this.forgetAnswers();
    this.showCups();
  }

  private readonly showCupsSoon = afterPause(() => this.showCups(), 400);

  private readSides(): void {
    const sides = [...this.root.querySelectorAll<HTMLElement>('[data-side]')].map((element, index): WorkSide => {
      const before = this.work.sides[index]!;
      const field = (name: string): HTMLInputElement | null =>
        element.querySelector<HTMLInputElement>(`[name="${name}"]`);
      const thickness = Number(field('thicknessMm')!.value);
      const overBlack = field('sawBlack')!.checked ? (field('overBlack')?.value ?? '#303030') : undefined;
      const name = field('name');
      return {
        name: name
          ? freeName(name.value, new Set(this.work.sides.flatMap((side, at) => (at === index ? [] : [side.name]))))
          : before.name,
        overWhite: field('overWhite')!.value,
        ...(overBlack === undefined ? {} : { overBlack }),
        thicknessMm: Number.isFinite(thickness) && thickness > 0 ? thickness : before.thicknessMm,
      };
    });
    // A target that is changed by hand is no longer the book's.
    const { target: _, ...described } = this.work;
    this.change(withSides(described, sides));
    this.part<HTMLSelectElement>('[name="target"]').value = '';
    for (const [index, { overWhite, overBlack }] of sides.entries()) {
      this.part(`[data-side="${index}"] .bench-pair`).innerHTML = chips(
        [{ overWhite, ...(overBlack && { overBlack }) }],
        '',
      ).toString();
    }
    this.forgetAnswers();
    this.showCupsSoon();
  }

  private readDraft(control: HTMLInputElement): void {
    const index = this.indexOf(control);
    const drafts = this.work.cups.map((_, at) => this.drafts[at] ?? {});
    const value = control.type === 'checkbox' ? control.checked : control.value;
    drafts[index] = { ...drafts[index], [control.name]: value };
    this.drafts = drafts;
    this.saveSoon();
  }

  private chooseTarget(id: string): void {
    if (!this.mayReplace()) {
      this.showFields();
      return;
    }
    this.change(withBookTarget(this.work, id, this.data));
    this.drafts = [];
    this.answers = [];
    this.showAll();
    const { title } = this.data.targets.find((each) => each.id === id) ?? { title: undefined };
    this.say(title === undefined ? 'Describe the target by its colours.' : `The target is ${title}.`);
  }

  private arrange(arrangement: Arrangement): void {
    const [first] = this.work.sides;
    const wanted = arrangement === 'solid' ? 1 : 2;
    if (wanted < this.work.sides.length && !this.mayReplace()) {
      this.showFields();
      return;
    }
    const other = { ...first!, name: 'belly' };
    const sides =
      wanted === 1
        ? [{ ...first!, name: 'body' }]
        : this.work.sides.length === 2
          ? this.work.sides
          : [{ ...first!, name: 'back' }, other];
    this.change(withSides({ ...this.work, arrangement }, sides));
    this.answers = [];
    this.showAll();
  }

  /** Asks before a log is thrown away. */
  private mayReplace(): boolean {
    return (
      !this.work.cups.some(({ steps }) => steps.length > 0) ||
      window.confirm('The log of this match would be lost. Go on?')
    );
  }

  private forgetAnswers(): void {
    if (this.answers.length === 0) return;
    this.answers = [];
    this.showFirst();
  }

  private find(): void {
    this.say('Looking through the shelf…');
    // The words must be painted before the work begins.
    window.setTimeout(() => {
      this.answers = firstAnswers(this.work, this.data);
      this.showFirst();
      const found = this.answers.reduce((sum, { recipe }) => sum + recipe.proposals.length, 0);
      this.say(found === 1 ? 'One recipe.' : `${found} recipes.`);
    }, 30);
  }

  private beginPlain(): void {
    this.begun = true;
    this.showCups();
    this.part('#cup-0-head').focus();
  }

  private use(answer: number, proposal: number): void {
    const recipe = this.answers[answer]!.recipe.proposals[proposal]!;
    const replaced = recipe.cups.length > 1 ? this.work.cups : [this.work.cups[answer]!];
    if (
      replaced.some(({ steps }) => steps.length > 0) &&
      !window.confirm('The cup would begin again with this recipe. Go on?')
    )
      return;
    this.change(withRecipe(this.work, answer, recipe, this.data));
    this.showCups();
    const index = recipe.cups.length > 1 ? 0 : answer;
    this.part(`#cup-${index}-head`).focus();
    this.say('The recipe is in the log. Mix it, pour a bait, look, and note the round.');
  }

  private log(index: number, steps: readonly WorkStep[], says: string): void {
    this.change(withSteps(this.work, index, ...steps));
    this.showCup(index);
    this.part(`#cup-${index}-head`).focus();
    this.say(says);
  }

  private take(index: number, proposal: number): void {
    const { additions, thin } = adviceFor(this.work, index, this.data).next.proposals[proposal]!;
    const steps: WorkStep[] = [
      ...(thin ? [{ do: 'plastic' as const, ml: thin.ml }] : []),
      ...(additions.length > 0 ? [{ do: 'add' as const, amounts: amountsOf(additions, this.data) }] : []),
    ];
    this.log(index, steps, 'It is in the log. Stir, pour a bait, look, and note the round.');
  }

  private beginAfresh(index: number): void {
    const recipe = adviceFor(this.work, index, this.data).next.startAgain;
    if (!recipe) return;
    this.change(begunAnew(this.work, index, [{ do: 'add', amounts: amountsOf(recipe.cups[0]!.amounts, this.data) }]));
    this.showCup(index);
    this.part(`#cup-${index}-head`).focus();
    this.say('A new cup, with what the old one taught.');
  }

  private noteRound(index: number): void {
    const round = this.part(`[data-cup="${index}"] [data-round]`);
    const field = (name: string): HTMLInputElement | null => round.querySelector<HTMLInputElement>(`[name="${name}"]`);
    const pour = Number(field('pour')!.value);
    const { now } = adviceFor(this.work, index, this.data);
    if (!(pour >= 0) || pour > now.volumeMl + 1e-6) {
      this.say(`There are ${Math.floor(now.volumeMl * 10) / 10} ml in the cup: no more can be poured.`);
      field('pour')!.focus();
      return;
    }
    const overWhite = field('sawWhite')!.checked ? field('overWhite')?.value : undefined;
    const overBlack = field('sawBlack')!.checked ? field('overBlack')?.value : undefined;
    const note = field('note')!.value.trim();
    const looked = overWhite !== undefined || overBlack !== undefined || note !== '';
    if (pour === 0 && !looked) {
      this.say('Note what was poured, or what was seen.');
      return;
    }
    const steps: WorkStep[] = [
      ...(pour > 0 ? [{ do: 'pour' as const, ml: pour }] : []),
      ...(looked
        ? [
            {
              do: 'see' as const,
              ...(overWhite && { overWhite }),
              ...(overBlack && { overBlack }),
              ...(note !== '' && { note }),
            },
          ]
        : []),
    ];
    this.drafts = this.drafts.map((draft, at) => (at === index ? { ...draft, note: '' } : draft));
    this.log(index, steps, 'The round is noted.');
  }

  private addElse(index: number): void {
    const cup = this.part(`[data-cup="${index}"]`);
    const select = cup.querySelector<HTMLSelectElement>('[name="material"]')!;
    const field = cup.querySelector<HTMLInputElement>('[name="amount"]')!;
    const { now } = adviceFor(this.work, index, this.data);
    const plastic = Object.entries(now.cup.plastics);
    const ml = plastic.reduce((sum, [, each]) => sum + each, 0);
    const grams = plastic.reduce((sum, [id, each]) => sum + each * (this.materials.get(id)?.density ?? 1), 0);
    const amount = typedAmount(field.value, this.materials.get(select.value)!, { ml, grams });
    if ('fault' in amount) {
      this.say(amount.fault);
      field.focus();
      return;
    }
    this.log(index, [{ do: 'add', amounts: [amount] }], 'It is in the log.');
  }

  private addPlastic(index: number): void {
    const field = this.part(`[data-cup="${index}"]`).querySelector<HTMLInputElement>('[name="plastic"]')!;
    const ml = Number(field.value);
    if (!(ml > 0)) {
      this.say('Give the plastic that went in, in millilitres.');
      field.focus();
      return;
    }
    this.log(index, [{ do: 'plastic', ml }], 'It is in the log.');
  }

  private undo(index: number): void {
    this.change(withoutLastStep(this.work, index));
    this.begun = true;
    this.showCup(index);
    this.part(`#cup-${index}-head`).focus();
    this.say('The last line is taken back.');
  }

  private async copy(): Promise<void> {
    try {
      await navigator.clipboard.writeText(this.file().text);
      this.say('The recipe is copied.');
    } catch {
      // Without leave for the clipboard the text is marked, to be copied by hand.
      window.getSelection()?.selectAllChildren(this.part('[data-file]'));
      this.say('The recipe is marked: copy it by hand.');
    }
  }

  private download(name: string, text: string, type: string): void {
    const url = URL.createObjectURL(new Blob([text], { type }));
    const anchor = document.createElement('a');
    anchor.href = url;
    anchor.download = name;
    anchor.click();
    // The browser reads the address after the click.
    window.setTimeout(() => URL.revokeObjectURL(url), 10_000);
    this.say(`${name} is saved.`);
  }

  private async importFile(control: HTMLInputElement): Promise<void> {
    const file = control.files?.[0];
    control.value = '';
    if (!file) return;
    const read = readWork(file.size > 1_000_000 ? '' : await file.text());
    const fault = isNoWork(read) ? read.fault : strangerIn(read, this.data);
    if (fault !== undefined || isNoWork(read)) {
      this.say(fault ?? '');
      return;
    }
    if (!this.mayReplace()) return;
    this.replace(read, 'The match is here.');
  }

  private clear(): void {
    if (this.mayReplace()) this.replace(newWork(this.data), 'A new match.');
  }

  private replace(work: Work, says: string): void {
    this.drafts = [];
    this.answers = [];
    this.begun = false;
    this.change(work);
    this.showAll();
    this.say(says);
  }
}

function colours({ overWhite, overBlack }: { readonly overWhite?: string; readonly overBlack?: string }): {
  overWhite?: string;
  overBlack?: string;
} {
  return { ...(overWhite && { overWhite }), ...(overBlack && { overBlack }) };
}

/** What in a match this book does not have, as a sentence; undefined where nothing is. */
function strangerIn(work: Work, { materials, molds }: BenchPageData): string | undefined {
  const names = new Set(materials.map(({ id }) => id));
  const used = work.cups.flatMap(({ steps }) =>
    steps.flatMap((step) => (step.do === 'add' ? step.amounts.map(({ material }) => material) : [])),
  );
  const missing = [work.plastic, ...used].find((name) => !names.has(name));
  if (missing !== undefined) return `This match uses ${missing}, which is not on this book’s shelf.`;
  return molds.some(({ id }) => id === work.mold)
    ? undefined
    : `This match is for the mold ${work.mold}, which this book does not have.`;
}

function draftsFrom(text: string | undefined): readonly RoundDraft[] {
  try {
    const read: unknown = JSON.parse(text ?? '[]');
    return Array.isArray(read) ? (read as readonly RoundDraft[]) : [];
  } catch {
    return [];
  }
}

async function start(root: HTMLElement, data: BenchPageData): Promise<void> {
  // Two books of one host must not share their work.
  const book = new URL(document.documentElement.dataset.root ?? './', location.href).href;
  const stores = await Promise.all([openStore(book), openStore(`${book}#draft`)]);
  const [kept, drafts] = await Promise.all(stores.map((store) => store?.read().catch(() => undefined)));
  const read = kept === undefined ? undefined : readWork(kept);
  const usable = read !== undefined && !isNoWork(read) && strangerIn(read, data) === undefined;
  const page = new BenchPage(root, data, usable ? read : newWork(data), stores, usable ? draftsFrom(drafts) : []);
  page.start();
}

const root = document.querySelector<HTMLElement>('[data-bench]');
const data = pageData<BenchPageData>('[data-bench-data]');
if (root !== null && data !== undefined) void start(root, data);
