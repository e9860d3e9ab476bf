import { type Lab, labOf, tristimulusFromLab } from '../../optics/cielab.ts';
import { reflectanceFromTristimulus } from '../../optics/upsampling.ts';
import type { Light } from '../../tables/lights.ts';
import type { TargetPart } from './target-part.ts';

/** A target's colours under a light, relative to its white. */
export interface TargetUnderLight {
  readonly overWhite: Lab;
  readonly overBlack?: Lab;
}

type Colours = Pick<TargetPart, 'overWhite' | 'overBlack' | 'reflectance'>;

/**
 * A target under another light than the daylight that it was seen by: from its measured reflectance, else from the smoothest
 * one of its colour. Many reflectances have one colour by day, and part under a lamp (metamerism): without a measured one
 * this is an estimate.
 */
export function targetUnder(part: Colours, light: Light): TargetUnderLight {
  const under = (lab: Lab, measured: ArrayLike<number> | undefined): Lab =>
    labOf(measured ?? reflectanceFromTristimulus(tristimulusFromLab(lab)), light);
  return {
    overWhite: under(part.overWhite, part.reflectance?.overWhite),
    ...(part.overBlack && { overBlack: under(part.overBlack, part.reflectance?.overBlack) }),
  };
}

/** Whether all that is known of a target's colour was measured band by band. */
export function isMeasuredThroughout({ overBlack, reflectance }: Colours): boolean {
  return reflectance?.overWhite !== undefined && (overBlack === undefined || reflectance.overBlack !== undefined);
}
