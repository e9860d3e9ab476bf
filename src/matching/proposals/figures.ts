import type { Measure } from '../../cup/bench.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { OTHER_LIGHTS } from '../../tables/lights.ts';
import type { Ingredient } from '../measure/measure-doses.ts';
import type { Mix } from '../mix/mix.ts';
import type { MatchBench } from '../shelf/match-bench.ts';
import { type OwnColour, ownColour } from '../shelf/own-hue.ts';
import type { TargetPart } from '../target/target-part.ts';
import { targetUnder } from '../target/target-under-light.ts';
import type { Figures } from './order.ts';

// From a hue to the opposite one there are so many families of bottles. Convention of this book.
const FAMILIES = 8;

/** What doses are judged in: cups, what can go into them, and what they are to look like. */
export interface FiguredProblem {
  readonly mix: Mix;
  readonly ingredients: readonly Ingredient[];
  /** One for each goal of the mix. */
  readonly parts: readonly TargetPart[];
  readonly bench: MatchBench;
  /** Whether the cup has nothing yet of a candidate; unset: nothing counts as new. */
  readonly isNew?: (candidate: number) => boolean;
}

/** How doses were measured; unset: as the bench usually would. */
export interface Measures {
  readonly toolOf?: (candidate: number) => Measure['tool'];
  /** Plastic in each cup then, ml; unset: scatter of weighed amounts counts as none. */
  readonly plasticMl?: readonly number[];
}

/** What doses are chosen by, but for their cost. */
export type DoseFigures = Omit<Figures, 'cost' | 'names'>;

/** The figures of doses in one problem. */
export function figuring(problem: FiguredProblem): (doses: Float64Array, measures?: Measures) => DoseFigures {
  const { mix, ingredients, parts, isNew } = problem;
  const own = ingredients.map(({ material, letsDown, cup }) =>
    letsDown ? undefined : colourBeside(material, parts[cup]!, mix.optics),
  );
  const lamps = OTHER_LIGHTS.map(({ light }) => ({
    light,
    targets: parts.flatMap((part) => {
      const { overWhite, overBlack } = targetUnder(part, light);
      return overBlack ? [overWhite, overBlack] : [overWhite];
    }),
  }));
  return (doses, measures = {}) => {
    const used = [...doses.keys()].filter((j) => doses[j]! > 0);
    const names = new Map(used.map((j) => [ingredients[j]!.material.id, j]));
    return {
      deltaE: mix.worst(doses),
      isOverfull: mix.isOverfull(doses),
      scatter: scatterOf(problem, doses, used, measures),
      bottles: [...names.values()].reduce((sum, j) => sum + (isNew?.(j) ? 2 : 1), 0),
      liquid: Math.max(0, ...parts.map((_, cup) => liquidIn(ingredients, doses, used, cup))),
      lampDeltaE: Math.max(
        ...lamps.flatMap(({ light, targets }) =>
          mix.labsUnder(doses, light).map((lab, view) => deltaE00(targets[view]!, lab)),
        ),
      ),
      ...byOwnColours(own, doses, used),
    };
  };
}

const COLOURS = new WeakMap<OpticalModel, WeakMap<object, Map<string, OwnColour>>>();

/** As `ownColour`, kept for the material: a shelf is asked again and again. */
function colourBeside(
  material: Ingredient['material'],
  { overWhite, thicknessMm }: TargetPart,
  optics: OpticalModel,
): OwnColour {
  const all = COLOURS.get(optics) ?? new WeakMap<object, Map<string, OwnColour>>();
  COLOURS.set(optics, all);
  const kept = all.get(material) ?? new Map<string, OwnColour>();
  all.set(material, kept);
  const key = [overWhite.L, overWhite.a, overWhite.b, thicknessMm].join();
  const before = kept.get(key);
  if (before) return before;
  const found = ownColour(material, overWhite, thicknessMm, optics);
  kept.set(key, found);
  return found;
}

function liquidIn(
  ingredients: readonly Ingredient[],
  doses: Float64Array,
  used: readonly number[],
  cup: number,
): number {
  let ml = 0;
  for (const j of used) {
    const { material, cup: into, letsDown } = ingredients[j]!;
    if (into === cup && !letsDown && material.gramsPerDrop !== undefined) ml += doses[j]! / material.density;
  }
  return ml;
}

/** How far the measures scatter the colour, ΔE00: each by itself, one standard deviation, by the slopes of the colours. */
function scatterOf(
  { mix, ingredients, bench }: FiguredProblem,
  doses: Float64Array,
  used: readonly number[],
  { toolOf, plasticMl }: Measures,
): number {
  const measured = used.filter((j) => !ingredients[j]!.letsDown);
  const { slopes } = mix.slopes(doses, measured);
  const views = new Float64Array(mix.rows / 3);
  for (const j of measured) {
    const { material, cup } = ingredients[j]!;
    const tool = toolOf?.(j) ?? (material.gramsPerDrop === undefined ? 'spoons' : 'drops');
    const moved = doses[j]! * spreadOf(tool, bench, doses[j]! * (plasticMl?.[cup] ?? Number.POSITIVE_INFINITY));
    for (let row = 0; row < mix.rows; row++) views[Math.floor(row / 3)]! += (slopes[row * mix.count + j]! * moved) ** 2;
  }
  return Math.sqrt(Math.max(0, ...views));
}

/** One standard deviation of an amount in g, as a part of it. */
function spreadOf(tool: Measure['tool'], { dropSpread, spoonSpread, scaleGrams }: MatchBench, grams: number): number {
  // What is weighed is off by up to half a step, evenly: a twelfth of its square.
  if (tool === 'scale') return scaleGrams === undefined ? 0 : scaleGrams / Math.sqrt(12) / grams;
  return tool === 'drops' ? dropSpread : tool === 'spoons' ? spoonSpread : 0;
}

function byOwnColours(
  own: readonly (OwnColour | undefined)[],
  doses: Float64Array,
  used: readonly number[],
): Pick<DoseFigures, 'hueAway' | 'black'> {
  let away = 0;
  let hued = 0;
  let black = 0;
  for (const j of used) {
    const colour = own[j];
    if (colour === undefined) continue;
    const part = doses[j]! / colour.typical;
    if (colour.isBlack) black += part;
    if (colour.hueAway === undefined) continue;
    hued += part;
    away += part * colour.hueAway;
  }
  return { hueAway: hued > 0 ? away / hued : 0, black };
}

/** The few candidates of each cup whose own colours are nearest to what it is to look like: those of its hue first, then by ΔE00. */
export function nearestBottles(
  ingredients: readonly Ingredient[],
  parts: readonly TargetPart[],
  count: number,
  optics: OpticalModel,
): readonly number[] {
  return parts.flatMap((part, index) =>
    [...ingredients.entries()]
      .flatMap(([j, { material, cup, letsDown }]) => {
        if (cup !== index || letsDown) return [];
        const { hueAway = 1, deltaE } = colourBeside(material, part, optics);
        return [{ j, family: Math.round(FAMILIES * hueAway), deltaE }];
      })
      .sort((one, other) => one.family - other.family || one.deltaE - other.deltaE)
      .slice(0, count)
      .map(({ j }) => j),
  );
}
