/** How something was looked at, as far as anybody has said. */
export interface HowLooked {
  /** Unset: as thick as the body of the mold. */
  readonly thicknessMm?: number;
  /** How long after the pour. */
  readonly after?: 'hot' | '10 min' | 'next day';
  readonly wet?: true;
  /** It was looked at again, and stands. */
  readonly checked?: true;
}

/** Whether two looks can be set beside each other: at one thickness, as long after the pour, both dry or both wet. */
export function lookedAlike(one: HowLooked, other: HowLooked): boolean {
  return one.thicknessMm === other.thicknessMm && one.after === other.after && one.wet === other.wet;
}
