/**
 * Units that the book does not know, so that none of them is taken for a slip of the pen in one that it does.
 *
 * Metric prefixes: BIPM, The International System of Units, 9th edition, table 7. A foot of 12 in, a yard of 36 in and a grain of
 * 64.798 91 mg (exact): NIST Handbook 44, Appendix C.
 *
 * @packageDocumentation
 */
import type { Edit } from './edit.ts';
import { type Dimension, UNITS, type Unit } from './unit.ts';

/** What a unit comes to in one that the book knows, and when it is what was meant. */
interface Foreign {
  readonly size: number;
  readonly unit: Unit;
  readonly when?: string;
}

const PREFIXES: Readonly<Record<string, number>> = {
  '': 1,
  n: 1e-9,
  nano: 1e-9,
  µ: 1e-6,
  μ: 1e-6,
  u: 1e-6,
  mc: 1e-6,
  micro: 1e-6,
  m: 1e-3,
  milli: 1e-3,
  c: 1e-2,
  centi: 1e-2,
  d: 1e-1,
  deci: 1e-1,
  da: 10,
  deca: 10,
  h: 100,
  hecto: 100,
  k: 1000,
  kilo: 1000,
};

const METRIC =
  /^(?:(?<sign>n|µ|μ|u|mc|m|c|d|da|h|k)?(?<short>[lgm])|(?<word>nano|micro|milli|centi|deci|deca|hecto|kilo)?(?<long>litre|liter|gram|metre|meter)s?)$/;

/** The units of each that an amount is told in, each with its size in litres, grams or metres: the largest first. */
const TOLD_IN: Readonly<Record<string, readonly (readonly [Unit, number])[]>> = {
  l: [
    ['l', 1],
    ['ml', 1e-3],
  ],
  g: [
    ['kg', 1000],
    ['g', 1],
    ['mg', 1e-3],
  ],
  m: [['mm', 1e-3]],
};

const THOUSANDTHS = 'thousandths of an inch are meant';

const OTHERS: ReadonlyMap<string, Foreign> = new Map([
  ...(['cc', 'ccm', 'cm3', 'cm³'] as const).map((name) => [name, { size: 1, unit: 'ml' }] as const),
  ...(['ft', 'foot', 'feet', "'"] as const).map((name) => [name, { size: 12, unit: 'in' }] as const),
  ...(['yd', 'yard', 'yards'] as const).map((name) => [name, { size: 36, unit: 'in' }] as const),
  ...(['thou', 'thous'] as const).map((name) => [name, { size: 0.001, unit: 'in' }] as const),
  ...(['mil', 'mils'] as const).map((name) => [name, { size: 0.001, unit: 'in', when: THOUSANDTHS }] as const),
  ...(['micron', 'microns'] as const).map((name) => [name, { size: 0.001, unit: 'mm' }] as const),
  ...(['grain', 'grains'] as const).map((name) => [name, { size: 64.79891, unit: 'mg' }] as const),
  ...(['‰', 'per mille', 'permille'] as const).map((name) => [name, { size: 0.1, unit: '%' }] as const),
  ['tb', { size: 1, unit: 'tbsp' }],
  ['ppm', { size: 0.0001, unit: '%' }],
] as readonly (readonly [string, Foreign])[]);

/** What is measured otherwise from place to place, or has no size: nothing can be offered in its place. */
const WITHOUT_SIZE: ReadonlySet<string> = new Set(
  [
    'd gtt dram drams dr gill gills dessertspoon dessertspoons dsp jigger shot shots ct carat carats k kelvin ppb ppt ton tons tonne t',
    'jar jars bottle bottles jug jugs bag bags tub tubs can cans box boxes pack packs squirt squirts scoop scoops capful capfuls',
  ].flatMap((names) => names.split(' ')),
);

/**
 * The edits for an amount in a unit that the book does not know, converted: none where it cannot be, undefined where the text is no such unit.
 *
 * @example foreignUnitEdits(12, 'cl', ['volume']) // [{ text: '120 ml' }]
 */
export function foreignUnitEdits(
  amount: number,
  spelling: string,
  dimensions: readonly Dimension[],
): readonly Edit[] | undefined {
  const name = spelling.toLowerCase().replace(/\s+/g, ' ');
  // Who counts a liquid in "mils" says millilitres.
  if (/^mils?$/.test(name) && dimensions.includes('volume')) return [{ text: `${amount} ml` }];
  // And who holds a cup for "m" says minutes.
  if (name === 'm' && dimensions.includes('duration')) return [{ text: `${amount} min` }];
  if (WITHOUT_SIZE.has(name)) return [];
  const foreign = OTHERS.get(name) ?? metric(amount, name);
  if (foreign === undefined) return undefined;
  if (!dimensions.includes(UNITS[foreign.unit].dimension)) return [];
  const number = String(Number((amount * foreign.size).toPrecision(12)));
  const when = foreign.when === undefined ? {} : { when: foreign.when };
  return number.includes('e') ? [] : [{ text: `${number} ${foreign.unit}`, ...when }];
}

/** A metric unit with a prefix, in the largest unit of the book of which it is one at least. */
function metric(amount: number, name: string): Foreign | undefined {
  const { sign, word, short, long } = METRIC.exec(name)?.groups ?? {};
  const base = short ?? long?.[0];
  const prefix = PREFIXES[sign ?? word ?? ''];
  const units = base === undefined ? undefined : TOLD_IN[base];
  if (units === undefined || prefix === undefined) return undefined;
  const [unit, size] = units.find(([, one]) => amount * prefix >= one) ?? units.at(-1)!;
  return { size: prefix / size, unit };
}
