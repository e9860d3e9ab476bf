import { KINDS } from '../kinds/kinds.ts';
import type { ChipToPour } from '../matching/chips/chip-candidates.ts';
import { type Source, slugOf } from '../recipe/source.ts';
import { frontMatterText, ToFillIn } from '../recipe/write-front-matter.ts';
import { lengthText } from '../units/length-text.ts';
import { usualVolume } from '../units/usual-volume.ts';
import type { VolumeUnit } from '../units/volume-text.ts';

/** A chip's file, ready to be looked at and filled in. */
export interface ChipFile {
  /** What the chip is called: "Mill Blue, 1 drop, with Chalk, 1 drop". */
  readonly title: string;
  readonly source: Source;
}

/**
 * The file of a chip that is to be poured, but for what only its maker will see.
 *
 * @param isTaken whether the book has a file of a path
 */
export function chipFile(
  chip: ChipToPour,
  {
    plastic,
    titleOf,
    isTaken,
    today,
    settings,
  }: {
    readonly plastic: string;
    readonly titleOf: (material: string) => string;
    readonly isTaken: (path: string) => boolean;
    /** `2026-03-14` */
    readonly today: string;
    readonly settings: VolumeUnit;
  },
): ChipFile {
  const wanted = chip.doses.map(({ material, measure }) => `${titleOf(material)}, ${measure.text}`).join(', with ');
  const slug = slugOf(wanted);
  for (let number = 1; ; number++) {
    const path = `${KINDS.chip.folder}/${number === 1 ? slug : `${slug}-${number}`}.md`;
    if (isTaken(path)) continue;
    const title = number === 1 ? wanted : `${wanted} (${number})`;
    const text = frontMatterText({
      title,
      made: today,
      plastic: `${usualVolume(settings).text} ${plastic}`,
      add: Object.fromEntries(chip.doses.map(({ material, written }) => [material, written])),
      seen: {
        'over-white': new ToFillIn(SEEN_HINT),
        'over-black': new ToFillIn('the same on a black card'),
        thickness: lengthText(chip.thicknessMm, settings),
      },
    });
    return { title, source: { path, text } };
  }
}

const SEEN_HINT = 'its colour on a white card, in quotes, such as "#8a5a2b"';
