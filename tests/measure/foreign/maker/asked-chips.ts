import { worthAChip } from '../../../../src/book/chips/worth-a-chip.ts';
import { chipFile } from '../book/log-text.ts';
import { lookFields } from '../book/look-fields.ts';
import type { Opened } from '../book/makers-book.ts';
import { noted } from '../world/eye-noise.ts';
import { trueLook } from '../world/true-cup.ts';
import type { Bench } from './course.ts';
import { afterStep, freshCup } from './pours.ts';

/** A chip that a book asks for: what goes into how much plastic, and how thick it is poured. */
export interface AskedChip {
  readonly plasticMl: number;
  readonly thicknessMm: number;
  readonly amounts: readonly { readonly material: string; readonly grams: number; readonly text: string }[];
}

/** The chip that a book asks for next; undefined where it asks for none. The one place to read it from. */
function askedChip({ book }: Opened): AskedChip | undefined {
  const [chip] = worthAChip(book, 1);
  return (
    chip && {
      plasticMl: chip.plasticMl,
      thicknessMm: chip.thicknessMm,
      amounts: chip.doses.map(({ material, measure, written }) => ({ material, grams: measure.grams, text: written })),
    }
  );
}

/** Pours so many chips, each as the book asks for it with the ones before it written down; how many it has asked for. */
export function putChips({ world, book, condition, camera, chance }: Bench, most: number): number {
  for (let count = 0; count < most; count++) {
    const asked = askedChip(book.opened());
    if (!asked) return count;
    const { real } = afterStep(freshCup(asked.plasticMl), { add: asked.amounts }, world, chance, false);
    const seen = noted(trueLook(real, world, asked.thicknessMm), camera, chance);
    book.write(chipFile(`chip-${count + 1}`, asked, lookFields(seen, condition)));
  }
  return most;
}
