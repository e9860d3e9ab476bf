/**
 * What an attacker reckons with: the colours of a look from the doses of any materials of the shelf, and how they change with these.
 * The optics is the program's own, which everybody has.
 *
 * @packageDocumentation
 */
import type { Material } from '../../../src/book/model/shelf.ts';
import { labFromTristimulus } from '../../../src/optics/cielab.ts';
import { flakesPerMm, spreadFlake } from '../../../src/optics/flake.ts';
import { layerSlopes } from '../../../src/optics/layer-slopes.ts';
import type { OpticalConstants } from '../../../src/optics/mixture.ts';
import { crowdingFactor, type OpticalModel, pathFactor, pathFactorSlope } from '../../../src/optics/optical-model.ts';
import { BAND_COUNT } from '../../../src/optics/spectrum.ts';
import { stackReflectance } from '../../../src/optics/stack.ts';
import { BESIDE_GLOSS } from '../../../src/optics/surface.ts';
import { bookWeights } from '../../../src/optics/tristimulus.ts';
import { type HeldFlake, ON_FLAKE, onFlakes } from './on-flakes.ts';

/** A material as the attacker knows it, for a dose of 1: what its file calls usual. */
export interface Suspect {
  readonly id: string;
  /** g per ml of plastic. */
  readonly usualDose: number;
  /** Largest dose that its file allows, in usual ones. */
  readonly most: number;
  readonly colour?: { readonly K: Float64Array; readonly S: Float64Array };
  /** Flakes met per mm that hide, and of any transparency. */
  readonly flake?: { readonly hidesPerMm: number; readonly metPerMm: number; readonly reflectance: ArrayLike<number> };
}

/** Doses go no higher than this part of a millilitre of plastic where no file says more, g/ml. */
const HIGHEST_DOSE = 0.1;

/** The materials of a shelf that colour. */
export function suspectsOf(materials: readonly Material[]): readonly Suspect[] {
  return materials.flatMap((material): readonly Suspect[] => {
    const { id, kind, constants, flake, typical = 0.01, most = HIGHEST_DOSE } = material;
    if (kind === 'plastic') return [];
    const known = { id, usualDose: typical, most: most / typical };
    if (flake) {
      const { perMm, reflectance } = spreadFlake(flake, typical);
      return [{ ...known, flake: { hidesPerMm: perMm, metPerMm: flakesPerMm(typical, flake), reflectance } }];
    }
    if (!constants) return [];
    const scaled = (values: readonly number[]): Float64Array => Float64Array.from(values, (value) => value * typical);
    return [{ ...known, colour: { K: scaled(constants.absorption), S: scaled(constants.scattering) } }];
  });
}

/** Cups over one another as they are looked at, the near one first; thicknesses in mm. */
export type Stack = readonly { readonly cup: number; readonly thickness: number }[];

/** A dose that is looked for. */
export interface Column {
  readonly cup: number;
  readonly suspect: number;
}

const SLOPES = new Float64Array(4);
const WEIGHTS = bookWeights('D65');
const { white: WHITE } = WEIGHTS;
const THROUGH = (1 - BESIDE_GLOSS.k1) * (1 - BESIDE_GLOSS.k2);
const HELD = BESIDE_GLOSS.k2;
const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;

/** Numbers of a look: L, a, b over white and over black of each stack, and at the end what share of sight lines meets flake. */
export class LookModel {
  readonly suspects: readonly Suspect[];
  readonly cups: number;
  readonly rows: number;
  private readonly stacks: readonly Stack[];
  private readonly sightMm: readonly number[];
  private readonly wx: Float64Array;
  private readonly wy: Float64Array;
  private readonly wz: Float64Array;
  private readonly plasticK: Float64Array;
  private readonly plasticS: Float64Array;
  /** K and S of each suspect, or the reflectance of its face. */
  private readonly suspectK: readonly Float64Array[];
  private readonly suspectS: readonly Float64Array[];
  private readonly K: Float64Array;
  private readonly S: Float64Array;
  private readonly byK: Float64Array;
  private readonly byS: Float64Array;
  private readonly R = new Float64Array(2);
  private readonly optics: OpticalModel;
  private readonly white: Float64Array;
  private readonly black: Float64Array;
  /** What is left of S of each cup as material crowds in it. */
  private readonly crowded: Float64Array;

