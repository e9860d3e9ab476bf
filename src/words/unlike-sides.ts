import type { UnlikeSides } from '../matching/target/unlike-sides.ts';

/** What is asked of two sides that no bait has. */
export function unlikeSidesText({ more, less, times, atLeast }: UnlikeSides): string {
  const light = `${times} times as much light through as the ${less}`;
  return `These two can’t be the sides of one bait: the ${more} lets ${atLeast ? 'more than ' : ''}${light}, and a bait lets the same light through from either side. Did you look at each alone?`;
}

/** How a file answers it. */
export const ANSWER_IN_TARGET =
  'Then write `apart: true` into the target. If it is one bait, look at both sides again at the same spot; if they still differ, write `apart: false`.';
