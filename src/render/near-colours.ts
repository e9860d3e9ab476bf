/**
 * What the find page knows of each colour's looks, so that it can say which is nearest to a colour in the hand.
 *
 * @packageDocumentation
 */

import type { Appearance } from '../book/model/colours.ts';
import type { Recipe, RecipeLook } from '../book/model/recipe.ts';
import type { Book } from '../book/model.ts';
import { faceNames, PATTERNS } from '../patterns/patterns.ts';
import type { FoundThing } from './find-view.ts';
import { type Html, html } from './html.ts';
import { paths } from './links.ts';
import { lookParts } from './look-parts.ts';
import { opacityName } from './opacity-words.ts';

/** A part of a bait and its colours, `#rrggbb`; `null` where nobody looked. */
export type SeenPart = readonly [part: string, overWhite: string | null, overBlack: string | null];

/** A colour as it is listed, with everything of it that can be seen. */
export interface NearColour extends Required<Omit<FoundThing, 'picture'>> {
  readonly seen: readonly SeenPart[];
}

function seenPart(part: string, { overWhite, overBlack }: Appearance): SeenPart {
  return [part, overWhite.hex, overBlack.hex];
}

function sides({ body, thin, other, pattern }: Recipe): readonly SeenPart[] {
  const looks = other === undefined ? [body] : [body, other];
  const names = faceNames(pattern, other !== undefined);
  return [...looks.map((look, index) => seenPart(names[index] ?? 'body', look)), seenPart('thin part', thin)];
}

/** The cups that run together in a bait for the eye, each by itself. */
function cups({ pattern, cups: all }: Recipe): readonly SeenPart[] {
  return 'mean' in PATTERNS[pattern].faces[0] ? all.map(({ name, body }) => seenPart(name, body)) : [];
}

/** What the last bait of each cup was seen to look like: the truth, where the computed colour misses it. */
function looked({ cups: all }: Recipe): readonly SeenPart[] {
  return all.flatMap(({ name, rounds }): readonly SeenPart[] => {
    // A chip of another thickness is no bait of this cup.
    const seen = rounds
      .flatMap(({ seen: [judged] }) => (judged && judged.predicted === undefined ? [judged] : []))
      .findLast(({ overWhite, overBlack }) => overWhite ?? overBlack);
    const part = all.length > 1 ? `${name} as last seen` : 'as last seen';
    return seen === undefined ? [] : [[part, seen.overWhite?.hex ?? null, seen.overBlack?.hex ?? null]];
  });
}

/** Every colour of the book with its looks; addresses from the book's root. */
export function nearColours({ recipes, looks }: Pick<Book, 'recipes' | 'looks'>): readonly NearColour[] {
  const near = (look: Recipe | RecipeLook, seen: readonly SeenPart[]): NearColour => ({
    href: paths.recipe(look.id),
    title: look.title,
    about: `${look.pattern}, ${opacityName(look.facets.opacity)}`,
    white: look.body.overWhite.hex,
    black: look.body.overBlack.hex,
    seen,
  });
  return [
    ...recipes.map((recipe) => near(recipe, [...sides(recipe), ...cups(recipe), ...looked(recipe)])),
    ...looks.map((look) =>
      near(
        look,
        lookParts(look).map(({ name, look: part }) => seenPart(name, part)),
      ),
    ),
  ];
}

/** The field of the find page for a colour to be near to. */
export function nearField(): Html {
  return html`<details class="near" data-near><summary>Closest to a colour or a photo <span class="chosen" data-near-chosen></span></summary>
<div class="near-fields"><p class="colour-field"><label for="near-colour">The colour</label><input id="near-colour" type="color" value="#808080"><input type="text" name="near" aria-label="The colour, as # and six digits" placeholder="#rrggbb" aria-describedby="near-fault" maxlength="7" spellcheck="false" autocomplete="off"></p>
<p class="near-fault" id="near-fault" role="status" data-near-fault></p>
<p><button class="quiet" type="button" data-from-photo>From a photo</button></p></div></details>`;
}