  /**
   * @param sightMm mm of each cup along a line of sight through the body, for the flake that it meets
   */
  constructor(
    suspects: readonly Suspect[],
    plastic: OpticalConstants,
    stacks: readonly Stack[],
    cups: number,
    sightMm: readonly number[],
    optics: OpticalModel,
  ) {
    this.optics = optics;
    this.white = stackReflectance([], optics.backings.white);
    this.black = stackReflectance([], optics.backings.black);
    this.crowded = new Float64Array(cups);
    this.suspects = suspects;
    this.stacks = stacks;
    this.cups = cups;
    this.sightMm = sightMm;
    this.rows = 6 * stacks.length + 1;
    this.wx = WEIGHTS.x;
    this.wy = WEIGHTS.y;
    this.wz = WEIGHTS.z;
    this.plasticK = Float64Array.from(plastic.absorption);
    this.plasticS = Float64Array.from(plastic.scattering);
    this.suspectK = suspects.map(({ colour, flake }) => Float64Array.from(colour?.K ?? flake!.reflectance));
    this.suspectS = suspects.map(({ colour, flake }) => Float64Array.from(colour?.S ?? flake!.reflectance));
    this.K = new Float64Array(cups * BAND_COUNT);
    this.S = new Float64Array(cups * BAND_COUNT);
    this.byK = new Float64Array(2 * cups);
    this.byS = new Float64Array(2 * cups);
  }

  /**
   * Writes the numbers of a look into `values`, and how they change with each dose into `slopes`, row by row.
   *
   * @param doses in usual ones, a number for each column
   */
  see(columns: readonly Column[], doses: ArrayLike<number>, values: Float64Array, slopes: Float64Array): void {
    const { cups, byK, byS, R } = this;
    const count = columns.length;
    const flakes = this.fill(columns, doses);
    const xyz = new Float64Array(6);
    const byDose = new Float64Array(6 * count);
    const byFlake = new Float64Array(2 * count);
    for (let at = 0; at < this.stacks.length; at++) {
      const stack = this.stacks[at]!;
      xyz.fill(0);
      byDose.fill(0);
      for (let band = 0; band < BAND_COUNT; band++) {
        R[0] = this.white[band]!;
        R[1] = this.black[band]!;
        let scattered = 0;
        for (const { cup, thickness } of stack) scattered += this.S[cup * BAND_COUNT + band]! * thickness;
        const factor = pathFactor(this.optics.path, scattered);
        byK.fill(0);
        byS.fill(0);
        byFlake.fill(0);
        for (let i = stack.length - 1; i >= 0; i--) {
          const { cup, thickness } = stack[i]!;
          this.cover(cup, band, factor, thickness, flakes, byFlake, count);
        }
        this.outOfPath(stack, band, factor, pathFactorSlope(this.optics.path, scattered));
        for (let backing = 0; backing < 2; backing++) {
          const outward = 1 - HELD * R[backing]!;
          const seen = (THROUGH * R[backing]!) / outward;
          const bySurface = THROUGH / (outward * outward);
          const wx = this.wx[band]!;
          const wy = this.wy[band]!;
          const wz = this.wz[band]!;
          const to = 3 * backing;
          xyz[to]! += wx * seen;
          xyz[to + 1]! += wy * seen;
          xyz[to + 2]! += wz * seen;
          for (let j = 0; j < count; j++) {
            const { cup, suspect } = columns[j]!;
            const slope =
              this.suspects[suspect]!.colour === undefined
                ? bySurface * byFlake[backing * count + j]!
                : bySurface *
                  (byK[backing * cups + cup]! * this.suspectK[suspect]![band]! +
                    byS[backing * cups + cup]! * this.scatters(columns[j]!, band));
            byDose[to * count + j]! += wx * slope;
            byDose[(to + 1) * count + j]! += wy * slope;
            byDose[(to + 2) * count + j]! += wz * slope;
          }
        }
      }
      for (let backing = 0; backing < 2; backing++) toLab(xyz, byDose, backing, count, 6 * at, values, slopes);
    }
    this.meet(columns, doses, values, slopes);
  }

  /** Slopes with K′ and S′ made slopes with K and S: S of any layer changes those of all. */
  private outOfPath(stack: Stack, band: number, factor: number, slope: number): void {
    const { cups, byK, byS } = this;
    for (let backing = 0; backing < 2; backing++) {
      let byFactor = 0;
      for (let cup = 0; cup < cups; cup++) {
        const at = backing * cups + cup;
        byFactor += byK[at]! * this.K[cup * BAND_COUNT + band]! + byS[at]! * this.S[cup * BAND_COUNT + band]!;
        byK[at]! *= factor;
        byS[at]! *= factor;
      }
      for (const { cup, thickness } of stack) byS[backing * cups + cup]! += byFactor * slope * thickness;
    }
  }

  /** How S of a cup changes with a dose: by what that scatters, less what it takes from all the rest. */
  private scatters({ cup, suspect }: Column, band: number): number {
    const { usualDose } = this.suspects[suspect]!;
    const lost = this.optics.crowding * usualDose * this.S[cup * BAND_COUNT + band]!;
    return this.crowded[cup]! * this.suspectS[suspect]![band]! - lost;
  }

