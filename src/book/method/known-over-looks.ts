/**
 * How well a book would have known its colours as it went on: every look beside what the looks before it had taught.
 *
 * @packageDocumentation
 */
import { Belief } from '../../learning/belief.ts';
import { learn } from '../../learning/learn.ts';
import type { LearningData, TaughtLook } from '../../learning/learning-data.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import { defined } from '../../values/defined.ts';
import { ofCup } from '../learning/cup-keys.ts';
import { median } from '../median.ts';
import type { Book } from '../model.ts';

/** Looks in the order of making that were told by the same belief. */
export interface KnownStretch {
  /** By so many looks, those before it. */
  readonly taughtBy: number;
  /** What each was off by, ΔE00, the larger of its views. */
  readonly off: readonly number[];
  readonly median: number;
}

/** See the top of the file. */
export interface KnownOverLooks {
  readonly stretches: readonly KnownStretch[];
  /** Looks that are not among them: those of a book beyond its first `MOST_SHOWN`. */
  readonly left: number;
}

/** The chart is of the first so many looks: a fit of more would keep who waits for a page. Convention of this book. */
const MOST_SHOWN = 300;

/** A book is fitted anew after so many looks, as parts of all: each look is told by about half of those before it at least. */
const REFITTED = [0, 1 / 4, 1 / 2];

/** Of a book with many looks seldomer: fits of many looks take longest. Convention of this book. */
const REFITTED_OF_MANY = [0, 1 / 8, 1 / 3];
const MANY = 150;

/** A chart of fewer looks would say nothing. Convention of this book. */
const LEAST_SHOWN = 8;

/**
 * The looks of a book in the order of making, each beside what the book would have shown of that very cup by the files and the looks
 * before it; undefined where there are too few.
 */
export function knownOverLooks({
  learned,
  recipes,
  chips,
}: Pick<Book, 'learned' | 'recipes' | 'chips'>): KnownOverLooks | undefined {
  const known = charts.get(learned);
  if (known !== undefined) return known.of;
  const looks = inOrderOfMaking(learned.data.looks, { recipes, chips });
  const of = looks.length < LEAST_SHOWN ? undefined : overLooks(learned.data, looks);
  charts.set(learned, { of });
  return of;
}

// A learned shelf never changes, and the same looks give the same shelf: an edit that changes none fits nothing anew.
const charts = new WeakMap<Book['learned'], { readonly of: KnownOverLooks | undefined }>();

function overLooks(data: LearningData, looks: readonly TaughtLook[]): KnownOverLooks {
  const shown = looks.slice(0, MOST_SHOWN);
  const parts = shown.length > MANY ? REFITTED_OF_MANY : REFITTED;
  const counts = [...new Set(parts.map((part) => Math.floor(part * shown.length)))];
  return {
    stretches: counts.map((taughtBy, index) => {
      const told = shown.slice(taughtBy, counts[index + 1]);
      const belief = taughtTo({ materials: data.materials, looks: shown.slice(0, taughtBy) });
      const off = told.map((look) => offBy(belief, look));
      return { taughtBy, off, median: median(off) };
    }),
    left: looks.length - shown.length,
  };
}

/** What a book believed then: the same again until an edit changes what it had been taught by, which the last looks of a book have not. */
function taughtTo(data: LearningData): Belief {
  const name = JSON.stringify(data);
  const belief = beliefs.get(name) ?? new Belief(learn(data));
  // What was asked for last is last.
  beliefs.delete(name);
  beliefs.set(name, belief);
  for (const [oldest] of beliefs) if (beliefs.size > MOST_KEPT) beliefs.delete(oldest);
  return belief;
}

/** Of both editions, and of each as it was before an edit. */
const MOST_KEPT = 4 * REFITTED.length;
const beliefs = new Map<string, Belief>();

function offBy(belief: Belief, { layers, streaks, streakMm, cup, overWhite, overBlack }: TaughtLook): number {
  const shown = belief.mean({ layers, cup, ...defined({ streaks, streakMm }) });
  return Math.max(
    overWhite === undefined ? 0 : deltaE00(overWhite, shown.overWhite),
    overBlack === undefined ? 0 : deltaE00(overBlack, shown.overBlack),
  );
}

/** By the day on which its recipe or chip was made, those without a day last; then by name, and round by round. */
function inOrderOfMaking(
  looks: readonly TaughtLook[],
  { recipes, chips }: Pick<Book, 'recipes' | 'chips'>,
): readonly TaughtLook[] {
  const days = new Map([
    ...recipes.map(({ id, made }) => [`recipe ${id}`, made] as const),
    ...chips.map(({ id, made }) => [`chip ${id}`, made] as const),
  ]);
  return looks
    .map((look) => {
      const { kind, id } = ofCup(look.cup);
      return { look, by: [days.get(`${kind} ${id}`) ?? '~', id, kind, String(look.round).padStart(6, '0'), look.key] };
    })
    .sort((one, other) => {
      const at = one.by.findIndex((each, index) => each !== other.by[index]);
      return at < 0 ? 0 : one.by[at]! < other.by[at]! ? -1 : 1;
    })
    .map(({ look }) => look);
}
