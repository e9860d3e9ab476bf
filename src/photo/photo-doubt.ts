/**
 * How far a colour from a photo may be from what is there.
 *
 * @packageDocumentation
 */
import { chroma, type Lab } from '../optics/cielab.ts';
import { deltaE00 } from '../optics/delta-e00.ts';
import { localMetric } from '../optics/local-metric.ts';
import type { DoubtTerm, PhotoDoubt } from './photo-measured.ts';

/** A colour of a bait with what makes it doubtful. */
export interface SeenColour {
  readonly lab: Lab;
  /** As it would be if the phone bent light and dark not at all, and as much as the greys say. */
  readonly untoned: Lab;
  readonly curved: Lab;
  /** One standard deviation of the body, OKLab. */
  readonly spread: number;
  /** Share of the pixels that are at the end of what the camera can tell, 0..1. */
  readonly clipped: number;
}

/** What of the card and its light makes every colour doubtful. */
export interface CardDoubt {
  /** Its greys are known, not only wanted. */
  readonly certified: boolean;
  /** Its paper was measured. */
  readonly paperKnown: boolean;
  /** Root mean square of what the light field leaves over of the paper, as a part of it. */
  readonly fieldRms: number;
  /** How far the light's colour goes apart over the card: 5 % to 95 % of ln(red / green), or of ln(blue / green) if that is more. */
  readonly tintSpan: number;
}

/**
 * Bound by the root of the squares. With the terms below, 32 of 34 patches of photographed colour charts are within it with known greys, and
 * 96 of 102 with greys that came out 14 % lighter or darker than wanted, or as wanted. One for both, so that what is known of a card never
 * makes a photo more doubtful.
 */
const FACTOR = 2.1;

/**
 * Part of what lies between no bend and the whole one that the tone may be off by, half way to greys that nobody has measured, and the least
 * of it; and what is left with known greys.
 */
const OF_TONE = 0.35;
const LEAST_TONE = 1;
const CERTIFIED_TONE = 0.8;

/** Part by which the paper may be lighter or darker than is taken for certain. A measured one: convention of this book. */
const PAPER_SPREAD = 0.035;
const MEASURED_PAPER_SPREAD = 0.01;

/**
 * What the eyes of a camera, which are not a person's, get wrong: of a grey, and with each ΔE of chroma. From photos of colour charts, whose
 * errors are about twice those of rendered cameras.
 */
const CAMERA = 3;
const CAMERA_BY_CHROMA = 0.05;

/** Light of two colours: what is usual of one, and what more costs. */
const USUAL_TINT_SPAN = 0.06;
const BY_TINT_SPAN = 12;

/** ΔE by OKLab distance; flake and bubbles come in lumps, so a zone holds about 30 that are each by itself. */
const OWN_BY_SPREAD = 40;
const OWN_LUMPS = 30;

const BY_CLIPPED = 3;

/** In the order in which the first of equals is named. */
const TERMS: readonly DoubtTerm[] = ['tone', 'paper', 'camera', 'field', 'mixed', 'own', 'clip'];

/**
 * The doubt of one photo's colours: nine in ten are nearer than its bound.
 *
 * Each term is the root mean square over the views, which are one bait in one light.
 * Throws: RangeError if there is no view.
 */
export function photoDoubt(views: readonly SeenColour[], card: CardDoubt): PhotoDoubt {
  if (views.length === 0) throw new RangeError('No colour was given; give at least one');
  const each = views.map((view) => termsOf(view, card));
  const meanSquare = (term: DoubtTerm): number => each.reduce((sum, one) => sum + one[term] ** 2, 0) / each.length;
  const terms = Object.fromEntries(TERMS.map((term) => [term, Math.sqrt(meanSquare(term))]));
  return doubtOf(terms as Record<DoubtTerm, number>);
}

/** The bound and the largest of terms. */
export function doubtOf(terms: Readonly<Record<DoubtTerm, number>>): PhotoDoubt {
  const together = Math.hypot(...TERMS.map((term) => terms[term]));
  const largest = TERMS.reduce((most, term) => (terms[term] > terms[most] ? term : most));
  return { bound: FACTOR * together, largest, terms };
}

/** The terms of one colour, ΔE00. A relative error of the light is (L + 16) / 3 of it in L. */
function termsOf(view: SeenColour, card: CardDoubt): Record<DoubtTerm, number> {
  const { lab, untoned, curved, spread, clipped } = view;
  const byLightness = ((lab.L + 16) / 3) * localMetric(lab)[0]!;
  const C = chroma(lab);
  const byChroma = C / (1 + 0.045 * C);
  return {
    tone: card.certified ? CERTIFIED_TONE : Math.max(LEAST_TONE, OF_TONE * deltaE00(untoned, curved)),
    paper: (card.paperKnown ? MEASURED_PAPER_SPREAD : PAPER_SPREAD) * byLightness,
    camera: CAMERA + CAMERA_BY_CHROMA * byChroma,
    field: card.fieldRms * byLightness,
    mixed: BY_TINT_SPAN * Math.max(0, card.tintSpan - USUAL_TINT_SPAN),
    own: (OWN_BY_SPREAD * spread) / Math.sqrt(OWN_LUMPS),
    clip: BY_CLIPPED * clipped,
  };
}
