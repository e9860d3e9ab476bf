import { type CupState, total } from '../../cup/ledger.ts';
import type { LogRound } from '../../cup/log-round.ts';
import type { LoggedAmount } from '../../cup/logged-amount.ts';
import type { LogSlip } from '../../learning/log-fault.ts';
import type { ToldSlip } from '../../matching/rounds/wrong-log.ts';
import { formatDecimal, formatDose } from '../../units/format-quantity.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';

/** An amount as it stands in a file. */
export type WrittenAmount = Pick<LoggedAmount, 'material' | 'dose' | 'parts'>;

/** What is asked of a material to name it, and an amount of it. */
export type NamedMaterial = Pick<MaterialCore, 'title' | 'gramsPerDrop'>;

/**
 * A slip with the names of the shelf, and amounts as a maker measures them.
 *
 * @param round whose look does not fit; unset of a finished bait
 * @param logged what went in before it, since the look that fits
 */
export function toldSlip(
  slip: LogSlip,
  shelf: ReadonlyMap<string, NamedMaterial>,
  round: { readonly cup: CupState } | undefined,
  logged: readonly WrittenAmount[],
): ToldSlip {
  if (slip.kind === 'bad-look') return slip;
  const { kind, likely, material } = slip;
  const asLogged = logged.filter((each) => isOf(each, material));
  const [only, ...others] = asLogged;
  // What came with a cut is asked of by the name of the cut.
  const name = only?.material ?? material;
  const title = required(shelf, kind === 'extra' ? material : shelf.has(name) ? name : material).title;
  const dose = only && others.length === 0 ? only.dose : undefined;
  switch (kind) {
    case 'left-out':
      return { kind, title, likely, ...defined({ dose }) };
    case 'swapped':
      return { kind, title, likely, instead: required(shelf, slip.instead).title };
    case 'miscounted':
      return { kind, title, likely, times: slip.times, ...defined({ dose }) };
    case 'extra': {
      const grams = round && slip.gramsPerMl * total(round.cup.plastics);
      return {
        kind,
        title,
        likely,
        ...(grams === undefined ? {} : { dose: roughly(grams, required(shelf, material)) }),
      };
    }
  }
}

/** The rounds in which it may have gone wrong: after the one that was seen before, of the same cup, up to the one that does not fit. */
export function roundsSince<Round extends Pick<LogRound<never>, 'number' | 'pouredAway'>>(
  rounds: readonly Round[],
  number: number,
  since = 0,
): readonly Round[] {
  const begun = rounds.findLast((round) => round.number <= number && round.pouredAway !== undefined)?.number ?? 1;
  return rounds.filter((round) => round.number > since && round.number >= begun && round.number <= number);
}

/** Whether an amount is of a material, or brought it. */
export function isOf({ material, parts = [] }: WrittenAmount, id: string): boolean {
  return material === id || parts.some((part) => part.material === id);
}

/** An amount of which nobody knows more than about how much it is. */
function roughly(grams: number, { gramsPerDrop }: NamedMaterial): string {
  const drops = gramsPerDrop === undefined ? 0 : Math.round(grams / gramsPerDrop);
  return drops >= 1 ? formatDose({ amount: drops, unit: 'drop' }) : `${formatDecimal(grams, 1)} g`;
}
