/**
 * A match in the making, as the Match page keeps it: a plain value that survives JSON.
 *
 * @packageDocumentation
 */
import { afterStep, type CupState, cupVolume, isEmpty, isOverPour } from '../../cup/ledger.ts';
import type { Observation } from '../../matching/rounds/correct-model.ts';
import { type SeenViews, settledViews, type TargetPart } from '../../matching/target/target-part.ts';
import { labOfColour, type WorkColour } from './work-colour.ts';

/** A colour to be matched. */
export interface WorkSide {
  readonly name: string;
  readonly overWhite: WorkColour;
  readonly overBlack?: WorkColour;
  readonly thicknessMm: number;
}

/** Material that went into a cup, with its dose as a recipe's file writes it. */
export interface WorkAmount {
  readonly material: string;
  readonly dose: string;
  readonly grams: number;
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
  | { readonly do: 'plastic'; readonly ml: number }
  | { readonly do: 'pour'; readonly ml: number }
  | { readonly do: 'see'; readonly overWhite?: WorkColour; readonly overBlack?: WorkColour; readonly note?: string }
);

/** A cup and everything that was done to it. */
export interface WorkCup {
  readonly name: string;
  readonly steps: readonly WorkStep[];
  /** Logs of cups that were given up for this one: the model has learned from them. */
  readonly earlier?: readonly (readonly WorkStep[])[];
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

/** A round in which a colour was seen. */
export interface WorkRound extends Observation {
  /** Among the rounds of its cup, from 1. */
  readonly number: number;
  /** Of a cup that was given up for this one. */
  readonly earlier?: true;
}

/** What a log has made of a cup. */
export interface CupNow {
  readonly cup: CupState;
  /** The cup, or, where it was poured empty, what was in it. */
  readonly looked: CupState;
  readonly volumeMl: number;
  /** Every round that there is something to learn from, those of cups that were given up first. */
  readonly rounds: readonly WorkRound[];
  /** What the cup looks like as it is; absent where it was not looked at since something was added. */
  readonly seen?: SeenViews;
}

/** Density of a material, g/ml. */
type Density = (material: string) => number;

/** The side of the target that a cup is for. */
export function sideOf({ sides }: Work, index: number): WorkSide {
  return sides[index] ?? sides[0]!;
}

/** A side with its colours as matching takes them. */
export function partOfSide({ name, overWhite, overBlack, thicknessMm }: WorkSide): TargetPart {
  return settledViews({
    name,
    overWhite: labOfColour(overWhite),
    ...(overBlack === undefined ? {} : { overBlack: labOfColour(overBlack) }),
    thicknessMm,
  });
}

/**
 * Keeps the ledger of a cup, and gathers what was seen.
 *
 * @param thicknessMm of a test pour
 */
export function cupNow(work: Work, index: number, density: Density, thicknessMm: number): CupNow {
  const { steps, earlier = [] } = work.cups[index]!;
  const past = earlier.flatMap((log) => keep(work, log, thicknessMm, density).rounds);
  const now = keep(work, steps, thicknessMm, density);
  return { ...now, rounds: [...past.map((round) => ({ ...round, earlier: true as const })), ...now.rounds] };
}

function keep({ plastic, plasticMl }: Work, steps: readonly WorkStep[], thicknessMm: number, density: Density): CupNow {
  const perGram = (material: string): number => 1 / density(material);
  let cup: CupState = { plastics: { [plastic]: plasticMl }, materials: {} };
  // A pour changes nothing of what there is in a drop, and the last one may leave no drop to look at.
  let looked = cup;
  let seen: SeenViews | undefined;
  const rounds: WorkRound[] = [];
  let number = 0;
  // A cup's first round is of what it was begun with.
  let isLogged = true;
  const take = (step: Parameters<typeof afterStep>[1]): void => {
    const next = afterStep(cup, step, perGram);
    if (isOverPour(next)) return;
    cup = next;
    if (!isEmpty(cup)) looked = cup;
  };
  for (const step of steps) {
    switch (step.do) {
      case 'add':
        for (const { material, grams } of step.amounts) take({ kind: 'add', material, grams });
        seen = undefined;
        isLogged = true;
        break;
      case 'plastic':
        take({ kind: 'plastic', material: plastic, ml: step.ml });
        seen = undefined;
        isLogged = true;
        break;
      case 'pour':
        take({ kind: 'pour', ml: step.ml });
        break;
      case 'see':
        seen = seenViews(step);
        number++;
        if (seen) {
          rounds.push({ cup: looked, thicknessMm, seen, number, ...(isLogged ? {} : { unlogged: true as const }) });
          isLogged = false;
        }
        break;
    }
  }
  return { cup, looked, volumeMl: cupVolume(cup, perGram), rounds, ...(seen ? { seen } : {}) };
}

function seenViews({
  overWhite,
  overBlack,
}: {
  readonly overWhite?: WorkColour;
  readonly overBlack?: WorkColour;
}): SeenViews | undefined {
  if (overWhite === undefined && overBlack === undefined) return undefined;
  return settledViews({
    ...(overWhite && { overWhite: labOfColour(overWhite) }),
    ...(overBlack && { overBlack: labOfColour(overBlack) }),
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

/** A log by what was done in one go: a pour and what was seen of it are one round. */
export function doings(steps: readonly WorkStep[]): readonly (readonly WorkStep[])[] {
  const all: WorkStep[][] = [];
  for (const step of steps) {
    const last = all.at(-1);
    // Matches that were kept before steps were marked have their rounds in two steps as well.
    const round = step.do === 'see' && last?.at(-1)?.do === 'pour';
    if (last && (step.also || round)) last.push(step);
    else all.push([step]);
  }
  return all;
}

/** Number that a round would have after such a log, from 1. */
export function nextRound(steps: readonly WorkStep[]): number {
  return 1 + steps.filter((step) => step.do === 'see').length;
}

/** The work without what was done last to a cup, all of it. */
export function withoutLastDone(work: Work, index: number): Work {
  return withCup(work, index, (cup) => ({ ...cup, steps: doings(cup.steps).slice(0, -1).flat() }));
}

/** The work as it was before the last round in which a colour was seen. */
export function beforeLastLook(work: Work, index: number): Work {
  return withCup(work, index, (cup) => ({ ...cup, steps: atLastLook(cup.steps)[0] }));
}

/** The work with steps that were done before the last round in which a colour was seen, though they were not noted then. */
export function withStepsBeforeLook(work: Work, index: number, ...steps: readonly WorkStep[]): Work {
  return withCup(work, index, (cup) => {
    const [before, since] = atLastLook(cup.steps);
    return { ...cup, steps: [...before, ...inOneGo(steps), ...since] };
  });
}

/** A log parted where the last round with a colour in it begins. */
function atLastLook(steps: readonly WorkStep[]): readonly [before: readonly WorkStep[], since: readonly WorkStep[]] {
  const all = doings(steps);
  const at = all.findLastIndex((together) => together.some((step) => step.do === 'see' && seenViews(step)));
  return at < 0 ? [steps, []] : [all.slice(0, at).flat(), all.slice(at).flat()];
}

function inOneGo(steps: readonly WorkStep[]): readonly WorkStep[] {
  return steps.map((step, at) => (at === 0 ? step : { ...step, also: true as const }));
}

/** The work with a cup begun anew: what was learned from the old one is kept. */
export function begunAnew(work: Work, index: number, steps: readonly WorkStep[]): Work {
  return withCup(work, index, (cup) => ({
    ...cup,
    steps,
    earlier: cup.steps.some((step) => step.do === 'see') ? [...(cup.earlier ?? []), cup.steps] : (cup.earlier ?? []),
  }));
}

/** The work with cups that go with its sides: as many, of the same names; logs of cups that stay are kept. */
export function withSides(work: Work, sides: readonly WorkSide[]): Work {
  const cups = sides.map(({ name }, index): WorkCup => ({ ...(work.cups[index] ?? { steps: [] }), name }));
  return { ...work, sides, cups };
}
