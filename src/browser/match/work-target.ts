import { freeName } from '../../book/read/free-name.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import type { VolumeUnit } from '../../units/volume-text.ts';
import { exactThickness } from './thickness-field.ts';
import type { Work, WorkSide } from './work.ts';
import { colourInFile } from './work-colour.ts';
import { nameText, quoted, type TakenFile, titleOf } from './work-recipe.ts';

/**
 * A target that was described at the bench, as a file of the book; undefined where the book has the target already.
 *
 * @param unit what lengths were typed in
 */
export function targetFile(work: Work, taken: ReadonlySet<string>, unit: VolumeUnit): TakenFile | undefined {
  if (work.target !== undefined) return undefined;
  const title = `${titleOf(work)}, the target`;
  const [only, ...others] = work.sides;
  const lines = [
    '---',
    `title: ${quoted(title)}`,
    `mold: ${nameText(work.mold)}`,
    `tolerance: ${formatDecimal(work.tolerance, 4)}`,
    ...(others.length === 0
      ? fieldsOf(only!, unit)
      : ['parts:', ...work.sides.map((side) => `  ${nameText(side.name)}: { ${fieldsOf(side, unit).join(', ')} }`)]),
    ...(work.arrangement === 'apart' ? ['apart: true'] : []),
    '---',
    '',
  ];
  return { name: `${freeName(`${titleOf(work)} target`, taken)}.md`, text: lines.join('\n') };
}

function fieldsOf({ overWhite, overBlack, thicknessMm }: WorkSide, unit: VolumeUnit): readonly string[] {
  return [
    `over-white: ${colourInFile(overWhite)}`,
    ...(overBlack === undefined ? [] : [`over-black: ${colourInFile(overBlack)}`]),
    `thickness: ${exactThickness(thicknessMm, unit)}`,
  ];
}
