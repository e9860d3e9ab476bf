/**
 * The flake of a side as it is typed: its colour, its size with a unit, and how much of it there is to be.
 *
 * @packageDocumentation
 */
import type { WantedFlake } from '../../matching/substitutes/flake-match.ts';
import type { Written } from '../../recipe/write-front-matter.ts';
import { FLAKE_LOADS, type FlakeLoad } from '../../tables/flake-loads.ts';
import { formatDecimal } from '../../units/format-quantity.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';
import { isFault } from '../../units/quantity.ts';
import { readNumber } from '../../units/read-number.ts';
import { typedNumber } from '../../units/typed-number.ts';
import { UNITS } from '../../units/unit.ts';
import { isWithin, LIMITS } from './limits.ts';

/** Flake that is to be seen in a side. */
export type WorkFlake = Omit<WantedFlake, 'finish'>;

/** How much flake is asked for: in a word, or as a share. */
export type TypedLoad = FlakeLoad | 'share';

/** What a side begins with where flake is added to it: black, of a size that is common. */
export const NEW_FLAKE: WorkFlake = {
  hex: '#1d1c1b',
  sizeMm: 0.04 * UNITS.in.size,
  coverage: FLAKE_LOADS.ordinary,
};

/** How much it is, as one says it. */
export function loadOf({ coverage }: WorkFlake): TypedLoad {
  if (coverage === undefined) return 'ordinary';
  const word = (['few', 'ordinary', 'heavy'] as const).find((load) => FLAKE_LOADS[load] === coverage);
  return word ?? 'share';
}

/** The share of the face for what was said, with the percents that were typed where it is no word; a sentence where they are none. */
export function coverageOf(
  load: TypedLoad,
  percents: string | undefined,
  before: WorkFlake,
): number | undefined | string {
  // A target that says nothing of it is none that asks for so much.
  if (load === 'ordinary' && before.coverage === undefined) return undefined;
  if (load !== 'share') return FLAKE_LOADS[load];
  // The field for it has not been there yet.
  if (percents === undefined) return before.coverage ?? FLAKE_LOADS.ordinary;
  const share = Number((readNumber(percents) / 100).toFixed(6));
  const { what, least, most } = LIMITS.coverage;
  return isWithin('coverage', share) ? share : `${what} is a number from ${100 * least} to ${100 * most}, in percent.`;
}

/** A size as its field shows it, with its unit: as it was typed, in inches or in millimetres. */
export function sizeInField(mm: number): string {
  const inches = typedNumber(mm, UNITS.in.size, 4);
  return inches === undefined ? `${formatDecimal(mm, 4)} mm` : `${inches.replace(/(\.\d\d)$/, '$10')} in`;
}

/** A size as it was typed, in mm; a sentence where it is none. */
export function sizeOf(text: string): number | string {
  const read = parseQuantity(text, ['length']);
  const mm = isFault(read) ? Number.NaN : read.amount * UNITS[read.unit].size;
  if (isWithin('flakeMm', mm)) return mm;
  return `${LIMITS.flakeMm.what} is written with its unit, up to ${LIMITS.flakeMm.most} mm, such as 0.040 in or 1 mm.`;
}

/** As the file of a target has it. */
export function flakeInFile({ hex, sizeMm, coverage }: WorkFlake): Written {
  const share = coverage === undefined ? {} : { coverage: `${formatDecimal(100 * coverage, 4)} %` };
  return { colour: hex, size: sizeInField(sizeMm), ...share };
}
