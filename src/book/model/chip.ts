import type { Content, PlasticShare } from './cup.ts';
import type { Look } from './looks.ts';
import type { Publish } from './publish.ts';

/** One pour of a chip: what was in the cup, and how it was seen. */
export interface ChipRound {
  /** From 1. */
  readonly number: number;
  readonly contents: readonly Content[];
  /** Cuts that brought materials into it. */
  readonly cuts: readonly { readonly material: string }[];
  readonly plastics: readonly PlasticShare[];
  /** Each with its thickness. None where nobody looked. */
  readonly seen: readonly (Look & { readonly thicknessMm: number })[];
  readonly note?: string;
}

/** A chip of the maker's own bottles, poured to learn how they colour: no recipe, and in no lineage. */
export interface Chip {
  readonly id: string;
  readonly title: string;
  readonly made?: string;
  readonly publish: Exclude<Publish, 'look'>;
  /** Markdown. */
  readonly notes: string;
  readonly rounds: readonly ChipRound[];
  readonly source: { readonly path: string; readonly text: string };
}
