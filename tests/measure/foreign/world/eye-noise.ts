import { difference, type Seen, type SeenPair } from '../physics/eye.ts';
import type { Chance } from './chance.ts';

/**
 * What colours are noted with. An instrument errs in each look by itself. Of a camera's error, in squares, a part is the same in all photos,
 * a part is the same in both views of a photo, the rest of each view; so that the errors of two views of one photo go together by 0.64.
 */
export interface Camera {
  readonly means: 'instrument' | 'photo';
  /** Root mean square of its error, ΔE00. */
  readonly deviation: number;
  /** What all its photos have: an error in each of L, a and b, in parts of the deviation. */
  readonly bias: readonly number[];
}

const ALWAYS = 0.25;
const BOTH_VIEWS = 0.39;
const ONE_VIEW = 1 - ALWAYS - BOTH_VIEWS;
const AXES = 3;
/** Nobody notes a look that is lighter over black than over white: it is taken again. */
const REVERSED = 2;
const TRIES = 30;

/** A camera or an instrument by chance. */
export function cameraOf(means: Camera['means'], deviation: number, chance: Chance): Camera {
  return { means, deviation, bias: draws(means === 'photo' ? ALWAYS : 0, chance) };
}

/** Three normal numbers whose squares come to a part, together and on average. */
function draws(part: number, chance: Chance): readonly number[] {
  return Array.from({ length: AXES }, () => chance.normal(Math.sqrt(part / AXES)));
}

/** A pair of colours as one look has them. */
export function noted(truth: SeenPair, camera: Camera, chance: Chance): SeenPair {
  const isPhoto = camera.means === 'photo';
  let look = truth;
  for (let trial = 0; trial < TRIES; trial++) {
    const both = draws(isPhoto ? BOTH_VIEWS : 0, chance);
    const view = (seen: Seen): Seen => {
      const own = draws(isPhoto ? ONE_VIEW : 1, chance);
      const error = own.map((each, axis) => camera.deviation * (each + both[axis]! + camera.bias[axis]!));
      return displaced(seen, error);
    };
    look = { white: view(truth.white), black: view(truth.black) };
    if (look.black.L <= look.white.L + REVERSED) return look;
  }
  return { white: look.white, black: look.white };
}

/** The mean of several looks. */
export function meanLook(looks: readonly SeenPair[]): SeenPair {
  const mean = (view: keyof SeenPair): Seen => {
    const of = (axis: keyof Seen): number => looks.reduce((sum, each) => sum + each[view][axis], 0) / looks.length;
    return { L: of('L'), a: of('a'), b: of('b') };
  };
  return { white: mean('white'), black: mean('black') };
}

/** A colour moved along a direction of L, a and b until it is as far off, ΔE00, as the direction is long. */
export function displaced(seen: Seen, direction: readonly number[]): Seen {
  const [dL = 0, da = 0, db = 0] = direction;
  const wanted = Math.hypot(dL, da, db);
  if (wanted === 0) return seen;
  const at = (scale: number): Seen => ({
    L: Math.min(100, Math.max(0, seen.L + scale * dL)),
    a: seen.a + scale * da * chromaStep(seen),
    b: seen.b + scale * db * chromaStep(seen),
  });
  let scale = 1;
  for (let step = 0; step < 4; step++) scale *= wanted / Math.max(wanted / 4, difference(seen, at(scale)));
  return at(scale);
}

/** A step of a or b that counts as much as one of L, about: as CIEDE2000 has it of chroma. */
function chromaStep({ a, b }: Seen): number {
  return 0.8 + 0.025 * Math.hypot(a, b);
}
