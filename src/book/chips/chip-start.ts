import { KINDS } from '../../kinds/kinds.ts';
import type { ChipToPour } from '../../matching/chips/chip-candidates.ts';
import { slugOf } from '../../recipe/source.ts';
import type { WrittenFields } from '../../recipe/write-front-matter.ts';
import { lengthText } from '../../units/length-text.ts';
import { usualVolume } from '../../units/usual-volume.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';

/** The file of a chip that is to be poured, but for what its maker will see: a plain value that survives JSON. */
export interface ChipStart {
  /** What the chip is called: "Mill Blue, 1 drop, with Chalk, 1 drop". */
  readonly title: string;
  readonly path: string;
  /** What goes into it. */
  readonly mixed: WrittenFields;
  /** With its unit. */
  readonly thickness: string;
}

/**
 * How the file of a chip that is to be poured begins.
 *
 * @param isTaken whether the book has a file of a path
 */
export function chipStart(
  chip: ChipToPour,
  {
    plastic,
    titleOf,
    isTaken,
    settings,
  }: {
    readonly plastic: string;
    readonly titleOf: (material: string) => string;
    readonly isTaken: (path: string) => boolean;
    readonly settings: VolumeUnit;
  },
): ChipStart {
  const wanted = chip.doses.map(({ material, measure }) => `${titleOf(material)}, ${measure.text}`).join(', with ');
  const slug = slugOf(wanted);
  for (let number = 1; ; number++) {
    const path = `${KINDS.chip.folder}/${number === 1 ? slug : `${slug}-${number}`}.md`;
    if (isTaken(path)) continue;
    return {
      title: number === 1 ? wanted : `${wanted} (${number})`,
      path,
      mixed: {
        plastic: `${usualVolume(settings).text} ${plastic}`,
        add: Object.fromEntries(chip.doses.map(({ material, written }) => [material, written])),
      },
      thickness: lengthText(chip.thicknessMm, settings),
    };
  }
}
