/**
 * The flake of one bait, from several photos of it.
 *
 * @packageDocumentation
 */
import { deltaE00 } from '../../optics/delta-e00.ts';
import type { NoFlake, PhotoFlake, PhotoMeasured } from '../photo-measured.ts';

/** Kinds of two photos are one if they are nearer than this in colour and in size. Conventions of this book. */
const ONE_COLOUR = 15;
const ONE_SIZE = 1.6;

/**
 * Kinds of flake that at least half of the photos show, of those in which any could be seen; or why there are none.
 *
 * All photos show the same face, and so the same flakes: what the coverage of a face may differ from that of the bait gets no smaller.
 */
export function averageFlakes(photos: readonly Pick<PhotoMeasured, 'flakes' | 'noFlake'>[]): {
  readonly flakes?: readonly PhotoFlake[];
  readonly noFlake?: NoFlake;
} {
  const telling = photos.filter(({ noFlake }) => noFlake === undefined || noFlake === 'none-seen');
  if (telling.length === 0)
    return { noFlake: photos.every(({ noFlake }) => noFlake === 'glare') ? 'glare' : 'too-few-pixels' };
  const groups: PhotoFlake[][] = [];
  for (const { flakes = [] } of telling) {
    const free = new Set(groups);
    for (const flake of flakes) {
      const group = nearest(flake, [...free]);
      if (group) free.delete(group);
      if (group) group.push(flake);
      else groups.push([flake]);
    }
  }
  const flakes = groups
    .filter((group) => 2 * group.length >= telling.length)
    .map((group) => meanFlake(group, telling.length));
  if (flakes.length === 0) return { noFlake: 'none-seen' };
  return { flakes: flakes.sort((one, other) => other.coverage - one.coverage) };
}

function nearest(flake: PhotoFlake, groups: readonly PhotoFlake[][]): PhotoFlake[] | undefined {
  let found: { readonly group: PhotoFlake[]; readonly distance: number } | undefined;
  for (const group of groups) {
    const distance = deltaE00(flake.lab, group[0]!.lab);
    const size = Math.abs(Math.log(flake.sizeMm / group[0]!.sizeMm));
    if (distance < ONE_COLOUR && size < Math.log(ONE_SIZE) && distance < (found?.distance ?? Number.POSITIVE_INFINITY))
      found = { group, distance };
  }
  return found?.group;
}

/** A photo in which the kind was not told from another shows none of it: what all kinds cover together stays what the photos show. */
function meanFlake(group: readonly PhotoFlake[], photos: number): PhotoFlake {
  const mean = (of: (flake: PhotoFlake) => number): number =>
    group.reduce((sum, flake) => sum + of(flake), 0) / group.length;
  return {
    sizeMm: mean(({ sizeMm }) => sizeMm),
    coverage: (mean(({ coverage }) => coverage) * group.length) / photos,
    coverageSd: mean(({ coverageSd }) => coverageSd),
    lab: { L: mean(({ lab }) => lab.L), a: mean(({ lab }) => lab.a), b: mean(({ lab }) => lab.b) },
    count: Math.max(...group.map(({ count }) => count)),
  };
}
