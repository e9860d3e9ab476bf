/**
 * How far predictions are from the truth by what is known of the materials, and how often the stated bounds hold. Run by
 * `npm run bench`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { mixesLeftOut, pigmentFilms, quantile } from '../optics/fit/pigment-films.ts';
import { type Judged, judgedFilms, judgedPairs, shareWithin } from '../optics/uncertainty-study.ts';

const FILE = '../shared/reference/pigment_films_shared.csv';

/** Prints the shares. */
export function main(): void {
  if (!existsSync(join(process.cwd(), FILE))) {
    console.log(`uncertainty: skipped, no ${FILE}`);
    return;
  }
  console.log('uncertainty: ΔE00 of predictions, and how often they are within the stated bounds');
  for (const knowledge of ['one chip', 'two chips', 'colour and kind'] as const) {
    line(`pairs of 19 paints known by ${knowledge}`, judgedPairs(knowledge));
  }
  line('mixes of measured paints left out', judgedFilms(mixesLeftOut(pigmentFilms(readFileSync(FILE, 'utf8')))));
}

function line(name: string, judged: readonly Judged[]): void {
  const off = judged.map(({ error }) => error);
  const bounds = judged.map(({ bound90 }) => bound90);
  const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;
  console.log(
    `  ${name}: median ${quantile(off, 0.5).toFixed(1)}, nine in ten ${quantile(off, 0.9).toFixed(1)} (${judged.length}); the bound of half holds for ${percent(shareWithin(judged, 'median'))}, that of nine in ten (median ${quantile(bounds, 0.5).toFixed(1)}) for ${percent(shareWithin(judged, 'bound90'))}`,
  );
}

main();
