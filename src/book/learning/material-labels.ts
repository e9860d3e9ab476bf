import type { MaterialKind } from '../../kinds/kinds.ts';
import type { Label } from '../../learning/learning-data.ts';
import { isClipped } from '../../optics/clipped.ts';
import { lookDoubt } from '../../optics/look-doubt.ts';
import { labByDaylight, type StatedColour } from '../../optics/stated-colour.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import type { FieldsOf } from '../../recipe/schema.ts';
import { DYE_THICKNESS } from '../../tables/colouring-kinds.ts';
import { BODY_MM, CHIP_DOUBT, CLIPPED_HEX_DOUBT, HEX_DOUBT } from '../../tables/label-doubt.ts';
import { defined } from '../../values/defined.ts';
import { statedColour } from '../cups/seen-colour.ts';
import { reportInto } from '../report.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';
import { relativeDose } from '../shelf/material-look.ts';
import { keptLab } from './kept-lab.ts';

type ChipFields = NonNullable<NonNullable<FieldsOf<'colorant'>['look']>['chips']>[number];

/**
 * What a material's file says of how it looks, as data: one colour of a typical dose over white, or its chips over both. Nothing of one
 * that is known from films, or of one that does not colour.
 */
export function labelsOf(thing: Thing<MaterialKind>, material: MaterialCore): readonly Label[] {
  const { fields } = thing;
  if (!('look' in fields) || fields.look === undefined || !('dose' in fields.look || 'chips' in fields.look)) return [];
  const { kind, colour, chips, thickness } = fields.look;
  if (chips)
    return chips.flatMap((chip, index): Label[] => {
      const path = ['look', 'chips', index, 'dose'];
      // What is wrong with a dose was told when the material was compiled.
      const dose = relativeDose(thing, chip.dose, path, material, reportInto([]));
      if (dose === undefined) return [];
      const [overWhite, overBlack] = [statedColour(chip['over-white']), statedColour(chip['over-black'])];
      return [
        {
          dose,
          thicknessMm: chip.thickness,
          overWhite: labOf(overWhite),
          overBlack: labOf(overBlack),
          axisSd: axisSd([overWhite, overBlack], chipDoubt(chip)),
          ...defined({ camera: chip.camera }),
        },
      ];
    });
  if (colour === undefined || material.typical === undefined) return [];
  const isThrough = kind === 'dye' || kind === 'clear';
  return [
    {
      dose: material.typical,
      thicknessMm: isThrough ? (thickness ?? DYE_THICKNESS) : BODY_MM,
      overWhite: labOf(colour),
      axisSd: axisSd([colour], HEX_DOUBT),
    },
  ];
}

/** Root mean square of a chip: as it says, of a photo as is usual of one, else as of one that was looked at with care. */
function chipDoubt({ doubt, camera }: Pick<ChipFields, 'doubt' | 'camera'>): number {
  return doubt === undefined && camera === undefined ? CHIP_DOUBT : lookDoubt('screen', doubt).sd;
}

const labOf = (colour: StatedColour): Label['overWhite'] & {} => keptLab(labByDaylight(colour));

/** Of three axes one, of a colour that is off by so much ΔE00 (root mean square); more where a screen could not show it. */
function axisSd(colours: readonly StatedColour[], doubt: number): number {
  const isVague = colours.some((colour) => typeof colour === 'string' && isClipped(colour));
  return (isVague ? Math.max(CLIPPED_HEX_DOUBT, doubt) : doubt) / Math.sqrt(3);
}
