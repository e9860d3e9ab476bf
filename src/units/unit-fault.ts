import { foreignUnitEdits } from './foreign-unit.ts';
import type { QuantityFault } from './quantity.ts';
import { type Dimension, unitNames, unitSpellings } from './unit.ts';

const DEGREES = /^(?:deg\.?|degrees?|°)?\s*(?:([cf])\s*°?|°)?$/i;

/**
 * What is wrong with an amount whose unit is none that the book knows, or is left out.
 *
 * @param number as it was written
 * @param spelling what stands where the unit should
 */
export function unitFault(
  number: string,
  amount: number,
  spelling: string,
  dimensions: readonly Dimension[],
): Omit<QuantityFault, 'found' | 'expected'> {
  const names = unitNames(dimensions).join(', ');
  const [degrees, scale] = dimensions.includes('temperature') ? (DEGREES.exec(spelling) ?? []) : [];
  if (spelling === '' || (degrees !== undefined && scale === undefined)) {
    const why = `a number alone does not say what it counts (units here: ${names})`;
    return { why, ...withUnit(number, amount, dimensions) };
  }
  const why = `\`${spelling}\` is not a unit that fits here (${names})`;
  const edits =
    scale === undefined
      ? foreignUnitEdits(amount, spelling, dimensions)
      : [{ text: `${number} °${scale.toUpperCase()}` }];
  return edits === undefined
    ? { why, unknownUnit: { number, spelling, allowed: unitSpellings(dimensions) } }
    : { why, edits };
}

// No plastic is heated so far (common practice, no source): a bare number above it is in °F, and is never offered in °C.
const HOTTEST_CELSIUS = 230;

/** What was most likely meant by a number without a unit. */
function withUnit(
  text: string,
  amount: number,
  dimensions: readonly Dimension[],
): Pick<QuantityFault, 'edits' | 'otherwise'> {
  const [dimension] = dimensions;
  if (dimensions.length === 1 && dimension !== undefined) {
    if (dimension === 'part' && amount <= 1) return { edits: [{ text: `${Number((100 * amount).toPrecision(6))}%` }] };
    const isInches = dimension === 'length' && (amount < 1 || /[^\d.]/.test(text));
    const units = USUAL_UNITS[dimension].filter((unit) =>
      unit === '°C' ? amount <= HOTTEST_CELSIUS : unit !== 'mm' || !isInches,
    );
    return { edits: units.map((unit) => ({ text: `${text} ${unit}` })) };
  }
  const otherwise = 'the unit that was counted';
  if (!dimensions.includes('drop')) {
    return { edits: dimensions.map((each) => ({ text: `${text} ${USUAL_UNITS[each][0]}` })), otherwise };
  }
  const drops = { text: `${text} drops`, when: 'drops are meant' };
  return { edits: Number.isInteger(amount) ? [drops] : [], otherwise };
}

const USUAL_UNITS: Readonly<Record<Dimension, readonly [string, ...string[]]>> = {
  volume: ['ml', 'fl oz'],
  mass: ['g'],
  length: ['mm', 'in'],
  temperature: ['°C', '°F'],
  duration: ['min'],
  drop: ['drops'],
  part: ['%'],
};
