import type { MatchPageData } from '../../render/pages/match.ts';
import { volumeInField } from '../../units/volume-field.ts';
import { required } from '../../values/required.ts';
import { bookAmount } from './dose-text.ts';
import { leastPlasticMl } from './least-plastic.ts';
import { LIMITS } from './limits.ts';
import { cutsIn, dosedIn, logShelf } from './page-shelf.ts';
import type { NoWork } from './read-work.ts';
import type { Work, WorkStep } from './work.ts';

/** A match as this book takes it. */
export interface SettledWork {
  readonly work: Work;
  /** What had to be changed of it, in sentences; empty where nothing had. */
  readonly says: string;
}

/**
 * A match that was kept or imported, as this book takes it: what is taken away from it must be a recipe that the book takes. A target
 * that the book does not have becomes a described one, amounts are what their doses are here, and a cup has begun with no less than was
 * poured of it. A sentence instead where the book lacks what the match is made with.
 */
export function settledWork(work: Work, data: MatchPageData): SettledWork | NoWork {
  const fault = strangerIn(work, data);
  if (fault !== undefined) return { fault };
  const says: string[] = [];
  let settled = withBookAmounts(work, data);
  const { target, ...described } = settled;
  if (target !== undefined && !data.targets.some(({ id }) => id === target)) {
    settled = described;
    says.push(`This book has no target ${target}, so the match keeps its description.`);
  }
  const least = Math.ceil(100 * leastPlasticMl(settled, logShelf(data))) / 100;
  if (least > LIMITS.plasticMl.most) return { fault: 'More was poured in this match than any cup holds.' };
  if (settled.plasticMl < least) {
    settled = { ...settled, plasticMl: least };
    const { settings } = data;
    says.push(
      `More was poured from a cup than it started with, so it now starts with ${volumeInField(least, settings)} ${settings.volume}.`,
    );
  }
  return { work: settled, says: says.join(' ') };
}

/** What in a match this book does not have, as a sentence; undefined where nothing is. */
function strangerIn(work: Work, { materials, molds }: MatchPageData): string | undefined {
  const kinds = new Map([
    ...materials.map(({ id, kind }) => [id, kind] as const),
    ...[...cutsIn({ materials }).keys()].map((id) => [id, 'colorant'] as const),
  ]);
  const used = work.cups.flatMap(({ steps }) =>
    steps.flatMap((step) => (step.do === 'add' ? step.amounts.map(({ material }) => material) : [])),
  );
  const plastics = [work.plastic, ...work.sides.flatMap((side) => side.plastic ?? [])];
  const missing = [...plastics, ...used].find((name) => !kinds.has(name));
  if (missing !== undefined) return `This match uses ${missing}, which isn’t on this book’s shelf.`;
  const coloured = plastics.find((name) => kinds.get(name) !== 'plastic');
  if (coloured !== undefined) return `This match uses ${coloured} as its plastic, which isn’t a plastic in this book.`;
  const plastic = used.find((name) => kinds.get(name) === 'plastic');
  if (plastic !== undefined) return `This match uses ${plastic} as a colour, and in this book that is a plastic.`;
  return molds.some(({ id }) => id === work.mold)
    ? undefined
    : `This match is for the mold ${work.mold}, which isn’t in this book.`;
}

function withBookAmounts(work: Work, { materials }: MatchPageData): Work {
  const shelf = dosedIn({ materials });
  const settled = (steps: readonly WorkStep[]): readonly WorkStep[] =>
    steps.map((step) =>
      step.do === 'add'
        ? { ...step, amounts: step.amounts.map((amount) => bookAmount(amount, required(shelf, amount.material))) }
        : step,
    );
  const cups = work.cups.map((cup) => ({
    ...cup,
    steps: settled(cup.steps),
  }));
  return { ...work, cups };
}
