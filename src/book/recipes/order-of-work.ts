import { pouredAt } from '../../cup/heat-limit.ts';
import { ADDITIVE_USES } from '../../kinds/additive-uses.ts';
import { type Stage, stageOf } from '../../kinds/goes-in.ts';
import type { Method } from '../../patterns/methods.ts';
import type { CoreOrder, Filling } from '../../patterns/pattern.ts';
import { PATTERNS, type Pattern } from '../../patterns/patterns.ts';
import { SETTLING } from '../../tables/bench-practice.ts';
import type { Range } from '../../units/shared-range.ts';
import { defined } from '../../values/defined.ts';
import type { CupParts, WorkMaterial } from './work-material.ts';

/** A step in making a cup, and the materials that it is done with. */
export type CupStep =
  /** Stirred into the cold plastic: liquids as they are, powders as a paste with a softener of the cup, else with plastic. */
  | {
      readonly do: 'cold';
      readonly liquids: readonly string[];
      readonly powders: readonly string[];
      readonly wetWith?: string;
    }
  /** Heated in turns, until it looks as its plastic does when it is done. */
  | { readonly do: 'heat'; readonly until: 'clear' | 'syrup' }
  /** Stirred in hot: liquids as they are, and powders that bear less than the plastic is poured at, wetted. */
  | { readonly do: 'stir-in'; readonly liquids: readonly string[]; readonly powders: readonly string[] }
  /** Off the heat, until the bubbles are up. */
  | { readonly do: 'rest' }
  /** What sinks, stirred in once the bubbles are up, and how soon it is noticed; absent where it hardly is. */
  | {
      readonly do: 'sinks';
      readonly flake: readonly string[];
      readonly others: readonly string[];
      readonly within?: Range;
    }
  /** Off the heat and last of all: a scent boils off, and something else would scorch. */
  | { readonly do: 'last'; readonly materials: readonly string[] };

/** How a cup is made. */
export interface CupWork {
  readonly name: string;
  readonly steps: readonly CupStep[];
}

/** The order of work for a recipe. */
export interface OrderOfWork {
  /** Plastics, each mixed in its jug and freed of air once. */
  readonly plastics: readonly string[];
  /** What is dried before, and kept warm. */
  readonly dried: readonly string[];
  /** Cups in the order in which they are made. */
  readonly cups: readonly CupWork[];
  readonly pattern: Pattern;
  /** Names of the cups in the recipe's order, as the pattern's words take them. */
  readonly names: readonly string[];
  /** What the words for filling the mold hang on. */
  readonly filling: Filling;
}

/** What the order of work asks of a recipe. */
export interface RecipeToMake {
  readonly pattern: Pattern;
  readonly order?: CoreOrder;
  /** How its mold is filled, if that says. */
  readonly method?: Method;
  readonly cups: readonly (CupParts & { readonly name: string })[];
}

/**
 * What is done in which order, cup by cup. A cup with something that sinks is made last where all are shot at once, so that it waits least; else the
 * cups are made in the order in which they are poured. Common practice, no source: a supplier's instructions come first.
 */
export function orderOfWork(recipe: RecipeToMake, materialOf: (id: string) => WorkMaterial | undefined): OrderOfWork {
  const { pattern, order, method } = recipe;
  const made = recipe.cups.map((cup) => ({ name: cup.name, steps: stepsOf(cup, materialOf) }));
  const poured = PATTERNS[pattern].poured(made.length, order).map((index) => made[index]!);
  const named = (parts: readonly { readonly material: string }[]): readonly string[] =>
    [...new Set(parts.map(({ material }) => material))].filter((id) => materialOf(id) !== undefined);
  const contents = named(recipe.cups.flatMap((cup) => cup.contents));
  return {
    plastics: named(recipe.cups.flatMap((cup) => cup.plastics)),
    dried: contents.filter((id) => {
      const use = materialOf(id)?.use;
      return use !== undefined && ADDITIVE_USES[use].dried;
    }),
    cups: PATTERNS[pattern].together ? [...poured].sort((one, other) => sinking(one) - sinking(other)) : poured,
    pattern,
    names: recipe.cups.map(({ name }) => name),
    filling: defined({ order, method }),
  };
}

/** Whether something sinks in a cup. */
export function hasSinking({ steps }: CupWork): boolean {
  return steps.some((step) => step.do === 'sinks');
}

const sinking = (cup: CupWork): number => (hasSinking(cup) ? 1 : 0);

/** The steps of a cup: bubbles rise before anything goes in that sinks, and what boils off goes in last. */
function stepsOf(cup: CupParts, materialOf: (id: string) => WorkMaterial | undefined): readonly CupStep[] {
  const plastics = cup.plastics.flatMap(({ material }) => materialOf(material) ?? []);
  const heat = pouredAt(plastics);
  const placed = [...new Set(cup.contents.map(({ material }) => material))].flatMap((material) => {
    const known = materialOf(material);
    return known === undefined ? [] : [{ material, known, stage: stageOf(known, heat) }];
  });
  const at = (stage: Stage, wanted: (known: WorkMaterial) => boolean = () => true): readonly string[] =>
    placed.filter((each) => each.stage === stage && wanted(each.known)).map(({ material }) => material);
  const isPowder = ({ kind }: WorkMaterial): boolean => kind === 'powder';
  const isFlake = ({ kind }: WorkMaterial): boolean => kind === 'flake';
  const cold = { liquids: at('cold'), powders: at('wetted') };
  const hot = {
    liquids: at('stirred-in', (known) => !isPowder(known)),
    powders: at('stirred-in', isPowder),
  };
  const sinks = { flake: at('sinks', isFlake), others: at('sinks', (known) => !isFlake(known)) };
  const last = at('off-heat');
  const wetWith = cold.liquids.find((id) => materialOf(id)?.use === 'softener');
  const within = settling(at('sinks'), materialOf);
  return [
    ...(isAny(cold) ? [{ do: 'cold' as const, ...cold, ...defined({ wetWith }) }] : []),
    { do: 'heat', until: plastics.some(({ milky }) => milky) ? 'syrup' : 'clear' },
    ...(isAny(hot) ? [{ do: 'stir-in' as const, ...hot }] : []),
    { do: 'rest' },
    ...(isAny(sinks) ? [{ do: 'sinks' as const, ...sinks, ...defined({ within }) }] : []),
    ...(last.length > 0 ? [{ do: 'last' as const, materials: last }] : []),
  ];
}

const isAny = (lists: Readonly<Record<string, readonly string[]>>): boolean =>
  Object.values(lists).some(({ length }) => length > 0);

/** How soon it is noticed that something sinks: of several, the widest range. */
function settling(sinks: readonly string[], materialOf: (id: string) => WorkMaterial | undefined): Range | undefined {
  const ranges = sinks.flatMap((id): readonly Range[] => {
    const { flake } = materialOf(id) ?? {};
    if (flake === undefined) return [SETTLING.salt];
    return flake.acrossMm >= SETTLING.largeFlakeMm ? [SETTLING.flake] : [];
  });
  if (ranges.length === 0) return undefined;
  return { from: Math.min(...ranges.map(({ from }) => from)), to: Math.max(...ranges.map(({ to }) => to)) };
}
