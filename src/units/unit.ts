/**
 * The units that a book may use, by dimension, each with its size in the dimension's own unit
 * (millilitre, gram, millimetre, drop, fraction, degree Celsius, minute).
 *
 * US customary volumes follow from the US gallon of 231 cubic inches (exact) and the inch of 25.4 mm (exact),
 * masses from the pound of 453.592 37 g (exact): NIST Handbook 44, Appendix C; NIST SP 811, Appendix B.
 * Dash, pinch and smidgen are the sizes of the measuring-spoon sets sold under these names: common practice, no source.
 *
 * @packageDocumentation
 */

/** By definition. */
export const MM_PER_INCH = 25.4;
const ML_PER_GALLON = (231 * MM_PER_INCH ** 3) / 1000;
const ML_PER_TEASPOON = ML_PER_GALLON / 768;
const GRAMS_PER_POUND = 453.59237;

/** What a unit measures. `part` is a share of something else, by mass: per cent, or parts per hundred of plastic. */
export type Dimension = 'volume' | 'mass' | 'length' | 'temperature' | 'duration' | 'drop' | 'part';

interface UnitDefinition {
  readonly dimension: Dimension;
  /** Size in ml, g, mm, drops, minutes, or a fraction of 1. Temperatures are converted by their own function. */
  readonly size: number;
  /** Other ways to write it, in lower case. */
  readonly aliases: readonly string[];
}

const unit = (dimension: Dimension, size: number, ...aliases: string[]): UnitDefinition => ({
  dimension,
  size,
  aliases,
});

export const UNITS = {
  drop: unit('drop', 1, 'drops'),
  ml: unit('volume', 1, 'millilitre', 'millilitres', 'milliliter', 'milliliters'),
  l: unit('volume', 1000, 'litre', 'litres', 'liter', 'liters'),
  tsp: unit('volume', ML_PER_TEASPOON, 'teaspoon', 'teaspoons'),
  tbsp: unit('volume', ML_PER_TEASPOON * 3, 'tablespoon', 'tablespoons'),
  cup: unit('volume', ML_PER_GALLON / 16, 'cups'),
  'fl oz': unit('volume', ML_PER_GALLON / 128, 'floz', 'fl. oz', 'fl. oz.', 'fluid ounce', 'fluid ounces'),
  pt: unit('volume', ML_PER_GALLON / 8, 'pint', 'pints'),
  qt: unit('volume', ML_PER_GALLON / 4, 'quart', 'quarts'),
  gal: unit('volume', ML_PER_GALLON, 'gallon', 'gallons'),
  dash: unit('volume', ML_PER_TEASPOON / 8, 'dashes'),
  pinch: unit('volume', ML_PER_TEASPOON / 16, 'pinches'),
  smidgen: unit('volume', ML_PER_TEASPOON / 32, 'smidgens'),
  g: unit('mass', 1, 'gram', 'grams'),
  mg: unit('mass', 0.001, 'milligram', 'milligrams'),
  kg: unit('mass', 1000, 'kilogram', 'kilograms'),
  oz: unit('mass', GRAMS_PER_POUND / 16, 'oz.', 'ounce', 'ounces'),
  lb: unit('mass', GRAMS_PER_POUND, 'lbs', 'pound', 'pounds'),
  mm: unit('length', 1, 'millimetre', 'millimetres', 'millimeter', 'millimeters'),
  in: unit('length', MM_PER_INCH, 'inch', 'inches', '"'),
  '%': unit('part', 0.01, 'percent', 'per cent'),
  phr: unit('part', 0.01),
  '°C': unit('temperature', 1, '°c', 'c', 'celsius'),
  '°F': unit('temperature', 5 / 9, '°f', 'f', 'fahrenheit'),
  min: unit('duration', 1, 'mins', 'min.', 'minute', 'minutes'),
  h: unit('duration', 60, 'hr', 'hrs', 'hour', 'hours'),
  s: unit('duration', 1 / 60, 'sec', 'secs', 'second', 'seconds'),
} as const satisfies Record<string, UnitDefinition>;

/** The name of a unit as the book writes it. */
export type Unit = keyof typeof UNITS;

const BY_SPELLING: ReadonlyMap<string, Unit> = new Map(
  (Object.keys(UNITS) as Unit[]).flatMap((name) =>
    [name.toLowerCase(), ...UNITS[name].aliases].map((spelling) => [spelling, name] as const),
  ),
);

/** The unit that a spelling stands for, whatever its case and spaces; undefined if there is none. */
export function unitOf(spelling: string): Unit | undefined {
  return BY_SPELLING.get(spelling.trim().toLowerCase().replace(/\s+/g, ' '));
}

/** The units of the given dimensions. */
export function unitNames(dimensions: readonly Dimension[]): readonly Unit[] {
  return (Object.keys(UNITS) as Unit[]).filter((name) => dimensions.includes(UNITS[name].dimension));
}

/** Every spelling of every unit of the given dimensions, for finding the one that was meant. */
export function unitSpellings(dimensions: readonly Dimension[]): readonly string[] {
  return unitNames(dimensions).flatMap((name) => [name, ...UNITS[name].aliases]);
}
