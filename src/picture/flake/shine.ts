/**
 * What the light does on the faces of flake: most are a little darker than their crowd, a few flash. Drawn, but so that a crowd has the colour
 * that is stated of it.
 *
 * @packageDocumentation
 */
import { windowAlong } from '../light/room.ts';

/** How the faces of a finish take the light. */
interface Finish {
  /** How much lighter than its crowd a face is that flashes. */
  readonly peak: number;
  /** Part of the flash that a face shows by being turned to the light at all; the rest by showing the window. */
  readonly soft: number;
  /** How far its colours part with the angle, 0 to 1. */
  readonly rainbow: number;
}

const FINISHES: Readonly<Record<string, Finish>> = {
  metallic: { peak: 3.2, soft: 0.12, rainbow: 0 },
  hologram: { peak: 2.2, soft: 0.25, rainbow: 0.8 },
  pearl: { peak: 1.8, soft: 0.6, rainbow: 0.15 },
  matte: { peak: 1.4, soft: 0.6, rainbow: 0 },
  translucent: { peak: 1.3, soft: 0.6, rainbow: 0 },
  fluorescent: { peak: 1.2, soft: 0.8, rainbow: 0 },
};
const PLAIN: Finish = { peak: 1.3, soft: 0.6, rainbow: 0 };

/** A screen shows a flash no lighter than this: of light flake a smaller one, or its crowd would come out darker. */
const LIGHTEST = 1.25;
/** But some flash there must be. */
const LEAST_PEAK = 1.5;

/** How a kind of flake shines. */
export interface Shine {
  readonly rainbow: number;
  /** Of the flash, 0 to 1, that a mirrored ray gives: how many times its crowd's colour the face shows. `crowd` is the mean flash of all that lie so. */
  factor(flash: number, crowd: number): number;
  /** Of a mirrored ray to the right and down, 0 to 1. */
  flash(x: number, y: number): number;
  /** Mean flash of faces, each counted by what is seen of it, whose tilts have cosines from `flattest` to 1. */
  crowd(flattest: number): number;
}

/** @param lightest the largest of the linear red, green and blue of its crowd just below the surface */
export function shineOf(finish: string, lightest: number): Shine {
  const { peak: wanted, soft, rainbow } = FINISHES[finish] ?? PLAIN;
  const peak = Math.min(wanted, Math.max(Math.min(wanted, LEAST_PEAK), LIGHTEST / Math.max(lightest, 1e-3)));
  const flash = (x: number, y: number): number =>
    soft * Math.exp(-((x + 0.1) ** 2 + (y + 0.5) ** 2) / 0.7) + (1 - soft) * windowAlong(x, y);
  const crowds = crowdsOf(soft, flash);
  return {
    rainbow,
    flash,
    factor: (own, crowd) => (1 - peak * crowd) / (1 - crowd) + ((peak - 1) / (1 - crowd)) * own,
    crowd(flattest) {
      const at = CROWDS * Math.min(1, Math.max(0, flattest));
      const cell = Math.min(CROWDS - 1, Math.floor(at));
      return crowds[cell]! + (at - cell) * (crowds[cell + 1]! - crowds[cell]!);
    },
  };
}

const CROWDS = 10;
const known = new Map<number, Float64Array>();

/** The mean flash by the flattest cosine, in even steps: the same for every finish that is so soft. */
function crowdsOf(soft: number, flash: Shine['flash']): Float64Array {
  const crowds =
    known.get(soft) ?? Float64Array.from({ length: CROWDS + 1 }, (_, step) => meanFlash(flash, step / CROWDS));
  known.set(soft, crowds);
  return crowds;
}

const TILTS = 48;
const ANGLES = 48;

/** The mean by midpoints, of cosines even from the flattest to 1, each face counted by its cosine: so much of it is seen. */
function meanFlash(flash: (x: number, y: number) => number, flattest: number): number {
  let [sum, seen] = [0, 0];
  for (let tilt = 0; tilt < TILTS; tilt++) {
    const nz = flattest + ((1 - flattest) * (tilt + 0.5)) / TILTS;
    const mirrored = 2 * nz * Math.sqrt(1 - nz * nz);
    for (let angle = 0; angle < ANGLES; angle++) {
      const around = (2 * Math.PI * (angle + 0.5)) / ANGLES;
      sum += nz * flash(mirrored * Math.cos(around), mirrored * Math.sin(around));
      seen += nz;
    }
  }
  return sum / seen;
}
