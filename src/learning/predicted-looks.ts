/**
 * What looks would show if they had been logged so: how likely is what was seen.
 *
 * @packageDocumentation
 */
import { appliedMetric, localMetric } from '../optics/local-metric.ts';
import { modelViews } from './asked-views.ts';
import type { BeliefParts } from './belief-parts.ts';
import { factorizeDense } from './dense-cholesky.ts';
import { JointKriging } from './joint-kriging.ts';
import type { TaughtLook } from './learning-data.ts';
import { BOTH_AXES, VIEW_AXES } from './linear-views.ts';
import { lookNoise } from './look-covariance.ts';
import type { LookField } from './look-field.ts';
import { normalDensity } from './normal-density.ts';
import { seenSides } from './seen-sides.ts';

/** Three axes for each view that was seen, look after look, white first; in ΔE00, the local metric of what was seen. */
export interface PredictedLooks {
  /** What was seen less what is believed. */
  readonly residuals: Float64Array;
  /** What that may be by all that is unknown: theta, theory, doses, the looks themselves. Row by row. */
  readonly covariance: Float64Array;
}

/** Predicts looks together; see `Belief.predicted`. */
export function predictedLooks(
  { state, looker, doubt }: BeliefParts,
  field: LookField,
  seen: readonly TaughtLook[],
): PredictedLooks {
  const asked = seen.map((look) => modelViews(state, looker, look, look.means));
  const kriging = new JointKriging(field.nearest(asked), asked, field.shared);
  const slopes = asked.map(({ model, slopes }, i) =>
    slopes({ overWhite: seen[i]!.overWhite ?? model.overWhite, overBlack: seen[i]!.overBlack ?? model.overBlack }),
  );
  const all = kriging.covariance(slopes, doubt());
  const sides = seenSides(
    seen.map(({ overWhite, overBlack }) => ({ white: overWhite !== undefined, black: overBlack !== undefined })),
  );
  const rows = sides.length * VIEW_AXES;
  const residuals = new Float64Array(rows);
  const covariance = new Float64Array(rows * rows);
  for (const [one, { look, side }] of sides.entries()) {
    const { model, bias } = asked[look]!;
    const [lab, made] =
      side === 0 ? [seen[look]!.overWhite!, model.overWhite] : [seen[look]!.overBlack!, model.overBlack];
    const off = appliedMetric(localMetric(lab), lab.L - made.L, lab.a - made.a, lab.b - made.b);
    for (let axis = 0; axis < VIEW_AXES; axis++) {
      const from = look * BOTH_AXES + side * VIEW_AXES + axis;
      residuals[one * VIEW_AXES + axis] = off[axis]! - bias[axis]! - kriging.offset[from]!;
    }
    for (const [other, { look: with_, side: otherSide }] of sides.entries()) {
      const noise = look === with_ ? lookNoise(seen[look]!, side === otherSide) : 0;
      for (let i = 0; i < VIEW_AXES; i++) {
        for (let j = 0; j < VIEW_AXES; j++) {
          const from = (look * BOTH_AXES + side * VIEW_AXES + i) * BOTH_AXES * seen.length;
          const sum = all[from + with_ * BOTH_AXES + otherSide * VIEW_AXES + j]!;
          covariance[(one * VIEW_AXES + i) * rows + other * VIEW_AXES + j] = sum + (i === j ? noise : 0);
        }
      }
    }
  }
  return { residuals, covariance };
}

/** Squared length of the residuals in units of what they may be (chi-square, one degree a row), and ln of their Gaussian density. */
export function likelihood({ residuals, covariance }: PredictedLooks): {
  readonly chiSquare: number;
  readonly logDensity: number;
} {
  const L = covariance.slice();
  factorizeDense(L, residuals.length);
  return normalDensity(residuals, L);
}
