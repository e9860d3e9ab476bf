/**
 * How much of a flake shows on so much of a bait's face, in the body that it lies in.
 *
 * @packageDocumentation
 */

import { flakesPerMm } from '../../optics/flake.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { type FlakeSight, flakeSight, LEAST_CONTRAST, seenShare } from '../../optics/seen-coverage.ts';
import type { Layer } from '../../optics/stack.ts';
import { FLAKE_LOADS } from '../../tables/flake-loads.ts';
import { PLASTIC_DENSITY } from '../../tables/material-defaults.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import { usualMost } from '../shelf/together.ts';

/** Where flake lies: in one of the layers of a bait as an eye looks at it. */
export interface FlakeBed {
  /** The near one first; their flake is what a line of sight meets of any transparency (`metFlake`). */
  readonly layers: readonly Layer[];
  /** The layer that the flake goes into. */
  readonly at: number;
  readonly optics: OpticalModel;
  /** Volume of a ml of the cup's plastic with all that is in it but the flake that is asked for, ml; unset: 1. */
  readonly volumePerPlastic?: number;
}

/** A flake of the shelf, and how much of the face is to show it. */
export interface CoverWanted {
  readonly material: MatchMaterial;
  /** Seen coverage, 0..1; unset: an ordinary load. */
  readonly coverage?: number | undefined;
}

/** So much of a flake. */
export interface FlakeDose {
  /** g per ml of plastic */
  readonly gramsPerMl: number;
  /** Seen coverage that it gives, 0..1: less than what is wanted where a cup takes no more of it. */
  readonly seen: number;
  readonly wanted: number;
  /** As of `SeenFlake`. */
  readonly contrast: number;
}

/** Of one flake: see `flakeDoses`. */
export function flakeDose(material: MatchMaterial, bed: FlakeBed, coverage?: number): FlakeDose {
  return flakeDoses([{ material, coverage }], bed)[0]!;
}

// Each kind hides some of the others, so that they are found in turn; the last digits are of no use to anybody.
const ROUNDS = 12;

/**
 * The least of each flake that shows on the wanted share of the face, or as much as the cup takes; of one that can hardly be told from the
 * plastic, what would show in a clear body. All are in one layer, where the first one met is seen. What is no flake, or is not wanted, has a dose of 0.
 */
export function flakeDoses(wanted: readonly CoverWanted[], bed: FlakeBed): readonly FlakeDose[] {
  const { layers, at, volumePerPlastic = 1 } = bed;
  const all = wanted.map((each) => lookedFor(each, bed));
  const past = Math.exp(-layers.slice(0, at).reduce((sum, layer) => sum + perMmIn(layer) * layer.thickness, 0));
  const there = perMmIn(layers[at]!);
  const perMm = wanted.map(() => 0);
  for (let round = 0; round < (wanted.length > 1 ? ROUNDS : 1); round++) {
    for (const [index, { sight, coverage, most }] of all.entries()) {
      const others = perMm.reduce((sum, each, other) => sum + (other === index ? 0 : each), there);
      const share = (own: number): number => (sight ? seenShare(sight, own, own + others, past) : 0);
      perMm[index] = leastFor(share, coverage, most);
    }
  }
  const together = perMm.reduce((sum, each) => sum + each, there);
  // Grams in a ml of the mixed cup, of which the flake itself takes up some.
  const mixed = all.map(({ perGram }, index) => (perGram > 0 ? perMm[index]! / perGram : 0));
  const taken = mixed.reduce((sum, grams, index) => sum + grams / wanted[index]!.material.density, 0);
  return all.map(({ sight, coverage }, index) => ({
    gramsPerMl: (mixed[index]! * volumePerPlastic) / (1 - Math.min(0.9, taken)),
    seen: sight ? seenShare(sight, perMm[index]!, together, past) : 0,
    wanted: coverage,
    contrast: sight?.contrast ?? 0,
  }));
}

interface LookedFor {
  readonly sight?: FlakeSight;
  readonly coverage: number;
  /** Flakes met per mm with 1 g per ml, and with as much as a cup takes. */
  readonly perGram: number;
  readonly most: number;
}

function lookedFor(
  { material, coverage = FLAKE_LOADS.ordinary }: CoverWanted,
  { layers, at, optics, volumePerPlastic = 1 }: FlakeBed,
): LookedFor {
  const { flake, density, most: mostGrams = usualMost(material, PLASTIC_DENSITY) } = material;
  if (!flake || !(coverage > 0)) return { coverage: Math.max(0, coverage), perGram: 0, most: 0 };
  const perGram = flakesPerMm(1, flake);
  const most = (perGram * mostGrams) / (volumePerPlastic + mostGrams / density);
  const sight = flakeSight(layers, at, flake.reflectance, most, optics);
  if (sight.contrast >= LEAST_CONTRAST) return { sight, coverage, perGram, most };
  // No load shows of what can't be told from the plastic: it gets what would show as wanted in a clear body.
  const asInClear = -Math.log1p(-Math.min(coverage, 0.999)) / layers[at]!.thickness;
  return { sight, coverage, perGram, most: Math.min(most, asInClear) };
}

function perMmIn({ flakes = [] }: Layer): number {
  return flakes.reduce((sum, { perMm }) => sum + perMm, 0);
}

// Steps of a ladder up to the most, and halvings of the step that is found.
const STEP = 1.25;
const STEPS = 64;
const HALVINGS = 40;

/** The least of a quantity that reaches a share, or what comes nearest: more flake shows more, but for a flake of the face's own colour. */
function leastFor(share: (perMm: number) => number, wanted: number, most: number): number {
  if (!(most > 0)) return 0;
  const ladder = Array.from({ length: STEPS + 1 }, (_, step) => most * STEP ** (step - STEPS));
  const found = ladder.findIndex((perMm) => share(perMm) >= wanted);
  if (found < 0) return ladder.reduce((best, perMm) => (share(perMm) > share(best) ? perMm : best));
  let enough = ladder[found]!;
  let tooLittle = found === 0 ? 0 : ladder[found - 1]!;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (enough + tooLittle) / 2;
    if (share(middle) >= wanted) enough = middle;
    else tooLittle = middle;
  }
  return enough;
}
