import type { PhotoRefused, RefusalReason } from '../photo/photo-measured.ts';

/** Why a photo can't be used, in three sentences. */
export interface RefusalWords {
  readonly what: string;
  readonly why: string;
  readonly cure: string;
}

const WORDS: Readonly<Record<RefusalReason, RefusalWords>> = {
  'too-few-marks': {
    what: 'Too little of the measuring card can be read.',
    why: 'It takes three of the four corner marks to tell where the bait lies, and in which light.',
    cure: 'Get the whole card into the picture, sharp, with the white around each mark free of fingers, and let it fill the frame.',
  },
  'two-kinds': {
    what: 'Two different measuring cards are in the photo.',
    why: 'There’s no telling which one to measure the bait by.',
    cure: 'Take one away, and take the photo again.',
  },
  'not-flat': {
    what: 'The card isn’t flat, or the photo isn’t sharp.',
    why: 'Where a card bends, light falls on it differently, and nothing lies where it should.',
    cure: 'Tape the card down on something flat, tap it on the screen to focus, and hold the phone still.',
  },
  'too-bright': {
    what: 'The photo is too bright: the card’s paper is burnt out.',
    why: 'Paper that is as white as a photo can get tells nothing of the light.',
    cure: 'Tap the white paper on the screen, or turn the exposure down a little, and take it again.',
  },
  'too-dark': {
    what: 'The photo is too dark.',
    why: 'In the dark a phone makes up much of the colour.',
    cure: 'Go nearer to a window, or switch on a lamp. Leave the flash off.',
  },
  glare: {
    what: 'Glare covers most of the bait.',
    why: 'A reflection shows the lamp, not the plastic.',
    cure: 'Turn the bait or shade the lamp: light from one side, and you on the other, is best.',
  },
  'bait-clipped': {
    what: 'The bait is brighter than the photo can show.',
    why: 'A colour that is cut off at the top can’t be brought back.',
    cure: 'Turn the exposure down until you see shading on the bait, and take it again.',
  },
  'no-bait': {
    what: 'There is no bait to be seen in the window of the card.',
    why: 'It is looked for along the window, on the white half and on the black.',
    cure: 'Lay it across the seam, along the window. If it is there, show where: draw a line along its belly.',
  },
  'too-short': {
    what: 'Too little of the bait is clear of its ends and of the seam between white and black.',
    why: 'Ends are round, and near the seam light comes over from the other half.',
    cure: 'Lay it along the window, as much of it on white as on black. If it is too short for that, take a longer bait of the same cup.',
  },
};

/** What is wrong with a photo, why that matters, and what to do. */
export function refusalWords({ reason, found }: PhotoRefused): RefusalWords {
  const words = WORDS[reason];
  if (reason !== 'too-few-marks' || found === undefined) return words;
  if (found === 0) return { ...words, what: 'There is no measuring card to be seen in the photo.' };
  return { ...words, what: `Only ${found} of the card’s 4 corner marks can be read.` };
}

/** The same in one line. */
export function refusalText(refused: PhotoRefused): string {
  const { what, why, cure } = refusalWords(refused);
  return `${what} ${why} ${cure}`;
}
