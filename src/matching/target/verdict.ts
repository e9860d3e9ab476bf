import { chroma, type Lab, labFromTristimulus } from '../../optics/cielab.ts';
import { deltaE00, deltaE00Parts } from '../../optics/delta-e00.ts';
import { defined } from '../../values/defined.ts';
import type { MatchFault } from '../match-fault.ts';
import {
  contrastOfViews,
  luminance,
  type SeenViews,
  settledViews,
  type TargetPart,
  viewsFault,
} from './target-part.ts';

/** What counts as right, ΔE00: in all, and part by part. */
export interface Thresholds {
  readonly tolerance: number;
  readonly hue: number;
  readonly lightness: number;
  readonly vividness: number;
  readonly opacity: number;
}

/** How large a part of a difference is, by what counts as right in it: right, up to 1.8 times as much, up to 4 times, beyond. */
export type PartSize = 'right' | 'touch' | 'too' | 'much';

/** One part of a difference. */
export interface VerdictPart<Towards extends string> {
  /** ΔE00 that this part makes by itself. */
  readonly deltaE: number;
  readonly size: PartSize;
  /** To which side it is off; absent where it is off by nothing. */
  readonly towards?: Towards;
}

/** How much shows through it. */
export interface OpacityPart extends VerdictPart<'opaque' | 'clear'> {
  /** Contrast ratios, 0 to 1, of the colour and of the target. */
  readonly contrast: number;
  readonly target: number;
  /** Which of the two was a shade lighter over black, as looking errs, and counts as opaque (see `settledViews`). */
  readonly evened?: 'seen' | 'target' | 'both';
}

/** What is right and what is wrong with a colour. */
export interface Verdict {
  /** ΔE00 of the views that are known. */
  readonly overWhite?: number;
  readonly overBlack?: number;
  /** The larger of the two. */
  readonly deltaE: number;
  readonly within: boolean;
  readonly hue: VerdictPart<'red' | 'green' | 'yellow' | 'blue'>;
  readonly lightness: VerdictPart<'light' | 'dark'>;
  readonly vividness: VerdictPart<'vivid' | 'dull'>;
  /** Absent where either was not seen over black. */
  readonly opacity?: OpacityPart;
}

/** A colour that no verdict can be given on, and why. */
export interface NoVerdict {
  readonly fault: MatchFault;
}

// Three parts that are each within six tenths of the tolerance are within it together, nearly: √3 × 0.6 = 1.04.
const PART_OF_TOLERANCE = 0.6;
// Below this chroma a colour has no hue of its own to be more or less vivid in.
const NEUTRAL = 6;
const A_TOUCH = 1.8;
const MUCH = 4;

/** Thresholds for a tolerance: each part gets six tenths of it. */
export function thresholdsFor(tolerance: number): Thresholds {
  const part = PART_OF_TOLERANCE * tolerance;
  return { tolerance, hue: part, lightness: part, vividness: part, opacity: part };
}

/** Whether there is no verdict. */
export function isNoVerdict(result: Verdict | NoVerdict): result is NoVerdict {
  return 'fault' in result;
}

/**
 * Compares a colour with its target.
 *
 * Hue is judged in the view in which it is further off, lightness and vividness over white, opacity by the contrast ratio: its
 * ΔE00 is that of the target over black and of the same colour as light as the seen contrast ratio would make it.
 * Returns a fault where a colour is none or nothing was seen of it.
 */
export function verdict(seen: SeenViews, target: TargetPart, thresholds: Thresholds): Verdict | NoVerdict {
  const fault = viewsFault(seen) ?? viewsFault(target);
  if (fault !== undefined) return { fault };
  const known = (['overWhite', 'overBlack'] as const).some((view) => seen[view] && target[view]);
  return known ? verdictOf(seen, target, thresholds) : { fault: { kind: 'not-seen' } };
}

/**
 * `verdict` of a colour that is a colour, such as a predicted one.
 *
 * Throws: RangeError if no view is known of both.
 */
