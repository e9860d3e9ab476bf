import type { WhatWentIn } from '../matching/rounds/unlogged.ts';
import type { VolumeUnit } from '../units/volume-text.ts';
import { toAddText } from './amount.ts';
import { differenceText } from './difference.ts';

/** What is asked of a colour that has moved though nothing was logged. */
export function whatWentInText({ deltaE, since, proposed }: WhatWentIn, units: VolumeUnit): string {
  const asks =
    proposed === undefined ? 'What went in?' : `Did you add what was proposed: ${toAddText(proposed, units)}?`;
  return `Nothing is logged since round ${since}, but the colour has changed: ${differenceText(deltaE)}, more than two pours of one cup differ. ${asks}`;
}

/** How the answer is given in the file of a recipe. */
export const ANSWER_IN_LOG =
  'Write what went in before that pour into the log, under `add`; if nothing did, write `add: {}` there. Until then leave the cup as it is.';
