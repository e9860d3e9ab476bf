/**
 * Cups of a recipe as matching takes them: what is in one after a round, what is left of it, and what was seen.
 *
 * @packageDocumentation
 */

import { type CupState, ROUNDING_ML, scaleAmounts } from '../../cup/ledger.ts';
import type { Observation } from '../../matching/rounds/correct-model.ts';
import { type SeenViews, settledViews } from '../../matching/target/target-part.ts';
import { defined } from '../../values/defined.ts';
import type { Cup, Round } from '../model.ts';

/** What the log of a cup leaves, g and ml; undefined where all of it was poured. */
export function cupLeft(cup: Cup): CupState | undefined {
  const round = cup.rounds.at(-1);
  if (!round || !(round.volumeMl > 0) || !(round.leftMl > ROUNDING_ML)) return undefined;
  return cupState(cup, (round.plasticMl * round.leftMl) / round.volumeMl, round.contents);
}

/** A cup of so many ml of plastic, as it is after its last round. */
export function cupState(cup: Pick<Cup, 'plastics'>, plasticMl: number, contents: Cup['contents']): CupState {
  return {
    plastics: Object.fromEntries(cup.plastics.map(({ material, fraction }) => [material, fraction * plasticMl])),
    materials: scaleAmounts(
      Object.fromEntries(contents.map(({ material, gramsPerMl }) => [material, gramsPerMl])),
      plasticMl,
    ),
  };
}

/** The rounds of a cup in which a colour was seen, as matching learns from them. */
export function observationsOf(cup: Cup, thicknessMm: number): readonly Observation[] {
  // A cup's first round is of what it was begun with.
  let isLogged = true;
  return cup.rounds.flatMap((round): Observation[] => {
    const { added, plasticAddedMl, nothingAdded } = round;
    isLogged ||= added.length > 0 || plasticAddedMl > 0 || nothingAdded === true;
    const seen = seenViews(round);
    if (!seen) return [];
    const state = cupState(cup, round.plasticMl, round.contents);
    const observation = { cup: state, thicknessMm, seen, ...(isLogged ? {} : { unlogged: true as const }) };
    isLogged = false;
    return [observation];
  });
}

/** What was seen of a round, in CIELAB; undefined where no colour was noted. */
export function seenViews({ seen }: Pick<Round, 'seen'>): SeenViews | undefined {
  if (seen?.overWhite === undefined && seen?.overBlack === undefined) return undefined;
  return settledViews(defined({ overWhite: seen.overWhite?.lab, overBlack: seen.overBlack?.lab }));
}
