/**
 * Which chip to pour next: the one that leaves least doubt in the mixtures that a shelf is used for.
 *
 * @packageDocumentation
 */
import { type ColourSlopes, colourSlopes } from '../../learning/colour-slopes.ts';
import { type CompositionPoint, compositionPoint, likeness } from '../../learning/composition-point.ts';
import type { LookedLayer } from '../../learning/learning-data.ts';
import { viewsCovariance } from '../../learning/look-covariance.ts';
import { gainOfEach, mostTelling, type Telling, type TellingQuestion } from '../../learning/most-telling.ts';
import type { Posterior } from '../../learning/posterior.ts';
import type { LookMeans } from '../../optics/look-doubt.ts';
import { DISCREPANCY_SD } from '../../tables/model-discrepancy.ts';
import { type ChipShelf, type ChipToPour, chipCandidates } from './chip-candidates.ts';
import { likelyMixtures } from './likely-mixtures.ts';
import { pairedChips } from './paired-chips.ts';

/** What is asked. */
export interface ChipQuestion extends ChipShelf {
  /** What is believed of the shelf. */
  readonly belief: Posterior;
  /** How this maker looks at chips. */
  readonly look: { readonly axisSd: number; readonly means: LookMeans };
  /** The plastic that chips are poured in. */
  readonly plastic: string;
  /** Cups of the book's recipes, each as what is looked through. */
  readonly cups: readonly RecipeCup[];
  /** Thickness of the mixtures that are to be known, mm. */
  readonly bodyMm: number;
}

/** A cup of a recipe. */
export interface RecipeCup {
  readonly recipe: string;
  readonly layer: LookedLayer;
  /** Somebody has looked at it, so that its colour is known from that. */
  readonly seen: boolean;
}

/** A chip that is worth pouring. It names first the material of which it tells most. */
export interface WorthLooking extends ChipToPour {
  /** What it takes off the squared doubt of likely mixtures, ΔE00², both views together, on average. */
  readonly gain: number;
  /** Recipes that nobody has seen and whose doubt falls to half or less. */
  readonly halves: readonly string[];
  /** Doubt of the likely mixtures with that material, ΔE00: what their colours are off by, before and after. */
  readonly doubt: { readonly before: number; readonly after: number };
}

/** ΔE00² that a look must take off the squared doubt of a mixture on average: below that nobody is asked for one. Convention of this book. */
export const LEAST_GAIN = 1;

// Recipes that count as likely mixtures: more would not change what comes first. Convention of this book.
const MOST_RECIPES = 60;

/** The chips that teach most, each as if those before it had been poured; none where little is to be learned. */
export function worthLooking(question: ChipQuestion, count: number): readonly WorthLooking[] {
  const { belief, look, plastic, cups, bodyMm } = question;
  const slopesOf = (layer: LookedLayer): ColourSlopes => colourSlopes(belief, layer);
  const likely = likelyMixtures(question.shelf, plastic, bodyMm);
  const unseen = cups.filter(({ seen }) => !seen);
  const wanted = [...likely, ...evenly(cups, MOST_RECIPES).map(({ layer }) => layer)];
  const asked = {
    covariance: belief.covariance,
    mixtures: wanted.map(slopesOf),
    watched: unseen.map(({ layer }) => slopesOf(layer)),
    noise: lookErrors(question),
  };
  const { chips: open, candidates } = chipsToAskFor(question, asked);
  const chosen = mostTelling({ ...asked, candidates }, count, LEAST_GAIN);
  const rest = VIEW_AXES * DISCREPANCY_SD[look.means] ** 2;
  return chosen.map((telling): WorthLooking => {
    const chip = open[telling.candidate]!;
    const told = chip.doses
      .map((dose) => ({ dose, doubt: doubtWith(dose.material, likely, telling, rest) }))
      .sort((one, other) => fallOf(other.doubt) - fallOf(one.doubt));
    return {
      ...chip,
      doses: told.map(({ dose }) => dose),
      gain: telling.gain,
      halves: halved(unseen, telling, rest),
      doubt: told[0]!.doubt,
    };
  });
}

