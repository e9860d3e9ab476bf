/**
 * What is to be expected of doses: what is believed of the cups with them, what their measures scatter, and how well the target is known.
 *
 * @packageDocumentation
 */
import type { BelievedViews } from '../../learning/believed-views.ts';
import { expectedDifference } from '../../learning/expected-difference.ts';
import type { Lab } from '../../optics/cielab.ts';
import type { TwoViews } from '../../optics/cup-body.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import { appliedMetric, localMetric } from '../../optics/local-metric.ts';
import { defined } from '../../values/defined.ts';
import type { Ingredient } from '../measure/measure-doses.ts';
import type { Mix } from '../mix/mix.ts';
import type { MatchBench } from '../shelf/match-bench.ts';
import { doubtOfThree } from '../target/mean-of-three.ts';
import type { TargetPart } from '../target/target-part.ts';
import { type DoseScatter, doseScatter, type Measures } from './dose-scatter.ts';
import type { Expectation } from './expectation.ts';
import type { Reach } from './stop.ts';

/** What doses are expected in: cups, what can go into them, and what they are to look like. */
export interface ExpectedProblem {
  readonly mix: Mix;
  readonly ingredients: readonly Ingredient[];
  /** One for each goal of the mix. */
  readonly parts: readonly TargetPart[];
  /** What is believed of each part with such doses. */
  readonly believed: (doses: Float64Array) => readonly BelievedViews[];
  readonly tolerance: number;
}

/** What is to be expected of doses, and by how much, ΔE00, their measures scatter that. */
export interface ExpectedDoses extends Expectation, Pick<DoseScatter, 'scatter'> {
  /** What is believed of each part, but for that scatter. */
  readonly views: readonly BelievedViews[];
}

/** What is to be expected of doses that were measured so; `views`: what is believed of them, where it is known already. */
export type Expect = (doses: Float64Array, measures?: Measures, views?: readonly BelievedViews[]) => ExpectedDoses;

/** How doses are that nobody has measured. */
export const UNMEASURED: Measures = { toolOf: () => 'none' };

/** What is to be expected of doses in a problem, as these tools measure them. */
export function expecting(
  { mix, ingredients, parts, believed, tolerance }: ExpectedProblem,
  bench: MatchBench,
): Expect {
  return (doses, measures, views = believed(doses)) => {
    const { scatter, moves } = doseScatter({ mix, ingredients, bench }, doses, measures);
    let from = 0;
    const each = views.map((view, index) => {
      const part = parts[index]!;
      const axes = part.overBlack ? 6 : 3;
      const scattered = withMoves(
        view,
        moves.map((move) => move.subarray(from, from + axes)),
      );
      from += axes;
      return expectationOf(scattered, part, tolerance);
    });
    return { ...worstOf(each), scatter, views };
  };
}

/** What is to be expected of a believed colour beside its target. */
export function expectationOf(
  believed: BelievedViews,
  { overWhite, overBlack, axisSd, means }: TargetPart,
  tolerance: number,
): Expectation {
  const { expected, bound90, within } = expectedDifference(believed, {
    overWhite,
    ...(overBlack && { overBlack }),
    ...(axisSd !== undefined && { axisSd }),
    ...(means && { means }),
  });
  return { expected, bound90, likely: within(tolerance) };
}

/** Of several parts that are to be right together, what the worst of them is expected to be. */
export function worstOf(each: readonly Expectation[]): Expectation {
  return {
    expected: Math.max(...each.map(({ expected }) => expected)),
    bound90: Math.max(...each.map(({ bound90 }) => bound90)),
    likely: Math.min(...each.map(({ likely }) => likely)),
  };
}

/** ΔE00 from the most likely colour to the target as it was noted, the larger of the views. */
export function leftOf({ overWhite, overBlack }: TwoViews, target: TargetPart): number {
  return Math.max(deltaE00(target.overWhite, overWhite), target.overBlack ? deltaE00(target.overBlack, overBlack) : 0);
}

/**
 * Nine in ten of a colour's doubts stay within so many standard deviations of an axis: the root of 6.251, the 90 % point of chi-square
 * with three degrees of freedom (from memory).
 */
