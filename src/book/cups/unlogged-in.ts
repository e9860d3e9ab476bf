import { type UnloggedMove, unloggedMoves } from '../../matching/rounds/unlogged.ts';
import type { ChipSpec } from './chip-spec.ts';
import type { CupSpec } from './cup-specs.ts';
import type { FilledCup, FilledRound } from './fill-cup.ts';
import { viewsOfLook } from './seen-colour.ts';

/** The rounds of a cup whose colour moved with nothing logged since the one before, and by how much. */
export function unloggedIn({ rounds }: Pick<FilledCup<CupSpec | ChipSpec>, 'rounds'>): readonly {
  readonly round: FilledRound;
  readonly move: UnloggedMove;
}[] {
  const seen = rounds.flatMap((round) => {
    const [how] = round.seen;
    const views = viewsOfLook(how);
    return how && views ? [{ ...round, seen: views, how, round }] : [];
  });
  return unloggedMoves(seen).flatMap((move, index) => (move ? [{ round: seen[index]!.round, move }] : []));
}
