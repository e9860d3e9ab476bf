/**
 * Photos of a colour chart of 24 patches with published values, as if its greys were those of a measuring card.
 */

import { GREY_VALUES } from '../../../src/measuring-card/measuring-card.ts';
import { adaptTristimulus } from '../../../src/optics/adaptation.ts';
import { type Lab, labFromTristimulus, tristimulusFromLab } from '../../../src/optics/cielab.ts';
import { whitePoint } from '../../../src/optics/tristimulus.ts';
import type { CardSignals } from '../../../src/photo/card/card-signals.ts';
import type { CardValues } from '../../../src/photo/card-values.ts';
import { byChannel } from '../../../src/photo/channels.ts';
import type { LinearRgb } from '../../../src/photo/pixels.ts';
import { referenceRows } from '../../optics/reference.ts';

/** A patch as it is and as it was photographed. */
export interface ChartPatch {
  readonly lab: Lab;
  readonly reflectance: LinearRgb;
  /** Linear light in the photo. */
  readonly light: LinearRgb;
  /** Below 253 of 255 in all channels. */
  readonly unclipped: boolean;
}

/** Patches 19 (white) to 24 (black) are grey; those before are colours. */
export const WHITE = 18;
const GREYS = [19, 20, 21, 22];
const BLACK = 23;

// CIE standard illuminant D50, 2°, from its chromaticity in CIE 15.
const D50 = { X: 0.3457 / 0.3585, Y: 1, Z: (1 - 0.3457 - 0.3585) / 0.3585 };

// XYZ (Y of white 1) to linear sRGB: IEC 61966-2-1.
const TO_LINEAR = {
  r: [3.2406255, -1.537208, -0.4986286],
  g: [-0.9689307, 1.8757561, 0.0415175],
  b: [0.0557101, -0.2040211, 1.0569959],
} as const;

/** The 24 patches of the photo named a or b. */
export function chartPatches(photo: string): readonly ChartPatch[] {
  const values = referenceRows('chart24.csv').slice(1);
  return referenceRows(`photo_chart_${photo}_patches.csv`)
    .slice(1)
    .map((row, i) => {
      const [L, a, b] = values[i]!.slice(5, 8).map(Number) as [number, number, number];
      const XYZ = adaptTristimulus(tristimulusFromLab({ L, a, b }, D50), D50, whitePoint('D65'));
      const [red, green, blue] = row.slice(6, 9).map(Number) as [number, number, number];
      return {
        lab: labFromTristimulus(XYZ),
        reflectance: byChannel((channel) => {
          const [x, y, z] = TO_LINEAR[channel];
          return x * XYZ.X + y * XYZ.Y + z * XYZ.Z;
        }),
        light: { r: lightOf(red), g: lightOf(green), b: lightOf(blue) },
        unclipped: Math.max(red, green, blue) < 253,
      };
    });
}

/** The chart's greys as signals and values of a card: its white for paper. */
export function chartAsCard(patches: readonly ChartPatch[]): { signals: CardSignals; values: CardValues } {
  const at = (index: number) => ({ signal: signalOf(patches, patches[index]!), value: patches[index]!.reflectance });
  return {
    signals: { greys: GREYS.map((index, step) => ({ step, signal: at(index).signal })), black: at(BLACK).signal },
    values: {
      scaleMm: 80,
      paper: patches[WHITE]!.reflectance,
      greys: GREYS.map((index) => at(index).value),
      black: at(BLACK).value,
    },
  };
}

/**
 * Signals of a printed card as if it had lain beside the chart: its greys were wanted as the file says, and are by `power` lighter or darker.
 *
 * @param power exponent of what is thrown back, paper 1
 */
export function cardBesideChart(patches: readonly ChartPatch[], power: number): CardSignals {
  const wanted = [...GREY_VALUES.map((value) => PRINTED_BLACK + (1 - PRINTED_BLACK) * lightOf(value)), PRINTED_BLACK];
  const signals = wanted.map((ofPaper) => signalWhere(patches, power * Math.log(ofPaper)));
  return { greys: signals.slice(0, -1).map((signal, step) => ({ step, signal })), black: signals.at(-1)! };
}

const PRINTED_BLACK = 0.055;

/** What a grey would have given that throws back exp(y) of the white: on straight lines between the chart's greys, in logarithms. */
function signalWhere(patches: readonly ChartPatch[], y: number): LinearRgb {
  return byChannel((channel) => {
    const white = patches[WHITE]!;
    const line = [WHITE, ...GREYS, BLACK].map((index) => ({
      l: Math.log(patches[index]!.light[channel] / white.light[channel]),
      y: Math.log(patches[index]!.reflectance[channel] / white.reflectance[channel]),
    }));
    const after = Math.max(
      1,
      line.findIndex((point) => point.y < y),
    );
    const [from, to] = [line[after - 1]!, line[after]!];
    return Math.exp(from.l + ((y - from.y) * (to.l - from.l)) / (to.y - from.y));
  });
}

/** A patch's light as a part of the white's. */
export function signalOf(patches: readonly ChartPatch[], { light }: ChartPatch): LinearRgb {
  return byChannel((channel) => light[channel] / patches[WHITE]!.light[channel]);
}

/** The curve of IEC 61966-2-1 of a mean, which lies between bytes. */
function lightOf(byte: number): number {
  const v = byte / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
}
