import type { NoFlake, PhotoFlake } from '../photo/photo-measured.ts';
import { lengthText } from '../units/length-text.ts';
import type { VolumeUnit } from '../units/volume-text.ts';
import { counted } from './sentence-text.ts';

const NONE: Readonly<Record<NoFlake, string>> = {
  'too-few-pixels': 'too few pixels for flake: go nearer, or take the photo at the camera’s full size',
  glare: 'too much shine to tell: turn the card until the bait looks dull, and take it again',
  'none-seen': 'none seen',
};

/** Nine in ten of what is normal is within so many standard deviations. */
const NINE_IN_TEN = 1.645;

/**
 * One kind of flake that a photo shows: how large, and on how much of the bait.
 *
 * @example photoFlakeText({ sizeMm: 0.9, coverage: 0.06, coverageSd: 0.006, count: 48 }, { volume: 'ml' }) // '0.9 mm across, shows on 6 % of the bait (5 to 7 %; 48 flakes counted)'
 */
export function photoFlakeText(
  { sizeMm, coverage, coverageSd, count }: Omit<PhotoFlake, 'lab'>,
  units: VolumeUnit,
): string {
  const size = lengthText(Number(sizeMm.toPrecision(2)), units);
  const [least, most] = [-1, 1].map((side) =>
    percent(Math.min(1, Math.max(0, coverage + side * NINE_IN_TEN * coverageSd))),
  );
  const range = least === most ? '' : `${least} to ${most} %; `;
  return `${size} across, shows on ${percent(coverage)} % of the bait (${range}${counted(count, 'flake')} counted)`;
}

/** Why nothing is said of flake. */
export function noFlakeText(why: NoFlake): string {
  return NONE[why];
}

const percent = (share: number): number => (share < 0.095 ? Number((100 * share).toFixed(1)) : Math.round(100 * share));
