import type { Measure } from '../../cup/bench.ts';
import type { Cut } from '../../cup/cut.ts';
import { partsOfMeasured } from '../../cup/cut-measures.ts';
import { type HeatLimit, heatLimit } from '../../cup/heat-limit.ts';
import type { Amounts, CupState } from '../../cup/ledger.ts';
import { measures } from '../../cup/measures.ts';
import { cupBody, layersViews, type TwoViews } from '../../optics/cup-body.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import type { Body, Layer } from '../../optics/stack.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import type { Beliefs } from '../belief/beliefs.ts';
import { type Expectation, expectationIn } from '../belief/expectation.ts';
import { type Expect, type ExpectedDoses, nearBelieved } from '../belief/expecting.ts';
import { askedAs, contentsOf } from '../belief/looked-layers.ts';
import type { CupBegun } from '../first-recipe-question.ts';
import type { PromisedByTools } from '../measure/best-tools.ts';
import type { Ingredient, MeasuredDoses } from '../measure/measure-doses.ts';
import { onScale, type TooLittle, tooLittleToWeigh, type WeighedAmount } from '../measure/too-little.ts';
import { type WeighedDoses, type Weight, weighDoses, weightOf } from '../measure/weigh-doses.ts';
import { bodyLayers } from '../mix/layers-of-part.ts';
import type { Mix } from '../mix/mix.ts';
import type { MatchBench } from '../shelf/match-bench.ts';
import { costOf, type SeenShelf } from '../shelf/match-material.ts';
import { inPouringOrder } from '../shelf/pouring-order.ts';
import { type ShortStock, shortStock } from '../shelf/short-stock.ts';
import { contrastOfViews, shownOf, type TargetPart } from '../target/target-part.ts';
import { targetUnder } from '../target/target-under-light.ts';
import { thresholdsFor, type Verdict, verdictOf } from '../target/verdict.ts';
import { type CupFlake, cupFlakes, type FlakeDoses } from './cup-flakes.ts';
import type { DoseFigures } from './figures.ts';
import type { Figures } from './order.ts';
import { boughtGrams, type PredictedColour, predicted, toolsOf } from './proposal.ts';

/** One material of a proposed cup. */
export interface RecipeAmount {
  readonly material: string;
  readonly title: string;
  /** It is measured of this cut, which holds so many grams of the material. */
  readonly cut?: Cut;
  /** Measured, g in this cup, and exact, g per ml of plastic. */
  readonly grams: number;
  readonly exactGramsPerMl: number;
  /** "3 drops", "1/8 tsp", "0.12 g" */
  readonly text: string;
  readonly tool: Measure['tool'];
  /** What to weigh instead, all of the recipe or nothing; absent where there is no scale, or it is weighed already. */
  readonly weighed?: Weight;
}

/** A proposed cup. */
export interface RecipeCup {
  readonly name: string;
  readonly plastic: string;
  readonly plasticTitle: string;
  readonly plasticMl: number;
  readonly amounts: readonly RecipeAmount[];
  /** What is seen of its flake in the bait, looked at from its side. */
  readonly flakes: readonly CupFlake[];
  /** Poured by itself, at the thickness of its part. */
  readonly alone: {
    readonly overWhite: PredictedColour;
    readonly overBlack: PredictedColour;
    readonly contrastRatio: number;
  };
}

/** What a part of the target will look like. */
export interface RecipeSide {
  readonly name: string;
  readonly overWhite: PredictedColour;
  readonly overBlack?: PredictedColour;
  readonly contrastRatio?: number;
  readonly left: Verdict;
  /** ΔE00 under illuminant A (see `targetUnder`): what a lamp makes of the match. */
  readonly deltaEUnderA: number;
}

/** A recipe for a target. */
export interface RecipeProposal extends PromisedByTools {
  readonly cups: readonly RecipeCup[];
  readonly sides: readonly RecipeSide[];
  /** What the exact recipe promises, before it is measured. */
  readonly exact: Expectation;
  /** Largest ΔE00 that is left by the most likely colours: of the measured recipe, and of the one that is weighed, where there is a scale for it. */
  readonly deltaE: number;
  readonly weighedDeltaE?: number;
  /** What of it is too little for the scale, where it is weighed or may be. */
  readonly tooLittle?: TooLittle;
  /** What the shelf has less of than it asks for, of all cups together. */
  readonly runsShort?: readonly ShortStock[];
  readonly deltaEUnderA: number;
  readonly bottles: number;
  /** Title of its one bottle that nobody has looked at yet: a look at this recipe tells the book of it. */
  readonly tries?: string;
  /** All others that are proposed with it have bottles that nobody has looked at yet; it has none. */
  readonly triesNone?: true;
  readonly cost: number;
  readonly unpriced: readonly string[];
  readonly limit?: HeatLimit;
}

/** A recipe of which it is not known yet what the exact doses promise. */
export type MeasuredRecipe = Omit<RecipeProposal, 'exact'>;

