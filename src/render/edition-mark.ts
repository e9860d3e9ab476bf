/**
 * What pages of the maker's edition say of who gets what: in their frame, of each colour, and on paper.
 *
 * @packageDocumentation
 */

import type { Publish } from '../book/model/publish.ts';
import type { Book } from '../book/model.ts';
import { LOOK_WARNING } from '../words/look-note.ts';
import { type Html, html } from './html.ts';
import { inCode } from './in-code.ts';
import { sentence } from './words.ts';

/** Over every page of the maker's edition that it is theirs alone; nothing on those that readers get. */
export function ownCopyMark({ edition }: Pick<Book, 'edition'>): Html {
  if (edition === 'shared') return html``;
  return html`<aside class="own-copy" aria-label="Edition"><p><strong>Your own copy,</strong> with everything in it. Readers get the shared edition.</p></aside>`;
}

const KEPT: Readonly<Record<Exclude<Publish, 'full'>, string>> = { look: 'look only', no: 'not published' };

/** What readers don't get the whole of, in a word or two for a tile; nothing of other recipes, nor in the shared edition. */
export function publishWords({ edition }: Pick<Book, 'edition'>, publish: Publish | undefined): string | undefined {
  return edition === 'shared' || publish === undefined || publish === 'full' ? undefined : KEPT[publish];
}

/** The same on a card, which may be pinned up or lent. */
export function cardMark(book: Pick<Book, 'edition'>, publish: Publish): { readonly mark?: string } {
  const words = publishWords(book, publish);
  return words === undefined ? {} : { mark: sentence(words) };
}

const COLOUR: Readonly<Record<Publish, Html | string>> = {
  full: 'Published: readers get the whole recipe.',
  look: html`Look only: readers see its name and its look, but no amounts. ${lookWarning()}.`,
  no: 'Not published: readers never see it.',
};

const TARGET: Readonly<Record<Publish, string>> = {
  full: 'Published: readers see this page.',
  look: 'Look only: readers see its name and its colours.',
  no: 'Not published: readers never see it.',
};

/** `LOOK_WARNING`, what is to be written set as code. */
function lookWarning(): readonly Html[] {
  return inCode(sentence(LOOK_WARNING));
}

/** What readers get of a colour, as a line of its page in the maker's edition. */
export function publishNote({ edition }: Pick<Book, 'edition'>, publish: Publish): Html {
  return edition === 'shared' ? html`` : note(COLOUR[publish], publish);
}

/** What readers get of a target. */
export function targetNote({ shared }: { readonly shared?: Publish }): Html {
  return shared === undefined ? html`` : note(TARGET[shared], shared);
}

/** That readers don't get a material or a mold: none that they get needs a word. */
export function shelfNote({ shared }: { readonly shared?: Publish }): Html {
  return shared === 'no' ? note('Only in your own copy: no recipe that you publish in full uses it.', shared) : html``;
}

function note(words: Html | string, publish: Publish): Html {
  return html`<p class="publish-note publish-${publish}">${words}</p>`;
}
