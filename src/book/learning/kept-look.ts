import type { TaughtLook } from '../../learning/learning-data.ts';
import { isClipped } from '../../optics/clipped.ts';
import { CLIPPED_PHOTO_DOUBT } from '../../tables/label-doubt.ts';
import { defined } from '../../values/defined.ts';
import type { Look } from '../model/looks.ts';
import { keptLab } from './kept-lab.ts';

/** What of a look is learned from. */
export type LookSeen = Pick<Look, 'overWhite' | 'overBlack' | 'doubt' | 'camera' | 'checked'>;

/** What a look teaches; undefined where it says no colour. */
export function keptLook({
  overWhite,
  overBlack,
  doubt,
  camera,
  checked,
}: LookSeen): Omit<TaughtLook, 'key' | 'cup' | 'round' | 'layers'> | undefined {
  if (!doubt) return undefined;
  const views = [overWhite, overBlack].filter((view) => view !== undefined);
  const isVague = doubt.means === 'screen' && views.some(({ hex, mapped }) => !mapped && isClipped(hex));
  return {
    ...defined({ overWhite: overWhite && keptLab(overWhite.lab), overBlack: overBlack && keptLab(overBlack.lab) }),
    axisSd: Math.max(doubt.axisSd, isVague ? CLIPPED_PHOTO_DOUBT / Math.sqrt(3) : 0),
    means: doubt.means,
    ...defined({ camera, checked }),
  };
}
