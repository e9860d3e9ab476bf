/**
 * Flake: the nearest on the shelf to one that is described.
 *
 * @packageDocumentation
 */
import { type FlakeWay, type TooNarrow, tooNarrow } from '../../cup/flake-passage.ts';
import { chroma, type Lab } from '../../optics/cielab.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import { labFromHex } from '../../optics/display.ts';
import { defined } from '../../values/defined.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';

/** A flake as it is described: colour, size, and how much of the face it covers. */
export interface WantedFlake {
  /** `#rrggbb` */
  readonly hex: string;
  /** Across flats, mm. */
  readonly sizeMm: number;
  /** Share of the face that an eye takes for this flake, 0..1 (see `seenCoverage`); unset: an ordinary load. */
  readonly coverage?: number;
  readonly finish?: string;
}

/** A flake on the shelf. */
export interface ShelfFlake {
  readonly colour: string;
  readonly acrossMm: number;
  readonly finish: string;
}

/** To which side one colour is off another, in what is seen first. */
export type ColourShift = 'lighter' | 'darker' | 'greyer' | 'redder' | 'greener' | 'yellower' | 'bluer';

/** A flake of the shelf beside the one that is wanted. */
export interface FlakeChoice {
  readonly material: string;
  readonly title: string;
  readonly deltaE: number;
  /** Its size by that of the wanted one. */
  readonly sizeRatio: number;
  /** To which side its colour is off. */
  readonly towards: ColourShift;
  /** Its finish and the wanted one, where they differ. */
  readonly finishes?: { readonly finish: string; readonly wanted: string };
  /** The part of the mold that it jams in; absent where it passes, or no mold was named. */
  readonly narrow?: TooNarrow;
  /** How far apart the two look, on the scale of ΔE00: 0 is the same flake. */
  readonly distance: number;
}

// What a size twice as large, and another finish, count for beside ΔE00: flake is seen by size nearly as soon as by colour.
// Convention of this book.
const DOUBLE_SIZE = 12;
const OTHER_FINISH = 4;

/**
 * Flakes of the shelf, nearest to the wanted one first.
 *
 * @param mold what they have to get through
 */
export function nearestFlakes(
  wanted: WantedFlake,
  shelf: Iterable<MatchMaterial>,
  mold?: FlakeWay,
): readonly FlakeChoice[] {
  const target = labFromHex(wanted.hex);
  const choices: FlakeChoice[] = [];
  for (const material of shelf) {
    const flake = flakeOf(material);
    if (!flake) continue;
    const lab = labFromHex(flake.colour);
    const deltaE = deltaE00(target, lab);
    const sizeRatio = flake.acrossMm / wanted.sizeMm;
    const { finish } = flake;
    const sameFinish = wanted.finish === undefined || wanted.finish === finish;
    choices.push({
      material: material.id,
      title: material.title,
      deltaE,
      sizeRatio,
      towards: colourShift(target, lab),
      ...(sameFinish ? {} : { finishes: { finish, wanted: wanted.finish } }),
      ...defined({ narrow: mold && tooNarrow(flake.acrossMm, mold) }),
      distance: Math.hypot(deltaE, DOUBLE_SIZE * Math.log2(sizeRatio)) + (sameFinish ? 0 : OTHER_FINISH),
    });
  }
  return choices.sort((one, other) => one.distance - other.distance || (one.material < other.material ? -1 : 1));
}

/** What the shelf says of a flake; undefined for what is none. */
export function flakeOf(material: MatchMaterial): ShelfFlake | undefined {
  const flake = material.flake as (MatchMaterial['flake'] & Partial<ShelfFlake>) | undefined;
  if (!flake) return undefined;
  const { colour, acrossMm = flake.sizeMm, finish = 'metallic' } = flake;
  return colour === undefined ? undefined : { colour, acrossMm, finish };
}

function colourShift(wanted: Lab, lab: Lab): ColourShift {
  const dL = lab.L - wanted.L;
  const da = lab.a - wanted.a;
  const db = lab.b - wanted.b;
  if (Math.abs(dL) >= Math.hypot(da, db)) return dL > 0 ? 'lighter' : 'darker';
  if (chroma(lab) - chroma(wanted) < -0.8 * Math.hypot(da, db)) return 'greyer';
  if (Math.abs(da) > Math.abs(db)) return da > 0 ? 'redder' : 'greener';
  return db > 0 ? 'yellower' : 'bluer';
}
