import type { z } from 'zod';
import { millilitres } from '../units/convert.ts';
import { formatQuantity } from '../units/format-quantity.ts';
import { editOfWhole, isFault, LONGEST_AMOUNT, parseQuantity, type QuantityFault } from '../units/quantity.ts';
import { asText, explained, field, shown } from './fields.ts';
import { SLUG, slugOf } from './source.ts';

/** A volume of a plastic by its name: `120 ml supple`, or `120 ml` of the book's plastic. */
export interface PlasticAmount {
  readonly ml: number;
  readonly plastic: string | undefined;
}

/** `120 ml supple`: a volume, then the name of a plastic on the shelf. */
export const plasticAmount: z.ZodType<PlasticAmount> = field<PlasticAmount>('field/quantity', (input) => {
  const written = asText(input).trim();
  const whole = parseQuantity(written, ['volume']);
  if (written.length > LONGEST_AMOUNT) return { fault: explained(whole as QuantityFault) };
  if (!isFault(whole)) return { value: { ml: millilitres(whole), plastic: undefined } };
  let meant: string | undefined;
  for (let space = written.lastIndexOf(' '); space > 0; space = written.lastIndexOf(' ', space - 1)) {
    const name = written.slice(space + 1);
    const amount = parseQuantity(written.slice(0, space), ['volume']);
    if (isFault(amount)) {
      const { fix } = explained(amount);
      if (SLUG.test(name) && fix !== undefined) meant ??= editOfWhole(fix, '', ` ${name}`);
      continue;
    }
    if (SLUG.test(name)) return { value: { ml: millilitres(amount), plastic: name } };
    const slug = slugOf(name);
    return {
      fault: {
        found: `plastic \`${name}\``,
        expected: 'the name of a file in shelf/plastics/',
        why: 'names are lower-case letters, digits and single hyphens',
        ...(slug === '' ? {} : { fix: `write \`${formatQuantity(amount)} ${slug}\`` }),
      },
    };
  }
  const fault = explained(whole);
  return {
    fault: {
      ...fault,
      found: shown(input),
      expected: 'a volume and the name of a plastic, such as `120 ml supple`',
      ...(fault.fix === undefined && meant !== undefined ? { fix: meant } : {}),
    },
  };
});
