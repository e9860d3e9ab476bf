import type { Method } from './methods.ts';
import type { Through } from './through.ts';

/** A sentence as its words and the names of cups in it, which stand out where letters can. */
export type StepWords = readonly (string | { readonly cup: string })[];

/** Something of a bait that is looked at by itself, and what it is called. */
export type Face = { readonly name: string } & (
  | {
      /** Looked at from this side, or from the other, in the middle of its width, at this place along the bait. */
      readonly from: 'near' | 'far';
      readonly along: number;
    }
  /** All cups as an eye sees them that can't tell their streaks apart. */
  | { readonly mean: true }
  /** One cup by itself, as nobody sees it in the bait. */
  | { readonly alone: number }
);

/** Which cup of a bait with a core goes into the mold first: the one is shot round a core that has set, the other is still liquid in its middle. */
export type CoreOrder = 'core first' | 'shell first';

/** What the words for filling a mold hang on. */
export interface Filling {
  readonly method?: Method;
  readonly order?: CoreOrder;
}

/** All that makes a pattern. */
export interface PatternEntry {
  readonly cups: {
    readonly least: number;
    readonly most: number;
    /** As expected in a message. */
    readonly words: string;
  };
  /** One of it in a sentence: "a laminate". */
  readonly one: string;
  /** How the cups lie in the bait, for a reader. */
  readonly means: string;
  /** Words that makers use for it. Common practice, no source. */
  readonly alsoCalled: readonly string[];
  /** Where each cup lies. */
  readonly through: Through;
  /** Whether the cups are seen beside one another, each by itself: such a bait has the colours of its cups, not one between them. */
  readonly beside: boolean;
  /** What is seen by itself: the side looked at, and what else there is. */
  readonly faces: readonly [Face, Face?];
  /** What is called what, and drawn as which part of the bait, beside its body where only the look is published; unset: nothing is. */
  readonly second: { readonly name: string; readonly share: number } | undefined;
  /** What the thin part is made of: as the body, or one cup by itself. */
  readonly thin: 'body' | { readonly cup: number };
  /** What a cup other than the first shows of itself on the flank: its own colour, the bait's through the first cup, or streaks. */
  readonly flank: 'own' | 'covered' | 'streaks';
  /** Which figure says how well the cups stand apart: a streak of each in the other, or one side of halves against the other. */
  readonly apart: 'swirl' | 'laminate';
  /** Whether the cups go into the mold at once, and so at one temperature. */
  readonly together: boolean;
  /** Whether its cups fill the mold side by side, each its part of a shot. */
  readonly sideBySide: boolean;
  /** Whether its cups are poured in by hand, one on another, whatever the mold is else filled with. */
  readonly byHand: boolean;
  /** The orders that a recipe may say its cups are poured in; none where there is but one. */
  readonly orders: readonly CoreOrder[];
  /** Places of so many cups, in the order in which they are poured. */
  readonly poured: (count: number, order?: CoreOrder) => readonly number[];
  /** How everything has to be before the first cup is poured; unset: nothing is waited for. Common practice, no source. */
  readonly ready?: string;
  /** How the cups go into the mold, given their names in the recipe's order: first what is done, as a card has it, then what to mind. Common practice, no source. */
  readonly pour: (cups: readonly string[], how: Filling) => readonly StepWords[];
}