/** What a recipe is made of. */
export interface RecipeContext extends SeenShelf {
  readonly belief: Beliefs;
  readonly expect: Expect;
  readonly exact: Float64Array;
  readonly measured: MeasuredDoses;
  readonly mix: Mix;
  readonly ingredients: readonly Ingredient[];
  readonly parts: readonly TargetPart[];
  /** What each cup is begun with. */
  readonly begun: readonly CupBegun[];
  /** What goes into each cup besides, g per ml of plastic; its flake that is wanted among it. */
  readonly besides: readonly Amounts[];
  readonly flakeDoses: readonly FlakeDoses[];
  readonly tolerance: number;
  readonly bench: MatchBench;
  /** As of `FiguredProblem`. */
  readonly isUntried?: ((candidate: number) => boolean) | undefined;
}

/** Measured doses as a recipe, and what is to be expected of them. */
export function recipeProposal(context: RecipeContext): {
  readonly recipe: MeasuredRecipe;
  readonly expectation: ExpectedDoses;
} {
  const { exact, measured, mix, ingredients, parts, begun, shelf, optics, bench, belief, expect } = context;
  const each = begun.map(({ plasticMl }) => plasticMl);
  const weighed = weighDoses(mix, ingredients, measured, exact, each, bench);
  const poured = parts.map((part, index) => cupOf(context, weighed, part, index));
  const bodies = poured.map(({ amounts }, index): Body => bodyOf(amounts, begun[index]!, context));
  const cups = poured.map((cup, index): RecipeCup => {
    const layers = bodyLayers(bodies, index, parts[index]!);
    return { ...cup, flakes: cupFlakes(cup, layers, { shelf, optics }, context.flakeDoses[index]!) };
  });
  const contents = poured.map(({ amounts }, index) => contentsOf(stateOf(amounts, begun[index]!), shelf));
  const views = parts.map((part, index) => belief.of(askedAs(contents, index, part)));
  const expectation = expect(measured.doses, { toolOf: toolsOf(measured.ingredients), plasticMl: each }, views);
  const sides = parts.map((part, index) => sideOf(part, views[index]!, bodyLayers(bodies, index, part), context));
  const used = new Map<string, number>();
  const take = (material: string, grams: number): void => void used.set(material, (used.get(material) ?? 0) + grams);
  for (const { material, grams, cut } of cups.flatMap(({ amounts }) => amounts)) {
    for (const part of partsOfMeasured(material, grams, cut)) {
      const bought = boughtGrams(part, shelf);
      take(bought.material, bought.grams);
    }
  }
  const plastics = plasticsOf(begun, used, shelf);
  const costs = [...used].map(([material, grams]) => ({ material, cost: costOf(required(shelf, material), grams) }));
  const bases = [...plastics].map(([material, grams]) => ({
    material,
    cost: costOf(required(shelf, material), grams),
  }));
  const runsShort = shortStock([...used, ...plastics], shelf);
  const { limit } = heatLimit([...plastics.keys()], [...used.keys()], (id) => shelf.get(id));
  const deltaE = Math.max(...sides.map(({ left }) => left.deltaE));
  const tooLittle = tooLittleToWeigh(
    cups.flatMap(({ amounts }) => amounts.flatMap((amount) => weighedAmount(amount, shelf) ?? [])),
    bench.scaleGrams,
  );
  const all = [...costs, ...bases];
  const recipe: MeasuredRecipe = {
    cups,
    sides,
    ...expectationIn(expectation),
    ...(weighed && {
      weighed: expectationIn(
        expect(
          weighed.doses,
          { toolOf: () => 'scale', plasticMl: each },
          nearBelieved(context, weighed.doses, { doses: measured.doses, views }),
        ),
      ),
    }),
    deltaE,
    ...defined({ weighedDeltaE: weighed?.deltaE, tooLittle, runsShort, tries: triedBy(context) }),
    deltaEUnderA: Math.max(...sides.map(({ deltaEUnderA }) => deltaEUnderA)),
    bottles:
      new Set(measured.ingredients.map(({ candidate }) => context.ingredients[candidate]!.material.id)).size +
      new Set(context.besides.flatMap((each) => Object.keys(each))).size,
    cost: all.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
    unpriced: all.flatMap(({ material, cost }) => (cost === undefined ? [material] : [])),
    ...defined({ limit }),
  };
  return { recipe, expectation };
}

/** Title of the one bottle of a recipe that nobody has looked at yet; undefined where there is none, or more. */
function triedBy({ measured, ingredients, isUntried }: RecipeContext): string | undefined {
  const titles = measured.ingredients.flatMap(({ candidate }) =>
    isUntried?.(candidate) ? ingredients[candidate]!.material.title : [],
  );
  const [title, ...others] = new Set(titles);
  return others.length === 0 ? title : undefined;
}

