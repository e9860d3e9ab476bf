import { type UnlikeSides, unlikeSides } from '../../matching/target/unlike-sides.ts';
import { type Html, html } from '../../render/html.ts';
import type { MatchPageData } from '../../render/pages/match.ts';
import { unlikeSidesText } from '../../words/unlike-sides.ts';
import { bookPart } from './book-part.ts';
import { partOfSide, unsaidSide, type Work } from './work.ts';
import { doubtOfSide } from './work-log.ts';

/** The sides of a finished bait that no bait has, as long as nobody has said how they were seen. */
export function unlikeSidesOf(work: Work, data: MatchPageData): UnlikeSides | undefined {
  if (work.arrangement !== 'together' || work.whole || unsaidSide(work) !== undefined) return undefined;
  return unlikeSides(
    work.sides.map((side) => ({
      ...partOfSide(side),
      doubt: bookPart(side, work, data)?.doubt ?? doubtOfSide(side),
    })),
  );
}

/** What is asked of the sides of the target, with what answers it. */
export function sidesQuestionView(work: Work, data: MatchPageData): Html {
  const found = unlikeSidesOf(work, data);
  if (!found) return html``;
  return html`<div class="question" role="group" aria-labelledby="sides-ask"><p id="sides-ask">${unlikeSidesText(found)}</p><p class="match-buttons"><button type="button" data-sides-seen="apart">Yes, each alone</button> <button class="quiet" type="button" data-sides-seen="together">No, in one bait</button></p></div>`;
}
