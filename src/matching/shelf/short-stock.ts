import { massText } from '../../units/mass-text.ts';
import { required } from '../../values/required.ts';
import { listed } from '../words.ts';
import { type MatchBench, plasticText } from './match-bench.ts';
import type { MatchMaterial } from './match-material.ts';

// Of what is weighed out of a bottle the last digit is the scale's.
const ROUNDING = 1e-6;

/**
 * That more is asked for than is left on the shelf, as a sentence; undefined where all of it is there, or not counted.
 *
 * @param asked g of each material, a plastic too
 */
export function shortStock(
  asked: Iterable<readonly [material: string, grams: number]>,
  shelf: ReadonlyMap<string, MatchMaterial>,
  bench: Pick<MatchBench, 'volume'>,
): string | undefined {
  const short = [...asked].flatMap(([id, grams]) => {
    const material = required(shelf, id);
    const { stockGrams, title } = material;
    return stockGrams !== undefined && grams > stockGrams + ROUNDING
      ? [stockGrams > ROUNDING ? `${leftText(material, stockGrams, bench)} of ${title}` : `no ${title}`]
      : [];
  });
  return short.length === 0 ? undefined : `The shelf runs short: ${listed(short)} left.`;
}

/** What is left of a material, as it is measured: whole drops, a volume of plastic, or a mass. */
function leftText(
  { kind, gramsPerDrop, gramsPerMl }: MatchMaterial,
  grams: number,
  bench: Pick<MatchBench, 'volume'>,
): string {
  if (kind === 'plastic') return plasticText(grams / gramsPerMl, bench);
  if (gramsPerDrop === undefined) return massText(grams);
  const drops = Math.floor(grams / gramsPerDrop + ROUNDING);
  return drops === 0 ? 'less than a drop' : `${drops} ${drops === 1 ? 'drop' : 'drops'}`;
}
