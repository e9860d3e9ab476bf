import { differenceText } from './difference.ts';
import { counted } from './sentence-text.ts';

/** How much of a whole a share is, in words, by the share from which on it is called so. Convention of this book. */
const SHARE_WORDS: readonly (readonly [from: number, words: string])[] = [
  [0.9, 'nearly all'],
  [0.55, 'most'],
  [0.45, 'about half'],
  [0.15, 'some'],
  [0, 'little'],
];

/** A share, 0 to 1, in percent. */
export function shareText(share: number): string {
  return share < 0.005 ? 'less than 1 %' : `${Math.round(100 * share)} %`;
}

/** How much looks have taught of a material: how many they are, and how much they have taken of the doubt that its file leaves. */
export function taughtText(looks: number, share: number): string {
  const [, words] = SHARE_WORDS.find(([from]) => share >= from) ?? SHARE_WORDS.at(-1)!;
  const took = `${looks === 1 ? 'has' : 'have'} taken away ${words} of the doubt that its file leaves (${shareText(share)})`;
  return `${counted(looks, 'look')} at something with it ${took}.`;
}

/** Of what no look has taught anything of. */
export const UNTAUGHT_SENTENCE = 'Nothing was learned from looks at it yet, so it is shown as its file says.';

/** Of that, where it is believed to be otherwise. */
export const BELIEVED_OTHERWISE_SENTENCE =
  'A label is believed only so far: the book also goes by what materials of its kind do, and by all looks at other things. What it makes of that stands beside it.';

/** How what the file says and what the book has learned lie apart. */
export function apartText(deltaE: number): string {
  return `what its file says and what the book believes: ${differenceText(deltaE)}`;
}

/** How surely the colour of a typical dose is known. */
export function sureSentence({ expected, bound }: { readonly expected: number; readonly bound: number }): string {
  return `Expect a typical dose to be off by this much: ${differenceText(expected)}. Nine in ten stay within this: ${differenceText(bound)}.`;
}
