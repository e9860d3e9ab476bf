import { differenceText } from './difference.ts';
import { expectationText } from './expectation.ts';
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
  const settled = `${looks === 1 ? 'has' : 'have'} settled ${words} of the doubt that its file leaves (${shareText(share)})`;
  return `${counted(looks, 'look')} ${settled}.`;
}

/** What stands over the shares of looks in that. */
export const SHARES_SENTENCE = 'How much of that doubt each has settled.';

/** Of what nobody has looked at. */
export const UNTAUGHT_SENTENCE =
  'There is no look yet at anything with it in, so the shelf and the top of this page show what its file says.';

/** Of that, where it is believed to be otherwise. */
export const BELIEVED_OTHERWISE_SENTENCE =
  'The book trusts a label only so far: it also goes by what its kind usually does, and by every look at other things. Whatever you mix with it is worked out from what the book believes.';

/** How far what the file says and what the book has learned are apart. */
export function apartText(deltaE: number): string {
  return `the difference between its file and what the book believes: ${differenceText(deltaE)}`;
}

/** How surely the colour of a typical dose is known. */
export function sureSentence({ expected, bound }: { readonly expected: number; readonly bound: number }): string {
  return `How far off a usual dose may be: ${expectationText({ expected, bound90: bound })}.`;
}
