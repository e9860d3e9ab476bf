import { labFromLinear } from '../optics/display.ts';
import type { WrittenFields } from '../recipe/write-front-matter.ts';
import { formatDecimal } from '../units/format-quantity.ts';
import type { CardPrint } from './model/card-print.ts';

/** A print whose paper, black and greys were measured; how long its scale is only a ruler tells. */
export type MeasuredPrint = Required<Omit<CardPrint, 'scaleMm'>> & Partial<Pick<CardPrint, 'scaleMm'>>;

/** The setting `measuring-card` of `book.md` for a print: the inverse of `cardPrint`. */
export function writtenCardPrint({ scaleMm, paper, black, greys }: MeasuredPrint): WrittenFields {
  return {
    'measuring-card': {
      scale: scaleMm === undefined ? undefined : `${formatDecimal(scaleMm, 4)} mm`,
      paper: written(paper),
      black: written(black),
      greys: greys.map(written),
    },
  };
}

function written(reflectance: MeasuredPrint['paper']): WrittenFields {
  const { L, a, b } = labFromLinear(reflectance);
  return { lab: [L, a, b].map((value) => Number(value.toFixed(1)) + 0) };
}
