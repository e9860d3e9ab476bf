import type { Assumption } from '../book/model/shelf.ts';
import { formatDecimal } from '../units/format-quantity.ts';
import { UNITS } from '../units/unit.ts';

/** What a number of the book rests on where nobody measured it. */
export function assumptionText(assumed: Assumption): string {
  switch (assumed.kind) {
    case 'typical-plastic':
      return `typical ${assumed.plastic} plastic assumed, not measured`;
    case 'no-colour':
      return 'assumed not to change the colour';
    case 'strength':
      return 'how strongly it colours is worked out from one colour and its kind';
    case 'film': {
      const inches = formatDecimal(assumed.mm / UNITS.in.size);
      return `a film of ${inches} in (${formatDecimal(assumed.mm, 2)} mm) assumed, not measured`;
    }
    case 'density':
      return `density of ${formatDecimal(assumed.gramsPerMl)} g/ml assumed`;
    case 'bulk':
      return `a level millilitre is taken to weigh ${formatDecimal(assumed.gramsPerMl)} g`;
    case 'drop':
      return `a drop is taken to be ${formatDecimal(assumed.ml)} ml`;
    case 'liquid':
      return 'taken for a liquid (salt or a powder has `bulk` in its file)';
    case 'salt':
      return 'taken for salt, since its pack is given by weight';
    case 'cavity':
      return `cavity volume worked out from the bait’s weight (plastic ${formatDecimal(assumed.gramsPerMl)} g/ml)`;
    case 'no-sprue':
      return 'no plastic counted in the sprues';
  }
}
