/**
 * One's own print of the card, measured by a photo of it beside a colour chart whose values are published.
 *
 * The light on the card, as a plane, is carried on to the chart. The chart's six greys then say which signal is which reflectance, channel
 * by channel, and the card's paper, greys and black are read off that. Colours of the chart only tell whether it came out right.
 *
 * @packageDocumentation
 */
import { GREY_VALUES, type MeasuringCard } from '../../measuring-card/measuring-card.ts';
import type { Lab } from '../../optics/cielab.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import { labFromLinear, linearFromLab } from '../../optics/display.ts';
import { labByDaylight } from '../../optics/stated-colour.ts';
import { COLOUR_CHART, FIRST_GREY } from '../../tables/colour-chart.ts';
import type { CardSignals } from '../card/card-signals.ts';
import { byChannel, CHANNELS, type Channel } from '../channels.ts';
import { CLIPPED_BYTE, LIGHT_OF_BYTE, type LinearRgb, type Pixels } from '../pixels.ts';
import { type CurveBounds, type Knot, monotoneCurve } from '../tone/monotone-curve.ts';
import { type CardPlaces, type ChartPatch, type Corners, chartPatches } from './chart-patches.ts';
import { type LitPlace, planeLight } from './plane-light.ts';

/** A card that was found in a photo, as far as it counts here. */
export interface SeenCard extends CardPlaces {
  readonly card: Pick<MeasuringCard, 'paperSpots'>;
  readonly field: { at(place: LitPlace['place']): LinearRgb };
  readonly signals: CardSignals;
}

/** What a print throws back: linear red, green and blue under D65. */
export interface CardCertified {
  readonly kind: 'certified';
  readonly paper: LinearRgb;
  readonly black: LinearRgb;
  /** Lightest first. */
  readonly greys: readonly LinearRgb[];
  /** ΔE00 that nine in ten of these are within, as far as the photo tells. */
  readonly bound: number;
  /** Median ΔE00 by which the chart's colours came out wrong, the greys not among them: for these the phone's own eyes count as well. */
  readonly chartDeltaE: number;
}

/** Why a chart tells nothing. */
export interface NotCertified {
  readonly kind: 'not-certified';
  readonly reason: 'no-chart' | 'chart-clipped' | 'uneven-light';
}

/** Beyond the chart's white, and below its black, nothing is known of the phone's bend, and nothing is added to it. */
const BOUNDS: CurveBounds = { apart: 0.02, flattest: 0.3, steepest: 3, below: 0.8, above: 1 };

/** What is at the camera's end. */
const CLIPPED = LIGHT_OF_BYTE[CLIPPED_BYTE]!;

/** Least light of which there is a logarithm worth having. */
const LEAST_LIGHT = 1e-4;

/** A chart whose colours come out this far off was not where it was said to be: real ones come out within 3 to 5. Convention of this book. */
const NOT_A_CHART = 12;

/** A print that is known no better than this is better taken as such prints usually are. Convention of this book. */
const TOO_VAGUE = 6;

/** Charts are made to about this of their published values, and 8 bits add to it: ΔE00 that nine in ten are within. Common practice, no source. */
const CHART_BOUND = 1;

/** Nine in ten of what is normal is within so many standard deviations. */
const NINE_IN_TEN = 1.645;

