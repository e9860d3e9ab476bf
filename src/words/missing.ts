import type { Hindered, LackedKind, MissingKind } from '../matching/shelf/missing-kind.ts';
import { differenceText } from './difference.ts';
import { listText } from './sentence-text.ts';

const KINDS: Readonly<Record<LackedKind, string>> = {
  white: 'something that makes it solid, such as a white or a white pearl',
  black: 'something that darkens, such as a black',
  'yellow-dye': 'a yellow dye',
  'orange-dye': 'an orange dye',
  'red-dye': 'a red dye',
  'violet-dye': 'a violet dye',
  'blue-dye': 'a blue dye',
  'green-dye': 'a green dye',
  'yellow-pigment': 'a yellow pigment (it colours, and makes it more solid)',
  'red-pigment': 'a red pigment (it colours, and makes it more solid)',
  'blue-pigment': 'a blue pigment (it colours, and makes it more solid)',
  'green-pigment': 'a green pigment (it colours, and makes it more solid)',
};

/** "What would help: a blue dye.", as a list of one sentence; none where nothing is missing. */
export function missingSentences(missing: readonly MissingKind[]): readonly string[] {
  return missing.length === 0 ? [] : [`What would help: ${listText(missing.map(({ kind }) => KINDS[kind]))}.`];
}

/** "Only the limit of bottles hinders: with Lamp Black too, 3 in all, just visible (ΔE 1.2).", as a list of one sentence; none where it does not. */
export function hinderedSentences(hindered: Hindered | undefined): readonly string[] {
  if (hindered === undefined) return [];
  const { titles, bottles, deltaE } = hindered;
  return [
    `The limit of bottles is what hinders: with ${listText(titles)} too, ${bottles} in all, ${differenceText(deltaE)}.`,
  ];
}