/** Chips that nobody has looked at: of one bottle, and of those that tell most by themselves two at once. */
function chipsToAskFor(
  question: ChipQuestion,
  asked: Omit<TellingQuestion, 'candidates'>,
): { readonly chips: readonly ChipToPour[]; readonly candidates: readonly ColourSlopes[] } {
  const { belief, plastic } = question;
  const looked = pointsOf(belief);
  const isNew = (chip: ChipToPour): boolean => !isLooked(layerOf(chip, plastic), looked, belief);
  const slopesOf = (chip: ChipToPour): ColourSlopes => colourSlopes(belief, layerOf(chip, plastic));
  const single = chipCandidates(question);
  const candidates = single.map(slopesOf);
  const paired = pairedChips(single, gainOfEach({ ...asked, candidates })).filter(isNew);
  const open = single.flatMap((chip, at) => (isNew(chip) ? [{ chip, slopes: candidates[at]! }] : []));
  return {
    chips: [...open.map(({ chip }) => chip), ...paired],
    candidates: [...open.map(({ slopes }) => slopes), ...paired.map(slopesOf)],
  };
}

/** As like as this, a chip has been looked at already. Convention of this book. */
const SAME = 0.95;

const VIEW_AXES = 3;
const BOTH_AXES = 2 * VIEW_AXES;

function isLooked(layer: LookedLayer, looked: readonly CompositionPoint[], { state }: Posterior): boolean {
  const point = compositionPoint(state.unknowns, [layer]);
  return looked.some((each) => likeness(each, point) > SAME);
}

function pointsOf({ problem }: Posterior): readonly CompositionPoint[] {
  return problem.data.looks.map(({ layers, streaks }) => compositionPoint(problem.unknowns, layers, streaks));
}

/** What a look at a new chip is off by: the theory, the doses and the look itself, 6 × 6. */
function lookErrors({ belief: { state }, look, plastic, thicknessMm }: ChipQuestion): Float64Array {
  const point = compositionPoint(state.unknowns, [{ plastics: [[plastic, 1]], contents: [], thicknessMm }]);
  const views = viewsCovariance(
    [{ point, cup: 'chip', ...look }],
    [
      { look: 0, over: 'white' },
      { look: 0, over: 'black' },
    ],
  );
  // The axes of a view have nothing in common.
  return Float64Array.from({ length: BOTH_AXES * BOTH_AXES }, (_, at) => {
    const [row, column] = [Math.floor(at / BOTH_AXES), at % BOTH_AXES];
    if (row % VIEW_AXES !== column % VIEW_AXES) return 0;
    return views[2 * Math.floor(row / VIEW_AXES) + Math.floor(column / VIEW_AXES)]!;
  });
}

/** A chip as what is looked through. */
export function layerOf({ doses, plasticMl, thicknessMm }: ChipToPour, plastic: string): LookedLayer {
  return {
    plastics: [[plastic, 1]],
    contents: doses.map(({ material, measure }) => [material, measure.grams / plasticMl]),
    thicknessMm,
  };
}

/** Recipes whose worst cup has half its doubt left, or less. */
function halved(unseen: readonly RecipeCup[], { before, after }: Telling, rest: number): readonly string[] {
  const worst = new Map<string, { before: number; after: number }>();
  for (const [at, { recipe }] of unseen.entries()) {
    const known = worst.get(recipe) ?? { before: 0, after: 0 };
    worst.set(recipe, {
      before: Math.max(known.before, before.watched[at]!),
      after: Math.max(known.after, after.watched[at]!),
    });
  }
  return [...worst].flatMap(([recipe, doubt]) => (doubt.after + rest <= (doubt.before + rest) / 4 ? [recipe] : []));
}

// The mean length of a difference that is as likely along each of three axes, of its root mean square: √(8/3π).
const MEAN_OF_RMS = Math.sqrt(8 / (3 * Math.PI));

function doubtWith(
  material: string,
  likely: readonly LookedLayer[],
  { before, after }: Telling,
  rest: number,
): WorthLooking['doubt'] {
  const places = [...likely.keys()].filter((at) => likely[at]!.contents.some(([id]) => id === material));
  const mean = (squares: Float64Array): number =>
    MEAN_OF_RMS * Math.sqrt(rest + places.reduce((sum, at) => sum + squares[at]!, 0) / Math.max(1, places.length));
  return { before: mean(before.mixtures), after: mean(after.mixtures) };
}

const fallOf = ({ before, after }: WorthLooking['doubt']): number => before - after;

/** So many of them, evenly from the first to the last. */
function evenly<T>(all: readonly T[], most: number): readonly T[] {
  return all.length <= most ? all : Array.from({ length: most }, (_, at) => all[Math.floor((at * all.length) / most)]!);
}
