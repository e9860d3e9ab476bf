import { chroma, type Lab, labFromTristimulus } from '../../optics/cielab.ts';
import { deltaE00, deltaE00Parts } from '../../optics/delta-e00.ts';
import { defined } from '../../values/defined.ts';
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
  readonly strength: number;
  readonly thickness: number;
}

/** One part of a difference. */
export interface VerdictPart {
  /** ΔE00 that this part makes by itself. */
  readonly deltaE: number;
  readonly within: boolean;
  /** What is wrong, "too thin", "a touch light"; what is right, "hue within 1.1". */
  readonly words: string;
}

/** What is right and what is wrong with a colour, in numbers and in the trade's words. */
export interface Verdict {
  /** ΔE00 of the views that are known. */
  readonly overWhite?: number;
  readonly overBlack?: number;
  /** The larger of the two. */
  readonly deltaE: number;
  readonly within: boolean;
  readonly hue: VerdictPart;
  readonly lightness: VerdictPart;
  readonly strength: VerdictPart;
  /** Absent where either was not seen over black. */
  readonly thickness?: VerdictPart & { readonly contrast: number; readonly target: number };
  /** "hue within 1.1; too thin: contrast ratio 0.42 against 0.61; a touch light" */
  readonly sentence: string;
}

/** A colour that no verdict can be given on, and why. */
export interface NoVerdict {
  readonly fault: string;
}

// Three parts that are each within six tenths of the tolerance are within it together, nearly: √3 × 0.6 = 1.04.
const PART_OF_TOLERANCE = 0.6;
// Below this chroma a colour has no hue of its own to be stronger or weaker in.
const NEUTRAL = 6;
const A_TOUCH = 1.8;
const MUCH = 4;
// What to say of a pair that was evened.
const EVENED = ' (a shade lighter over black, as looking errs: taken as opaque)';

/** Thresholds for a tolerance: each part gets six tenths of it. */
export function thresholdsFor(tolerance: number): Thresholds {
  const part = PART_OF_TOLERANCE * tolerance;
  return { tolerance, hue: part, lightness: part, strength: part, thickness: part };
}

/** Whether there is no verdict. */
export function isNoVerdict(result: Verdict | NoVerdict): result is NoVerdict {
  return 'fault' in result;
}

/**
 * Compares a colour with its target.
 *
 * Hue is judged in the view in which it is further off, lightness and strength over white, thickness by the contrast ratio: its
 * ΔE00 is that of the target over black and of the same colour as light as the seen contrast ratio would make it.
 * Returns a fault, as a sentence, where a colour is none or nothing was seen of it.
 */
export function verdict(seen: SeenViews, target: TargetPart, thresholds: Thresholds): Verdict | NoVerdict {
  const fault = viewsFault(seen) ?? viewsFault(target);
  if (fault !== undefined) return { fault };
  const known = (['overWhite', 'overBlack'] as const).some((view) => seen[view] && target[view]);
  return known
    ? verdictOf(seen, target, thresholds)
    : { fault: 'Nothing was seen of this colour where the target was. Note what it looks like over white.' };
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
  const hue = huePart(pairs, thresholds.hue);
  const lightness = part(main.dL, thresholds.lightness, 'light', 'dark', 'lightness');
  const strength = strengthPart(first.target, main.dC, thresholds.strength);
  const thickness = thicknessPart(seen, target, thresholds.thickness);
  const within = deltaE <= thresholds.tolerance;
  const faults = [hue, thickness, lightness, strength].filter(
    (each): each is VerdictPart => each !== undefined && !each.within,
  );
  const parts = [hue, ...faults.filter((each) => each !== hue)].map(({ words }) => words);
  return {
    ...totals,
    deltaE,
    within,
    hue,
    lightness,
    strength,
    ...defined({ thickness }),
    sentence: within ? [`within tolerance: ΔE ${deltaE.toFixed(1)}`, ...parts].join('; ') : parts.join('; '),
  };
}

/** A part of the difference, signed: above 0 is `more`. */
function part(difference: number, threshold: number, more: string, less: string, name: string): VerdictPart {
  const deltaE = Math.abs(difference);
  const within = deltaE <= threshold;
  return {
    deltaE,
    within,
    words: within ? `${name} ${withinText(deltaE)}` : `${degree(deltaE, threshold)} ${difference > 0 ? more : less}`,
  };
}

/** "within 1.1"; never within nothing, which no eye and no measurement could tell. */
function withinText(deltaE: number): string {
  return `within ${Math.max(deltaE, 0.1).toFixed(1)}`;
}

function degree(deltaE: number, threshold: number): string {
  return deltaE <= A_TOUCH * threshold ? 'a touch' : deltaE <= MUCH * threshold ? 'too' : 'much too';
}

function huePart(pairs: readonly { readonly seen: Lab; readonly target: Lab }[], threshold: number): VerdictPart {
  let worst = { deltaE: -1, towards: '' };
  for (const { seen, target } of pairs) {
    const parts = deltaE00Parts(target, seen);
    // A grey has no hue to turn: what it is off by to the side is a cast.
    const deltaE = isNeutral(target) ? Math.hypot(parts.dC, parts.dH) : Math.abs(parts.dH);
    if (deltaE > worst.deltaE) worst = { deltaE, towards: direction(seen, target) };
  }
  const { deltaE, towards } = worst;
  const within = deltaE <= threshold;
  return {
    deltaE,
    within,
    words: within ? `hue ${withinText(deltaE)}` : `${degree(deltaE, threshold)} ${towards}`,
  };
}

function isNeutral(lab: Lab): boolean {
  return chroma(lab) < NEUTRAL;
}

/** The plain hue towards which a colour is off, along the circle of hues; straight, for a grey. */
function direction(seen: Lab, target: Lab): string {
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

function strengthPart(target: Lab, dC: number, threshold: number): VerdictPart {
  // Of a grey, chroma is a cast and counts as hue.
  if (isNeutral(target)) return { deltaE: 0, within: true, words: `strength ${withinText(0)}` };
  return part(dC, threshold, 'strong', 'weak', 'strength');
}

function thicknessPart(seen: SeenViews, target: TargetPart, threshold: number): Verdict['thickness'] {
  const contrast = contrastOfViews(seen);
  const wanted = contrastOfViews(target);
  if (contrast === undefined || wanted === undefined || !target.overBlack) return undefined;
  // As light as the target over white with the contrast ratio that was seen: that goes for a target that is black over black, too.
  const Y = luminance(target.overWhite!) * contrast;
  const { L } = labFromTristimulus({ X: Y, Y, Z: Y });
  const deltaE = deltaE00(target.overBlack, { ...target.overBlack, L });
  const within = deltaE <= threshold;
  const ratios = `contrast ratio ${contrast.toFixed(2)}${seen.evened ? EVENED : ''}`;
  const asked = `${wanted.toFixed(2)}${target.evened ? EVENED : ''}`;
  return {
    deltaE,
    within,
    contrast,
    target: wanted,
    words: within
      ? `${ratios}, target ${asked}`
      : `${degree(deltaE, threshold)} ${contrast < wanted ? 'thin' : 'thick'}: ${ratios} against ${asked}`,
  };
}
