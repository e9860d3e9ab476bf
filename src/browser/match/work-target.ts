import { freeName } from '../../book/read/free-name.ts';
import { frontMatterText, type WrittenFields } from '../../recipe/write-front-matter.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { measuredInFile } from './measured-by.ts';
import { flakeInFile } from './side-flake.ts';
import { exactThickness } from './thickness-field.ts';
import type { Work, WorkSide } from './work.ts';
import { colourInFile } from './work-colour.ts';
import { type TakenFile, titleOf } from './work-recipe.ts';

/**
 * A target that was described at the bench, as a file of the book; undefined where the book has the target already.
 *
 * @param unit what lengths were typed in
 */
export function targetFile(work: Work, taken: ReadonlySet<string>, unit: VolumeUnit): TakenFile | undefined {
  if (work.target !== undefined) return undefined;
  const title = `${titleOf(work)}, the target`;
  const [only, ...others] = work.sides;
  const fields = {
    title,
    mold: work.mold,
    tolerance: Number(formatDecimal(work.tolerance, 4)),
    ...(others.length === 0
      ? sideFields(only!, unit)
      : { parts: Object.fromEntries(work.sides.map((side) => [side.name, sideFields(side, unit)])) }),
    // Unset: nobody was asked.
    apart: work.arrangement === 'apart' ? true : work.whole ? false : undefined,
  };
  return { name: `${freeName(`${titleOf(work)} target`, taken)}.md`, text: frontMatterText(fields) };
}

function sideFields(
  { overWhite, overBlack, measured, thicknessMm, flakes = [], plastic }: WorkSide,
  unit: VolumeUnit,
): WrittenFields {
  return {
    'over-white': overWhite && colourInFile(overWhite),
    'over-black': overBlack && colourInFile(overBlack),
    ...measuredInFile(measured),
    thickness: exactThickness(thicknessMm, unit),
    flake: flakes.length === 0 ? undefined : flakes.map(flakeInFile),
    plastic,
  };
}
