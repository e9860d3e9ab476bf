import type { Book } from '../../book/model.ts';
import { flakeHue } from '../../book/recipes/flake-hue.ts';
import { OPACITY_CLASSES } from '../../tables/opacity-classes.ts';
import { tileSources } from '../bait-picture.ts';
import { bookIndex } from '../book-index.ts';
import { coloursByHue, coloursShowingHue, type HueGroup, lookInHue } from '../colour-entry.ts';
import { document } from '../document.ts';
import { findsAllOf } from '../find-filters.ts';
import { foundRow } from '../find-view.ts';
import { embeddedJson, type Html, html, joined } from '../html.ts';
import { link, paths } from '../links.ts';
import { measuringData } from '../measuring-data.ts';
import { nearColours, nearField } from '../near-colours.ts';
import { opacityName } from '../opacity-words.ts';
import type { PageKind } from '../page.ts';
import { searchRecords } from '../search-records.ts';
import { chipColours, chips } from '../swatch/chip.ts';
import { counted, sentence } from '../words.ts';
import { wordsUnderNames } from '../words-under-names.ts';

/** Filters of the search, in the order of the page, with their names. Each is a filter of the search records. */
const FACETS: readonly (readonly [filter: string, name: string])[] = [
  ['hue', 'Hue'],
  ['stock', 'On the shelf'],
  ['lightness', 'Lightness'],
  ['opacity', 'Opacity'],
  ['pattern', 'Pattern'],
  ['flake-colour', 'Flake colour'],
  ['flake-size', 'Flake size'],
  ['material', 'Material'],
  ['mold', 'Mold'],
  ['tag', 'Tag'],
];

const ORDER: Readonly<Record<string, readonly string[]>> = {
  lightness: ['light', 'medium', 'dark'],
  opacity: OPACITY_CLASSES.map(({ said }) => said),
};

interface FacetValue {
  readonly value: string;
  readonly count: number;
}

/** Values of every filter, with how many colours have each. */
function facetValues(book: Book, groups: readonly HueGroup[]): ReadonlyMap<string, readonly FacetValue[]> {
  const counts = new Map<string, Map<string, number>>();
  for (const { filters } of searchRecords(book)) {
    for (const [filter, values] of Object.entries(filters)) {
      const count = counts.get(filter) ?? new Map<string, number>();
      counts.set(filter, count);
      for (const value of values) count.set(value, (count.get(value) ?? 0) + 1);
    }
  }
  const hues = groups.map(({ hue }) => hue);
  return new Map(
    [...counts].map(([filter, values]) => {
      const order = filter === 'hue' || filter === 'flake-colour' ? hues : (ORDER[filter] ?? []);
      const place = (value: string): number => (order.includes(value) ? order.indexOf(value) : order.length);
      const sorted = [...values].sort(([one], [other]) => place(one) - place(other) || one.localeCompare(other));
      return [filter, sorted.map(([value, count]) => ({ value, count }))];
    }),
  );
}

/** Colours under a hue's name: those of its lightest, middle and darkest. */
function hueStrip(groups: readonly HueGroup[], hue: string): Html {
  const entries = groups.find((group) => group.hue === hue)?.entries ?? [];
  const some = [...new Set([0, 0.5, 1].map((part) => Math.round(part * (entries.length - 1))))].flatMap(
    (at) => entries[at] ?? [],
  );
  return chips(
    some.map((entry) => chipColours(lookInHue(entry, hue))),
    '',
  );
}

interface FlakeFace {
  readonly title: string;
  /** Of its face. */
  readonly hex: string;
}

/** The flakes in the book's colours, by the hue that they are found by. */
function flakesByHue(book: Book): ReadonlyMap<string, readonly FlakeFace[]> {
  const used = new Set(book.recipes.flatMap(({ facets }) => facets.materials));
  const faces = new Map<string, FlakeFace[]>();
  for (const { id, title, flake } of book.materials) {
    if (flake === undefined || !used.has(id)) continue;
    const hue = flakeHue(flake);
    faces.set(hue, [...(faces.get(hue) ?? []), { title, hex: flake.colour }]);
  }
  return faces;
}

