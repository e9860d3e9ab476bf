import type { CupState } from '../../cup/ledger.ts';
import type { BelievedCup } from '../../learning/asked-views.ts';
import type { LookedLayer } from '../../learning/learning-data.ts';
import type { Face } from '../../patterns/pattern.ts';
import { faceRuns, type Pattern } from '../../patterns/patterns.ts';
import { defined } from '../../values/defined.ts';
import type { BookEye } from '../learning/book-eye.ts';
import { lookedLayer } from '../learning/looked-layer.ts';
import type { SharedCup } from './appearances.ts';

/** A cup of a bait, with what is in it and the name by which it was looked at. */
export interface BaitCup extends SharedCup {
  readonly state: CupState;
  readonly key: string;
}

/** A bait that is looked at. */
export interface Bait {
  readonly pattern: Pattern;
  readonly cups: readonly BaitCup[];
  readonly thicknessMm: number;
  /** Width of a streak, mm; unset: the usual. */
  readonly streakMm?: number;
  /** The name by which it was looked at as a whole: see `baitKey`. */
  readonly key: string;
}

/** A cup by itself, as a question to what is believed: by its own looks, where there are any. */
export function askedAlone(
  state: CupState,
  thicknessMm: number,
  key: string | undefined,
  eye: BookEye,
): BelievedCup & { readonly layers: readonly [LookedLayer] } {
  return { layers: [lookedLayer(state, thicknessMm, eye.colours)], ...cupNamed(key, eye) };
}

/** What is looked at of a bait, as a question to what is believed. */
export function askedFace({ pattern, cups, thicknessMm, streakMm, key }: Bait, face: Face, eye: BookEye): BelievedCup {
  const layer = (cup: number, part: number): LookedLayer =>
    lookedLayer(cups[cup]!.state, part * thicknessMm, eye.colours);
  if ('mean' in face)
    return {
      layers: cups.map((_, cup) => layer(cup, 1)),
      streaks: cups.map(({ share }) => share),
      ...defined({ streakMm }),
      ...cupNamed(key, eye),
    };
  const runs = faceRuns(
    pattern,
    face,
    cups.map(({ share }) => share),
  );
  const [only, ...others] = runs;
  const name = only && others.length === 0 ? cups[only.cup]!.key : key;
  return { layers: runs.map(({ cup, part }) => layer(cup, part)), ...cupNamed(name, eye) };
}

/** A cup's name, where it was ever looked at: what was never poured has no errors of its own that anybody knows. */
function cupNamed(key: string | undefined, eye: BookEye): Pick<BelievedCup, 'cup'> {
  return defined({ cup: key !== undefined && eye.looksAt(key).length > 0 ? key : undefined });
}
