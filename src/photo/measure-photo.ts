/**
 * A photo of a bait on the measuring card in, what it tells of the bait out: the same in Node and in a browser.
 *
 * @packageDocumentation
 */
import { type Place, SCALE_MM } from '../measuring-card/measuring-card.ts';
import { labFromLinear } from '../optics/display.ts';
import { baitAlong, findBait, outlineOf } from './bait/bait-place.ts';
import { bodyColours } from './bait/body-colours.ts';
import type { Shown } from './bait/rectify.ts';
import { type SeenZone, seenZones } from './bait/seen-zones.ts';
import { cornersOf } from './bait/zone.ts';
import type { CardRead } from './card/card-read.ts';
import { readCard } from './card/read-card.ts';
import type { CardValues } from './card-values.ts';
import { photoFlakes } from './flake/photo-flakes.ts';
import { zoneFlakes } from './flake/zone-flakes.ts';
import { photoDoubt } from './photo-doubt.ts';
import type { PhotoMeasured, PhotoRefused } from './photo-measured.ts';
import type { Pixels } from './pixels.ts';
import { baitRefusal, cardRefusal, lightWarnings, refused } from './refusals.ts';
import { type Tone, toneOf } from './tone/tone.ts';

/** Where a maker says that the bait lies. */
export interface PhotoAim {
  /** From one end of it to the other, along its belly, pixels of the photo: for a bait that isn't found by itself, or one chip of several. */
  readonly line?: readonly [Place, Place];
}

/** Nine in ten contrast ratios of rendered photos are within this of the truth. */
const CONTRAST_BOUND = 0.09;

/** What a photo tells of the bait on the measuring card, or why it tells nothing. */
export function measurePhoto(pixels: Pixels, values: CardValues, aim: PhotoAim = {}): PhotoMeasured | PhotoRefused {
  const card = readCard(pixels);
  if (card.kind === 'refused') return card;
  const unfit = cardRefusal(card);
  if (unfit) return unfit;
  const shown = shownBy(pixels, card);
  const onCard = { card: card.card, black: card.signals.black };
  const line = aim.line && ([card.toPlace(aim.line[0]), card.toPlace(aim.line[1])] as const);
  const bait = line ? baitAlong(shown, onCard, line) : findBait(shown, onCard);
  if (bait === undefined) return refused('no-bait');
  const zones = seenZones(shown, card, bait);
  if (zones.length === 0) return refused('too-short');
  const tone = toneOf(card.signals, values);
  const spoilt = baitRefusal(
    zones.map(({ body: { share, clipped, signal } }) => ({
      bodyShare: share,
      clipped,
      lightness: labFromLinear(tone.of(signal)).L,
    })),
  );
  if (spoilt) return spoilt;
  const sizeScale = values.scaleMm / SCALE_MM;
  return {
    kind: 'measured',
    card: card.card.kind,
    widthMm: 2 * bait.halfWidth * sizeScale,
    baitPixels: outlineOf(bait).map(card.toPixel),
    zonePixels: zones.map(({ patch }) => cornersOf(patch.piece).map(card.toPixel)),
    ...toldBy(zones, card, values, tone),
  };
}

function shownBy(pixels: Pixels, { toPixel, pixelsPerMm, field }: CardRead): Shown {
  return { pixels, toPixel, pixelsPerMm, paperAt: (place) => field.at(place) };
}

/** Colours, how well they are known, and flake. */
function toldBy(
  zones: readonly SeenZone[],
  card: CardRead,
  values: CardValues,
  tone: Tone,
): Pick<PhotoMeasured, 'overWhite' | 'overBlack' | 'contrast' | 'doubt' | 'flakes' | 'noFlake' | 'warnings'> {
  const { signals, field, pixelsPerMm } = card;
  const bodies = Object.fromEntries(zones.map(({ half, body }) => [half, body]));
  const { white, black, ratio, seen } = bodyColours(bodies, tone, signals, values);
  const scale = values.scaleMm / SCALE_MM;
  const flaked = zones.map(({ patch, body }) => ({
    found: zoneFlakes(patch, body),
    body: body.lab,
    areaMm2: patch.piece.length * patch.piece.width,
  }));
  const { fine, ...flake } = photoFlakes(flaked, { pixelsPerMm, scale, bend: tone.of });
  return {
    ...(white ? { overWhite: white } : {}),
    ...(black ? { overBlack: black } : {}),
    ...(ratio === undefined ? {} : { contrast: { ratio, bound: CONTRAST_BOUND } }),
    doubt: photoDoubt(seen, {
      certified: tone.certified,
      paperKnown: values.paper !== undefined,
      fieldRms: field.rms,
      tintSpan: field.tintSpan,
    }),
    ...flake,
    warnings: [
      ...lightWarnings({ fieldRms: field.rms, tintSpan: field.tintSpan }),
      ...(fine ? (['fine-texture'] as const) : []),
      ...(zones.length === 1 ? (['one-half'] as const) : []),
    ],
  };
}
