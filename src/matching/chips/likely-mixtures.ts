import { seededRandom } from '../../cup/random.ts';
import type { LookedLayer } from '../../learning/learning-data.ts';
import { type ChipMaterial, isChipMaterial } from './chip-candidates.ts';

// Mixtures with each material: more of them choose better, and take longer. Convention of this book.
const EACH = { least: 2, most: 6 };
const IN_ALL = 120;
// From a seventh of the usual dose to all of it, alike by its logarithm.
const LEAST_PART = 0.15;
const MOST_OTHERS = 3;
const SEED = 20;

/**
 * Mixtures as a shelf is likely to be used for: each colouring material two to six times, with one to three others, at usual doses or less.
 * The same whenever they are asked for.
 */
export function likelyMixtures(
  shelf: readonly ChipMaterial[],
  plastic: string,
  thicknessMm: number,
): readonly LookedLayer[] {
  const used = shelf.filter(isChipMaterial).sort((one, other) => (one.id < other.id ? -1 : 1));
  const random = seededRandom(SEED);
  const each = Math.max(EACH.least, Math.min(EACH.most, Math.floor(IN_ALL / used.length)));
  return used.flatMap((material) =>
    Array.from({ length: each }, (): LookedLayer => {
      const others = used.filter((other) => other !== material);
      const count = Math.min(others.length, 1 + Math.floor(MOST_OTHERS * random()));
      const set = [material];
      for (let at = 0; at < count; at++) set.push(others.splice(Math.floor(others.length * random()), 1)[0]!);
      const contents = set.map(({ id, typical }) => [id, typical! * LEAST_PART ** random()] as const);
      return { plastics: [[plastic, 1]], contents, thicknessMm };
    }),
  );
}
