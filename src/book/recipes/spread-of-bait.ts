import type { BelievedViews } from '../../learning/believed-views.ts';
import { colourDoubt } from '../../learning/expected-difference.ts';
import { semidefiniteFactor } from '../../learning/semidefinite-factor.ts';
import type { DoubtfulWay } from '../../optics/constants-doubt.ts';
import { type CupMix, cupMixer, type OpticalMaterial, type TwoViews } from '../../optics/cup-body.ts';
import { hexFromLab } from '../../optics/display.ts';
import { appliedMetric, inverseMetric, localMetric } from '../../optics/local-metric.ts';
import type { Body } from '../../optics/stack.ts';
import { spreadAxes } from '../../optics/views-spread.ts';
import { baitViews } from '../cups/appearances.ts';
import type { Bait } from '../cups/asked-bait.ts';
import { askedSide } from '../cups/bait-appearances.ts';
import type { BookEye } from '../learning/book-eye.ts';
import type { Spread } from '../model/recipe.ts';

/** A cup of a bait as its spread needs it. */
export interface DoubtedCup extends CupMix {
  /** Standard deviation of a dose as it is measured out, as a part of it. */
  readonly doseDeviation: (material: string) => number;
}

/** Axes of the spread that are shown. */
const AXES = 2;
/** Of both views together: three each. */
const ALL_AXES = 6;
const VIEW_AXES = 3;

/**
 * How far the side of a bait that is looked at may be from the colour that is shown: by what looks leave open of it, and by how its doses
 * are measured, each by itself.
 *
 * Units: ΔE00, of the view over white or over black that is farther off.
 */
export function spreadOfBait(
  bait: Bait,
  cups: readonly DoubtedCup[],
  shelf: (material: string) => OpticalMaterial,
  eye: BookEye,
): Spread {
  const believed = eye.belief.of(askedSide(bait, eye));
  const measuring = measuringWays(bait, cups, shelf, eye);
  const known = { ...believed, covariance: new Float64Array(ALL_AXES * ALL_AXES) };
  const both = withWays(believed, measuring);
  const { expected, bound90 } = colourDoubt(both);
  const ways = [...openWays(believed), ...measuring].map(({ up, down }) => ({
    up: up.overWhite,
    down: down.overWhite,
  }));
  return {
    expected: kept(expected),
    bound: kept(bound90),
    fromMaterials: kept(colourDoubt(believed).bound90),
    fromMeasuring: kept(colourDoubt(withWays(known, measuring)).bound90),
    ends: spreadAxes(believed.overWhite, ways, AXES).map(([low, high]) => [hexFromLab(low).hex, hexFromLab(high).hex]),
  };
}

/** How the bait looks with each dose measured out otherwise by a standard deviation, by the model; see `DoubtfulWay`. */
function measuringWays(
  { pattern, thicknessMm, streakMm, cups: placed }: Bait,
  cups: readonly DoubtedCup[],
  shelf: (material: string) => OpticalMaterial,
  { optics }: BookEye,
): readonly DoubtfulWay<TwoViews>[] {
  const mixers = cups.map((cup) => cupMixer(cup, shelf, optics));
  const bodies = mixers.map((mixer) => mixer.mixed());
  const views = (changed: number, body: Body): TwoViews =>
    baitViews(
      pattern,
      placed.map(({ share }, index) => ({ share, body: index === changed ? body : bodies[index]! })),
      thicknessMm,
      optics,
      streakMm,
    );
  return cups.flatMap((cup, changed) => {
    const { materials: inCup, doses, mixed } = cupMixer(cup, shelf, optics);
    return cup.contents.map(({ material }) => {
      const at = (sign: number): TwoViews => {
        // A step of the scale may be wider than the dose, but no dose is less than none.
        const factor = Math.max(0, 1 + sign * cup.doseDeviation(material));
        const measured = Array.from(doses, (dose, place) => (inCup[place] === material ? dose * factor : dose));
        return views(changed, mixed(measured));
      };
      return { up: at(1), down: at(-1) };
    });
  });
}

/** A belief that is wider by independent ways, each by a standard deviation up and down. */
function withWays(believed: BelievedViews, ways: readonly DoubtfulWay<TwoViews>[]): BelievedViews {
  const covariance = believed.covariance.slice();
  const metrics = { overWhite: localMetric(believed.overWhite), overBlack: localMetric(believed.overBlack) };
  for (const { up, down } of ways) {
    const step = (['overWhite', 'overBlack'] as const).flatMap((view) => {
      const [one, other] = [up[view], down[view]];
      return appliedMetric(metrics[view], (one.L - other.L) / 2, (one.a - other.a) / 2, (one.b - other.b) / 2);
    });
    for (let i = 0; i < ALL_AXES; i++)
      for (let j = 0; j < ALL_AXES; j++) covariance[ALL_AXES * i + j]! += step[i]! * step[j]!;
  }
  return { ...believed, covariance };
}

/** What is open of a belief, as six independent ways. */
function openWays({ overWhite, overBlack, covariance }: BelievedViews): readonly DoubtfulWay<TwoViews>[] {
  const factor = semidefiniteFactor(covariance, ALL_AXES);
  const views = [overWhite, overBlack].map((lab) => ({ lab, back: inverseMetric(localMetric(lab)) }));
  return Array.from({ length: ALL_AXES }, (_, way) => {
    const at = (sign: number): TwoViews => {
      const [white, black] = views.map(({ lab, back }, view) => {
        const [x, y, z] = [0, 1, 2].map((axis) => sign * factor[ALL_AXES * (VIEW_AXES * view + axis) + way]!);
        const [L, a, b] = appliedMetric(back, x!, y!, z!);
        return { L: lab.L + L, a: lab.a + a, b: lab.b + b };
      });
      return { overWhite: white!, overBlack: black! };
    };
    return { up: at(1), down: at(-1) };
  });
}

const kept = (deltaE: number): number => Number(deltaE.toFixed(2));
