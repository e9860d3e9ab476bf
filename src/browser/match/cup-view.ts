/**
 * A cup at the bench: the target beside it, what is wrong, what to do now, and everything that was done.
 *
 * @packageDocumentation
 */
import { total } from '../../cup/ledger.ts';
import { type Html, html } from '../../render/html.ts';
import { chips } from '../../render/swatch/chip.ts';
import { roundsBeside } from '../../render/target/rounds-beside.ts';
import { sentence } from '../../render/words.ts';
import { leftWords } from '../../words/expectation.ts';
import { besidesAdditionText, nextAdditionText } from '../../words/next-addition.ts';
import type { CupAdvice } from './ask.ts';
import type { CupShown } from './cup-shown.ts';
import { roundBar, roundForms } from './fields-view.ts';
import { heatWarningsView } from './heat-view.ts';
import { logView } from './log-view.ts';
import { isToBeMixed, mixView } from './mix-view.ts';
import { baitOf } from './page-shelf.ts';
import { judged, nextView, viewsOf } from './proposal-view.ts';
import type { MatchShown } from './shown.ts';
import { unloggedView } from './unlogged-view.ts';
import { plasticOf, thisCup } from './work.ts';

/** A cup of a match. */
export function cupView(cupShown: CupShown, shown: MatchShown): Html {
  const { index, work, cup, side, advice, look, rounds, draft } = cupShown;
  const { now, next, aim } = advice;
  const how = now.seen ? 'seen' : 'predicted';
  const beside = look ? [viewsOf(side), viewsOf(look)] : [viewsOf(side)];
  const finished = aim.moved() === 'laminate';
  return html`<figure class="match-hero"><div class="match-swatch">${chips(beside, look ? `Target left, ${how} right; over white above, over black below` : 'The target, over white above, over black below')}</div><figcaption class="pair-words"><span>target</span>${look ? html`<span>${how}${finished ? ', as the finished bait shows it' : ''}</span>` : ''}</figcaption></figure>
<div class="match-now">${mixView(cup, now.cup, index, draft, { ...work, plastic: plasticOf(work, index) }, shown)}${
    next.now
      ? html`<p class="match-verdict">${judged(next.now)}.${now.seen ? '' : isToBeMixed(cup) ? ' Predicted, not seen.' : ' Predicted, not seen: pour a bait and look.'}</p>`
      : ''
  }${heatWarningsView(now, shown)}${
    isToBeMixed(cup)
      ? ''
      : next.advice.kind === 'ask-what-went-in'
        ? unloggedView(advice, index, shown)
        : html`${doneView(cupShown)}${next.advice.kind === 'add' ? '' : adviceView(advice, shown)}${next.doubt ? html`<p class="match-buttons"><button class="quiet" type="button" data-looked-again>I looked again: it is right</button></p>` : ''}${nextView(advice, side, shown, baitOf(work, shown.data))}${next.advice.kind === 'add' ? adviceView(advice, shown) : ''}`
  }${finished ? behindView(cupShown) : ''}${roundForms(index, draft, cupShown, shown)}${
    rounds.length === 0
      ? ''
      : html`<h3>Rounds so far</h3>${roundsBeside(rounds, viewsOf(side), sentence(cup.name), work.tolerance)}`
  }${logView(cup.steps, now, shown)}</div>${roundBar(index, draft, { work, later: isAddedFirst(advice) }, shown)}`;
}

/** Whether something is to be done to a cup before it is poured again: until then that is what is shown. */
function isAddedFirst({ now, next }: CupAdvice): boolean {
  return now.seen !== undefined && next.proposals.length > 0 && next.advice.kind !== 'leave-it';
}

/** The advice in words; of an addition, which stands below it, what else there is to say. */
function adviceView(advice: CupAdvice, shown: MatchShown): Html {
  const { kind } = advice.next.advice;
  const words = kind === 'add' ? besidesAdditionText(advice.next, shown.data.settings) : adviceWords(advice, shown);
  if (words === '') return html``;
  return html`<p class="${kind === 'add' ? 'match-besides' : 'match-next'}" data-advice="${kind}">${words}</p>`;
}

/** Where to go on from a cup that is left as it is. */
function doneView({ index, work, advice }: CupShown): Html {
  if (advice.next.advice.kind !== 'leave-it') return html``;
  const other = work.cups[1 - index];
  return html`<p class="match-buttons">${other ? html`<button type="button" data-tab="${1 - index}">Go on with the ${other.name}</button> ` : ''}<button${other ? html` class="quiet"` : ''} type="button" data-to-save>Name it and save it</button></p>`;
}

function adviceWords({ now, next }: CupAdvice, { data }: MatchShown): string {
  // The verdict stands above it.
  if (next.advice.kind === 'leave-it') return `Leave it as it is${leftWords(next.advice)}.`;
  // Nothing is lost with a cup that nothing was put into.
  return next.advice.kind === 'start-over' && total(now.cup.materials) === 0
    ? 'It is still plain plastic: start with this.'
    : nextAdditionText(next, data.settings);
}

/** What a side of a finished bait is seen in front of. */
function behindView({ index, work }: CupShown): Html {
  const other = work.cups[1 - index]!;
  return thisCup(other.steps).every((step) => step.do !== 'add')
    ? html`<p>The ${other.name} is still plain plastic, and counts as plain plastic behind this one. “Find recipes” below works out both together.</p>`
    : html`<p class="fine">Judged as a finished bait, with the ${other.name} as it is now behind it.</p>`;
}
