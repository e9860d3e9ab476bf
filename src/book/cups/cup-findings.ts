/**
 * What a maker can have wrong in a cup, in words.
 *
 * @packageDocumentation
 */
import { nearestFix } from '../../diagnostics/nearest-name.ts';
import { formatDose } from '../../units/format-quantity.ts';
import type { Quantity, Rate } from '../../units/quantity.ts';
import { noMoreThan } from '../../units/volume-field.ts';
import type { Finding } from '../report.ts';
import type { WrittenAmount } from './as-written.ts';
import type { CupMaterial } from './cup-shelf.ts';
import type { CupSpec } from './cup-specs.ts';

export const ADD_AND_LOG: Finding = {
  found: '`add` and `log` in one cup',
  expected: 'one of them',
  why: 'it would not be clear whether the amounts come before the rounds or sum them up',
  fix: 'make `add` the first step of `log`',
};

export const ADDED_TO_NOTHING: Finding = {
  found: '`add` to an empty cup',
  expected: 'plastic in the cup',
  why: 'the pours before it have taken all that was in it, and with it nothing is left to be mixed',
  fix: 'give the step `plastic: … ml`, correct an earlier pour, or begin another recipe',
};

export const PLASTIC_UNNAMED: Finding = {
  found: 'volume without the name of a plastic',
  expected: 'the name after the volume, such as `120 ml supple`',
  why: 'the shelf has several plastics, and `book.md` names none as the usual one',
  fix: 'write the name, or `plastic: NAME` in book.md',
};

export function noPlastic(cup: string): Finding {
  return {
    found: `cup \`${cup}\` without \`plastic\``,
    expected: '`plastic` with a volume and a name, such as `120 ml supple`, or `from` with another cup',
    why: 'an amount of colorant means nothing without the plastic it goes into',
    fix: 'add `plastic: 120 ml …` to the cup',
  };
}

export function nothingToChange(field: 'set' | 'without'): Finding {
  return {
    found: `\`${field}\` in a cup that comes from no other`,
    expected: field === 'set' ? '`add`' : 'no such field',
    why: 'there is nothing to change',
  };
}

/** A material to be changed or left out that the cup it comes from does not hold. */
export function notInParent(
  id: string,
  field: 'set' | 'without',
  { recipe, cup }: NonNullable<CupSpec['from']>,
  held: readonly string[],
): Finding {
  return {
    found: `material \`${id}\``,
    expected: `one that is in ${recipe}/${cup}: ${held.join(', ')}`,
    ...(field === 'set' ? { fix: 'write it under `add`' } : (nearestFix(id, held) ?? { fix: 'remove it there' })),
  };
}

export function noDrops({ id, kind }: CupMaterial, dose: Quantity | Rate): Finding {
  return {
    found: `\`${formatDose(dose)}\` of ${kind} \`${id}\``,
    expected: 'spoons or a mass, such as `1/8 tsp` or `0.3 g`',
    why: `a ${kind} has no drops`,
  };
}

/**
 * Volumes are told in the unit of the pour and rounded down, so that a pour of what is told is possible.
 *
 * @param poured what the pours before it have taken, ml
 */
export function overPoured(pour: WrittenAmount, leftMl: number, poured: number): Finding {
  const down = (ml: number): string => noMoreThan(ml, { volume: pour.unit });
  const most = down(leftMl);
  return {
    found: `${pour.text} poured`,
    expected: `at most the ${most} that are ${poured > 0 ? 'left ' : ''}in the cup`,
    why:
      poured > 0
        ? `the pours before it have taken ${down(poured)}`
        : 'that is the plastic with all that was added to it',
    fix:
      Number.parseFloat(most) > 0 ? `write \`pour: ${most}\`, or correct an earlier step` : 'correct an earlier step',
  };
}