/** Grams of each plastic in all cups together, with what went in with cuts, which is taken out of `used`. */
function plasticsOf(
  begun: readonly CupBegun[],
  used: Map<string, number>,
  shelf: RecipeContext['shelf'],
): ReadonlyMap<string, number> {
  const grams = new Map<string, number>();
  for (const { plastic, plasticMl } of begun)
    grams.set(plastic, (grams.get(plastic) ?? 0) + plasticMl * required(shelf, plastic).gramsPerMl);
  for (const [plastic, started] of grams) {
    grams.set(plastic, started + (used.get(plastic) ?? 0));
    used.delete(plastic);
  }
  return grams;
}

/** An amount as the scale shows it; undefined where it is not weighed. */
function weighedAmount(
  { material, tool, weighed, ...amount }: RecipeAmount,
  shelf: RecipeContext['shelf'],
): WeighedAmount | undefined {
  if (weighed) return onScale(required(shelf, material), weighed);
  return tool === 'scale' ? onScale(required(shelf, material), amount) : undefined;
}

function cupOf(
  context: RecipeContext,
  weighedDoses: WeighedDoses | undefined,
  part: TargetPart,
  index: number,
): Omit<RecipeCup, 'flakes'> {
  const { exact, measured, ingredients, begun, shelf, besides, bench } = context;
  const { plastic, plasticMl } = begun[index]!;
  const coloured = measured.ingredients.flatMap(({ candidate, amount, measure }): RecipeAmount[] => {
    const { material, cup } = ingredients[candidate]!;
    if (cup !== index) return [];
    return [
      {
        material: material.id,
        title: material.title,
        ...defined({ cut: measure.cut }),
        grams: amount,
        exactGramsPerMl: exact[candidate]!,
        text: measure.text,
        tool: measure.tool,
        ...(weighedDoses === undefined ? {} : { weighed: required(weighedDoses.weights, candidate) }),
      },
    ];
  });
  const kept = Object.entries(besides[index]!).map(([name, dose]): RecipeAmount => {
    const material = required(shelf, name);
    const measure = measures(dose * plasticMl, material, bench)[0]!;
    return {
      material: material.id,
      title: material.title,
      grams: measure.grams,
      exactGramsPerMl: dose,
      text: measure.text,
      tool: measure.tool,
      ...(bench.scaleGrams === undefined || measure.tool === 'scale'
        ? {}
        : { weighed: weightOf(dose * plasticMl, bench.scaleGrams) }),
    };
  });
  const amounts = inPouringOrder([...coloured, ...kept], [begun[index]!.plastic], shelf);
  const contents = contentsOf(stateOf(amounts, begun[index]!), shelf);
  const { thicknessMm, camera } = part;
  const alone = context.belief.mean(askedAs([contents], 0, { thicknessMm, ...defined({ camera }) }));
  return {
    name: part.name,
    plastic,
    plasticTitle: required(shelf, plastic).title,
    plasticMl,
    amounts,
    alone: {
      overWhite: predicted(alone.overWhite),
      overBlack: predicted(alone.overBlack),
      contrastRatio: contrastOfViews(alone)!,
    },
  };
}

function stateOf(amounts: readonly RecipeAmount[], { plastic, plasticMl }: CupBegun): CupState {
  const materials = Object.fromEntries(amounts.map(({ material, grams }) => [material, grams]));
  return { plastics: { [plastic]: plasticMl }, materials };
}

function bodyOf(
  amounts: readonly RecipeAmount[],
  { plastic, plasticMl }: CupBegun,
  { shelf, optics }: SeenShelf,
): Body {
  const contents = amounts.map(({ material, grams }) => ({ material, gramsPerMl: grams / plasticMl }));
  const plastics = [{ material: plastic, fraction: 1 }];
  return cupBody({ plastics, contents }, (name) => required(shelf, name), optics);
}

function sideOf(
  part: TargetPart,
  views: TwoViews,
  layers: readonly Layer[],
  { tolerance, optics }: Pick<RecipeContext, 'tolerance' | 'optics'>,
): RecipeSide {
  const shown = shownOf(views, part);
  const left = verdictOf(shown, part, thresholdsFor(tolerance));
  const underA = layersViews(layers, optics, 'A');
  const targetUnderA = targetUnder(part, 'A');
  const contrastRatio = contrastOfViews(shown);
  return {
    name: part.name,
    overWhite: predicted(views.overWhite),
    ...(part.overBlack ? { overBlack: predicted(views.overBlack) } : {}),
    ...defined({ contrastRatio }),
    left,
    deltaEUnderA: Math.max(
      deltaE00(targetUnderA.overWhite, underA.overWhite),
      targetUnderA.overBlack ? deltaE00(targetUnderA.overBlack, underA.overBlack) : 0,
    ),
  };
}

/** What a recipe is chosen by, with the figures of its doses. */
export function recipeFigures({ cost, cups }: MeasuredRecipe, figures: DoseFigures): Figures {
  const names = cups.flatMap(({ amounts }, index) => amounts.map(({ material }) => `${index}/${material}`)).sort();
  return { ...figures, cost, names };
}
