import type { KnownOverLooks, KnownStretch } from '../../book/method/known-over-looks.ts';
import { type Html, html } from '../html.ts';
import { fixed, roundTop } from '../spectrum-graph.ts';
import { counted, deltaEText, listText } from '../words.ts';

const WIDTH = 330;
const [LEFT, RIGHT, HEAD, FOOT, HEIGHT] = [6, 34, 24, 30, 210];

/** How far each look was from what the looks before it had the book show, in the order of making. */
export function knownChart({ stretches, left }: KnownOverLooks): Html {
  const count = stretches.reduce((sum, { off }) => sum + off.length, 0);
  const top = roundTop(Math.max(1, ...stretches.flatMap(({ off }) => off)));
  const foot = HEIGHT - FOOT;
  const x = (look: number): number => LEFT + ((WIDTH - LEFT - RIGHT) * (look + 0.5)) / count;
  // With the root, so that 20 and 1 are both to be seen.
  const y = (deltaE: number): number => foot - (foot - HEAD) * Math.sqrt(deltaE / top);
  const words = listText(stretches.map(medianWords));
  return html`<figure class="method-figure"><svg class="graph" role="img" aria-labelledby="knew-title knew-desc" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}"><title id="knew-title">How far off the book would have been, look by look</title><desc id="knew-desc">Half of the looks are within: ${words}.</desc>
<path class="graph-top" d="M${LEFT} ${HEAD}H${WIDTH - RIGHT}"/><text class="graph-scale" x="${LEFT}" y="${HEAD - 8}">ΔE ${top}</text><path class="graph-foot" d="M${LEFT} ${foot}H${WIDTH - RIGHT}"/>
${stretches.map((stretch) => stretchOf(stretch, x, y))}
<text class="graph-scale" x="${LEFT}" y="${HEIGHT - 8}">first look</text><text class="graph-scale" x="${WIDTH - RIGHT}" y="${HEIGHT - 8}" text-anchor="end">${left === 0 ? 'last' : `look ${count}`}</text></svg><figcaption>Each dot is a look, in the order they were made: how far what was seen is from what the book would have shown, going by earlier looks alone. The lines are medians: ${words}. For this chart the book learned afresh where each line begins, not before every dot. A look is a little off itself, and some cups are harder than others.${left === 0 ? '' : ` Shown are the first ${counted(count, 'look')}.`}</figcaption></figure>`;
}

function medianWords({ taughtBy, median }: KnownStretch): string {
  return `ΔE ${deltaEText(median)} ${taughtBy === 0 ? 'by the files alone' : `after ${counted(taughtBy, 'look')}`}`;
}

function stretchOf(
  { taughtBy, off, median }: KnownStretch,
  x: (look: number) => number,
  y: (deltaE: number) => number,
): Html {
  const [from, to] = [x(taughtBy - 0.4), x(taughtBy + off.length - 1 + 0.4)];
  return html`${off.map((deltaE, index) => html`<circle class="graph-dot small" cx="${fixed(x(taughtBy + index))}" cy="${fixed(y(deltaE))}" r="2.5"/>`)}<path class="graph-line" d="M${fixed(from)} ${fixed(y(median))}H${fixed(to)}"/><text class="graph-over" x="${fixed(to)}" y="${fixed(y(median) - 6)}" text-anchor="end">${deltaEText(median)}</text>`;
}
