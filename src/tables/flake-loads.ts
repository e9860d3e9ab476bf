/**
 * How much flake makers ask for, in words, as the share of what one looks at that is flake.
 *
 * Source: common practice, no source; the shares are conventions of this book.
 */
export const FLAKE_LOADS = { few: 0.04, ordinary: 0.15, heavy: 0.3 } as const;

/** A word for how much flake there is to be. */
export type FlakeLoad = keyof typeof FLAKE_LOADS;
