import type { WrongLog } from '../../matching/rounds/wrong-log.ts';

/** A look that counts for little in what the book learns. */
export interface DoubtedLook {
  readonly of: 'recipe' | 'chip';
  readonly id: string;
  /** Where it was looked at: a round of a cup, or a finished bait, which look of those in the file, from 0. */
  readonly at: { readonly cup: string; readonly round: number } | { readonly bait: number };
  /** How far it is believed, the least of the looks at that pour: 1 as noted, 0 not at all. */
  readonly weight: number;
  /** It is the first of those that do not fit the log. */
  readonly wrong?: WrongLog;
}
