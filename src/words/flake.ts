import type { FlakeChoice } from '../matching/substitutes/flake-match.ts';
import { listText } from './sentence-text.ts';

/** A flake beside the one that is wanted: "the same size, a little greener and hologram instead of metallic". */
export function flakeText({ sizeRatio, deltaE, towards, finishes }: FlakeChoice): string {
  const turns = Math.abs(Math.log2(sizeRatio));
  return listText([
    turns < 0.08
      ? 'the same size'
      : `${turns < 0.5 ? 'a little ' : turns > 1.2 ? 'much ' : ''}${sizeRatio > 1 ? 'larger' : 'smaller'}`,
    deltaE < 2 ? 'the same colour' : `${deltaE < 6 ? 'a little ' : deltaE > 20 ? 'much ' : ''}${towards}`,
    ...(finishes === undefined ? [] : [`${finishes.finish} instead of ${finishes.wanted}`]),
  ]);
}
