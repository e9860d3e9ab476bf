/**
 * How much of one sort a cup takes together, whichever bottles it comes out of. Common practice, no source: the supplier's own `most` stands
 * above it, material by material (see `fullness` in `src/matching/shelf/together.ts`).
 *
 * @packageDocumentation
 */
import type { AdditiveUse } from './additive-uses.ts';
import type { MaterialKind } from './kinds.ts';

interface TogetherEntry {
  /** All of it, in a sentence. */
  readonly all: string;
  /** What the parts below are parts of: the plastic's volume, or its mass. */
  readonly by: 'volume' | 'mass';
  /** What cups usually hold, from and to. */
  readonly usual: readonly [from: number, to: number];
  /** Beyond this `check` warns. */
  readonly warned: number;
  /** Beyond this nothing is proposed; unset: nothing of that sort is proposed. */
  readonly never?: number;
  /** What more of it does. */
  readonly why: string;
}

const ENTRIES = {
  colour: {
    all: 'liquid colour',
    by: 'volume',
    usual: [0.002, 0.02],
    warned: 0.03,
    never: 0.06,
    why: 'with more the baits sweat, bleed and go soft, and the plastic bubbles',
  },
  powder: {
    all: 'powder',
    by: 'mass',
    usual: [0.0015, 0.006],
    warned: 0.02,
    never: 0.02,
    why: 'with more the plastic grows weak and grainy',
  },
  flake: {
    all: 'flake',
    by: 'mass',
    usual: [0.003, 0.02],
    warned: 0.04,
    why: 'with more the bait tears, and the flake clogs the injector',
  },
  salt: {
    all: 'salt',
    by: 'mass',
    usual: [0.1, 0.3],
    warned: 0.4,
    why: 'with more the bait tears, and the salt clogs the injector',
  },
  softener: {
    all: 'softener',
    by: 'mass',
    usual: [0.02, 0.1],
    warned: 0.2,
    why: 'with more the baits weep',
  },
} as const satisfies Readonly<Record<string, TogetherEntry>>;

/** What is counted together. */
export type Sort = keyof typeof ENTRIES;

export const TOGETHER: Readonly<Record<Sort, TogetherEntry>> = ENTRIES;
export const SORTS = Object.keys(ENTRIES) as readonly Sort[];

const BY_KIND: Readonly<Record<MaterialKind, Sort | undefined>> = {
  colorant: 'colour',
  powder: 'powder',
  flake: 'flake',
  plastic: undefined,
  additive: undefined,
};

const BY_USE: Readonly<Partial<Record<AdditiveUse, Sort>>> = { softener: 'softener', salt: 'salt' };

/** What a material is counted together with; undefined where with nothing. */
export function sortOf({ kind, use }: { readonly kind: MaterialKind; readonly use?: AdditiveUse }): Sort | undefined {
  return (use && BY_USE[use]) ?? BY_KIND[kind];
}
