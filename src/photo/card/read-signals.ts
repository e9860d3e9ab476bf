import { SPOT_MM } from '../../measuring-card/bare-spots.ts';
import type { Box, MeasuringCard, Place } from '../../measuring-card/measuring-card.ts';
import { byChannel } from '../channels.ts';
import { medianOf } from '../median.ts';
import type { LinearRgb, Pixels } from '../pixels.ts';
import type { CardSignals } from './card-signals.ts';
import type { CardView } from './card-view.ts';
import type { LightField } from './light-field.ts';
import { spotLight } from './spot-light.ts';

/** Where a grey begins ink may spread and a place be off, mm. */
const CLEAR_MM = 0.75;

/** The signals of a card's greys and black: of many spots the median, channel by channel, so that glare and dust count for nothing. */
export function readSignals(pixels: Pixels, card: MeasuringCard, view: CardView, field: LightField): CardSignals {
  const signalOf = (places: readonly Place[]): LinearRgb | undefined => {
    const seen = places.flatMap((place) => {
      const light = spotLight(pixels, view, place, SPOT_MM);
      if (light === undefined) return [];
      const paper = field.at(place);
      return [byChannel((channel) => light[channel] / paper[channel])];
    });
    return seen.length === 0 ? undefined : byChannel((channel) => medianOf(seen.map((each) => each[channel])));
  };
  const greys = card.greys.flatMap((grey) => {
    const signal = signalOf(spotsIn(grey));
    return signal === undefined ? [] : [{ step: grey.step, signal }];
  });
  return { greys, black: signalOf(card.blackSpots) ?? { r: 0, g: 0, b: 0 } };
}

/** Middles of spots that fill a box, clear of its edges. */
function spotsIn({ x, y, width, height }: Box): readonly Place[] {
  return stations(y, height).flatMap((row) => stations(x, width).map((column) => ({ x: column, y: row })));
}

function stations(from: number, length: number): readonly number[] {
  const room = length - 2 * CLEAR_MM;
  const count = Math.floor(room / SPOT_MM);
  return Array.from({ length: count }, (_, i) => from + CLEAR_MM + ((i + 0.5) * room) / count);
}
