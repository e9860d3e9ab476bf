/**
 * Which photos tell nothing, and what makes one worse.
 *
 * A doubt says nothing of these photos: of over-exposed ones half as many are within it as should be. So to refuse them is part of it.
 * All bounds were found on rendered photos, with sound ones on the other side.
 *
 * @packageDocumentation
 */
import type { PhotoRefused, PhotoWarning, RefusalReason } from './photo-measured.ts';

/** How well a card was read. */
export interface CardReading {
  /** Root mean square of what its straight edges are off, mm, and the share of their points that could be used. */
  readonly edgeRmsMm: number;
  readonly edgesUsed: number;
  /** Share of the spots of paper that are at the camera's end, and how light the paper is, linear 0..1. */
  readonly clippedPaper: number;
  readonly paperLevel: number;
}

/** What was seen of the zone of one half of a bait. */
export interface ZoneReading {
  /** Share of the zone that is of one colour, the body's. */
  readonly bodyShare: number;
  /** Share that is at the camera's end in two channels or more: zeros are strong colours, and sound. */
  readonly clipped: number;
  /** L of the body as it looks over the card. */
  readonly lightness: number;
}

/** A card that bends by 0.3 mm is off by 0.05, a sound one by 0.015 to 0.04; one that bends by 2.4 mm loses a third of its edges instead. */
const MOST_EDGE_RMS_MM = 0.05;
const LEAST_EDGES = 0.85;

const MOST_CLIPPED_PAPER = 0.3;

/** Of good photos the paper is 0.47 to 0.97. */
const LEAST_PAPER_LEVEL = 0.15;

const LEAST_BODY = 0.25;
const MOST_CLIPPED_BAIT = 0.2;

/** White paint reaches 97 or so: what is lighter mirrors a lamp, all of it. */
const MOST_LIGHTNESS = 98.5;

/** From when on light is of two colours, as `CardDoubt.tintSpan`; and what a field leaves over where a shadow lies. */
const TWO_LIGHTS = 0.15;
const SHADOW = 0.05;

/** Why a card can't be measured by. The light comes first: a dark photo is blurred as well, and the cure is light. */
export function cardRefusal({ edgeRmsMm, edgesUsed, clippedPaper, paperLevel }: CardReading): PhotoRefused | undefined {
  if (clippedPaper > MOST_CLIPPED_PAPER) return refused('too-bright');
  if (paperLevel < LEAST_PAPER_LEVEL) return refused('too-dark');
  if (edgeRmsMm > MOST_EDGE_RMS_MM || edgesUsed < LEAST_EDGES) return refused('not-flat');
  return undefined;
}

/** Why a bait can't be measured, of the halves that were seen of it. */
export function baitRefusal(zones: readonly ZoneReading[]): PhotoRefused | undefined {
  if (zones.some(({ clipped }) => clipped > MOST_CLIPPED_BAIT)) return refused('bait-clipped');
  if (zones.some(({ bodyShare, lightness }) => bodyShare < LEAST_BODY || lightness > MOST_LIGHTNESS))
    return refused('glare');
  return undefined;
}

/** What is said of the light: light of two colours still measured well, so it only warns. */
export function lightWarnings({
  fieldRms,
  tintSpan,
}: {
  readonly fieldRms: number;
  readonly tintSpan: number;
}): readonly PhotoWarning[] {
  return [
    ...(tintSpan > TWO_LIGHTS ? (['mixed-light'] as const) : []),
    ...(fieldRms > SHADOW ? (['shadow'] as const) : []),
  ];
}

/** A refusal. */
export function refused(reason: RefusalReason): PhotoRefused {
  return { kind: 'refused', reason };
}
