import { type CupState, total } from '../../cup/ledger.ts';
import type { TaughtLook } from '../../learning/learning-data.ts';
import type { Face } from '../../patterns/pattern.ts';
import { faceRuns, PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import { defined } from '../../values/defined.ts';
import type { FilledCup } from '../cups/fill-cup.ts';
import { baitKey, roundCupKey } from './cup-keys.ts';
import { lookedLayer } from './looked-layer.ts';
import type { LookedRecipe } from './looked-recipe.ts';

/** How a finished bait was looked at, as its file has it. */
interface BaitFields {
  readonly side?: string;
  readonly rounds?: Readonly<Record<string, number>>;
  readonly thickness?: number;
}

/**
 * What was looked through of a finished bait: its cups as they lie behind one another, or in streaks where a swirl was seen as a whole,
 * each as it was at the round that the bait was poured after, or is now. Undefined where a cup faced the eye that faces nobody.
 */
export function lookedBait(
  { recipe, pattern, cups, shares, streak, bodyMm }: LookedRecipe,
  { side, rounds = {}, thickness = bodyMm }: BaitFields,
  colours: (material: string) => boolean,
): Pick<TaughtLook, 'cup' | 'layers' | 'streaks' | 'streakMm' | 'round'> | undefined {
  const facing = side === undefined ? undefined : cups.findIndex(({ spec }) => spec.name === side);
  const states = cups.map((cup) => stateAfter(cup, rounds[cup.spec.name]));
  if (facing === -1 || states.some((state) => state === undefined || total(state.plastics) === 0)) return undefined;
  const layer = (cup: number, part: number): TaughtLook['layers'][number] =>
    lookedLayer(states[cup]!, part * thickness, colours);
  const round = Math.max(0, ...cups.map(({ spec, rounds: all }) => rounds[spec.name] ?? all.length));
  const face = faceWith(pattern, facing, shares);
  if (face === undefined) return undefined;
  const whole = baitKey(recipe.id);
  if ('mean' in face) {
    const layers = cups.map((_, cup) => layer(cup, 1));
    return { cup: whole, round, layers, streaks: shares, ...defined({ streakMm: streak }) };
  }
  const runs = faceRuns(pattern, face, shares);
  const [only, ...others] = runs;
  // Who sees one cup alone has looked at that cup.
  const alone = only && others.length === 0 ? cups[only.cup] : undefined;
  const cup = alone ? roundCupKey(alone, rounds[alone.spec.name] ?? Number.POSITIVE_INFINITY) : whole;
  return { cup, round, layers: runs.map((run) => layer(run.cup, run.part)) };
}

function stateAfter({ rounds, state }: FilledCup, number: number | undefined): CupState | undefined {
  return number === undefined ? state : rounds[number - 1]?.cup;
}

/** The face of a bait that a cup shows; of none the one looked at first. A streak that is named was looked at by itself. */
function faceWith(pattern: Pattern, facing: number | undefined, shares: readonly number[]): Face | undefined {
  const faces = PATTERNS[pattern].faces.filter((face) => face !== undefined);
  if (facing === undefined) return faces[0];
  if (faces.some((face) => 'mean' in face)) return { name: 'streak', alone: facing };
  return faces.find((face) => faceRuns(pattern, face, shares)[0]?.cup === facing);
}
