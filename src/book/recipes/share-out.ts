/** The cups' parts of a bait. */
export interface SharedOut {
  /** 1 together; undefined where what is stated does not fit. */
  readonly shares: readonly number[] | undefined;
  /** Of the shares that are stated or come from the parent. */
  readonly sum: number;
  /** Cups without a share. */
  readonly open: number;
}

/** What is said of a cup's part of a bait: by its recipe, or by the parent. */
interface StatedShare {
  readonly fields: { readonly share?: number };
  readonly inheritedShare?: number;
}

/**
 * Shares out a bait among its cups: one without a share takes what is left. Shares that come from the parent make room, in
 * proportion, for those that the recipe states itself.
 */
export function shareOut(cups: readonly StatedShare[]): SharedOut {
  const own = sumOf(cups.map(({ fields }) => fields.share));
  const inherited = sumOf(cups.map(({ fields, inheritedShare }) => (fields.share === undefined ? inheritedShare : 0)));
  const open = cups.filter(({ fields, inheritedShare }) => (fields.share ?? inheritedShare) === undefined).length;
  const room = open === 0 && inherited > 0 && own < 1 - 1e-9 ? (1 - own) / inherited : 1;
  const sum = own + room * inherited;
  const fits = open > 0 ? sum < 1 - 1e-9 : Math.abs(sum - 1) < 1e-6;
  if (!fits) return { shares: undefined, sum, open };
  const shares = cups.map(
    ({ fields, inheritedShare }) =>
      fields.share ?? (inheritedShare === undefined ? (1 - sum) / open : room * inheritedShare),
  );
  return { shares, sum, open };
}

function sumOf(shares: readonly (number | undefined)[]): number {
  return shares.reduce<number>((sum, share) => sum + (share ?? 0), 0);
}
