/**
 * The light that falls on a card, as bare paper shows it.
 *
 * @packageDocumentation
 */
import type { MeasuringCard, Place } from '../../measuring-card/measuring-card.ts';
import { solveLinear } from '../../optics/linear-system.ts';
import { byChannel, CHANNELS, type Channel } from '../channels.ts';
import { medianOf } from '../median.ts';
import type { LinearRgb } from '../pixels.ts';
import { huberWeights } from './huber.ts';

/** What bare paper gives at every place of a card. */
export interface LightField {
  /** Linear light, 0..1. */
  at(place: Place): LinearRgb;
  /** Root mean square of what the field leaves over, as a part of the light, all channels together. */
  readonly rms: number;
  /** How far the light's colour goes apart over the paper: 5 % to 95 % of ln (r / g), or of ln (b / g) if that is more. */
  readonly tintSpan: number;
  /** Powers of the place in ln of the light: 2 or 3. */
  readonly degree: number;
}

/** The light of a spot of bare paper, above 0. */
export interface PaperSpot {
  readonly place: Place;
  readonly light: LinearRgb;
}

/** A field of a higher degree has to leave so much less over: else it only follows the noise. */
const WORTH_A_CUBIC = 2 / 3;

/** Paper is uneven by about so much, as a part of the light; less than this is never too far off. */
const LEAST_OFF = 0.003;

const ROUNDS = 6;

/** Fewest spots for a field. */
export const LEAST_SPOTS = 30;

/**
 * The light field through spots of paper: ln of each channel as a polynomial of the place, by Huber's weights. Quadratic, or cubic where
 * that leaves a third less over.
 *
 * @param around how light it is around a place, ln: where it is given, what the phone makes lighter or darker for that is part of the field
 *
 * Throws: RangeError if there are less than `LEAST_SPOTS`.
 */
export function lightField(
  spots: readonly PaperSpot[],
  card: Pick<MeasuringCard, 'width' | 'height'>,
  around: (place: Place) => number = () => 0,
): LightField {
  if (spots.length < LEAST_SPOTS)
    throw new RangeError(`${spots.length} spots of paper were given; give ${LEAST_SPOTS} at least`);
  const [quadratic, cubic] = [2, 3].map((degree) => fieldOf(spots, card, degree, around)) as [LightField, LightField];
  return cubic.rms < WORTH_A_CUBIC * quadratic.rms ? cubic : quadratic;
}

function fieldOf(
  spots: readonly PaperSpot[],
  card: Pick<MeasuringCard, 'width' | 'height'>,
  degree: number,
  around: (place: Place) => number,
): LightField {
  const powersAt = ({ x, y }: Place) =>
    powers((2 * x) / card.width - 1, (2 * y) / card.width - card.height / card.width, degree);
  const rows = spots.map(({ place }) => powersAt(place));
  const surrounds = spots.map(({ place }) => around(place));
  const gain = surroundGain(spots, rows, surrounds);
  const fits = byChannel((channel) =>
    robustFit(
      rows,
      spots.map(({ light }, i) => Math.log(light[channel]) - gain * surrounds[i]!),
    ),
  );
  const square = CHANNELS.reduce((sum, channel) => sum + meanSquare(fits[channel].left), 0) / CHANNELS.length;
  return {
    at: (place) => {
      const row = powersAt(place);
      const surround = gain * around(place);
      return byChannel((channel) => Math.exp(product(row, fits[channel].factors) + surround));
    },
    rms: Math.sqrt(square),
    tintSpan: Math.max(tintSpan(spots, 'r'), tintSpan(spots, 'b')),
    degree,
  };
}

/** A phone lightens its shadows by this much at most, as an exponent of their light. Convention of this book. */
const MOST_GAIN = 0.35;

/** How much the paper gets lighter with the light around it, as an exponent: below 0, and the same for all channels. */
function surroundGain(
  spots: readonly PaperSpot[],
  rows: readonly (readonly number[])[],
  surrounds: readonly number[],
): number {
  const withSurround = rows.map((row, i) => [...row, surrounds[i]!]);
  const gains = CHANNELS.map((channel) => {
    const { factors } = robustFit(
      withSurround,
      spots.map(({ light }) => Math.log(light[channel])),
    );
    return factors[factors.length - 1]!;
  });
  return Math.max(-MOST_GAIN, Math.min(0, medianOf(gains)));
}

/** 1, u, v, u², uv, v², … up to a degree. */
function powers(u: number, v: number, degree: number): readonly number[] {
  return Array.from({ length: degree + 1 }, (_, total) =>
    Array.from({ length: total + 1 }, (_, ofV) => u ** (total - ofV) * v ** ofV),
  ).flat();
}

function robustFit(rows: readonly (readonly number[])[], values: readonly number[]) {
  let factors = weightedFit(
    rows,
    values,
    values.map(() => 1),
  );
  let left = values;
  for (let round = 0; round < ROUNDS; round++) {
    left = values.map((value, i) => value - product(rows[i]!, factors));
    factors = weightedFit(rows, values, huberWeights(left, LEAST_OFF));
  }
  return { factors, left: values.map((value, i) => value - product(rows[i]!, factors)) };
}

// What spots in one line would leave open.
const RIDGE = 1e-9;

function weightedFit(rows: readonly (readonly number[])[], values: readonly number[], weights: readonly number[]) {
  const n = rows[0]!.length;
  const A = new Float64Array(n * n);
  const b = new Float64Array(n);
  rows.forEach((row, spot) => {
    for (let i = 0; i < n; i++) {
      b[i]! += weights[spot]! * row[i]! * values[spot]!;
      for (let j = 0; j < n; j++) A[i * n + j]! += weights[spot]! * row[i]! * row[j]!;
    }
  });
  for (let i = 0; i < n; i++) A[i * n + i]! += RIDGE * rows.length;
  solveLinear(A, b);
  return b;
}

function product(row: readonly number[], factors: Float64Array): number {
  return row.reduce((sum, power, i) => sum + power * factors[i]!, 0);
}

function meanSquare(numbers: readonly number[]): number {
  return numbers.reduce((sum, each) => sum + each * each, 0) / numbers.length;
}

function tintSpan(spots: readonly PaperSpot[], channel: Channel): number {
  const tints = Float64Array.from(spots, ({ light }) => Math.log(light[channel] / light.g)).sort();
  const at = (part: number): number => tints[Math.round(part * (tints.length - 1))]!;
  return at(0.95) - at(0.05);
}
