/**
 * What was typed into the forms of the Match page: values, or a sentence on what is none.
 *
 * @packageDocumentation
 */

import type { VolumeUnit } from '../../units/volume-text.ts';
import { defined } from '../../values/defined.ts';
import type { HeatUnit } from '../../words/heats.ts';
import { cupName } from './cup-name.ts';
import { UNSAID } from './fields-view.ts';
import type { TypedHow } from './how-seen.ts';
import { type LIMITS, numberOf, volumeOf } from './limits.ts';
import { isMistyped, type Mistyped } from './mistyped.ts';
import { readSideFlakes } from './read-side-flakes.ts';
import { thicknessOf } from './thickness-field.ts';
import { isRoundFault, roundOf } from './typed-round.ts';
import type { Work, WorkSide, WorkStep } from './work.ts';
import { colourText, noColour, typedColour, type WorkColour } from './work-colour.ts';

/** A number of a match within its limits. */
function numberIn(field: HTMLInputElement, name: keyof typeof LIMITS): number | Mistyped {
  const number = numberOf(field.value, name);
  return typeof number === 'number' ? number : { fault: number, at: field };
}

/** A volume of a match in ml, within its limits; `before` is what the field showed. */
export function volumeIn(
  field: HTMLInputElement,
  name: 'plasticMl' | 'addedMl',
  unit: VolumeUnit,
  before?: number,
): number | Mistyped {
  const ml = volumeOf(field.value, name, unit, before);
  return typeof ml === 'number' ? ml : { fault: ml, at: field };
}

/** The first of the digits beside a colour that are no colour; without any, nobody has said it yet. */
export function mistypedColour(within: ParentNode): Mistyped | undefined {
  for (const at of within.querySelectorAll<HTMLInputElement>('[data-hex-of]')) {
    if (at.closest('[data-black][hidden]') || typedColour(at.value) !== undefined) continue;
    return { fault: at.value.trim() === '' ? unsaidText(at) : noColour(at.value), at };
  }
  return undefined;
}

function unsaidText(at: HTMLInputElement): string {
  const which = at.closest('[data-side]')?.querySelector('legend')?.textContent?.toLowerCase() ?? 'the bait';
  return at.closest('[data-black]')
    ? `What does ${which} look like over black? Photograph it, pick its colour, or untick the box.`
    : `What does ${which} look like? Photograph it, or pick or type its colour.`;
}

/** The fields of the cup and the shelf. */
export function readFields(root: HTMLElement, before: Work, unit: VolumeUnit): Work | Mistyped {
  const field = (name: string): HTMLInputElement => root.querySelector<HTMLInputElement>(`[name="${name}"]`)!;
  const tolerance = numberIn(field('tolerance'), 'tolerance');
  if (typeof tolerance !== 'number') return tolerance;
  const plasticMl = volumeIn(field('plasticMl'), 'plasticMl', unit, before.plasticMl);
  if (typeof plasticMl !== 'number') return plasticMl;
  const boxes = [...root.querySelectorAll<HTMLInputElement>('[name="shelf"]')];
  return {
    ...before,
    tolerance,
    mold: field('mold').value,
    plastic: field('plastic').value,
    plasticMl,
    inStock: root.querySelector<HTMLInputElement>('[name="inStock"]')?.checked ?? false,
    without: boxes.filter(({ checked }) => !checked).map((box) => box.value),
  };
}

/** The colour of a chooser, as its digits say, or while they are half typed as it was before; undefined where nobody has said any. */
function colourIn(chooser: HTMLInputElement, within: ParentNode): WorkColour | undefined {
  const digits = within.querySelector<HTMLInputElement>(`[data-hex-of="${chooser.id}"]`)!.value;
  const before = chooser.value === UNSAID ? undefined : chooser.value;
  return digits.trim() === '' ? undefined : (typedColour(digits) ?? before);
}

type Colours = Pick<WorkSide, 'overWhite' | 'overBlack'>;

/** Whether colours are those that were measured, or one of them. */
function areOf(measured: Colours, { overWhite, overBlack }: Colours): boolean {
  const same = (one: WorkColour, other: WorkColour | undefined): boolean =>
    other !== undefined && colourText(one) === colourText(other);
  return (
    (overWhite === undefined || same(overWhite, measured.overWhite)) &&
    (overBlack === undefined || same(overBlack, measured.overBlack))
  );
}

/** The sides of the target. */
export function readSides(
  root: HTMLElement,
  before: readonly WorkSide[],
  unit: VolumeUnit,
): readonly WorkSide[] | Mistyped {
  const sides: WorkSide[] = [];
  for (const [index, element] of [...root.querySelectorAll<HTMLElement>('[data-side]')].entries()) {
    const field = (name: string): HTMLInputElement | null =>
      element.querySelector<HTMLInputElement>(`[name="${name}"]`);
    const thickness = field('thicknessMm')!;
    const thicknessMm = thicknessOf(thickness.value, unit, before[index]!.thicknessMm);
    if (typeof thicknessMm !== 'number') return { fault: thicknessMm, at: thickness };
    const others = new Set([...before.filter((_, at) => at !== index), ...sides].map(({ name }) => name));
    const name = field('name');
    const flakes = readSideFlakes(element, before[index]!.flakes);
    if (isMistyped(flakes)) return flakes;
    // Without a choice of plastics it stays as it is.
    const plastic = element.querySelector<HTMLSelectElement>('[name="sidePlastic"]')?.value ?? before[index]!.plastic;
    const colours = defined({
      overWhite: colourIn(field('overWhite')!, element),
      overBlack: field('sawBlack')!.checked ? colourIn(field('overBlack')!, element) : undefined,
    });
    sides.push({
      name: name ? cupName(name.value, others) : before[index]!.name,
      ...colours,
      ...(areOf(before[index]!, colours) && defined({ measured: before[index]!.measured })),
      thicknessMm,
      flakes,
      ...(plastic ? { plastic } : {}),
    });
  }
  return sides;
}

/** How it was looked at, as the fields of a round say. */
export function typedHow(round: ParentNode): TypedHow {
  const field = (name: string): HTMLInputElement | null => round.querySelector<HTMLInputElement>(`[name="${name}"]`);
  const chip = field('howChip');
  return {
    ...(chip && { chip: chip.value }),
    after: field('howAfter')!.value,
    wet: field('howWet')!.checked,
  };
}

/** A test pour and what was seen of it, as steps of the log; the volumes as for `roundOf`. */
export function readRound(
  round: HTMLElement,
  volumeMl: number,
  unit: VolumeUnit & HeatUnit,
  pouredMl: number | undefined,
  chipMm: number | undefined,
): readonly WorkStep[] | Mistyped {
  const field = (name: string): HTMLInputElement => round.querySelector<HTMLInputElement>(`[name="${name}"]`)!;
  const digits = (view: string): HTMLInputElement =>
    round.querySelector<HTMLInputElement>(`[data-hex-of="${field(view).id}"]`)!;
  const steps = roundOf(
    {
      pour: field('pour').value,
      ...(field('sawWhite').checked && { overWhite: digits('overWhite').value }),
      ...(field('sawBlack').checked && { overBlack: digits('overBlack').value }),
      note: field('note').value,
      heat: field('heat').value,
      again: round.querySelector<HTMLSelectElement>('[name="again"]')!.value,
      held: field('held').value,
      how: typedHow(round),
    },
    volumeMl,
    unit,
    pouredMl,
    chipMm,
  );
  if (!isRoundFault(steps)) return steps;
  const { fault, field: name } = steps;
  return { fault, at: name === 'overWhite' || name === 'overBlack' ? digits(name) : field(name) };
}
