import type { LinearRgb } from './pixels.ts';

/** The name of a channel of a colour. */
export type Channel = keyof LinearRgb;

export const CHANNELS: readonly Channel[] = ['r', 'g', 'b'];

/** Something for each channel; numbers make a `LinearRgb`. */
export function byChannel<T>(value: (channel: Channel) => T): Readonly<Record<Channel, T>> {
  return { r: value('r'), g: value('g'), b: value('b') };
}
