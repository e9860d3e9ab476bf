import { chroma, type Lab, labOf } from '../../optics/cielab.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { stackReflectance } from '../../optics/stack.ts';
import { BESIDE_GLOSS } from '../../optics/surface.ts';
import { COLOURING_KINDS } from '../../tables/colouring-kinds.ts';
import type { MatchMaterial } from './match-material.ts';

/** What a material looks like by itself, in its typical dose, and what that is beside a target. */
export interface OwnColour {
  /** g per ml of plastic */
  readonly typical: number;
  /** In hue: 0 the target's own, 1 the opposite; unset of a white, grey or black beside a target with a hue, which is of every family. */
  readonly hueAway?: number;
  readonly deltaE: number;
  readonly isBlack: boolean;
}

// Below this chroma a target has no hue to be near, and a bottle none of its own. Conventions of this book.
const GREY_TARGET = 6;
const GREY_BOTTLE = 10;
// A grey bottle that is darker than this over white is a black: convention of this book.
const BLACK_L = 50;

/** What materials that colour look like by themselves over white, beside a target of a thickness in mm. */
export function ownColour(
  material: MatchMaterial,
  target: Lab,
  thicknessMm: number,
  { backings, path }: OpticalModel,
): OwnColour {
  const { typical = COLOURING_KINDS.pigment.dose, constants } = material;
  const scaled = (values: ArrayLike<number>): Float64Array => Float64Array.from(values, (value) => typical * value);
  const { absorption, scattering } = constants!;
  const body = { absorption: scaled(absorption), scattering: scaled(scattering), thickness: thicknessMm };
  const own = labOf(stackReflectance([body], backings.white, BESIDE_GLOSS, path));
  const isGrey = chroma(own) < GREY_BOTTLE;
  const hueAway = chroma(target) < GREY_TARGET ? (isGrey ? 0 : 1) : isGrey ? undefined : hueApart(own, target);
  return {
    typical,
    ...(hueAway === undefined ? {} : { hueAway }),
    deltaE: deltaE00(target, own),
    isBlack: isGrey && own.L < BLACK_L,
  };
}

/** How far two hues are apart: 0 the same, 1 opposite. */
function hueApart(one: Lab, other: Lab): number {
  const turn = Math.abs(Math.atan2(one.b, one.a) - Math.atan2(other.b, other.a)) / Math.PI;
  return Math.min(turn, 2 - turn);
}
