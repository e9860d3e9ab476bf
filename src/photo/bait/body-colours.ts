/**
 * From what a photo shows of a bait's body to the colours that the book has for it.
 *
 * @packageDocumentation
 */
import type { Lab } from '../../optics/cielab.ts';
import { labFromLinear } from '../../optics/display.ts';
import type { CardSignals } from '../card/card-signals.ts';
import type { CardValues } from '../card-values.ts';
import { byChannel } from '../channels.ts';
import type { SeenColour } from '../photo-doubt.ts';
import { type LinearRgb, luminanceOf } from '../pixels.ts';
import { printedValues } from '../tone/printed-values.ts';
import type { Tone } from '../tone/tone.ts';
import type { Half } from './background.ts';
import type { Body } from './body-colour.ts';
import { type OverBoth, overBackings } from './over-backings.ts';

/** The body of a bait on each half that shows it. */
export type Bodies = Readonly<Partial<Record<Half, Body>>>;

/** The colours of a bait. */
export interface BodyColours {
  readonly white?: Lab;
  readonly black?: Lab;
  /** Luminance over black by that over white; where both are seen. */
  readonly ratio?: number;
  /** Each colour with what makes it doubtful. */
  readonly seen: readonly SeenColour[];
}

/** Ink that nobody has measured throws back this much at least and at most: from liquid toner to tired ink. Convention of this book. */
const LEAST_INK = 0.01;
const MOST_INK = 0.2;

/**
 * The colours of a bait over the backings of the book; of one half alone as it looks over the card.
 *
 * What lies behind the bait is the card's paper and its black. Black that nobody has measured is what the photo shows of it.
 */
export function bodyColours(bodies: Bodies, tone: Tone, signals: CardSignals, values: CardValues): BodyColours {
  const under = (bend: (signal: LinearRgb) => LinearRgb): Partial<OverBoth> => {
    const { white, black } = bodies;
    const onWhite = white && bend(white.signal);
    const onBlack = black && bend(black.signal);
    if (!onWhite || !onBlack) return { ...(onWhite ? { white: onWhite } : {}), ...(onBlack ? { black: onBlack } : {}) };
    const ink = values.black ?? inkOf(bend(signals.black));
    return overBackings({ white: onWhite, black: onBlack }, { white: printedValues(values).paper, black: ink });
  };
  const [found, untoned, curved] = [under(tone.of), under(tone.untoned), under(tone.curved)];
  const seenOn = (half: Half): readonly SeenColour[] => {
    const [lab, flat, bent] = [found[half], untoned[half], curved[half]].map((light) => light && labFromLinear(light));
    const body = bodies[half];
    if (!lab || !flat || !bent || !body) return [];
    return [{ lab, untoned: flat, curved: bent, spread: body.spread, clipped: body.clipped }];
  };
  const [white, black] = [seenOn('white'), seenOn('black')];
  return {
    ...(white[0] ? { white: white[0].lab } : {}),
    ...(black[0] ? { black: black[0].lab } : {}),
    ...(found.white && found.black ? { ratio: ratioOf(found.white, found.black) } : {}),
    seen: [...white, ...black],
  };
}

function inkOf(light: LinearRgb): LinearRgb {
  return byChannel((channel) => Math.min(MOST_INK, Math.max(LEAST_INK, light[channel])));
}

function ratioOf(white: LinearRgb, black: LinearRgb): number {
  return Math.min(1, Math.max(0, luminanceOf(black) / Math.max(luminanceOf(white), Number.MIN_VALUE)));
}
