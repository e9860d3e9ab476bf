import type { Recipe } from '../../book/model/recipe.ts';
import { bookIndex, titleOnShelf } from '../book-index.ts';
import { type Html, html } from '../html.ts';
import { notesHtml } from '../notes.ts';
import type { PageContext } from '../page.ts';
import { photoFigures } from '../photo.ts';
import { besideTarget } from '../target/beside-target.ts';
import { counted, dayText, sentence } from '../words.ts';
import { finishedBait } from './finished-bait.ts';
import { fold, inFold } from './fold.ts';
import { roundsSection } from './rounds.ts';

/** How a colour came about: the maker's notes, round by round, the finished bait, and how near it came to its target; nothing where nothing of it is known. */
export function story(context: PageContext, recipe: Recipe): Html {
  const parts = [
    notes(context, recipe),
    roundsSection(context, recipe, (id) => titleOnShelf(context.book, id)),
    finishedBait(context, recipe),
    besideTarget(context, recipe),
  ].filter((part) => part.toString() !== '');
  if (parts.length === 0) return html``;
  return fold('story', 'Story', gist(context, recipe), html`<div class="in-story">${parts}</div>`);
}

function gist({ book }: PageContext, { made, notes: text, cups, target, seen = [] }: Recipe): string {
  const rounds = cups.reduce((sum, cup) => sum + cup.rounds.length, 0);
  const aim = target === undefined ? undefined : bookIndex(book).targets.get(target);
  const parts = [
    ...(made === undefined ? [] : [`made ${dayText(made)}`]),
    ...(text.trim() === '' ? [] : ['the maker’s notes']),
    ...(seen.length === 0 ? [] : ['the finished bait']),
    ...(rounds === 0 ? [] : [counted(rounds, 'round')]),
    ...(aim === undefined ? [] : [`to match ${aim.title}`]),
  ];
  return sentence(parts.join(', '));
}

function notes(context: PageContext, { title, notes: text, photos }: Recipe): Html {
  const figures = photoFigures(context, photos, `Photo of ${title}`);
  const isSaid = text.trim() !== '';
  if (!isSaid && figures.toString() === '') return html``;
  return inFold(
    'notes',
    'Notes',
    html`${isSaid ? html`<div class="notes">${notesHtml(context, text)}</div>` : ''}${figures}`,
  );
}
