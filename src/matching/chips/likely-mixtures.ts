import { seededRandom } from '../../cup/random.ts';
import type { LookedLayer } from '../../learning/learning-data.ts';
import { colours, type MatchMaterial } from '../shelf/match-material.ts';

// Mixtures with each material. Convention of this book.
const EACH = 2;
// From a seventh of the usual dose to all of it, alike by its logarithm.
const LEAST_PART = 0.15;
const SEED = 20;

/**
 * Mixtures as a shelf is likely to be used for: each colouring material twice, with one or two others, at usual doses or less.
 * The same whenever they are asked for.
 */
export function likelyMixtures(
  shelf: readonly MatchMaterial[],
  plastic: string,
  thicknessMm: number,
): readonly LookedLayer[] {
  const used = shelf
    .filter((material) => colours(material) && material.typical !== undefined && material.effect === undefined)
    .sort((one, other) => (one.id < other.id ? -1 : 1));
  const random = seededRandom(SEED);
  return used.flatMap((material) =>
    Array.from({ length: EACH }, (): LookedLayer => {
      const others = used.filter((other) => other !== material);
      const count = Math.min(others.length, 1 + Math.floor(2 * random()));
      const set = [material];
      for (let at = 0; at < count; at++) set.push(others.splice(Math.floor(others.length * random()), 1)[0]!);
      const contents = set.map(({ id, typical }) => [id, typical! * LEAST_PART ** random()] as const);
      return { plastics: [[plastic, 1]], contents, thicknessMm };
    }),
  );
}
