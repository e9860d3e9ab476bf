import type { z } from 'zod';
import { millilitres } from '../units/convert.ts';
import { type Edit, editsOfWhole } from '../units/edit.ts';
import { foreignUnitEdits } from '../units/foreign-unit.ts';
import { LONGEST_AMOUNT, parseQuantity } from '../units/parse-quantity.ts';
import { isFault, type QuantityFault } from '../units/quantity.ts';
import { unitOf } from '../units/unit.ts';
import { writtenVolume } from '../units/written-quantity.ts';
import { SLUG } from '../values/slug.ts';
import type { ReadFault } from './field-fault.ts';
import { asText, explained, field, shown } from './fields.ts';
import { slugOf } from './source.ts';

/** A volume of a plastic by its name: `120 ml supple`, or `120 ml` of the book's plastic. */
export interface PlasticAmount {
  readonly ml: number;
  readonly plastic: string | undefined;
}

/** `120 ml supple`: a volume, then the name of a plastic on the shelf. */
export const plasticAmount: z.ZodType<PlasticAmount> = field<PlasticAmount>(
  'field/quantity',
  (input) => {
    const written = asText(input).trim();
    const whole = parseQuantity(written, ['volume']);
    if (written.length > LONGEST_AMOUNT) return { fault: explained(whole as QuantityFault) };
    if (!isFault(whole)) return { value: { ml: millilitres(whole), plastic: undefined } };
    let named: readonly Edit[] | undefined;
    for (const { before, name } of endings(written)) {
      const amount = parseQuantity(before, ['volume']);
      if (isFault(amount)) {
        if (amount.bounds !== undefined && SLUG.test(name))
          return { fault: { ...explained(amount), found: shown(input) } };
        const { edits } = explained(amount);
        const slug = nameMeant(name);
        if (SLUG.test(slug) && edits !== undefined) named ??= editsOfWhole(edits, '', ` ${slug}`);
        continue;
      }
      if (SLUG.test(name)) return { value: { ml: millilitres(amount), plastic: name } };
      const slug = slugOf(nameMeant(name));
      return {
        fault: {
          found: `plastic \`${name}\``,
          expected: 'the name of a file in shelf/plastics/',
          why: 'names are lower-case letters, digits and single hyphens',
          ...(slug === '' ? {} : { name: { written: name, slug, before: `${spaced(before)} ` } }),
        },
      };
    }
    const { edits: unnamed, fix: _, nearest, ...fault } = explained(whole);
    const keepsName = named !== undefined && !isUnitAlone(whole, nearest);
    return {
      fault: {
        ...fault,
        found: shown(input),
        expected: 'a volume and the name of a plastic, such as `120 ml supple`',
        ...editsOf(keepsName ? named : unnamed),
      },
    };
  },
  ({ ml, plastic }) => (plastic === undefined ? writtenVolume(ml) : `${writtenVolume(ml)} ${plastic}`),
);

const editsOf = (edits: readonly Edit[] | undefined): Pick<ReadFault, 'edits'> =>
  edits === undefined ? {} : { edits };

/** The ways to part a text into an amount and a name, the shortest name first. A name is not a unit, and does not follow an `of`. */
function endings(written: string): readonly { readonly before: string; readonly name: string }[] {
  const words = [...written.matchAll(/ +/g)].map(({ index, 0: gap }) => ({
    before: written.slice(0, index),
    name: written.slice(index + gap.length),
  }));
  return words.reverse().filter(({ before, name }) => !isUnit(name) && !/(?:^|\s)of$/i.test(before));
}

const isUnit = (name: string): boolean =>
  unitOf(name) !== undefined || foreignUnitEdits(1, name, ['volume']) !== undefined;

/** A name without the `of` that may stand before it. */
const nameMeant = (name: string): string => name.replace(/^of\s+/i, '');

/** An amount as it was written, with a space before its unit. */
const spaced = (amount: string): string => amount.replace(/(?<=[\d½⅓⅔¼¾⅛⅜⅝⅞])(?=[a-z])/i, ' ');

/** Whether all that follows the number is a misspelt unit, and no name. */
function isUnitAlone({ unknownUnit }: QuantityFault, nearest: string | undefined): boolean {
  const words = (text: string): number => text.split(/\s+/).length;
  return unknownUnit !== undefined && nearest !== undefined && words(unknownUnit.spelling) <= words(nearest);
}
