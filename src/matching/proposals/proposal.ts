import type { Measure } from '../../cup/bench.ts';
import type { Cut } from '../../cup/cut.ts';
import { partsOfMeasured } from '../../cup/cut-measures.ts';
import { type HeatLimit, heatLimit } from '../../cup/heat-limit.ts';
import type { CupHeats } from '../../cup/heats.ts';
import { type CupState, cupVolume, EMPTY_CUP, type PartStep, withAdded } from '../../cup/ledger.ts';
import type { BelievedViews } from '../../learning/believed-views.ts';
import type { Lab } from '../../optics/cielab.ts';
import { hexFromLab } from '../../optics/display.ts';
import { defined } from '../../values/defined.ts';
import { required } from '../../values/required.ts';
import { expectationIn } from '../belief/expectation.ts';
import { type Expect, type ExpectedDoses, nearBelieved } from '../belief/expecting.ts';
import type { PromisedByTools } from '../measure/best-tools.ts';
import type { MeasuredDoses } from '../measure/measure-doses.ts';
import { onScale, type TooLittle, tooLittleToWeigh, type WeighedAmount } from '../measure/too-little.ts';
import { type Weight, weighDoses } from '../measure/weigh-doses.ts';
import type { AdditionProblem } from '../mix/addition-problem.ts';
import type { MatchBench } from '../shelf/match-bench.ts';
import { costOf, type MatchMaterial } from '../shelf/match-material.ts';
import { inPouringOrder } from '../shelf/pouring-order.ts';
import { type ShortStock, shortStock } from '../shelf/short-stock.ts';
import { contrastOfViews, type TargetPart } from '../target/target-part.ts';
import { type Thresholds, type Verdict, verdictOf } from '../target/verdict.ts';
import { type AdditionHeat, additionHeat } from './addition-heat.ts';
import type { DoseFigures } from './figures.ts';
import type { Figures } from './order.ts';
import type { AmountToAdd, ToAdd } from './to-add.ts';

/** A colour that is predicted. */
export interface PredictedColour {
  readonly lab: Lab;
  /** Nearest colour that a screen shows. */
  readonly hex: string;
}

/** One material of a proposal, measured. */
export interface Addition extends AmountToAdd {
  readonly material: string;
  /** It is measured of this cut, which holds so many grams of the material. */
  readonly cut?: Cut;
  readonly grams: number;
  /** What to weigh instead, all of the proposal or nothing; absent where there is no scale, or it is weighed already. */
  readonly weighed?: Weight;
  /** Not in the cup yet. */
  readonly isNew: boolean;
}

/** Something to do to a cup, and what comes of it. */
export interface Proposal extends ToAdd, PromisedByTools {
  readonly additions: readonly Addition[];
  readonly overWhite: PredictedColour;
  readonly overBlack?: PredictedColour;
  readonly contrastRatio?: number;
  /** What is left of the difference, by the most likely colour. */
  readonly left: Verdict;
  /** ΔE00 that is left where everything is weighed instead. */
  readonly weighedDeltaE?: number;
  /** What of it is too little for the scale, where it is weighed or may be. */
  readonly tooLittle?: TooLittle;
  /** What the shelf has less of than it asks for. */
  readonly runsShort?: readonly ShortStock[];
  /** Materials to be opened, and those of them that are not in the cup yet. */
  readonly bottles: number;
  readonly newBottles: number;
  /** Of what is added and has a price. */
  readonly cost: number;
  readonly unpriced: readonly string[];
  /** Volume of the cup afterwards, ml. */
  readonly volumeMl: number;
  /** Lowest highest temperature of everything in the cup then, and whether the addition lowers it. */
  readonly limit?: HeatLimit & { readonly lowered: boolean };
  /** What it does to the heat of the cup, where that was told. */
  readonly heat?: AdditionHeat;
}

/** What a proposal is made of. */
export interface ProposalContext {
  /** What is to be expected of doses, by how they were measured. */
  readonly expect: Expect;
  /** Of the measured doses. */
  readonly expectation: ExpectedDoses;
  readonly problem: AdditionProblem;
  readonly cup: CupState;
  readonly heats?: CupHeats | undefined;
  readonly target: TargetPart;
  readonly shelf: ReadonlyMap<string, MatchMaterial>;
  readonly bench: MatchBench;
  readonly thresholds: Thresholds;
  readonly isNew: (candidate: number) => boolean;
}

