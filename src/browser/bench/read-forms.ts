/**
 * What was typed into the forms of the bench page: values, or a sentence on what is none.
 *
 * @packageDocumentation
 */

import type { Work, WorkSide, WorkStep } from './work.ts';
import { freeName } from './work-recipe.ts';

/** What is wrong with something typed, and where. */
export interface Mistyped {
  readonly fault: string;
  readonly at: HTMLInputElement;
}

/** Whether something typed was none of what it should be. */
export function isMistyped(read: object): read is Mistyped {
  return 'fault' in read;
}

/** Limits of the numbers of a match; `readWork` takes no others. */
const LIMITS = {
  tolerance: { what: 'The tolerance', least: 0.1, most: 100 },
  plasticMl: { what: 'The plastic of the cup', least: 1, most: 100_000 },
  thicknessMm: { what: 'The thickness', least: 0.1, most: 1000 },
  addedMl: { what: 'The plastic that went in', least: 0.1, most: 100_000 },
} as const;

/** A number of a match within its limits. */
export function numberIn(field: HTMLInputElement, name: keyof typeof LIMITS): number | Mistyped {
  const { what, least, most } = LIMITS[name];
  const number = field.value.trim() === '' ? Number.NaN : Number(field.value);
  if (number >= least && number <= most) return number;
  return { fault: `${what} is a number from ${least} to ${most.toLocaleString('en')}.`, at: field };
}

/** The first of the digits beside a colour that are no colour. */
export function mistypedColour(within: ParentNode): Mistyped | undefined {
  for (const at of within.querySelectorAll<HTMLInputElement>('[data-hex-of]')) {
    if (hexOf(at.value) === undefined)
      return { fault: `“${at.value}” is no colour: write # and six digits, such as #8a6a44.`, at };
  }
  return undefined;
}

/** `#rrggbb` of what was typed, with or without its sign; undefined where it is no colour. */
export function hexOf(text: string): string | undefined {
  const digits = /^#?([0-9a-f]{6})$/i.exec(text.trim())?.[1];
  return digits && `#${digits.toLowerCase()}`;
}

/** The fields of the cup and the shelf. */
export function readFields(root: HTMLElement, before: Work): Work | Mistyped {
  const field = (name: string): HTMLInputElement => root.querySelector<HTMLInputElement>(`[name="${name}"]`)!;
  const tolerance = numberIn(field('tolerance'), 'tolerance');
  if (typeof tolerance !== 'number') return tolerance;
  const plasticMl = numberIn(field('plasticMl'), 'plasticMl');
  if (typeof plasticMl !== 'number') return plasticMl;
  const boxes = [...root.querySelectorAll<HTMLInputElement>('[name="shelf"]')];
  return {
    ...before,
    tolerance,
    mold: field('mold').value,
    plastic: field('plastic').value,
    plasticMl,
    inStock: field('inStock').checked,
    without: boxes.filter(({ checked }) => !checked).map((box) => box.value),
  };
}

/** The sides of the target. */
export function readSides(root: HTMLElement, before: readonly WorkSide[]): readonly WorkSide[] | Mistyped {
  const sides: WorkSide[] = [];
  for (const [index, element] of [...root.querySelectorAll<HTMLElement>('[data-side]')].entries()) {
    const field = (name: string): HTMLInputElement | null =>
      element.querySelector<HTMLInputElement>(`[name="${name}"]`);
    const thicknessMm = numberIn(field('thicknessMm')!, 'thicknessMm');
    if (typeof thicknessMm !== 'number') return thicknessMm;
    const others = new Set(before.flatMap(({ name }, at) => (at === index ? [] : [name])));
    const name = field('name');
    sides.push({
      name: name ? freeName(name.value, others) : before[index]!.name,
      overWhite: field('overWhite')!.value,
      ...(field('sawBlack')!.checked && { overBlack: field('overBlack')?.value ?? '#303030' }),
      thicknessMm,
    });
  }
  return sides;
}

/** A test pour and what was seen of it, as steps of the log. Nothing is taken for seen that was not said. */
export function readRound(round: HTMLElement, volumeMl: number): readonly WorkStep[] | Mistyped {
  const field = (name: string): HTMLInputElement => round.querySelector<HTMLInputElement>(`[name="${name}"]`)!;
  const at = field('pour');
  const pour = Number(at.value);
  if (!(pour >= 0) || at.validity.badInput) return { fault: 'Give what was poured in millilitres, 0 or more.', at };
  if (at.value.trim() === '')
    return { fault: 'How many millilitres were poured? Write 0 if nothing left the cup.', at };
  if (pour > volumeMl + 1e-6)
    return { fault: `There are ${Math.floor(volumeMl * 10) / 10} ml in the cup: no more can be poured.`, at };
  const views: { overWhite?: string; overBlack?: string } = {};
  for (const [view, saw, backing] of [
    ['overWhite', 'sawWhite', 'white'],
    ['overBlack', 'sawBlack', 'black'],
  ] as const) {
    if (!field(saw).checked) continue;
    const digits = round.querySelector<HTMLInputElement>(`[data-hex-of="${field(view).id}"]`)!;
    if (digits.value.trim() === '')
      return {
        fault: `Say what you saw over ${backing}: choose its colour, or take away the tick.`,
        at: digits,
      };
    const hex = hexOf(digits.value);
    if (hex === undefined) return mistypedColour(digits.parentElement!)!;
    views[view] = hex;
  }
  const note = field('note').value.trim();
  const looked = views.overWhite !== undefined || views.overBlack !== undefined || note !== '';
  if (pour === 0 && !looked) return { fault: 'Note what was poured, or what was seen.', at };
  return [
    ...(pour > 0 ? [{ do: 'pour' as const, ml: pour }] : []),
    ...(looked ? [{ do: 'see' as const, ...views, ...(note !== '' && { note }) }] : []),
  ];
}
