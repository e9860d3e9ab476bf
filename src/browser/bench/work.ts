/**
 * A match in the making, as the bench page keeps it: a plain value that survives JSON.
 *
 * @packageDocumentation
 */
import { afterStep, type CupState, cupVolume, isOverPour, total } from '../../cup/ledger.ts';
import type { Observation } from '../../matching/correct-model.ts';
import type { SeenViews, TargetPart } from '../../matching/target-part.ts';
import { labFromHex } from '../../optics/display.ts';

/** A colour to be matched, or one that a cup is to have. */
export interface WorkSide {
  readonly name: string;
  /** `#rrggbb` */
  readonly overWhite: string;
  readonly overBlack?: string;
  readonly thicknessMm: number;
}

/** Material that went into a cup, with its dose as a recipe's file writes it. */
export interface WorkAmount {
  readonly material: string;
  readonly dose: string;
  readonly grams: number;
}

/** One thing that was done to a cup, or seen of it. */
export type WorkStep =
  | { readonly do: 'add'; readonly amounts: readonly WorkAmount[] }
  | { readonly do: 'plastic'; readonly ml: number }
  | { readonly do: 'pour'; readonly ml: number }
  | { readonly do: 'see'; readonly overWhite?: string; readonly overBlack?: string; readonly note?: string };

/** A cup and everything that was done to it. */
export interface WorkCup {
  readonly name: string;
  readonly steps: readonly WorkStep[];
  /** Of a laminate: what the cup is to look like poured by itself. */
  readonly aim?: WorkSide;
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

/** What a log has made of a cup. */
export interface CupNow {
  readonly cup: CupState;
  readonly volumeMl: number;
  readonly rounds: readonly Observation[];
  /** What the cup looks like as it is; absent where it was not looked at since something was added. */
  readonly seen?: SeenViews;
}

/** Density of a material, g/ml. */
type Density = (material: string) => number;

/** The part of the target that a cup is to look like by itself. */
export function aimOf(work: Work, index: number): WorkSide {
  return work.cups[index]?.aim ?? work.sides[index] ?? work.sides[0]!;
}

/** A side with its colours as matching takes them. */
export function partOfSide({ name, overWhite, overBlack, thicknessMm }: WorkSide): TargetPart {
  return {
    name,
    overWhite: labFromHex(overWhite),
    ...(overBlack === undefined ? {} : { overBlack: labFromHex(overBlack) }),
    thicknessMm,
  };
}

/** Keeps the ledger of a cup, and gathers what was seen. */
export function cupNow(work: Work, index: number, density: Density): CupNow {
  const { steps, earlier = [] } = work.cups[index]!;
  const { thicknessMm } = aimOf(work, index);
  const past = earlier.flatMap((log) => keep(work, log, thicknessMm, density).rounds);
  const now = keep(work, steps, thicknessMm, density);
  return { ...now, rounds: [...past, ...now.rounds] };
}

function keep({ plastic, plasticMl }: Work, steps: readonly WorkStep[], thicknessMm: number, density: Density): CupNow {
  const perGram = (material: string): number => 1 / density(material);
  let cup: CupState = { plastics: { [plastic]: plasticMl }, materials: {} };
  // A pour changes nothing of what there is in a drop, and the last one may leave no drop to look at.
  let looked = cup;
  let seen: SeenViews | undefined;
  const rounds: Observation[] = [];
  const take = (step: Parameters<typeof afterStep>[1]): void => {
    const next = afterStep(cup, step, perGram);
    if (isOverPour(next)) return;
    cup = next;
    if (total(cup.plastics) > 1e-6) looked = cup;
  };
  for (const step of steps) {
    switch (step.do) {
      case 'add':
        for (const { material, grams } of step.amounts) take({ kind: 'add', material, grams });
        seen = undefined;
        break;
      case 'plastic':
        take({ kind: 'plastic', material: plastic, ml: step.ml });
        seen = undefined;
        break;
      case 'pour':
        take({ kind: 'pour', ml: step.ml });
        break;
      case 'see':
        seen = seenViews(step);
        if (seen) rounds.push({ cup: looked, thicknessMm, seen });
        break;
    }
  }
  return { cup, volumeMl: cupVolume(cup, perGram), rounds, ...(seen ? { seen } : {}) };
}

function seenViews({
  overWhite,
  overBlack,
}: {
  readonly overWhite?: string;
  readonly overBlack?: string;
}): SeenViews | undefined {
  if (overWhite === undefined && overBlack === undefined) return undefined;
  return {
    ...(overWhite && { overWhite: labFromHex(overWhite) }),
    ...(overBlack && { overBlack: labFromHex(overBlack) }),
  };
}

/** The work with a cup changed. */
export function withCup(work: Work, index: number, change: (cup: WorkCup) => WorkCup): Work {
  return { ...work, cups: work.cups.map((cup, at) => (at === index ? change(cup) : cup)) };
}

/** The work with one more step of a cup. */
export function withSteps(work: Work, index: number, ...steps: readonly WorkStep[]): Work {
  return withCup(work, index, (cup) => ({ ...cup, steps: [...cup.steps, ...steps] }));
}

/** The work without the last step of a cup. */
export function withoutLastStep(work: Work, index: number): Work {
  return withCup(work, index, (cup) => ({ ...cup, steps: cup.steps.slice(0, -1) }));
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
  const cups = sides.map(({ name }, index): WorkCup => {
    const { aim, ...cup } = work.cups[index] ?? { name, steps: [] };
    // An aim stands only as long as the sides that it was worked out for.
    const stays = JSON.stringify(sides) === JSON.stringify(work.sides) && aim !== undefined;
    return { ...cup, name, ...(stays ? { aim } : {}) };
  });
  return { ...work, sides, cups };
}
