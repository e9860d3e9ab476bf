/**
 * A match in the making, as the Match page keeps it: a plain value that survives JSON.
 *
 * @packageDocumentation
 */
import { settledViews, type TargetPart } from '../../matching/target/target-part.ts';
import type { HowSeen } from './how-seen.ts';
import type { MeasuredBy } from './measured-by.ts';
import type { WorkFlake } from './side-flake.ts';
import { labOfColour, type WorkColour } from './work-colour.ts';

/** A colour to be matched. */
export interface WorkSide {
  readonly name: string;
  /** Unset: nobody has said it yet. */
  readonly overWhite?: WorkColour;
  readonly overBlack?: WorkColour;
  /** How photos measured it; unset: it was typed, touched in a photo, or is the book's. */
  readonly measured?: MeasuredBy;
  readonly thicknessMm: number;
  /** Flake that is to be seen in it; unset in a match that was kept before sides had any, which has that of the book's target. */
  readonly flakes?: readonly WorkFlake[];
  /** Plastic that its cup is begun with; unset: that of the match. */
  readonly plastic?: string;
}

/** Material that went into a cup, with its dose as a recipe's file writes it. */
export interface WorkAmount {
  readonly material: string;
  readonly dose: string;
  readonly grams: number;
}

/** How a cup was heated, as far as anybody has noted it. */
export interface WorkHeat {
  /** The peak, °C. */
  readonly celsius?: number;
  /** How many times it was heated again. */
  readonly again?: number;
  /** Above 160 °C. */
  readonly heldMinutes?: number;
}

/** One thing that was done to a cup, or seen of it. */
export type WorkStep = {
  /** Done in one go with the step before it, and taken back with it. */
  readonly also?: true;
} & (
  | {
      readonly do: 'add';
      /** None where somebody has said that nothing went in. */
      readonly amounts: readonly WorkAmount[];
      /** A recipe that a cup was begun with: it is still to be mixed. */
      readonly recipe?: true;
    }
  /** Begun afresh, with as much plastic as every cup of the match. */
  | { readonly do: 'new-cup' }
  | { readonly do: 'plastic'; readonly ml: number }
  /** For the pour or the look that comes next. */
  | ({ readonly do: 'heat' } & WorkHeat)
  | {
      readonly do: 'pour';
      readonly ml: number;
      /** Into a shot of both cups: as much left the other one. */
      readonly whole?: true;
    }
  | ({
      readonly do: 'see';
      readonly overWhite?: WorkColour;
      readonly overBlack?: WorkColour;
      /** How photos measured it. */
      readonly measured?: MeasuredBy;
      readonly note?: string;
      /** It was looked at again, and stands. */
      readonly checked?: true;
      /** A side of the finished bait was looked at, with the other cup as it was at this round of it; unset: the cup was poured by itself. */
      readonly behind?: number;
    } & HowSeen)
);

/** A cup and everything that was done to it, and before it to those that were given up for it: the model has learned from them. */
export interface WorkCup {
  readonly name: string;
  readonly steps: readonly WorkStep[];
}

/** How the sides of a target were seen. */
export type Arrangement = 'solid' | 'apart' | 'together';

/** All of a match. */
export interface Work {
  readonly format: 1;
  readonly title: string;
  /** The target of the book that it is, if it is one. */
  readonly target?: string;
  readonly arrangement: Arrangement;
  /** Somebody was asked, and says that two sides that look otherwise are those of one finished bait. */
  readonly whole?: true;
  /** One, or two of a laminate. */
  readonly sides: readonly WorkSide[];
  readonly tolerance: number;
  readonly mold: string;
  readonly plastic: string;
  readonly plasticMl: number;
  /** Materials that are not on the shelf just now. */
  readonly without: readonly string[];
  readonly inStock: boolean;
  readonly cups: readonly WorkCup[];
}

/** The side of the target that a cup is for. */
export function sideOf({ sides }: Work, index: number): WorkSide {
  return sides[index] ?? sides[0]!;
}

/** The plastic that a cup is begun with. */
export function plasticOf(work: Pick<Work, 'sides' | 'plastic'>, index: number): string {
  return work.sides[index]?.plastic ?? work.plastic;
}

