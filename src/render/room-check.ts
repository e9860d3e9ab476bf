/**
 * The room check of the page Match: folded, to be ticked off or passed with one tap; as text where no script runs.
 *
 * @packageDocumentation
 */
import { ROOM_CHECK } from '../words/room-check.ts';
import { type Html, html } from './html.ts';
import { link, paths } from './links.ts';
import type { PageContext } from './page.ts';

/** The list with its boxes; `src/browser/match/room-check.ts` shows it. */
export function roomCheckFold(context: PageContext): Html {
  return html`<details class="match-room" data-room><summary><span data-room-head>Before you heat: is the room ready?</span></summary>
<ul class="checks">${ROOM_CHECK.map(({ id, text }) => html`<li class="check"><input id="room-${id}" type="checkbox" value="${id}"><label for="room-${id}">${text}</label></li>`)}</ul>
<p class="match-buttons"><button type="button" data-room-ready>The room is ready</button> <a href="${link(context, paths.care)}">All the cautions</a> <a href="${link(context, paths.firstAid('burn'))}">First aid</a></p>
</details>`;
}

/** The same as text. */
export function roomCheckText(): Html {
  return html`<div class="only-static"><h2>Before you heat</h2>
<ul>${ROOM_CHECK.map(({ text }) => html`<li>${text}</li>`)}</ul></div>`;
}
