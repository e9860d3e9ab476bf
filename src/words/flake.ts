import type { FlakeChoice } from '../matching/substitutes/flake-match.ts';
import { lengthText } from '../units/length-text.ts';
import type { VolumeUnit } from '../units/volume-text.ts';
import { listText } from './sentence-text.ts';

/**
 * A flake beside the one that is wanted: "the same size, a little greener and hologram instead of metallic"; behind one that jams in the
 * mold stands ", but too large for the gate: 3 mm where it needs 6.3 mm".
 */
export function flakeText({ sizeRatio, deltaE, towards, finishes, narrow }: FlakeChoice, units: VolumeUnit): string {
  const turns = Math.abs(Math.log2(sizeRatio));
  const like = listText([
    turns < 0.08
      ? 'the same size'
      : `${turns < 0.5 ? 'a little ' : turns > 1.2 ? 'much ' : ''}${sizeRatio > 1 ? 'larger' : 'smaller'}`,
    deltaE < 2 ? 'the same colour' : `${deltaE < 6 ? 'a little ' : deltaE > 20 ? 'much ' : ''}${towards}`,
    ...(finishes === undefined ? [] : [`${finishes.finish} instead of ${finishes.wanted}`]),
  ]);
  if (narrow === undefined) return like;
  const { at, mm, leastMm } = narrow;
  const part = at === 'gate' ? 'gate' : 'thin part of the mold';
  return `${like}, but too large for the ${part}: ${lengthText(mm, units)} where it needs ${lengthText(leastMm, units)}`;
}