/** Whether the colour of a side was said. */
export function isSaid(side: WorkSide): side is WorkSide & Required<Pick<WorkSide, 'overWhite'>> {
  return side.overWhite !== undefined;
}

/** The first side that nobody has said the colour of; undefined where all were said. */
export function unsaidSide({ sides }: Pick<Work, 'sides'>): number | undefined {
  const at = sides.findIndex((side) => !isSaid(side));
  return at < 0 ? undefined : at;
}

/** A side with its colours as matching takes them. Throws: Error where its colour was not said. */
export function partOfSide({ name, overWhite, overBlack, thicknessMm }: WorkSide): TargetPart {
  if (overWhite === undefined) throw new Error(`the ${name} was asked about before its colour was said`);
  return settledViews({
    name,
    overWhite: labOfColour(overWhite),
    ...(overBlack === undefined ? {} : { overBlack: labOfColour(overBlack) }),
    thicknessMm,
  });
}

/** The work with a cup changed. */
export function withCup(work: Work, index: number, change: (cup: WorkCup) => WorkCup): Work {
  return { ...work, cups: work.cups.map((cup, at) => (at === index ? change(cup) : cup)) };
}

/** The work with what was done to a cup in one go. */
export function withSteps(work: Work, index: number, ...steps: readonly WorkStep[]): Work {
  return withCup(work, index, (cup) => ({ ...cup, steps: [...cup.steps, ...inOneGo(steps)] }));
}

/** A log by what was done in one go. */
export function doings(steps: readonly WorkStep[]): readonly (readonly WorkStep[])[] {
  const all: WorkStep[][] = [];
  for (const step of steps) {
    const last = all.at(-1);
    if (last && step.also) last.push(step);
    else all.push([step]);
  }
  return all;
}

/** The work without what was done last to a cup, all of it. */
export function withoutLastDone(work: Work, index: number): Work {
  return withCup(work, index, (cup) => ({ ...cup, steps: doings(cup.steps).slice(0, -1).flat() }));
}

/** Steps that were done in one go, marked as that. */
export function inOneGo(steps: readonly WorkStep[]): readonly WorkStep[] {
  return steps.map((step, at) => (at === 0 ? step : { ...step, also: true as const }));
}

/** A log by its cups, at least one: another is begun at each `new-cup`, which is in none of them. */
export function cupLogs(steps: readonly WorkStep[]): readonly (readonly WorkStep[])[] {
  const logs: WorkStep[][] = [[]];
  for (const step of steps) {
    if (step.do === 'new-cup') logs.push([]);
    else logs.at(-1)!.push(step);
  }
  return logs;
}

/** What was done to the cup that there is now. */
export function thisCup(steps: readonly WorkStep[]): readonly WorkStep[] {
  return cupLogs(steps).at(-1)!;
}

/** One log of several cups, one after another. */
export function joinedLogs(logs: readonly (readonly WorkStep[])[]): readonly WorkStep[] {
  return logs.flatMap((log, at): readonly WorkStep[] => (at === 0 ? log : [{ do: 'new-cup' }, ...log]));
}

/** The work with a cup begun anew: what was seen of the old one is kept, and one that nobody looked at is as never begun. */
export function begunAnew(work: Work, index: number, steps: readonly WorkStep[]): Work {
  return withCup(work, index, (cup) => {
    const logs = cupLogs(cup.steps);
    const kept = logs.at(-1)!.some((step) => step.do === 'see') ? logs : logs.slice(0, -1);
    const [, ...begun] = inOneGo([{ do: 'new-cup' }, ...steps]);
    return { ...cup, steps: kept.length === 0 ? steps : joinedLogs([...kept, begun]) };
  });
}

/** The work with cups that go with its sides: as many, of the same names; logs of cups that stay are kept. */
export function withSides(work: Work, sides: readonly WorkSide[]): Work {
  const cups = sides.map(({ name }, index): WorkCup => ({ ...(work.cups[index] ?? { steps: [] }), name }));
  return { ...work, sides, cups };
}
