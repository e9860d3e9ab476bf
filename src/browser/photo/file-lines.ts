import { chipFileText } from '../../book/chips/chip-file-text.ts';
import type { ChipStart } from '../../book/chips/chip-start.ts';
import { flakeFields, photoFields } from '../../photo/photo-fields.ts';
import type { PhotoMeasured } from '../../photo/photo-measured.ts';
import { fieldsText } from '../../recipe/write-front-matter.ts';
import { FIELDS_FOR_A_LOOK, FIELDS_OF_FLAKE } from '../../words/photo-result.ts';

/** Text of a file that photos give, or a part of it. */
export interface FileLines {
  /** For the page alone. */
  readonly name: string;
  readonly label: string;
  readonly text: string;
}

/** What was photographed, where that is more than a bait. */
export type Photographed =
  /** A chip that the book has asked for. */
  | { readonly kind: 'own-chip'; readonly chip: ChipStart }
  /** A chip of a product, as its material's file has it; as it was typed. */
  | { readonly kind: 'label-chip'; readonly dose: string; readonly thickness: string };

/** What photos of a bait give: the lines of a round, a chip or a target, and the flake of a target. */
export function baitLines(bait: PhotoMeasured, camera: string): readonly FileLines[] {
  const flake = flakeFields(bait);
  return [
    {
      name: 'look',
      label: FIELDS_FOR_A_LOOK,
      text: fieldsText({ ...photoFields(bait, camera) }),
    },
    ...(flake === undefined
      ? []
      : [
          {
            name: 'flake',
            label: FIELDS_OF_FLAKE,
            text: fieldsText({ flake: flake.map((each) => ({ ...each })) }),
          },
        ]),
  ];
}

/**
 * What photos of a chip give.
 *
 * @param today `2026-03-14`
 */
export function chipLines(
  photographed: Photographed,
  bait: PhotoMeasured,
  camera: string,
  today: string,
): readonly FileLines[] {
  const seen = { ...photoFields(bait, camera) };
  if (photographed.kind === 'own-chip') {
    const { chip } = photographed;
    return [{ name: 'chip', label: `The chip’s file, ${chip.path}:`, text: chipFileText(chip, today, seen).trimEnd() }];
  }
  const { dose, thickness } = photographed;
  return [
    {
      name: 'label',
      label: 'For the material’s file: it is then known as photographed:',
      text: fieldsText({ look: { chips: [{ dose, thickness, ...seen }] } }),
    },
  ];
}
