/**
 * What is right and what is wrong with a colour.
 *
 * @packageDocumentation
 */
import { type Expectation, isLikelyRight } from '../matching/belief/expectation.ts';
import type { OpacityPart, PartSize, Verdict } from '../matching/target/verdict.ts';
import { differenceText, hidesText } from './difference.ts';
import { promiseText } from './expectation.ts';

/** What the words of a verdict mean, a sentence each. */
export const VERDICT_WORDS: readonly string[] = [
  'ΔE says how different two colours look: below 1 you won’t see it, 10 is plainly another colour. Up to the tolerance it counts as a match.',
  'Hue is which colour it is; vivid and dull say how strong the colour is, not how large the dose.',
  'See-through and solid say how much it hides of what is behind it: 0 % is clear, 100 % hides everything.',
];

const SIZES: Readonly<Record<Exclude<PartSize, 'right'>, string>> = {
  touch: 'a touch',
  too: 'too',
  much: 'much too',
};

const SIDES = {
  red: 'red',
  green: 'green',
  yellow: 'yellow',
  blue: 'blue',
  light: 'light',
  dark: 'dark',
  vivid: 'vivid',
  dull: 'dull',
  opaque: 'solid',
  clear: 'see-through',
} as const;

/**
 * A verdict, the words first and the size after them: "hue is right, much too solid (hides 78 %, the target 44 %), too dark: hard to
 * miss (ΔE 6.3)"; "within tolerance: you won’t see it (ΔE 0.8)". What is predicted, and hardly known, is right on paper alone: "on paper within
 * tolerance; in plastic: hard to miss (expect ΔE 5.4, nine in ten within 7.6)".
 *
 * @param promised of a colour that is predicted: what is to be expected instead of the difference that its most likely colour has
 */
export function verdictText(verdict: Verdict, promised?: Expectation): string {
  const { within, hue, lightness, vividness, opacity, deltaE } = verdict;
  const faults = [
    ...partWords(hue),
    ...partWords(opacity).map((words) => `${words} (${hidesWords(opacity!)})`),
    ...partWords(lightness),
    ...partWords(vividness),
  ];
  const onPaper = within && promised !== undefined && !isLikelyRight(promised);
  const parts = within
    ? [`${onPaper ? 'on paper ' : ''}within tolerance`, ...faults]
    : [...(hue.size === 'right' ? ['hue is right'] : []), ...(faults.length === 0 ? ['no part far off'] : faults)];
  return `${parts.join(', ')}${onPaper ? '; in plastic' : ''}: ${promised ? promiseText(promised) : differenceText(deltaE)}`;
}

function partWords(part: Verdict['hue' | 'lightness' | 'vividness' | 'opacity']): readonly string[] {
  return part === undefined || part.size === 'right' || part.towards === undefined
    ? []
    : [`${SIZES[part.size]} ${SIDES[part.towards]}`];
}

/** How much each hides: "hides 78 %, the target 44 %"; with what looking erred by and nothing was made of. */
function hidesWords({ contrast, target, evened }: OpacityPart): string {
  const EVENED = ', a shade lighter over black and taken as solid';
  const isEvened = (which: 'seen' | 'target'): string => (evened === which || evened === 'both' ? EVENED : '');
  return `hides ${hidesText(contrast)}${isEvened('seen')}, the target ${hidesText(target)}${isEvened('target')}`;
}
