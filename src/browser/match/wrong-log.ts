import { roundsSince, toldSlip } from '../../book/learning/told-slip.ts';
import type { LearnedShelf } from '../../learning/learned-shelf.ts';
import { logFaults } from '../../learning/log-faults.ts';
import type { WrongLog } from '../../matching/rounds/wrong-log.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import type { CupNow } from './work-log.ts';

/**
 * What is wrong with the log of a cup of a match, by all that looks have taught.
 *
 * @param key of the cup among the looks
 */
export function wrongLogOfWork(
  learned: LearnedShelf,
  key: string,
  { rounds }: Pick<CupNow, 'rounds'>,
  { materials }: Pick<MatchPageData, 'materials'>,
): WrongLog | undefined {
  const fault = logFaults(learned, key).at(-1);
  const round = fault && rounds.find(({ number }) => number === fault.round);
  if (!fault || !round) return undefined;
  const logged = roundsSince(rounds, round.number, fault.since).flatMap(({ added }) => added);
  const shelf = new Map(materials.map((material) => [material.id, material]));
  return { deltaE: fault.deltaE, slips: fault.slips.map((slip) => toldSlip(slip, shelf, round, logged)) };
}
