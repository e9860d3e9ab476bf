/**
 * How a phone bends light and dark, learned from the card's greys, and taken back.
 *
 * All in logarithms: l of the signal, where paper is 0, and ln (R / Rpaper) of what is thrown back. A curve leads from the one to the
 * other. Where the greys are known, each channel has its own, and it is taken whole. Where they are not, the print may have bent them
 * too, and the curve is in common and taken in part: see `curve-trust.ts`.
 *
 * @packageDocumentation
 */
import type { CardSignals } from '../card/card-signals.ts';
import type { CardValues } from '../card-values.ts';
import { byChannel, CHANNELS, type Channel } from '../channels.ts';
import { type LinearRgb, luminanceOf } from '../pixels.ts';
import { curveTrust } from './curve-trust.ts';
import { type CurveBounds, type Knot, monotoneCurve } from './monotone-curve.ts';
import { type PrintedValues, printedValues } from './printed-values.ts';

/** From signals (paper = 1) to what is thrown back, linear under D65. */
export interface Tone {
  /** With as much of the curve as is believed. */
  of(signal: LinearRgb): LinearRgb;
  /** As if the phone bent nothing, and with the whole curve: how far they are apart is a part of the doubt. */
  untoned(signal: LinearRgb): LinearRgb;
  curved(signal: LinearRgb): LinearRgb;
  /** Part of the curve that is believed, 0..1. */
  readonly trust: number;
  readonly certified: boolean;
}

/**
 * Which part of the bend goes by the lightness of a colour, the same for its three channels; the rest goes by each channel's own light.
 * Phones do both: they brighten a picture by its lightness, place by place, and then bend each channel. Found on two photos of a colour
 * chart with known greys: the colours' mean error falls from 5.1 to 3.6 and from 6.6 to 4.1, and is flat from 0.3 to 0.6.
 */
const BY_LIGHTNESS = 0.4;

/** Beyond paper nothing is known of the bend, and nothing is added to it; beyond black signals are mostly stray light. */
const BOUNDS: CurveBounds = { apart: 0.02, flattest: 0.3, steepest: 3, below: 0.8, above: 1 };

/** Least signal of which there is a logarithm worth having; below it light is in proportion, so that negative light stays so. */
const LEAST_SIGNAL = 0.002;

type Curve = (l: number) => number;

/**
 * The tone of a photo.
 *
 * Throws: RangeError if a grey's step is none of the print's greys.
 */
export function toneOf(signals: CardSignals, values: CardValues): Tone {
  const print = printedValues(values);
  const { certified, paper } = print;
  const greys = byChannel((channel) => greyKnots(channel, signals, print));
  const black = byChannel((channel): Knot => knot(signals.black[channel], print.black[channel] / paper[channel]));
  const common = monotoneCurve(
    [PAPER, ...meanKnots(greys), ...meanKnots(byChannel((channel) => [black[channel]]))],
    BOUNDS,
  );
  const ofChannel = (channel: Channel): Curve =>
    monotoneCurve([PAPER, ...greys[channel], ...(values.black ? [black[channel]] : [])], BOUNDS);
  const curves = byChannel((channel) => (certified ? ofChannel(channel) : common));
  const trust = certified ? 1 : curveTrust(meanKnots(greys));
  const by = (part: number) => (signal: LinearRgb) => bent(signal, paper, curves, part);
  return { of: by(trust), untoned: by(0), curved: by(1), trust, certified };
}

const PAPER: Knot = { x: 0, y: 0 };

/** A knot for each grey, its two rows averaged. */
function greyKnots(channel: Channel, { greys }: CardSignals, print: PrintedValues): readonly Knot[] {
  if (greys.some(({ step }) => print.greys[step] === undefined))
    throw new RangeError(`A grey is none of the ${print.greys.length} of this print; give its step`);
  return print.greys.flatMap((value, step): Knot[] => {
    const seen = greys.filter((grey) => grey.step === step).map(({ signal }) => logOf(signal[channel]));
    if (seen.length === 0) return [];
    const l = seen.reduce((sum, each) => sum + each, 0) / seen.length;
    return [{ x: l, y: Math.log(value[channel] / print.paper[channel]) }];
  });
}

function knot(signal: number, ofPaper: number): Knot {
  return { x: logOf(signal), y: Math.log(ofPaper) };
}

function meanKnots(knots: Readonly<Record<Channel, readonly Knot[]>>): readonly Knot[] {
  return knots.g.map((_, i) => {
    const mean = (axis: keyof Knot): number =>
      CHANNELS.reduce((sum, channel) => sum + knots[channel][i]![axis], 0) / CHANNELS.length;
    return { x: mean('x'), y: mean('y') };
  });
}

/** What is thrown back, with a part of the bend taken back: 0 none, 1 all. */
function bent(signal: LinearRgb, paper: LinearRgb, curves: Readonly<Record<Channel, Curve>>, part: number): LinearRgb {
  const lightness = logOf(luminanceOf(signal));
  return byChannel((channel) => {
    const l = logOf(signal[channel]);
    const bend = (at: number): number => curves[channel](at) - at;
    const taken = part * ((1 - BY_LIGHTNESS) * bend(l) + BY_LIGHTNESS * bend(lightness));
    return paper[channel] * signal[channel] * Math.exp(taken);
  });
}

function logOf(signal: number): number {
  return Math.log(Math.max(signal, LEAST_SIGNAL));
}
