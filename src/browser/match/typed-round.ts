import { ROUNDING_ML } from '../../cup/ledger.ts';
import { isReversed, viewsFault } from '../../matching/target/target-part.ts';
import { mlInField, noMoreThan, volumeLimits, volumeUnitName } from '../../units/volume-field.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { defined } from '../../values/defined.ts';
import type { HeatUnit } from '../../words/heats.ts';
import { matchFaultText } from '../../words/match-fault.ts';
import { celsiusInField } from './heat-field.ts';
import { howOf, type TypedHow } from './how-seen.ts';
import { LIMITS, MOST, numberOf } from './limits.ts';
import type { WorkHeat, WorkStep } from './work.ts';
import { labOfColour, noColour, typedColour, type WorkColour } from './work-colour.ts';

/** A round as it stands in its form; a view is absent where nobody looked. */
export interface TypedRound {
  /** In the book's unit. */
  readonly pour: string;
  readonly overWhite?: string;
  readonly overBlack?: string;
  readonly note: string;
  /** Peak in the book's unit, how many times it was heated again, minutes above 160 °C; empty or absent: nobody noted it. */
  readonly heat?: string;
  readonly again?: string;
  readonly held?: string;
  /** How it was looked at; unset: nobody has said. */
  readonly how?: TypedHow;
}

/** What is wrong with a round, and with which of its fields. */
export interface RoundFault {
  readonly fault: string;
  readonly field: Exclude<keyof TypedRound, 'how'> | 'howChip';
}

/** Whether a round is not one yet. */
export function isRoundFault(round: readonly WorkStep[] | RoundFault): round is RoundFault {
  return 'fault' in round;
}

/**
 * A test pour and what was seen of it, as steps of the log. Nothing is taken for seen that was not said.
 *
 * @param volumeMl what is in the cup
 * @param unit what the pour is typed in
 * @param pouredMl the pour that the form was given, of a round that was taken back
 * @param chipMm the thickness of a chip that the form was given
 */
export function roundOf(
  typed: TypedRound,
  volumeMl: number,
  unit: VolumeUnit & Partial<HeatUnit> = { volume: 'ml' },
  pouredMl?: number,
  chipMm?: number,
): readonly WorkStep[] | RoundFault {
  const pour = mlInField(typed.pour, unit, pouredMl);
  const inUnits = volumeUnitName(unit);
  const poured = (fault: string): RoundFault => ({ fault, field: 'pour' });
  if (!(pour >= 0)) return poured(`How much was poured? Give ${inUnits}, 0 or more.`);
  if (typed.pour.trim() === '') return poured(`How many ${inUnits} were poured? Write 0 if nothing left the cup.`);
  if (pour > 0 && pour < LIMITS.pouredMl.least)
    return poured(`How much was poured? Give ${inUnits}: 0, or at least ${volumeLimits(LIMITS.pouredMl, unit).least}.`);
  if (pour > Math.min(volumeMl + ROUNDING_ML, LIMITS.pouredMl.most))
    return poured(`The cup holds ${noMoreThan(volumeMl, unit)}: you can’t pour more.`);
  const views: { overWhite?: WorkColour; overBlack?: WorkColour } = {};
  for (const view of ['overWhite', 'overBlack'] as const) {
    const digits = typed[view];
    if (digits === undefined) continue;
    const backing = view === 'overWhite' ? 'white' : 'black';
    if (digits.trim() === '')
      return { fault: `Say what you saw over ${backing}: pick its colour, or untick the box.`, field: view };
    const colour = typedColour(digits);
    if (colour === undefined) return { fault: noColour(digits), field: view };
    views[view] = colour;
  }
  const { overWhite, overBlack } = views;
  const labs = overWhite && overBlack && { overWhite: labOfColour(overWhite), overBlack: labOfColour(overBlack) };
  if (labs && isReversed(labs)) return { fault: matchFaultText(viewsFault(labs)!, unit), field: 'overBlack' };
  const note = typed.note.trim();
  if (note.length > MOST.note) return { fault: `A note has at most ${MOST.note} characters.`, field: 'note' };
  const heated = heatOf(typed, unit);
  if ('fault' in heated) return heated;
  const looked = views.overWhite !== undefined || views.overBlack !== undefined || note !== '';
  if (pour === 0 && !looked) return poured('Say what you poured or what you saw.');
  const how = typed.how ? howOf(typed.how, unit, chipMm) : {};
  if (typeof how === 'string') return { fault: how, field: 'howChip' };
  return [
    ...(Object.keys(heated).length > 0 ? [{ do: 'heat' as const, ...heated }] : []),
    // No more than there is, to the last digit: the recipe's file is held to that.
    ...(pour > 0 ? [{ do: 'pour' as const, ml: Math.min(pour, volumeMl) }] : []),
    ...(looked ? [{ do: 'see' as const, ...views, ...how, ...(note !== '' && { note }) }] : []),
  ];
}

/** How it was heated, as far as that was typed. */
function heatOf(
  { heat = '', again = '', held = '' }: TypedRound,
  { temperature = '°C' }: Partial<HeatUnit>,
): WorkHeat | RoundFault {
  const celsius = heat.trim() === '' ? undefined : celsiusInField(heat, temperature);
  if (typeof celsius === 'string') return { fault: celsius, field: 'heat' };
  const times = again.trim() === '' || again === '0' ? undefined : numberOf(again, 'again');
  if (typeof times === 'string' || !Number.isInteger(times ?? 0))
    return { fault: 'How many times was it reheated? Give a whole number.', field: 'again' };
  const heldMinutes = held.trim() === '' ? undefined : numberOf(held, 'heldMinutes');
  if (typeof heldMinutes === 'string') return { fault: heldMinutes, field: 'held' };
  return defined({ celsius, again: times, heldMinutes });
}
