/**
 * Films kept apart: some of the mixes are predicted from a fit of all other films, so that more than one is unknown at a time.
 */
import { seededRandom } from '../../../src/cup/random.ts';
import type { MeasuredFilm } from '../../../src/optics/fit/film.ts';

/** Films that a fit sees, and mixes that it is to predict: all paints of these are among the films. */
export interface FilmsApart {
  readonly kept: readonly MeasuredFilm[];
  readonly apart: readonly MeasuredFilm[];
}

/** What the kept films tell of a mix: its paints met in one of them, only met others, or one of them met none. */
export type HowMet = 'met' | 'strangers' | 'never mixed';

/** Half of the mixes, by lot, as far as the rest still tells all paints. */
export function halfApart(films: readonly MeasuredFilm[], seed: number): FilmsApart {
  const random = seededRandom(seed);
  const mixes = films.filter(({ parts }) => parts.length > 1);
  const drawn = mixes.map((film) => ({ film, lot: random() })).sort((one, other) => one.lot - other.lot);
  const apart = new Set<MeasuredFilm>();
  for (const { film } of drawn) {
    if (2 * apart.size >= mixes.length) break;
    apart.add(film);
    if (!tellsAll(films, apart)) apart.delete(film);
  }
  return { kept: films.filter((film) => !apart.has(film)), apart: [...apart] };
}

/** For each paint, all of its mixes that the rest can tell. */
export function paintsApart(films: readonly MeasuredFilm[]): FilmsApart[] {
  const paints = new Set(films.flatMap(({ parts }) => parts.map(({ material }) => material)));
  return [...paints].flatMap((paint) => {
    const all = films.filter(({ parts }) => parts.length > 1 && parts.some(({ material }) => material === paint));
    const kept = films.filter((film) => !all.includes(film));
    const told = paintsOf(kept);
    const apart = all.filter(({ parts }) => parts.every(({ material }) => told.has(material)));
    return apart.length === 0 ? [] : [{ kept, apart }];
  });
}

export function howMet({ parts }: MeasuredFilm, kept: readonly MeasuredFilm[]): HowMet {
  const names = parts.map(({ material }) => material);
  const mixes = kept.filter((film) => film.parts.length > 1).map((film) => paintsOf([film]));
  if (!names.every((name) => mixes.some((mix) => mix.has(name)))) return 'never mixed';
  const pairs = names.flatMap((one, i) => names.slice(i + 1).map((other) => [one, other] as const));
  return pairs.every(([one, other]) => mixes.some((mix) => mix.has(one) && mix.has(other))) ? 'met' : 'strangers';
}

function tellsAll(films: readonly MeasuredFilm[], apart: ReadonlySet<MeasuredFilm>): boolean {
  const told = paintsOf(films.filter((film) => !apart.has(film)));
  return [...paintsOf([...apart])].every((paint) => told.has(paint));
}

function paintsOf(films: readonly MeasuredFilm[]): Set<string> {
  return new Set(films.flatMap(({ parts }) => parts.map(({ material }) => material)));
}
