import type { LearnedShelf } from '../../learning/learned-shelf.ts';
import type { LookedLayer, TaughtLook } from '../../learning/learning-data.ts';
import { Posterior } from '../../learning/posterior.ts';
import {
  type ChipQuestion,
  type RecipeCup,
  type WorthLooking,
  worthLooking,
} from '../../matching/chips/worth-looking.ts';
import { lookDoubt } from '../../optics/look-doubt.ts';
import { BODY_MM } from '../../tables/label-doubt.ts';
import { CHIP_MM } from '../../tables/material-defaults.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { matchPlastic } from '../match/match-cup.ts';
import type { Cup } from '../model/cup.ts';
import type { Recipe } from '../model/recipe.ts';
import type { Material } from '../model/shelf.ts';
import type { Book } from '../model.ts';

/** Most chips that are asked for at once: enough for an evening. Convention of this book. */
export const MOST_CHIPS = 12;

/**
 * The chips that a maker would learn most from, the first first, each as if those before it had been poured and looked at. None where the
 * book is not to learn.
 *
 * @param count at most so many
 */
export function worthAChip(book: Book, count: number): readonly WorthLooking[] {
  const plastic = matchPlastic(book);
  if (plastic === undefined) return [];
  const rest = chipQuestion(book, plastic);
  const { learned } = book;
  const isLeftAlone = learned.data.looks.length === 0 && rest.cups.some(({ seen }) => seen);
  if (isLeftAlone) return [];
  const asked = JSON.stringify([rest, count]);
  const before = answers.get(learned);
  if (before?.asked === asked) return before.told;
  const told = worthLooking({ ...rest, belief: new Posterior(learned) }, count);
  answers.set(learned, { asked, told });
  return told;
}

// The page of the shelf asks after every edit, and few of them change what is known.
const answers = new WeakMap<LearnedShelf, { readonly asked: string; readonly told: readonly WorthLooking[] }>();

function chipQuestion(book: Book, plastic: string): Omit<ChipQuestion, 'belief'> {
  const { learned, materials, recipes, molds, settings } = book;
  const bodies = molds.map(({ bodyMm }) => bodyMm).sort((one, other) => one - other);
  const bodyOf = new Map(molds.map(({ id, bodyMm }) => [id, bodyMm]));
  const known = new Set(learned.data.materials.map(({ id }) => id));
  const { drops, spoons, scaleGrams, dropSpread, spoonSpread } = settings;
  return {
    shelf: materials.filter(({ id }) => known.has(id)).map(asShelf),
    ...whitenerOf(book),
    bench: { drops, spoons, dropSpread, spoonSpread, ...defined({ scaleGrams }) },
    plasticMl: usualVolume(settings).ml,
    thicknessMm: CHIP_MM,
    look: usualLook(learned.data.looks),
    plastic,
    cups: recipes.flatMap((recipe) => cupsOf(recipe, required(bodyOf, recipe.mold), known)),
    bodyMm: bodies[Math.floor(bodies.length / 2)] ?? BODY_MM,
  };
}

/** What of a material a chip hangs on. */
function asShelf(material: Material): ChipQuestion['shelf'][number] {
  const { id, kind, typical, most, effect, stockGrams, gramsPerMl, gramsPerDrop } = material;
  return {
    id,
    kind,
    gramsPerMl,
    ...defined({ typical, most, effect, stockGrams, gramsPerDrop }),
  };
}

/** The white that the recipes use most, which is known best. */
function whitenerOf({ learned, materials }: Book): Pick<ChipQuestion, 'white'> {
  const whites = new Set(learned.data.materials.flatMap(({ id, prior }) => (prior.kind === 'white' ? [id] : [])));
  const [best] = materials
    .filter(({ id, stockGrams }) => whites.has(id) && stockGrams !== 0)
    .sort((one, other) => other.usedIn.length - one.usedIn.length || (one.id < other.id ? -1 : 1));
  return best === undefined ? {} : { white: best.id };
}

/** How a maker looks: as at most looks of the book; as by eye where there are none. */
function usualLook(looks: readonly TaughtLook[]): ChipQuestion['look'] {
  const byEye = looks.filter(({ means }) => means === 'screen');
  const usual = 2 * byEye.length >= looks.length ? byEye : looks.filter(({ means }) => means !== 'screen');
  const sds = usual.map(({ axisSd }) => axisSd).sort((one, other) => one - other);
  const [first] = usual;
  const means = first?.means ?? 'screen';
  return { means, axisSd: sds[Math.floor(sds.length / 2)] ?? lookDoubt(means).axisSd };
}

function cupsOf({ id, cups, seen }: Recipe, thicknessMm: number, known: ReadonlySet<string>): readonly RecipeCup[] {
  return cups.map((cup) => ({
    recipe: id,
    layer: layerOf(cup, thicknessMm, known),
    seen: seen !== undefined || cup.rounds.some((round) => round.seen.some(({ doubt }) => doubt !== undefined)),
  }));
}

function layerOf({ plastics, contents }: Cup, thicknessMm: number, known: ReadonlySet<string>): LookedLayer {
  return {
    plastics: plastics.map(({ material, fraction }) => [material, fraction]),
    contents: contents.flatMap(({ material, gramsPerMl }) => (known.has(material) ? [[material, gramsPerMl]] : [])),
    thicknessMm,
  };
}