function facetGroup(
  book: Book,
  groups: readonly HueGroup[],
  [filter, name]: (typeof FACETS)[number],
  values: readonly FacetValue[],
): Html {
  const { materials } = bookIndex(book);
  const colours = new Map([...materials.values()].map(({ title, hex }) => [title, hex]));
  const flakes = filter === 'flake-colour' ? flakesByHue(book) : new Map<string, readonly FlakeFace[]>();
  const flat = (hexes: readonly string[]): Html =>
    html`<span class="choice-strip">${chips(
      hexes.map((hex) => ({ overWhite: hex, overBlack: hex })),
      '',
    )}</span>`;
  const strip = (value: string): Html | string => {
    const hex = colours.get(value);
    const faces = flakes.get(value);
    if (filter === 'hue') return html`<span class="choice-strip">${hueStrip(groups, value)}</span>`;
    if (faces !== undefined) return flat(faces.map((face) => face.hex));
    return filter === 'material' && hex !== undefined ? flat([hex]) : '';
  };
  const together = findsAllOf(filter) ? html`<p class="fine">Two of these find what has both.</p>` : '';
  const choices = values.map(({ value, count }) => {
    const id = `f-${filter}-${value.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`;
    const names = flakes.get(value)?.map((face) => face.title);
    return html`<li><input type="checkbox" id="${id}" name="${filter}" value="${value}"><label for="${id}">${strip(value)}<span>${sentence(value)}</span> <span class="count">${count}</span>${names === undefined ? '' : html`<span class="choice-names">${joined(names)}</span>`}</label></li>`;
  });
  return html`<details class="facet" name="facet"${filter === 'hue' ? html` open` : ''} data-facet="${filter}"><summary>${name} <span class="chosen" data-chosen></span></summary><fieldset><legend class="unseen-words">${name}</legend>${values.length > 1 ? together : ''}<ul class="choices">${choices}</ul></fieldset></details>`;
}

/** Search over everything in the book. */
export const findPage: PageKind = {
  kind: 'find',
  items: () => [''],
  url: () => paths.find,
  render: (context) => {
    const { book, assets } = context;
    const groups = coloursByHue(book);
    const shown = coloursShowingHue(book);
    const values = facetValues(book, shown);
    const facets = FACETS.flatMap((facet) => {
      const found = values.get(facet[0]);
      return found === undefined ? [] : [facetGroup(book, shown, facet, found)];
    });
    const count = book.recipes.length + book.looks.length;
    const index = assets.pagefind === undefined ? '' : html` data-pagefind="${link(context, assets.pagefind)}"`;
    return document(context, {
      title: 'Find',
      description: `Search the colours of ${book.title} by words, hue, material, flake, pattern and opacity.`,
      part: paths.find,
      scripts: assets.pagefind === undefined ? [] : ['find'],
      searches: true,
      main: html`<h1>Find</h1>
<div class="find"${index} data-find>
<form class="find-form" role="search"${assets.pagefind === undefined ? html` hidden` : ''}><fieldset class="find-fields" disabled data-fields><legend class="unseen-words">What to look for</legend>
<label for="find-words">Words</label><span class="search-line"><input id="find-words" name="q" type="search" autocomplete="off" spellcheck="false"><button type="submit">Find</button></span>
<fieldset class="find-kind"><legend>Search in</legend><ul class="choices"><li><input type="radio" id="k-colour" name="kind" value="colour" checked><label for="k-colour">Colours</label></li><li><input type="radio" id="k-all" name="kind" value=""><label for="k-all">Everything</label></li></ul></fieldset>
${nearField()}
<details class="narrow" data-narrow${facets.length === 0 ? html` hidden` : ''}><summary>Filter by hue, pattern, flake, material <span class="chosen" data-chosen-count></span></summary><div class="facets">${facets}</div>
<p><button class="quiet" type="reset">Clear all</button></p></details>
</fieldset></form>
<div class="find-results">
<p class="find-count" role="status" data-count>${count === 0 ? 'The book has no colours yet.' : `${counted(count, 'colour')}, by hue.`}</p>
${count === 0 ? '' : wordsUnderNames([...book.recipes, ...book.looks])}
<div data-results>${groups.map(
        ({ hue, entries }) =>
          html`<h2>${sentence(hue)}</h2><ul class="found-list">${entries.map((entry) => {
            const { overWhite, overBlack } = lookInHue(entry, hue);
            return foundRow({
              href: link(context, paths.recipe(entry.id)),
              title: entry.title,
              about: `${entry.pattern}, ${opacityName(entry.facets.opacity)}`,
              white: overWhite.hex,
              black: overBlack.hex,
              picture: tileSources(context, entry.id),
            });
          })}</ul>`,
      )}</div>
<p><button type="button" hidden data-more>Show more</button></p>
<p class="only-static fine">Without JavaScript this page lists all colours by hue; <a href="${link(context, paths.shelf)}">the shelf</a> lists the colours that use each material.</p>
</div></div>
${measuringData(context)}<script type="application/json" data-near-colours>${embeddedJson(nearColours(book))}</script>`,
    });
  },
};