export function verdictOf(seenRaw: SeenViews, targetRaw: TargetPart, thresholds: Thresholds): Verdict {
  const [seen, target] = [settledViews(seenRaw), settledViews(targetRaw)];
  const pairs: { view: 'overWhite' | 'overBlack'; seen: Lab; target: Lab }[] = [];
  for (const view of ['overWhite', 'overBlack'] as const) {
    const [one, other] = [seen[view], target[view]];
    if (one && other) pairs.push({ view, seen: one, target: other });
  }
  const [first] = pairs;
  if (!first) throw new RangeError('No view is known of both the colour and its target; give one');

  const totals = Object.fromEntries(pairs.map((pair) => [pair.view, deltaE00(pair.target, pair.seen)]));
  const deltaE = Math.max(...Object.values(totals));
  const main = deltaE00Parts(first.target, first.seen);
  return {
    ...totals,
    deltaE,
    within: deltaE <= thresholds.tolerance,
    hue: huePart(pairs, thresholds.hue),
    lightness: signedPart(main.dL, thresholds.lightness, 'light', 'dark'),
    vividness: vividnessPart(first.target, main.dC, thresholds.vividness),
    ...defined({ opacity: opacityPart(seen, target, thresholds.opacity) }),
  };
}

/** A part of the difference, signed: above 0 is `more`. */
function signedPart<Towards extends string>(
  difference: number,
  threshold: number,
  more: Towards,
  less: Towards,
): VerdictPart<Towards> {
  const deltaE = Math.abs(difference);
  return { deltaE, size: sizeOf(deltaE, threshold), ...(deltaE > 0 ? { towards: difference > 0 ? more : less } : {}) };
}

function sizeOf(deltaE: number, threshold: number): PartSize {
  if (deltaE <= threshold) return 'right';
  return deltaE <= A_TOUCH * threshold ? 'touch' : deltaE <= MUCH * threshold ? 'too' : 'much';
}

function huePart(pairs: readonly { readonly seen: Lab; readonly target: Lab }[], threshold: number): Verdict['hue'] {
  const parts = pairs.map(({ seen, target }) => {
    const { dC, dH } = deltaE00Parts(target, seen);
    // A grey has no hue to turn: what it is off by to the side is a cast.
    return { deltaE: isNeutral(target) ? Math.hypot(dC, dH) : Math.abs(dH), towards: direction(seen, target) };
  });
  const { deltaE, towards } = parts.reduce((worst, each) => (each.deltaE > worst.deltaE ? each : worst));
  return { deltaE, size: sizeOf(deltaE, threshold), ...(deltaE > 0 ? { towards } : {}) };
}

function isNeutral(lab: Lab): boolean {
  return chroma(lab) < NEUTRAL;
}

/** The plain hue towards which a colour is off, along the circle of hues; straight, for a grey. */
function direction(seen: Lab, target: Lab): NonNullable<Verdict['hue']['towards']> {
  let da = seen.a - target.a;
  let db = seen.b - target.b;
  if (!isNeutral(target)) {
    const length = chroma(target);
    const along = (da * target.a + db * target.b) / length;
    da -= (along * target.a) / length;
    db -= (along * target.b) / length;
  }
  if (Math.abs(da) > Math.abs(db)) return da > 0 ? 'red' : 'green';
  return db > 0 ? 'yellow' : 'blue';
}

function vividnessPart(target: Lab, dC: number, threshold: number): Verdict['vividness'] {
  // Of a grey, chroma is a cast and counts as hue.
  return isNeutral(target) ? { deltaE: 0, size: 'right' } : signedPart(dC, threshold, 'vivid', 'dull');
}

function opacityPart(seen: SeenViews, target: SeenViews, threshold: number): OpacityPart | undefined {
  const contrast = contrastOfViews(seen);
  const wanted = contrastOfViews(target);
  if (contrast === undefined || wanted === undefined || !target.overBlack) return undefined;
  // As light as the target over white with the contrast ratio that was seen: that goes for a target that is black over black, too.
  const Y = luminance(target.overWhite!) * contrast;
  const { L } = labFromTristimulus({ X: Y, Y, Z: Y });
  const deltaE = deltaE00(target.overBlack, { ...target.overBlack, L });
  const evened = seen.evened ? (target.evened ? 'both' : 'seen') : target.evened ? 'target' : undefined;
  return {
    deltaE,
    size: sizeOf(deltaE, threshold),
    ...(contrast === wanted ? {} : { towards: contrast > wanted ? 'opaque' : 'clear' }),
    contrast,
    target: wanted,
    ...defined({ evened }),
  };
}
