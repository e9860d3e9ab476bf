import { boundsMissed } from './bounds.ts';
import { editsOfWhole } from './edit.ts';
import { foreignUnitEdits } from './foreign-unit.ts';
import { figuresEdit } from './in-figures.ts';
import { PLAIN_NUMBER_WHY, plainNumberEdits } from './plain-number.ts';
import { isFault, type Quantity, type QuantityFault, type Rate } from './quantity.ts';
import { numberAtStart } from './read-number.ts';
import { type Dimension, UNITS, unitOf } from './unit.ts';
import { unitFault } from './unit-fault.ts';

const EXAMPLES: Readonly<Record<Dimension, string>> = {
  volume: '`120 ml`',
  mass: '`0.5 g`',
  length: '`9 mm`',
  temperature: '`171 °C`, `340 °F`',
  duration: '`6 min`',
  drop: '`22 drops`',
  part: '`2 %`',
};

/** Longest text that is read as an amount, in UTF-16 units. */
export const LONGEST_AMOUNT = 100;

/**
 * Reads an amount with its unit: `120 ml`, `1 1/2 tsp`, `1½ tsp`, `.5 g`, `40%`.
 *
 * Units: as in `UNITS`. The amount must be more than zero and within the bounds of its dimension, the text no longer than `LONGEST_AMOUNT`.
 * Returns a fault in place of a quantity if the text is anything else, or measures something that is not in `dimensions`.
 *
 * @param least `none` where there may be none of it: then 0 of a unit is an amount, too
 *
 * @example parseQuantity('1 1/2 tsp', ['volume']) // { amount: 1.5, unit: 'tsp' }
 */
export function parseQuantity(
  text: string,
  dimensions: readonly Dimension[],
  least: 'some' | 'none' = 'some',
): Quantity | QuantityFault {
  const trimmed = text.trim();
  const expected = `an amount such as ${dimensions.map((dimension) => EXAMPLES[dimension]).join(', ')}`;
  if (trimmed.length > LONGEST_AMOUNT) {
    return { found: `\`${trimmed.slice(0, 30)}…\``, expected, why: 'an amount is a number and a unit' };
  }
  const found = trimmed === '' ? 'nothing' : `\`${trimmed}\``;
  const plain = plainNumberEdits(trimmed);
  if (plain !== undefined) return { found, expected, why: PLAIN_NUMBER_WHY, edits: plain };
  const number = numberAtStart(trimmed);
  if (/^[-−–]\s*[\d.½⅓⅔¼¾⅛⅜⅝⅞]/.test(trimmed)) return { found, expected, why: 'an amount is a number above zero' };
  if (number === undefined) {
    const inFigures = figuresEdit(trimmed, dimensions);
    return {
      found,
      expected,
      why: 'an amount begins with a number',
      ...(inFigures === undefined ? {} : { edits: [inFigures] }),
    };
  }
  const isNone = least === 'none' && number.amount === 0;
  if (!isNone && !(Number.isFinite(number.amount) && number.amount > 0)) {
    return { found, expected, why: 'an amount is a number above zero' };
  }
  const spelling = trimmed.slice(number.length).trim();
  const unit = unitOf(spelling);
  if (unit === undefined) {
    return { found, expected, ...unitFault(trimmed.slice(0, number.length), number.amount, spelling, dimensions) };
  }
  if (!dimensions.includes(UNITS[unit].dimension)) {
    // Whoever writes ounces of what is measured by volume means those of a measuring cup.
    const fluid = unit === 'oz' && dimensions.includes('volume');
    return {
      found,
      expected,
      why: `${unit} measures ${MEASURES[UNITS[unit].dimension]}`,
      ...(fluid ? { edits: [{ text: `${trimmed.slice(0, number.length).trim()} fl oz` }] } : {}),
    };
  }
  const quantity = { amount: number.amount, unit };
  const bounds = isNone ? undefined : boundsMissed(quantity);
  return bounds === undefined
    ? quantity
    : {
        found,
        expected: `an amount ${bounds}`,
        why: 'no bench measures that, and nothing can be computed from it',
        bounds,
      };
}

