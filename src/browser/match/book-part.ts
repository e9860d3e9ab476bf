import type { Target } from '../../book/model/target.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import type { Work, WorkSide } from './work.ts';
import { bookColour, colourText, type WorkColour } from './work-colour.ts';

/** The part of the book's target that a side still has the colours of; undefined where it is described. */
export function bookPart(
  side: WorkSide,
  { target }: Pick<Work, 'target'>,
  data: Pick<MatchPageData, 'targets'>,
): Target['parts'][number] | undefined {
  const same = (one?: WorkColour, other?: WorkColour): boolean =>
    (one && colourText(one)) === (other && colourText(other));
  return data.targets
    .find(({ id }) => id === target)
    ?.parts.find(
      ({ name, overWhite, overBlack }) =>
        name === side.name &&
        same(bookColour(overWhite), side.overWhite) &&
        same(overBlack && bookColour(overBlack), side.overBlack),
    );
}
