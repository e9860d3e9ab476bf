import type { Known } from '../book/model/known.ts';
import type { Tier } from '../book/model.ts';
import { counted } from './sentence-text.ts';

/** How a colour is known, in a word or few: after a name, in a list. */
export function knownText(known: Known): string {
  return known.how === 'learned' ? `learned from ${counted(known.looks, 'look')}` : known.how;
}

/** The same of a bait's colour, in a sentence. */
export function knownSentence(known: Known): string {
  switch (known.how) {
    case 'seen':
      return 'Seen: somebody has looked at exactly this. The colour shown weighs what was seen against what is computed.';
    case 'learned':
      return `Learned from ${counted(known.looks, 'look')} at ${known.looks === 1 ? 'something' : 'cups, chips and baits'} made with its materials.${flakeSentence(known)}`;
    default:
      return `${TIER_SENTENCES[known.how]}${flakeSentence(known)}`;
  }
}

function flakeSentence({ flakeByFace }: Exclude<Known, { readonly how: 'seen' }>): string {
  return flakeByFace ? ' Its flake is shown by the colour of its face: some of it nobody has seen in plastic yet.' : '';
}

const TIER_SENTENCES: Readonly<Record<Tier, string>> = {
  measured: 'Measured: nobody has looked at some of its materials yet, but their files have spectra.',
  photographed: 'Photographed: at least one of its materials is known only by photos of test chips.',
  estimated: 'Estimated: at least one of its materials is known only by one colour and its kind.',
};

/** The same for plastic with nothing in it. */
export const PLAIN_PLASTIC_SENTENCE = 'Estimated: plain plastic, known only as clear or milky.';

/** The same for one material by itself. */
export function materialKnownSentence(known: Known): string {
  switch (known.how) {
    case 'seen':
    case 'learned':
      return `${known.how === 'seen' ? 'Seen' : `Learned from ${counted(known.looks, 'look')} at ${known.looks === 1 ? 'something' : 'things'} with it in`}, and from its file.`;
    default:
      return MATERIAL_TIER_SENTENCES[known.how];
  }
}

const MATERIAL_TIER_SENTENCES: Readonly<Record<Tier, string>> = {
  measured: 'Measured: spectra of test chips over white and black, at a known dose and thickness.',
  photographed: 'Photographed: test chips over white and black, at a known dose and thickness.',
  estimated: 'Estimated from one colour and its kind.',
};