/** Measures a print. Throws: RangeError if a corner lies outside the photo. */
export function certifyCard(pixels: Pixels, seen: SeenCard, corners: Corners): CardCertified | NotCertified {
  const patches = chartPatches(pixels, seen, corners);
  const lit = seen.card.paperSpots.map((place) => ({ place, light: seen.field.at(place) }));
  const plane = planeLight(lit);
  const signals = patches.map((patch) => signalOf(patch, plane));
  const knots = byChannel((channel) => greyKnots(signals, channel));
  const curves = byChannel((channel) => monotoneCurve(knots[channel], BOUNDS));
  const reflectanceOf = (signal: LinearRgb): LinearRgb =>
    byChannel((channel) => Math.exp(curves[channel](lnOf(signal[channel]))));
  const chartDeltaE = median(
    signals.slice(0, FIRST_GREY).map((signal, i) => deltaE00(labFromLinear(reflectanceOf(signal)), PUBLISHED[i]!)),
  );
  if (chartDeltaE > NOT_A_CHART) return { kind: 'not-certified', reason: 'no-chart' };
  const greysOfChart = patches.slice(FIRST_GREY);
  if (greysOfChart.some(({ light }) => CHANNELS.some((channel) => light[channel] >= CLIPPED)))
    return { kind: 'not-certified', reason: 'chart-clipped' };
  const bound = Math.hypot(CHART_BOUND, NINE_IN_TEN * toneSd(knots), NINE_IN_TEN * lightSd(lit, plane, patches));
  if (bound > TOO_VAGUE) return { kind: 'not-certified', reason: 'uneven-light' };
  return {
    kind: 'certified',
    paper: reflectanceOf(byChannel(() => 1)),
    black: reflectanceOf(seen.signals.black),
    greys: GREY_VALUES.map((_, step) => reflectanceOf(meanSignal(seen.signals, step))),
    bound,
    chartDeltaE,
  };
}

/** The chart's colours by daylight. */
const PUBLISHED: readonly Lab[] = COLOUR_CHART.map(([L, a, b]) => labByDaylight({ lab: { L, a, b }, light: 'D50' }));

const lnOf = (light: number): number => Math.log(Math.max(LEAST_LIGHT, light));

/** Light of a patch as a part of what bare paper would give at its place. */
function signalOf({ place, light }: ChartPatch, plane: (place: ChartPatch['place']) => LinearRgb): LinearRgb {
  const paper = plane(place);
  return byChannel((channel) => light[channel] / paper[channel]);
}

function greyKnots(signals: readonly LinearRgb[], channel: Channel): readonly Knot[] {
  return signals.slice(FIRST_GREY).map((signal, i) => ({
    x: lnOf(signal[channel]),
    y: Math.log(linearFromLab(PUBLISHED[FIRST_GREY + i]!)[channel]),
  }));
}

function meanSignal({ greys }: CardSignals, step: number): LinearRgb {
  const both = greys.filter((grey) => grey.step === step);
  return byChannel((channel) => both.reduce((sum, { signal }) => sum + signal[channel], 0) / both.length);
}

/** How far off, ΔE of lightness, each of the chart's inner greys is by the others: a root mean square, halved, for with it the curve is nearer. */
function toneSd(knots: Readonly<Record<Channel, readonly Knot[]>>): number {
  const { g } = knots;
  const off = g.slice(1, -1).map((knot, i) => {
    const curve = monotoneCurve(
      g.filter((_, other) => other !== i + 1),
      BOUNDS,
    );
    return lightnessStep(Math.exp(knot.y)) * (curve(knot.x) - knot.y);
  });
  return rms(off) / 2;
}

/** How far off, ΔE of lightness, paper may be because the light does not fall off evenly: by how planes through half of the card differ. */
function lightSd(
  lit: readonly LitPlace[],
  plane: (place: LitPlace['place']) => LinearRgb,
  patches: readonly ChartPatch[],
): number {
  const middle = {
    x: mean(patches.map(({ place }) => place.x)),
    y: mean(patches.map(({ place }) => place.y)),
  };
  const [x, y] = [median(lit.map(({ place }) => place.x)), median(lit.map(({ place }) => place.y))];
  const halves = [
    lit.filter(({ place }) => place.x <= x),
    lit.filter(({ place }) => place.x >= x),
    lit.filter(({ place }) => place.y <= y),
    lit.filter(({ place }) => place.y >= y),
  ];
  const whole = plane(middle).g;
  const off = halves.map((half) => Math.log(planeLight(half)(middle).g / whole));
  return lightnessStep(linearFromLab(PUBLISHED[FIRST_GREY]!).g) * rms(off);
}

/** L per part by which a reflectance changes: CIELAB, L = 116 R^(1/3) − 16. */
const lightnessStep = (R: number): number => (116 / 3) * Math.cbrt(R);

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const rms = (values: readonly number[]): number => Math.sqrt(mean(values.map((value) => value * value)));

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)]!;
}
