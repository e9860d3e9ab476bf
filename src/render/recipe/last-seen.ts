import type { Cup, Round } from '../../book/model/cup.ts';
import type { CupLook } from '../../book/model/looks.ts';
import type { Recipe } from '../../book/model/recipe.ts';
import { differenceView } from '../difference-view.ts';
import { type Html, html } from '../html.ts';
import { chipColours, chips, chipWords } from '../swatch/chip.ts';
import { sentence } from '../words.ts';

/** As many times the tolerance must a bait be from its computed colour before the page asks why. Convention of this book. */
const SURPRISING = 2;

/** A bait that was seen, and what was computed of it. */
interface FarBait {
  readonly round: Round;
  readonly look: CupLook;
  readonly deltaE: number;
}

/** The bait of the last round of a cup's log, if its colour was noted and is not the one that is computed. */
function farBait({ rounds }: Cup, tolerance: number): FarBait | undefined {
  const round = rounds.at(-1);
  const look = round?.seen[0];
  // A chip of another thickness is no bait.
  if (!round || !look || look.predicted) return undefined;
  const deltaE = Math.max(0, look.missedBy?.overWhite ?? 0, look.missedBy?.overBlack ?? 0);
  return deltaE > tolerance ? { round, look, deltaE } : undefined;
}

/** Where a cup was last seen beyond the tolerance of its computed colour: both side by side, so that nobody takes the picture for the bait. */
export function lastSeen({ cups, spread }: Recipe, tolerance: number): readonly Html[] {
  return cups.flatMap((cup) => {
    const far = farBait(cup, tolerance);
    if (!far) return [];
    const { overWhite, overBlack } = far.look;
    const seen = { ...(overWhite && { overWhite: overWhite.hex }), ...(overBlack && { overBlack: overBlack.hex }) };
    const what = cups.length === 1 ? 'The last test bait' : `The last test bait of the ${cup.name}`;
    const surprise =
      far.deltaE <= SURPRISING * tolerance
        ? ''
        : far.deltaE > spread.bound
          ? ' Nine in ten come closer than that: check the files of its materials, and pour a test chip on a card to correct them.'
          : ' That is within what its materials leave open; test chips on a card would narrow it down.';
    return [
      html`<div class="last-seen"><div class="round-chips"><div class="pair">${chips(
        [chipColours(far.round.look), seen],
        sentence(cup.name),
        ['predicted', 'last seen'],
      )}</div>${chipWords('predicted', 'seen')}</div><p>${what} came out different from this prediction: ${differenceView(far.deltaE)}.${surprise}</p></div>`,
    ];
  });
}