const MEASURES: Readonly<Record<Dimension, string>> = {
  volume: 'a volume',
  mass: 'a mass',
  length: 'a length',
  temperature: 'a temperature',
  duration: 'a time',
  drop: 'drops',
  part: 'a share',
};

/** What a dose may be counted in. */
export const DOSE_DIMENSIONS: readonly Dimension[] = ['drop', 'volume', 'mass', 'part'];

/**
 * Reads a dose: an amount for the whole cup, or a rate `10 drops per 4 fl oz` (a bare unit after "per" means one of it).
 *
 * @example parseDose('3/8 tsp per cup') // { quantity: { amount: 0.375, unit: 'tsp' }, per: { amount: 1, unit: 'cup' } }
 */
export function parseDose(text: string): Quantity | Rate | QuantityFault {
  if (text.length > 2 * LONGEST_AMOUNT) return parseQuantity(text, DOSE_DIMENSIONS) as QuantityFault;
  const [amount, volume, ...more] = text.split(/\s+per\s+/i);
  if (amount === undefined || more.length > 0) {
    return {
      found: `\`${text}\``,
      expected: RATE_EXPECTED,
    };
  }
  const quantity = parseQuantity(amount, DOSE_DIMENSIONS);
  if (volume === undefined) return isFault(quantity) ? (withPer(text) ?? quantity) : quantity;
  if (isFault(quantity)) return inDose(text, quantity, '', text.slice(amount.length));
  if (UNITS[quantity.unit].dimension === 'part') {
    return {
      found: `\`${text}\``,
      expected: `\`${amount.trim()}\` alone`,
      why: `${quantity.unit} already is a share of the plastic`,
      edits: [{ text: amount.trim() }],
    };
  }
  const isBare = (unitOf(volume) ?? foreignUnitEdits(1, volume.trim(), ['volume'])) !== undefined;
  const per = parseQuantity(isBare ? `1 ${volume}` : volume, ['volume']);
  if (!isFault(per)) return { quantity, per };
  const fault = per.bounds === undefined ? { ...per, expected: RATE_EXPECTED } : per;
  return inDose(text, fault, text.slice(0, text.length - volume.length), '');
}

const RATE_EXPECTED = 'an amount, or an amount per volume of plastic such as `10 drops per 4 fl oz`';

/** The fault of a rate with something else where `per` belongs: `10 drops/100 ml`. */
function withPer(text: string): QuantityFault | undefined {
  const [, amount, volume] =
    /^(.*[^\d\s])(?:\s*[/⁄]\s*|\s+(?:in|to|for|each|every)\s+)(\S.*)$/i.exec(text.trim()) ?? [];
  if (amount === undefined || volume === undefined) return undefined;
  const edit = `${amount.trim()} per ${volume}`;
  const meant = parseDose(edit);
  if (isFault(meant) && (meant.edits ?? meant.unknownUnit) === undefined) return undefined;
  return {
    found: `\`${text.trim()}\``,
    expected: RATE_EXPECTED,
    why: '`per` goes between the amount and the volume',
    edits: [{ text: edit }],
  };
}

/** The fault of one amount of a rate, told of the whole. */
function inDose(text: string, fault: QuantityFault, before: string, after: string): QuantityFault {
  const { edits, unknownUnit } = fault;
  return {
    ...fault,
    found: text.length > LONGEST_AMOUNT ? fault.found : `\`${text.trim()}\``,
    ...(edits === undefined ? {} : { edits: editsOfWhole(edits, before, after) }),
    ...(unknownUnit ? { unknownUnit: { ...unknownUnit, number: `${before}${unknownUnit.number}`, after } } : {}),
  };
}
