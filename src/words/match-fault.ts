import type { MatchFault } from '../matching/match-fault.ts';
import { type VolumeUnit, volumeText } from '../units/volume-text.ts';

/** What is wrong with a question, and what mends it. */
export function matchFaultText(fault: MatchFault, units: VolumeUnit): string {
  switch (fault.kind) {
    case 'not-on-shelf':
      return `${fault.material} is in the cup but not on the shelf. Put it on the shelf, so that its colour is known.`;
    case 'no-amount':
      return 'An amount in the cup is not a number. Correct the log.';
    case 'empty-cup':
      return 'The cup is empty. Start a new one with plastic.';
    case 'no-tolerance':
      return 'The tolerance must be a number above 0. Give the largest ΔE that still counts as a match, such as 2.';
    case 'not-seen':
      return 'This round has no colour to compare with the target. Note what the bait looks like over white, and over black.';
    case 'no-thickness':
      return 'The target has no thickness. Give the thickness at which you saw its colour, in millimetres.';
    case 'no-colour':
      return `The colour over ${fault.over} isn’t a colour. Give it as # and six digits, such as #8a5a2b, or as an instrument’s Lab.`;
    case 'reversed':
      return 'The colour over black is lighter than the one over white, which no plastic shows. If you mixed the two up, swap them; otherwise take both again under the same light.';
    case 'no-parts':
      return 'The target has no colour. Give at least the colour over white.';
    case 'too-many-parts':
      return 'The target has more than two parts. A laminate has two sides; match the others one at a time.';
    case 'no-plastic':
      return `There is no plastic “${fault.plastic}” on the shelf. Every cup starts with plastic.`;
    case 'no-volume':
      return 'The cup has no plastic. Give its volume, such as 120 ml.';
    case 'too-full':
      return `A cup of this book takes ${volumeText(fault.roomMl, units)} (\`cup\` and \`fill\` in book.md), since hot plastic foams and splashes. Ask for ${volumeText(fault.roomMl, units)} at most, and mix several equal cups.`;
    case 'number-of-materials':
      return `A recipe takes 1 to ${fault.most} materials a cup. Give a whole number of them.`;
    case 'not-in-cup':
      return `There is no ${fault.title} in this cup.`;
    case 'is-plastic':
      return `${fault.title} is the plastic; \`substitute\` is for what colours it.`;
    case 'not-colouring':
      return `${fault.title} doesn’t colour, so nothing can replace it by colour. Its own page says what it is for.`;
  }
}
