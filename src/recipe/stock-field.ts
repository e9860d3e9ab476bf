import type { z } from 'zod';
import { parseQuantity } from '../units/parse-quantity.ts';
import { isFault, type Quantity } from '../units/quantity.ts';
import { writtenQuantity } from '../units/written-quantity.ts';
import { asText, explained, field } from './fields.ts';

/** What is left of a material, as it was written; `none` where a bare 0 says that it has run out. */
export type Stock = Quantity | 'none';

/** `20 ml`, `8 g`; run out: `0`, or 0 of any of these units. */
export const stock: z.ZodType<Stock> = field<Stock>(
  'field/quantity',
  (input) => {
    const written = asText(input).trim();
    if (/^0+(?:\.0+)?$/.test(written)) return { value: 'none' };
    const parsed = parseQuantity(written, ['volume', 'mass'], 'none');
    if (!isFault(parsed)) return { value: parsed };
    const runOut = /^(?:no|none|nothing|empty|out|gone|all gone|run out|used up)$/i.test(written);
    return {
      fault: {
        ...explained(parsed),
        expected: parsed.bounds ? parsed.expected : `${parsed.expected}, or \`0\` where it has run out`,
        ...(runOut ? { fix: 'write `0`' } : {}),
      },
    };
  },
  (left) => (left === 'none' ? 0 : writtenQuantity(left)),
);
