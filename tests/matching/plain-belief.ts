/**
 * Belief without looks, for the tests of matching: what the shelf says, with doubts of their own for some materials.
 *
 * @packageDocumentation
 */
import type { BelievedViews } from '../../src/learning/believed-views.ts';
import type { LookedLayer } from '../../src/learning/learning-data.ts';
import type { Beliefs } from '../../src/matching/belief/beliefs.ts';
import type { MatchMaterial } from '../../src/matching/shelf/match-material.ts';
import type { Lab } from '../../src/optics/cielab.ts';
import { cupBody, layersViews, type TwoViews } from '../../src/optics/cup-body.ts';
import { localMetric } from '../../src/optics/local-metric.ts';
import { type OpticalModel, USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { required } from '../../src/values/required.ts';

const NOTHING: TwoViews = { overWhite: { L: 0, a: 0, b: 0 }, overBlack: { L: 0, a: 0, b: 0 } };

/** What is not known. */
export interface PlainDoubts {
  /** By material: one standard deviation of ln strength; unset: it is what the shelf says. */
  readonly strength?: Readonly<Record<string, number>>;
  /** Standard deviation of every colour, along each axis, ΔE00; unset: 0. */
  readonly all?: number;
}

/** As much off as looks have taught, in Lab, whatever the cup. */
export type PlainOffsets = TwoViews;

const plus = (one: Lab, other: Lab): Lab => ({ L: one.L + other.L, a: one.a + other.a, b: one.b + other.b });

/** The model of a shelf, believed as far as the doubts say. */
export function plainBelief(
  shelf: readonly MatchMaterial[],
  { strength = {}, all = 0 }: PlainDoubts = {},
  optics: OpticalModel = USUAL_OPTICS,
  off: PlainOffsets = NOTHING,
): Beliefs {
  const byName = new Map(shelf.map((material) => [material.id, material]));
  const views = (layers: readonly LookedLayer[], stronger = '', by = 1): TwoViews =>
    layersViews(
      layers.map(({ plastics, contents, thicknessMm }) => {
        const body = cupBody(
          {
            plastics: plastics.map(([material, fraction]) => ({ material, fraction })),
            contents: contents.map(([material, dose]) => ({
              material,
              gramsPerMl: material === stronger ? by * dose : dose,
            })),
          },
          (name) => required(byName, name),
          optics,
        );
        return { ...body, thickness: thicknessMm };
      }),
      optics,
    );
  const meanOf = (layers: readonly LookedLayer[]): TwoViews => {
    const model = views(layers);
    return {
      overWhite: plus(model.overWhite, off.overWhite),
      overBlack: plus(model.overBlack, off.overBlack),
    };
  };
  return {
    near: () => ({ at: () => off }),
    isTried: () => false,
    hand: () => 1,
    mean: ({ layers }) => meanOf(layers),
    of({ layers }): BelievedViews {
      const mean = meanOf(layers);
      const covariance = new Float64Array(36);
      for (let i = 0; i < 6; i++) covariance[7 * i] = all * all;
      const metrics = [localMetric(mean.overWhite), localMetric(mean.overBlack)];
      const names = new Set(layers.flatMap(({ contents }) => contents.map(([name]) => name)));
      for (const name of names) {
        const sd = Object.hasOwn(strength, name) ? strength[name]! : 0;
        if (sd === 0) continue;
        const [more, less] = [views(layers, name, Math.exp(sd)), views(layers, name, Math.exp(-sd))];
        const column = (['overWhite', 'overBlack'] as const).flatMap((view, index) => {
          const step = (['L', 'a', 'b'] as const).map((axis) => (more[view][axis] - less[view][axis]) / 2);
          return [0, 1, 2].map((row) =>
            [0, 1, 2].reduce((sum, i) => sum + metrics[index]![3 * row + i]! * step[i]!, 0),
          );
        });
        for (let i = 0; i < 6; i++) for (let k = 0; k < 6; k++) covariance[6 * i + k]! += column[i]! * column[k]!;
      }
      return { ...mean, covariance, looks: 0 };
    },
  };
}
