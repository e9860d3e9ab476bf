/** What may have happened to a cup, or to a look at it, where the look does not fit the log; named as the shelf names it. */
export type ToldSlip =
  | { readonly kind: 'left-out'; readonly title: string; readonly dose?: string; readonly likely: number }
  | { readonly kind: 'extra'; readonly title: string; readonly dose?: string; readonly likely: number }
  | { readonly kind: 'swapped'; readonly title: string; readonly instead: string; readonly likely: number }
  | {
      readonly kind: 'miscounted';
      readonly title: string;
      readonly dose?: string;
      readonly times: number;
      readonly likely: number;
    }
  | { readonly kind: 'bad-look'; readonly likely: number };

/** A log, or a look, that cannot be right. */
export interface WrongLog {
  /** How far the look is from what the log makes: ΔE00, the larger of its views. */
  readonly deltaE: number;
  /** The likeliest first, three at most. */
  readonly slips: readonly ToldSlip[];
}
