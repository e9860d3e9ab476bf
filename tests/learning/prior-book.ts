import { compose, composeLabel } from '../../src/learning/composition.ts';
import { compositionPoint } from '../../src/learning/composition-point.ts';
import { CompositionLooker } from '../../src/learning/composition-views.ts';
import type { LearningData, LookedLayer, TaughtLook } from '../../src/learning/learning-data.ts';
import { sharedVariance, type TheoryErrors } from '../../src/learning/look-covariance.ts';
import { semidefiniteFactor } from '../../src/learning/semidefinite-factor.ts';
import { shelfState } from '../../src/learning/shelf-state.ts';
import { shelfUnknowns } from '../../src/learning/shelf-unknowns.ts';
import type { Lab } from '../../src/optics/cielab.ts';
import type { TwoViews } from '../../src/optics/cup-body.ts';
import { inverseMetric, localMetric } from '../../src/optics/local-metric.ts';
import { CAMERA_SD } from '../../src/tables/material-priors.ts';

import { numbersFrom, simulatedBook } from './simulated-book.ts';

/** Something that is asked about, and what it truly looks like. */
export interface TrueColour {
  readonly layers: readonly LookedLayer[];
  /** A cup of the book. */
  readonly cup?: string;
  readonly truth: TwoViews;
}

/**
 * A book of which everything is drawn from what is believed before any look: theta, the theory's errors, those of doses, labels and looks.
 *
 * @param spread one standard deviation, in ln, of a dose in a cup beside what is logged; unset: 0
 */
export function priorBook(
  seed: number,
  {
    camera,
    spread = 0,
    ...size
  }: {
    readonly materials: number;
    readonly recipes: number;
    readonly rounds: number;
    readonly camera?: string;
    readonly spread?: number;
  },
): { readonly data: LearningData; readonly asked: readonly TrueColour[]; readonly theta: Float64Array } {
  const { data } = simulatedBook({ seed, ...size, ...(camera ? { camera, axisSd: 1.15 } : {}) });
  const other = simulatedBook({ seed: seed + 1000, materials: size.materials, recipes: 20, rounds: 1 }).data.looks;
  const { normal } = numbersFrom(seed * 7919 + 13);
  const unknowns = shelfUnknowns(data);
  const theta = Float64Array.from({ length: unknowns.count }, normal);
  const state = shelfState(unknowns, theta);
  const looker = new CompositionLooker(unknowns);
  const moved = (lab: Lab, x: readonly number[]): Lab => {
    const back = inverseMetric(localMetric(lab));
    const along = (row: number): number => x.reduce((sum, value, i) => sum + back[3 * row + i]! * value, 0);
    return { L: lab.L + along(0), a: lab.a + along(1), b: lab.b + along(2) };
  };
  const model = (composition: ReturnType<typeof compose>): TwoViews => {
    const { white, black } = looker.views(composition, state, { white: true, black: true });
    return { overWhite: white!.lab, overBlack: black!.lab };
  };
  const three = (sd: number): number[] => [sd * normal(), sd * normal(), sd * normal()];
  const materials = data.materials.map((material) => ({
    ...material,
    labels: material.labels.map((label) => {
      const { overWhite, overBlack } = model(composeLabel(unknowns, material.id, label));
      const seen = { ...label, overWhite: moved(overWhite, three(label.axisSd)) };
      return label.overBlack ? { ...seen, overBlack: moved(overBlack, three(label.axisSd)) } : seen;
    }),
  }));
  // One field over all that was looked at and all that is asked about.
  const placed: { readonly layers: readonly LookedLayer[]; readonly errors: TheoryErrors }[] = [
    ...data.looks.map(({ layers, cup, means }) => ({ layers, cup, means })),
    ...other.map(({ layers }) => ({
      layers,
      cup: undefined,
      means: camera ? ('screen' as const) : ('instrument' as const),
    })),
  ].map(({ layers, cup, means }) => ({
    layers,
    errors: { point: compositionPoint(unknowns, layers), means, ...(cup === undefined ? {} : { cup }) },
  }));
  const n = placed.length;
  const L = semidefiniteFactor(
    placed.flatMap((one) => placed.map((two) => sharedVariance(one.errors, two.errors))),
    n,
  );
  const field = Array.from({ length: 6 }, () => {
    const z = Float64Array.from({ length: n }, normal);
    return Array.from({ length: n }, (_, i) => z.reduce((sum, value, k) => sum + L[i * n + k]! * value, 0));
  });
  const doses = new Map<string, number>();
  const poured = (layers: readonly LookedLayer[], cup: string | undefined): readonly LookedLayer[] =>
    layers.map((layer) => ({
      ...layer,
      contents: layer.contents.map(([id, dose]) => {
        const key = `${cup} ${id}`;
        const off = doses.get(key) ?? (cup === undefined || spread === 0 ? 0 : spread * normal());
        doses.set(key, off);
        return [id, dose * Math.exp(off)] as const;
      }),
    }));
  const truths = placed.map(({ layers, errors }, i): TwoViews => {
    const { overWhite, overBlack } = model(compose(unknowns, poured(layers, errors.cup)));
    const off = field.map((axis) => axis[i]!);
    return { overWhite: moved(overWhite, off.slice(0, 3)), overBlack: moved(overBlack, off.slice(3)) };
  });
  const bias = camera ? [0, 1, 2].map((axis) => CAMERA_SD * theta[unknowns.cameras.get(camera)! + axis]!) : [0, 0, 0];
  const looks = data.looks.map((look, i): TaughtLook => {
    const first = three(look.axisSd);
    const rho = look.means === 'screen' ? 0.64 : 0;
    const second = first.map((value) => rho * value + Math.sqrt(1 - rho * rho) * look.axisSd * normal());
    const plus = (noise: readonly number[]): number[] => noise.map((value, axis) => value + bias[axis]!);
    return {
      ...look,
      overWhite: moved(truths[i]!.overWhite, plus(first)),
      overBlack: moved(truths[i]!.overBlack, plus(second)),
    };
  });
  return {
    data: { materials, looks },
    theta,
    asked: placed.map(({ layers }, i) => ({
      layers,
      truth: truths[i]!,
      ...(i < looks.length ? { cup: looks[i]!.cup } : {}),
    })),
  };
}