/** Measured doses, and what they were before they were measured, as a proposal. */
export function proposalOf(measured: MeasuredDoses, exact: Float64Array, context: ProposalContext): Proposal {
  const { ingredients, doses } = measured;
  const { problem, cup, heats, target, shelf, bench, thresholds, isNew, expect, expectation } = context;
  const weighed = weighDoses(problem.mix, problem.ingredients, measured, exact, [problem.plasticMl], bench);
  const plasticMl = [problem.plasticMl];
  const near = { mix: problem.mix, parts: [target] };
  const [{ overWhite: white, overBlack }] = expectation.views as readonly [BelievedViews];
  const black = target.overBlack ? overBlack : undefined;
  const views = { overWhite: white, ...defined({ overBlack: black }) };
  const left = verdictOf(views, target, thresholds);
  const additions: Addition[] = [];
  const weights: WeighedAmount[] = [];
  let thin: Proposal['thin'];
  let after = cup;
  for (const { candidate, amount, measure } of ingredients) {
    const { material, letsDown } = problem.ingredients[candidate]!;
    if (letsDown) {
      thin = { plastic: material.id, title: material.title, ml: amount };
      after = withAdded(after, { kind: 'plastic', material: material.id, ml: amount });
    } else {
      additions.push({
        material: material.id,
        title: material.title,
        ...defined({ cut: measure.cut }),
        grams: amount,
        text: measure.text,
        ...(weighed === undefined ? {} : { weighed: required(weighed.weights, candidate) }),
        isNew: isNew(candidate),
      });
      const weight = weighed?.weights.get(candidate) ?? (measure.tool === 'scale' ? measure : undefined);
      if (weight) weights.push(onScale(material, weight));
      after = partsOfMeasured(material.id, amount, measure.cut).reduce(withAdded, after);
    }
  }
  const parts = additions.flatMap(({ material, grams, cut }) => partsOfMeasured(material, grams, cut));
  const added = [...parts, ...(thin ? [{ kind: 'plastic' as const, material: thin.plastic, ml: thin.ml }] : [])].reduce(
    withAdded,
    EMPTY_CUP,
  );
  const limit = limitOf(after, shelf);
  const before = limitOf(cup, shelf);
  const contrastRatio = contrastOfViews(views);
  const tooLittle = tooLittleToWeigh(weights, bench.scaleGrams);
  const bought = [
    ...parts.map((part) => boughtGrams(part, shelf)),
    ...(thin ? [{ material: thin.plastic, grams: thin.ml * required(shelf, thin.plastic).gramsPerMl }] : []),
  ];
  const runsShort = shortStock(
    bought.map(({ material, grams }) => [material, grams] as const),
    shelf,
  );
  const costs = bought.map(({ material, grams }) => ({ material, cost: costOf(required(shelf, material), grams) }));
  return {
    additions: inPouringOrder(additions, Object.keys(after.plastics), shelf),
    ...defined({ thin }),
    ...expectationIn(expectation),
    ...(weighed && {
      weighed: expectationIn(
        expect(
          weighed.doses,
          { toolOf: () => 'scale', plasticMl },
          nearBelieved(near, weighed.doses, { doses, views: expectation.views }),
        ),
      ),
    }),
    overWhite: predicted(white),
    ...(black === undefined ? {} : { overBlack: predicted(black) }),
    ...defined({ contrastRatio }),
    left,
    ...defined({ weighedDeltaE: weighed?.deltaE, tooLittle, runsShort }),
    bottles: ingredients.length,
    newBottles: additions.filter((addition) => addition.isNew).length,
    cost: costs.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
    unpriced: costs.filter(({ cost }) => cost === undefined).map(({ material }) => material),
    volumeMl: cupVolume(after, (material) => 1 / required(shelf, material).density),
    ...(limit === undefined
      ? {}
      : { limit: { ...limit, lowered: before !== undefined && limit.celsius < before.celsius } }),
    ...(heats && { heat: additionHeat(cup, heats, added, shelf) }),
  };
}

/** What goes in, as it is bought, g. */
export function boughtGrams(
  part: PartStep,
  shelf: ReadonlyMap<string, MatchMaterial>,
): { readonly material: string; readonly grams: number } {
  const { material } = part;
  return { material, grams: part.kind === 'add' ? part.grams : part.ml * required(shelf, material).gramsPerMl };
}

/** A predicted colour with its screen colour. */
export function predicted(lab: Lab): PredictedColour {
  // What the model is off by can lift a colour above white.
  const shown = { ...lab, L: Math.min(100, Math.max(0, lab.L)) };
  return { lab: shown, hex: hexFromLab(shown).hex };
}

/** How hot a cup may get. */
export function limitOf(cup: CupState, shelf: ReadonlyMap<string, MatchMaterial>): HeatLimit | undefined {
  return heatLimit(Object.keys(cup.plastics), Object.keys(cup.materials), (id) => shelf.get(id)).limit;
}

/** What a proposal is chosen by, with the figures of its doses. */
export function proposalFigures({ cost, additions, thin }: Proposal, figures: DoseFigures): Figures {
  const names = [...additions.map(({ material }) => material), ...(thin ? [thin.plastic] : [])].sort();
  return { ...figures, cost, names };
}

/** What each candidate was measured with. */
export function toolsOf(ingredients: MeasuredDoses['ingredients']): (candidate: number) => Measure['tool'] {
  const tools = new Map(ingredients.map(({ candidate, measure }) => [candidate, measure.tool]));
  return (candidate) => tools.get(candidate) ?? 'none';
}
