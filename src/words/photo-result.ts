/**
 * What photos of a bait on the measuring card tell, as a terminal has it.
 *
 * @packageDocumentation
 */
import type { Lab } from '../optics/cielab.ts';
import { deltaE00 } from '../optics/delta-e00.ts';
import { hexFromLab } from '../optics/display.ts';
import type { PhotoMeasured } from '../photo/photo-measured.ts';
import { lengthText } from '../units/length-text.ts';
import type { VolumeUnit } from '../units/volume-text.ts';
import { deltaEText } from './difference.ts';
import { photoDoubtCure, photoDoubtText } from './photo-doubt.ts';
import { noFlakeText, photoFlakeText } from './photo-flake.ts';
import { photoHidesText } from './photo-hides.ts';
import { photoWarningText } from './photo-warning.ts';
import { sentence } from './sentence-text.ts';

/**
 * A measured colour: as a screen has it, and its Lab by daylight.
 *
 * @example photoColourText({ L: 47.2, a: 8.1, b: 26.3 }) // '#8b6a44 (L 47.2, a 8.1, b 26.3)'
 */
export function photoColourText(lab: Lab): string {
  const { hex, mapped } = hexFromLab(lab);
  const numbers = `L ${signless(lab.L)}, a ${signless(lab.a)}, b ${signless(lab.b)}`;
  return `${hex} (${numbers}${mapped ? '; more vivid than a screen shows' : ''})`;
}

/**
 * All that is said of a bait that was measured, a line each.
 *
 * @param photos how many photos it is the mean of
 */
export function photoResultLines(measured: PhotoMeasured, photos: number, units: VolumeUnit): readonly string[] {
  const { overWhite, overBlack, contrast, doubt, widthMm, warnings } = measured;
  const cure = photoDoubtCure(doubt);
  const differ = warnings.includes('photos-differ');
  return [
    // First: of what differs a mean says little.
    ...(differ ? [photoWarningText('photos-differ')] : []),
    ...(overWhite ? [`Over white: ${photoColourText(overWhite)}`] : []),
    ...(overBlack ? [`Over black: ${photoColourText(overBlack)}`] : []),
    ...(contrast ? [`${sentence(photoHidesText(contrast))}.`] : []),
    `${photoDoubtText(doubt, photos)}.${cure === undefined ? '' : ` ${cure}`}`,
    ...flakeLines(measured, units),
    ...(widthMm === undefined ? [] : [`Width: ${lengthText(Number(widthMm.toFixed(1)), units)}`]),
    ...warnings.filter((warning) => warning !== 'photos-differ').map(photoWarningText),
  ];
}

/** What was measured of both halves, or of one. */
type Halves = Pick<PhotoMeasured, 'overWhite' | 'overBlack'>;

/**
 * One of several photos of a bait, in short. Where they differ by too much it is said by how much, so that the odd one is seen.
 *
 * @param mean of all; left out where they don't differ by too much
 *
 * @example photoInShort({ overWhite: { L: 47.2, a: 8.1, b: 26.3 } }) // 'over white #8b6a44'
 */
export function photoInShort({ overWhite, overBlack }: Halves, mean: Halves = {}): string {
  const half = (over: string, lab: Lab | undefined, middle: Lab | undefined): readonly string[] => {
    if (lab === undefined) return [];
    const off = middle === undefined ? '' : `, ΔE ${deltaEText(deltaE00(lab, middle))} from the mean`;
    return [`over ${over} ${hexFromLab(lab).hex}${off}`];
  };
  return [...half('white', overWhite, mean.overWhite), ...half('black', overBlack, mean.overBlack)].join('; ');
}

function flakeLines({ flakes = [], noFlake }: PhotoMeasured, units: VolumeUnit): readonly string[] {
  if (flakes.length === 0) return noFlake === undefined ? [] : [`Flake: ${noFlakeText(noFlake)}`];
  return flakes.map((flake) => `Flake: ${hexFromLab(flake.lab).hex}, ${photoFlakeText(flake, units)}`);
}

/** One decimal; a number that is rounded to nought has no sign. */
function signless(value: number): string {
  return (Number(value.toFixed(1)) + 0).toFixed(1);
}

/** What is to be done with the fields below. */
export const FIELDS_FOR_A_LOOK = 'For the file of a target, or below seen: of a round or a chip:';

/** What is to be done with the flake below. */
export const FIELDS_OF_FLAKE = 'Its flake, for a target alone:';

/** How to show a command where the bait is. */
export const SHOW_THE_BAIT =
  'For this command that is --bait "x,y x,y": both ends of the line, in pixels from the left and from the top.';

/** Where the settings of the card come from, if `book.md` has errors. */
export const BOOK_IS_FAULTY =
  'book.md has errors; npx cupbook check shows them. What is sound in it is used, and the usual values for the rest.';