  /** K and S of the cups; the columns of flake with what they are met per mm. */
  private fill(columns: readonly Column[], doses: ArrayLike<number>): readonly HeldFlake[] {
    const { K, S } = this;
    const flakes: HeldFlake[] = [];
    const loads = new Float64Array(this.cups);
    for (let cup = 0; cup < this.cups; cup++) {
      K.set(this.plasticK, cup * BAND_COUNT);
      S.set(this.plasticS, cup * BAND_COUNT);
    }
    for (let column = 0; column < columns.length; column++) {
      const { cup, suspect } = columns[column]!;
      const { flake } = this.suspects[suspect]!;
      const dose = doses[column]!;
      const [k, s] = [this.suspectK[suspect]!, this.suspectS[suspect]!];
      if (flake) {
        const { hidesPerMm } = flake;
        flakes.push({ column, cup, perMm: dose * hidesPerMm, perDose: hidesPerMm, reflectance: k, seen: 0 });
      } else {
        loads[cup]! += dose * this.suspects[suspect]!.usualDose;
        for (let band = 0; band < BAND_COUNT; band++) {
          K[cup * BAND_COUNT + band]! += dose * k[band]!;
          S[cup * BAND_COUNT + band]! += dose * s[band]!;
        }
      }
    }
    for (const [cup, load] of loads.entries()) {
      this.crowded[cup] = crowdingFactor(this.optics, load);
      for (let at = cup * BAND_COUNT; at < (cup + 1) * BAND_COUNT; at++) S[at]! *= this.crowded[cup]!;
    }
    return flakes;
  }

  /** Lays a layer over what is there, over white and over black. */
  private cover(
    cup: number,
    band: number,
    factor: number,
    thickness: number,
    flakes: readonly HeldFlake[],
    byFlake: Float64Array,
    count: number,
  ): void {
    const { cups, byK, byS, R } = this;
    const K = factor * this.K[cup * BAND_COUNT + band]!;
    const S = factor * this.S[cup * BAND_COUNT + band]!;
    let flaked = false;
    let mu = 0;
    for (const flake of flakes) {
      if (flake.cup !== cup) continue;
      flaked = true;
      mu += flake.perMm;
    }
    const through = mu === 0 ? 1 : Math.exp(-mu * thickness);
    if (flaked) onFlakes(K, S, thickness, flakes, cup, mu, band);
    else ON_FLAKE.fill(0);
    for (let backing = 0; backing < 2; backing++) {
      layerSlopes(K, S, thickness, R[backing]!, SLOPES);
      const behind = through * SLOPES[3]!;
      for (let other = 0; other < cups; other++) {
        byK[backing * cups + other]! *= behind;
        byS[backing * cups + other]! *= behind;
      }
      byK[backing * cups + cup]! += through * SLOPES[1]! + ON_FLAKE[1]!;
      byS[backing * cups + cup]! += through * SLOPES[2]! + ON_FLAKE[2]!;
      for (const flake of flakes) {
        const at = backing * count + flake.column;
        byFlake[at]! *= behind;
        if (flake.cup !== cup) continue;
        byFlake[at]! += flake.perDose * (flake.seen - ON_FLAKE[3]! - thickness * through * SLOPES[0]!);
      }
      R[backing] = through * SLOPES[0]! + ON_FLAKE[0]!;
    }
  }

  private meet(columns: readonly Column[], doses: ArrayLike<number>, values: Float64Array, slopes: Float64Array): void {
    const row = this.rows - 1;
    const met = ({ cup, suspect }: Column): number =>
      (this.suspects[suspect]!.flake?.metPerMm ?? 0) * this.sightMm[cup]!;
    const all = columns.reduce((sum, column, j) => sum + doses[j]! * met(column), 0);
    values[row] = -Math.expm1(-all);
    for (const [j, column] of columns.entries()) slopes[row * columns.length + j] = Math.exp(-all) * met(column);
  }
}

/** Writes L, a, b of a view and their slopes from X, Y, Z and theirs. */
function toLab(
  xyz: Float64Array,
  byDose: Float64Array,
  backing: number,
  count: number,
  stackRow: number,
  values: Float64Array,
  slopes: Float64Array,
): void {
  const from = 3 * backing;
  const row = stackRow + from;
  const [X, Y, Z] = [xyz[from]!, xyz[from + 1]!, xyz[from + 2]!];
  const { L, a, b } = labFromTristimulus({ X, Y, Z });
  values[row] = L;
  values[row + 1] = a;
  values[row + 2] = b;
  const fx = rootSlope(X / WHITE.X) / WHITE.X;
  const fy = rootSlope(Y);
  const fz = rootSlope(Z / WHITE.Z) / WHITE.Z;
  for (let j = 0; j < count; j++) {
    const dx = fx * byDose[from * count + j]!;
    const dy = fy * byDose[(from + 1) * count + j]!;
    const dz = fz * byDose[(from + 2) * count + j]!;
    slopes[row * count + j] = 116 * dy;
    slopes[(row + 1) * count + j] = 500 * (dx - dy);
    slopes[(row + 2) * count + j] = 200 * (dy - dz);
  }
}

function rootSlope(ratio: number): number {
  if (ratio <= EPSILON) return KAPPA / 116;
  const root = Math.cbrt(ratio);
  return 1 / (3 * root * root);
}
