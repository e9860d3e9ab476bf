/**
 * A cup at the bench: the target beside it, what is wrong, what to do now, and everything that was done.
 *
 * @packageDocumentation
 */
import type { MatchedRound } from '../../book/model.ts';
import type { NextAddition } from '../../matching/next-addition.ts';
import { type Html, html } from '../../render/html.ts';
import { type ChipColours, chips } from '../../render/swatch/chip.ts';
import { roundsBeside } from '../../render/target/rounds-beside.ts';
import { sentence } from '../../render/words.ts';
import { type RoundDraft, roundForms } from './fields-view.ts';
import { logView } from './log-view.ts';
import { judged, nextView, viewsOf } from './proposal-view.ts';
import type { BenchShown } from './shown.ts';
import type { CupNow, WorkCup, WorkSide } from './work.ts';

/** All that is known of a cup. */
export interface CupShown {
  readonly index: number;
  readonly cup: WorkCup;
  /** What it is to look like by itself. */
  readonly side: WorkSide;
  readonly now: CupNow;
  readonly next: NextAddition;
  /** What it looks like now: seen, or else predicted; absent where it is empty. */
  readonly look?: ChipColours;
  readonly rounds: readonly MatchedRound[];
  readonly tolerance: number;
  readonly draft: RoundDraft;
}

/** A cup at the bench. */
export function cupView(
  { index, cup, side, now, next, look, rounds, tolerance, draft }: CupShown,
  shown: BenchShown,
): Html {
  const how = now.seen ? 'seen' : 'predicted';
  const beside = look ? [viewsOf(side), viewsOf(look)] : [viewsOf(side)];
  return html`<figure class="bench-hero"><div class="bench-swatch">${chips(beside, look ? `Target on the left, as ${how} on the right; over white above, over black below` : 'The target, over white above, over black below')}</div><figcaption class="pair-words"><span>target${cup.aim ? `, as ${cup.name} by itself should show it` : ''}</span>${look ? html`<span>${how}</span>` : ''}</figcaption></figure>
<div class="bench-now">${
    next.now
      ? html`<p class="bench-verdict">${judged(next.now)}.${now.seen ? '' : ' So the model says: pour a bait and look.'}</p>`
      : ''
  }<p class="bench-next" data-advice="${next.advice}">${next.advice === 'leave' ? 'Leave it as it is.' : next.sentence}</p>${nextView(next, side, shown)}${roundForms(index, draft, side, shown)}${
    rounds.length === 0
      ? ''
      : html`<h3>Rounds so far</h3>${roundsBeside(rounds, viewsOf(side), sentence(cup.name), tolerance)}`
  }${logView(cup.steps, now, shown)}</div>`;
}
