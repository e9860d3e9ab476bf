import { percent } from '../foreign/report/statistics.ts';
import type { Outcome, PhotoResult } from './photo-result.ts';

/** In which way a photo was measured. */
export type Way = 'anyCard' | 'certified' | 'touched';

/** How far colours are off, both halves of every photo that was not refused. */
export function coloursOff(results: readonly PhotoResult[], way: Way): readonly number[] {
  return results.map((each) => each[way]).flatMap(halves);
}

function halves({ white, black }: Outcome): readonly number[] {
  return [white, black].filter((each): each is number => each !== undefined);
}

/** Part of the colours that are within the stated doubt of their photo, in percent. */
export function covered(results: readonly PhotoResult[], way: Way): number {
  const within = results.flatMap((each) => halves(each[way]).map((off) => off <= (each[way].bound ?? Number.NaN)));
  return percent(within, (isWithin) => isWithin);
}

/** What is counted how often, the most frequent first, as `glare 3, no-bait 1`. */
export function tally(names: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts]
    .sort(([, one], [, other]) => other - one)
    .map(([name, count]) => `${name} ${count}`)
    .join(', ');
}