const NINE_IN_TEN = 2.5;

/**
 * What is believed of doses near others of which it is known: as much doubt, about a colour that is moved as the model says. Undefined
 * where two cups change, of which the model alone knows less.
 */
export function nearBelieved(
  { mix, parts }: Pick<ExpectedProblem, 'mix' | 'parts'>,
  doses: Float64Array,
  known: { readonly doses: Float64Array; readonly views: readonly BelievedViews[] },
): readonly BelievedViews[] | undefined {
  const [views] = known.views;
  if (parts.length > 1 || !views) return undefined;
  const there = mix.labs(known.doses);
  const [overWhite, overBlack = views.overBlack] = mix
    .labs(doses)
    .map((lab, view) => moved(view === 0 ? views.overWhite : views.overBlack, there[view]!, lab)) as [Lab, Lab?];
  return [{ ...views, overWhite, overBlack }];
}

function moved(lab: Lab, from: Lab, to: Lab): Lab {
  return { L: lab.L + to.L - from.L, a: lab.a + to.a - from.a, b: lab.b + to.b - from.b };
}

/** How far a believed colour is from a target, beside the doubts of both. */
export function reachOf(believed: BelievedViews, target: TargetPart, tolerance: number): Reach {
  const { axisSd: targetSd = 0 } = target;
  const views = (['overWhite', 'overBlack'] as const).flatMap((view, index) => {
    const wanted = target[view];
    if (!wanted) return [];
    const sd = axisSdOf(believed, 3 * index);
    return [{ left: deltaE00(wanted, believed[view]), sd, doubt: Math.hypot(targetSd, sd) }];
  });
  return {
    targetSd,
    cupSd: Math.max(...views.map(({ sd }) => sd)),
    ...defined({ ofThree: doubtOfThree(target) }),
    isAsNear: views.every(({ left, doubt }) => left <= doubt),
    isWithinDoubt: views.every(({ left, doubt }) => left <= NINE_IN_TEN * doubt),
    mayBeRight: views.every(({ left, doubt }) => left <= Math.max(tolerance, NINE_IN_TEN * doubt)),
  };
}

/** Of several parts that are to be right together, how far the worst of them is. */
export function worstReach(each: readonly Reach[]): Reach {
  const [vaguest] = each.toSorted((one, other) => other.targetSd - one.targetSd);
  return {
    targetSd: Math.max(...each.map(({ targetSd }) => targetSd)),
    ...defined({ ofThree: vaguest?.ofThree }),
    cupSd: Math.max(...each.map(({ cupSd }) => cupSd)),
    isAsNear: each.every(({ isAsNear }) => isAsNear),
    isWithinDoubt: each.every(({ isWithinDoubt }) => isWithinDoubt),
    mayBeRight: each.every(({ mayBeRight }) => mayBeRight),
  };
}

/** One standard deviation of a view along an axis, ΔE00: root mean square of the three from this one on. */
function axisSdOf({ covariance }: BelievedViews, from: number): number {
  const variance = [0, 1, 2].reduce((sum, i) => sum + covariance[7 * (from + i)]!, 0) / 3;
  return Math.sqrt(Math.max(0, variance));
}

/** A believed colour that is scattered besides: each column moves Lab, of the views that it has, by one standard deviation. */
function withMoves(views: BelievedViews, moves: readonly Float64Array[]): BelievedViews {
  if (moves.length === 0) return views;
  const covariance = views.covariance.slice();
  const metrics = [localMetric(views.overWhite), localMetric(views.overBlack)];
  for (const move of moves) {
    const column = new Float64Array(6);
    for (let view = 0; 3 * view < move.length; view++)
      column.set(appliedMetric(metrics[view]!, move[3 * view]!, move[3 * view + 1]!, move[3 * view + 2]!), 3 * view);
    for (let i = 0; i < 6; i++) for (let k = 0; k < 6; k++) covariance[6 * i + k]! += column[i]! * column[k]!;
  }
  return { ...views, covariance };
}
