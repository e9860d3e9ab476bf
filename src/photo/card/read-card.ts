import { SPOT_MM } from '../../measuring-card/bare-spots.ts';
import type { MeasuringCard } from '../../measuring-card/measuring-card.ts';
import { CHANNELS } from '../channels.ts';
import { medianOf } from '../median.ts';
import { CLIPPED_BYTE, LIGHT_OF_BYTE, type Pixels } from '../pixels.ts';
import type { CardRead, CardRefused } from './card-read.ts';
import { type CardView, pixelsPerMm, toPixel, toPlace } from './card-view.ts';
import { findMarks } from './find-marks.ts';
import { leanAt } from './lean.ts';
import { LEAST_SPOTS, lightField, type PaperSpot } from './light-field.ts';
import { MARK_IDS, pickCard } from './pick-card.ts';
import { readSignals } from './read-signals.ts';
import { refineView } from './refine-view.ts';
import { spotLight } from './spot-light.ts';
import { surroundings } from './surroundings.ts';

/** What is this much darker than the paper in the middle, or lighter than nothing, is not paper. */
const LEAST_OF_PAPER = 0.4;
const NO_LIGHT = 1e-4;

/** Finds the measuring card of a photo, and reads what is printed on it. */
export function readCard(pixels: Pixels): CardRead | CardRefused {
  const marks = findMarks(pixels, MARK_IDS);
  const picked = pickCard(marks);
  if ('kind' in picked) return picked;
  const { card, H } = picked;
  const { width, height } = pixels;
  const first: CardView = { H, k1: 0, width, height };
  const refined = refineView(pixels, card, first) ?? { view: first, edgeRmsMm: Number.POSITIVE_INFINITY, edgesUsed: 0 };
  const { view, edgeRmsMm, edgesUsed } = refined;
  const paper = paperOf(pixels, card, view);
  if (paper.spots.length < LEAST_SPOTS) return { kind: 'refused', reason: 'too-dark', found: marks.length };
  const around = surroundings(pixels);
  const field = lightField(paper.spots, card, (place) => around(toPixel(view, place)));
  return {
    kind: 'read',
    card,
    toPixel: (place) => toPixel(view, place),
    toPlace: (pixel) => toPlace(view, pixel),
    leanAt: leanAt(view.H, width, height),
    pixelsPerMm: pixelsPerMm(view, { x: card.width / 2, y: card.height / 2 }),
    edgeRmsMm,
    edgesUsed,
    field,
    signals: readSignals(pixels, card, view, field),
    clippedPaper: paper.clipped,
    paperLevel: paper.level,
  };
}

/** The spots of bare paper in the photo, how light they are in the middle, and which share is at the camera's end. */
function paperOf(pixels: Pixels, card: MeasuringCard, view: CardView) {
  const seen = card.paperSpots.flatMap((place): PaperSpot[] => {
    const light = spotLight(pixels, view, place, SPOT_MM);
    return light === undefined || CHANNELS.some((channel) => light[channel] < NO_LIGHT) ? [] : [{ place, light }];
  });
  if (seen.length === 0) return { spots: [], level: 0, clipped: 0 };
  const level = medianOf(seen.map(({ light }) => light.g));
  const spots = seen.filter(({ light }) => light.g > LEAST_OF_PAPER * level);
  const end = LIGHT_OF_BYTE[CLIPPED_BYTE]!;
  const clipped = spots.filter(({ light }) => CHANNELS.some((channel) => light[channel] >= end)).length / spots.length;
  return { spots, level, clipped };
}
