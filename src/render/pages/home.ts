import { PICTURE_CAPTION } from '../bait-picture.ts';
import { type ColourEntry, coloursByHue, type HueGroup, lookInHue } from '../colour-entry.ts';
import { document } from '../document.ts';
import { type Html, html } from '../html.ts';
import { hueAnchor, link, paths } from '../links.ts';
import type { PageContext, PageKind } from '../page.ts';
import { tile } from '../tile.ts';
import { counted, sentence } from '../words.ts';
import { wordsUnderNames } from '../words-under-names.ts';

/** A wall of more colours than this shows some of each hue, and where the others are. */
const WHOLE_WALL = 480;
const SOME_OF_A_HUE = 36;

/** Tiles that may stand on a first screen: their pictures are loaded at once. */
const AT_ONCE = 4;

const STRIP = [
  'the strip',
  'the plastic as thick as the bait’s body (left) and as its thin part (right), on white card above and black below',
] as const;

/** The wall of colours. */
export const homePage: PageKind = {
  kind: 'home',
  items: () => [''],
  url: () => '',
  render: (context) => {
    const { book } = context;
    const groups = coloursByHue(book);
    const count = book.recipes.length + book.looks.length;
    const first = new Set(groups.flatMap(({ entries }) => entries).slice(0, AT_ONCE));
    const most = count <= WHOLE_WALL ? count : SOME_OF_A_HUE;
    return document(context, {
      description: `${book.title}: ${count === 0 ? 'colours' : counted(count, 'colour')} for soft-plastic lures, computed from what is in the cup.`,
      part: paths.home,
      paper: 'at-home',
      scripts: count === 0 ? [] : ['filter'],
      main:
        count === 0
          ? html`<h1>${book.title}</h1>
<p class="lead">The book has no colours yet. <a href="${link(context, paths.foreword)}">The foreword</a> says how to read it.</p>`
          : html`<div class="wall-head">
<h1>${book.title}</h1>
<p class="lead">${counted(count, 'colour')}${book.maker === undefined ? '' : html`, poured by ${book.maker}`}.</p>
<form class="search-form" role="search" action="${link(context, paths.find)}" method="get"><label for="q">Show only: a name, material or tag</label><span class="search-line"><input id="q" name="q" type="search" autocomplete="off" data-filter><button type="submit">Search all</button></span></form>
<p class="filter-count" role="status" data-filter-count></p>
</div>
<nav class="hues" aria-label="Hues"><ul>${groups.map(hueLink)}</ul></nav>
<div class="walls">${groups.map((group) => hueSection(context, group, most, (entry) => first.has(entry)))}</div>
<p class="fine wall-caption">All baits are to one scale. ${PICTURE_CAPTION}</p>
${wordsUnderNames([...book.recipes, ...book.looks], [STRIP])}`,
    });
  },
};

/** The colours of one hue, its name before them. */
function hueSection(
  context: PageContext,
  group: HueGroup,
  most: number,
  isFirst: (entry: ColourEntry) => boolean,
): Html {
  const { hue, entries } = group;
  const id = hueAnchor(hue);
  const shown = spread(entries, most);
  const count = counted(entries.length, 'colour');
  const all =
    shown.length === entries.length
      ? html`<span class="count">${count}</span>`
      : html`<a class="count" href="${link(context, paths.find)}?hue=${encodeURIComponent(hue)}">all ${count}</a>`;
  return html`<section class="hue" aria-labelledby="${id}" data-filter-group><h2 id="${id}" tabindex="-1">${sentence(hue)} ${all}</h2>
<ul class="wall">${shown.map((entry) => tile(context, entry, isFirst(entry)))}</ul></section>
`;
}

/** At most so many of a list, evenly from its first to its last. */
function spread<T>(list: readonly T[], most: number): readonly T[] {
  if (list.length <= most) return list;
  return Array.from({ length: most }, (_, at) => list[Math.round((at * (list.length - 1)) / (most - 1))]!);
}

/** A family's name under a strip of its colours. */
function hueLink({ hue, entries }: HueGroup): Html {
  const colours = spread(entries, 24).map((entry) => lookInHue(entry, hue).overWhite.hex);
  const strip = colours.map((hex, at) => html`<path fill="${hex}" d="M${at} 0h1v1h-1z"/>`);
  return html`<li><a href="#${hueAnchor(hue)}"><svg viewBox="0 0 ${colours.length} 1" preserveAspectRatio="none" shape-rendering="crispEdges" aria-hidden="true">${strip}</svg><span>${sentence(hue)} <span class="count">${entries.length}</span></span></a></li>`;
}
