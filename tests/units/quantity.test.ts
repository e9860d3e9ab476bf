import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boundsMissed } from '../../src/units/bounds.ts';
import { celsius, grams, millilitres, millimetres } from '../../src/units/convert.ts';
import { gramsOfDose } from '../../src/units/dose.ts';
import { writeFix } from '../../src/units/edit.ts';
import { formatDose, formatQuantity, formatTemperature } from '../../src/units/format-quantity.ts';
import { parseDose, parseQuantity } from '../../src/units/parse-quantity.ts';
import { isFault, type Quantity } from '../../src/units/quantity.ts';
import { type Dimension, UNITS, type Unit, unitOf } from '../../src/units/unit.ts';

describe('units against their definitions (NIST SP 811; Handbook 44, Appendix C)', () => {
  // Exact by definition: a gallon of 231 in³, an inch of 25.4 mm, a pound of 453.592 37 g.
  const EXACT: readonly [Unit, number][] = [
    ['gal', 3785.411784],
    ['qt', 946.352946],
    ['pt', 473.176473],
    ['cup', 236.5882365],
    ['fl oz', 29.5735295625],
    ['tbsp', 14.78676478125],
    ['tsp', 4.92892159375],
    ['dash', 4.92892159375 / 8],
    ['pinch', 4.92892159375 / 16],
    ['smidgen', 4.92892159375 / 32],
    ['l', 1000],
  ];
  test.each(EXACT)('millilitres(1 %s) is the exact volume', (unit, ml) => {
    expect(millilitres({ amount: 1, unit })).toBeCloseTo(ml, 9);
  });
  test('grams(1 lb) and grams(1 oz) are exact', () => {
    expect(grams({ amount: 1, unit: 'lb' })).toBe(453.59237);
    expect(grams({ amount: 1, unit: 'oz' })).toBeCloseTo(28.349523125, 12);
  });
  test('millimetres(0.008 in) and (0.062 in) are the sizes of flake in millimetres', () => {
    expect(millimetres({ amount: 0.008, unit: 'in' })).toBeCloseTo(0.2032, 12);
    expect(millimetres({ amount: 0.062, unit: 'in' })).toBeCloseTo(1.5748, 12);
  });
  test('celsius(°F) agrees at the fixed points of water', () => {
    expect(celsius({ amount: 212, unit: '°F' })).toBeCloseTo(100, 12);
    expect(celsius({ amount: 32, unit: '°F' })).toBeCloseTo(0, 12);
    expect(formatTemperature(100, '°F')).toBe('212 °F');
  });
});

/** The edits of what is not read, in words. */
const fixOf = (parsed: object): string | undefined =>
  isFault(parsed) ? writeFix(parsed.edits ?? [], parsed.otherwise) : undefined;

describe('parseQuantity', () => {
  test.each([
    ['120 ml', 120, 'ml'],
    ['1 1/2 tsp', 1.5, 'tsp'],
    ['1½ tsp', 1.5, 'tsp'],
    ['1-1/2 tsp', 1.5, 'tsp'],
    ['½ cup', 0.5, 'cup'],
    ['3/8 tsp', 0.375, 'tsp'],
    ['.5 g', 0.5, 'g'],
    ['40%', 40, '%'],
    ['22 drops', 22, 'drop'],
    ['4 FL OZ', 4, 'fl oz'],
    ['4 fl. oz.', 4, 'fl oz'],
    ['171 °C', 171, '°C'],
  ] as const)('parseQuantity(%s) reads amount and unit', (text, amount, unit) => {
    expect(parseQuantity(text, ['volume', 'mass', 'drop', 'part', 'temperature'])).toEqual({ amount, unit });
  });
  test.each([
    ['12', 'a number alone'],
    ['some drops', 'begins with a number'],
    ['0 ml', 'above zero'],
    ['12 dorps', 'is not a unit that fits'],
    ['1,5 ml', 'with a point'],
    ['12 ml more', 'is not a unit that fits'],
    ['3/0 tsp', 'above zero'],
    ['-3 ml', 'above zero'],
    ['12 mm', 'measures a length'],
  ])('parseQuantity(%s) is a fault that says why', (text, why) => {
    const parsed = parseQuantity(text, ['volume', 'drop']);
    expect(isFault(parsed) && parsed.why).toContain(why);
  });
  test.each([
    ['1,5 ml', 'write `1.5 ml`'],
    ['0,125 ml', 'write `0.125 ml`'],
    ['1,000 ml', 'write `1000 ml`, or `1.000 ml` if the comma marks decimals'],
    ['12,000,000 ml', 'write `12000000 ml`'],
    ['1 000 ml', 'write `1000 ml`'],
    ['1_000 ml', 'write `1000 ml`'],
    ['1 000.5 ml', 'write `1000.5 ml`'],
    ["1'000,500 ml", 'write `1000.500 ml`'],
    ['1,234.5 ml', 'write `1234.5 ml`'],
    ['1.000,5 ml', 'write `1000.5 ml`'],
    ['1.234.567 ml', 'write `1234567 ml`'],
    [',5 ml', 'write `0.5 ml`'],
  ])('parseQuantity(%s) offers the number that may be meant', (text, fix) => {
    expect(fixOf(parseQuantity(text, ['volume']))).toBe(fix);
  });
  test.each(['1,5,2 ml', '1 00 ml', '1,0005,0 ml', '1.5.2 ml', '1,000 5 ml', '12.34,5 ml'])(
    'parseQuantity(%s) offers no number where none is plain, and says that it is the number',
    (text) => {
      expect(parseQuantity(text, ['volume'])).toMatchObject({
        found: `\`${text}\``,
        why: 'a number is digits without gaps, with a point before its decimals',
        edits: [],
      });
    },
  );
  test.each([
    ['12 cl', 'write `120 ml`'],
    ['1 dl', 'write `100 ml`'],
    ['15 Decilitres', 'write `1.5 l`'],
    ['50 µl', 'write `0.05 ml`'],
    ['0.5 kl', 'write `500 l`'],
    ['12 cc', 'write `12 ml`'],
    ['5 mil', 'write `5 ml`'],
    ['1 cm', 'write `10 mm`'],
    ['1/2 m', 'write `500 mm`'],
    ['35 thou', 'write `0.035 in`'],
    ['500 µg', 'write `0.5 mg`'],
    ['1 hg', 'write `100 g`'],
    ['2 ft', 'write `24 in`'],
    ['3 ‰', 'write `0.3 %`'],
  ])('parseQuantity(%s) offers what the unit comes to in one that the book knows: %s', (text, fix) => {
    const all = ['volume', 'mass', 'length', 'part'] as const;
    const [dimension] = all.filter((each) => fixOf(parseQuantity(text, [each])) !== undefined);
    const parsed = parseQuantity(text, all);
    expect(parsed).not.toHaveProperty('unknownUnit');
    expect(fixOf(parsed)).toBe(fix);
    expect(parseQuantity(/`(.*)`/.exec(fix)![1]!, [dimension!])).toHaveProperty('unit');
  });
  test('parseQuantity(mils) are thousandths of an inch where a length belongs', () => {
    expect(fixOf(parseQuantity('2 mil', ['length']))).toBe('write `0.002 in` if thousandths of an inch are meant');
  });
  test.each(['1 cm', '2 dram', '5 grains', '3 ft', '2 m', '1 dsp'])(
    'parseQuantity(%s) offers no volume in place of what is none',
    (text) => {
      const parsed = parseQuantity(text, ['volume']);
      expect(parsed).toMatchObject({ edits: [] });
      expect(parsed).not.toHaveProperty('unknownUnit');
    },
  );
  test.each([
    ['8 oz', 'write `8 fl oz`'],
    ['1 1/2 oz.', 'write `1 1/2 fl oz`'],
    ['pinch', 'write `1 pinch`'],
    ['one pinch', 'write `1 pinch`'],
    ['a pinch', 'write `1 pinch`'],
    ['half a tsp', 'write `1/2 tsp`'],
    ['Two drops', 'write `2 drops`'],
    ['ml', undefined],
    ['drops', undefined],
    ['some drops', undefined],
    ['constructor drops', undefined],
    ['8 lb', undefined],
    ['one gram', undefined],
  ])('parseQuantity(%s) offers %s where a volume or drops belong', (text, fix) => {
    const parsed = parseQuantity(text, ['volume', 'drop']);
    expect(fixOf(parsed)).toBe(fix);
  });
  test('parseQuantity(ounces) is a mass where there may be one', () => {
    expect(parseQuantity('8 oz', ['volume', 'mass'])).toEqual({ amount: 8, unit: 'oz' });
  });
  test('parseQuantity(0 of a unit) is an amount where there may be none', () => {
    expect(parseQuantity('0 fl oz', ['volume', 'mass'], 'none')).toEqual({ amount: 0, unit: 'fl oz' });
    for (const text of ['0', '0 mm', '-0 ml', '3/0 ml', '0.0001 ml'])
      expect(parseQuantity(text, ['volume'], 'none')).toHaveProperty('expected');
  });
  test('parseQuantity(formatQuantity(quantity)) is the quantity, to the digits shown', () => {
    const units = (Object.keys(UNITS) as Unit[]).filter((unit) => UNITS[unit].dimension !== 'temperature');
    fc.assert(
      fc.property(fc.constantFrom(...units), fc.double({ min: 0.01, max: 5000, noNaN: true }), (unit, amount) => {
        fc.pre(boundsMissed({ amount, unit }) === undefined);
        const back = parseQuantity(formatQuantity({ amount, unit }), [
          'volume',
          'mass',
          'length',
          'duration',
          'drop',
          'part',
        ]) as Quantity;
        expect(back.unit).toBe(unit);
        expect(Math.abs(back.amount / amount - 1)).toBeLessThan(0.006);
      }),
    );
  });
  test('unitOf(spelling) knows no spelling twice', () => {
    const spellings = (Object.keys(UNITS) as Unit[]).flatMap((unit) => [
      unit.toLowerCase(),
      ...UNITS[unit].aliases.filter((alias) => alias !== unit.toLowerCase()),
    ]);
    expect(new Set(spellings).size).toBe(spellings.length);
    expect(unitOf('Teaspoons')).toBe('tsp');
  });
});

describe('an amount beyond anything at a bench is a fault that says the bounds', () => {
  test.each([
    ['100000 kg', 'from 0.1 mg to 1000 kg'],
    ['0.0000000000001 g', 'from 0.1 mg to 1000 kg'],
    ['0.0000000000000001 ml', 'from 0.001 ml to 1000 l'],
    ['100000000 in', 'from 0.001 mm to 1000 mm'],
    ['1000000 drops', 'from 0.01 drops to 100000 drops'],
    ['2000 °C', 'from -20 °C to 500 °C'],
    ['2000 °F', 'from -4 °F to 932 °F'],
    ['2000 %', 'from 0.0001 % to 1000 %'],
    ['200 h', 'from 1 s to 100 h'],
  ])('%s', (text, bounds) => {
    const all: readonly Dimension[] = ['volume', 'mass', 'length', 'temperature', 'duration', 'drop', 'part'];
    expect(parseQuantity(text, all)).toMatchObject({ expected: `an amount ${bounds}` });
  });
  test('and the bounds themselves are amounts', () => {
    for (const text of ['1000 l', '1000 kg', '1 mg', '1000 mm', '500 °C', '932 °F', '1 °F', '1000 %']) {
      expect(parseQuantity(text, ['volume', 'mass', 'length', 'temperature', 'part'])).not.toHaveProperty('expected');
    }
  });
  test('a text of pages is none, and is not quoted whole', () => {
    const long = `1${' x'.repeat(25_000)}`;
    expect(parseQuantity(long, ['volume'])).toMatchObject({ found: expect.stringMatching(/^.{1,40}$/) });
    expect(parseDose(`${long} per ${long}`)).toMatchObject({ found: expect.stringMatching(/^.{1,40}$/) });
  });
});

describe('doses', () => {
  const handling = { gramsPerDrop: 0.05, gramsPerMl: 0.5 };
  const plastic = { ml: 236.5882365, grams: 250 };
  const dose = (text: string): number => {
    const parsed = parseDose(text);
    if (isFault(parsed)) throw new Error(parsed.expected);
    return gramsOfDose(parsed, handling, plastic);
  };
  test('gramsOfDose counts drops, spoons by bulk density, masses, and shares of the plastic by mass', () => {
    expect(dose('20 drops')).toBeCloseTo(1, 12);
    expect(dose('1 tsp')).toBeCloseTo(4.92892159375 * 0.5, 12);
    expect(dose('0.4 g')).toBe(0.4);
    expect(dose('2 %')).toBeCloseTo(5, 12);
    expect(dose('2 phr')).toBeCloseTo(5, 12);
  });
  test('gramsOfDose(rate) scales with the plastic in the cup', () => {
    expect(dose('10 drops per 4 fl oz')).toBeCloseTo(1, 9);
    expect(dose('3/8 tsp per cup')).toBeCloseTo(0.375 * 4.92892159375 * 0.5, 9);
  });
  test('gramsOfDose(3/4 tsp in 2 cups) of 0.040 flake is an ordinary load, about a third of a per cent (common practice, no source)', () => {
    const parsed = parseDose('3/4 tsp');
    if (isFault(parsed)) throw new Error(parsed.expected);
    const flake = gramsOfDose(parsed, { gramsPerDrop: 0, gramsPerMl: 0.55 }, { ml: 473, grams: 497 });
    expect(flake / 473).toBeGreaterThan(0.002);
    expect(flake / 473).toBeLessThan(0.008);
  });
  test('parseDose(share per volume) is a fault: a share already is one', () => {
    expect(parseDose('2 % per cup')).toMatchObject({ expected: '`2 %` alone' });
  });
  test.each([
    ['12 drops per 4 oz', 'write `12 drops per 4 fl oz`'],
    ['3 drops per oz', 'write `3 drops per 1 fl oz`'],
    ['a pinch per cup', 'write `1 pinch per cup`'],
    ['1,5 tsp per cup', 'write `1.5 tsp per cup`'],
    ['10 drops/100 ml', 'write `10 drops per 100 ml`'],
    ['1/2 tsp / cup', 'write `1/2 tsp per cup`'],
  ])('parseDose(%s) is a fault whose edit is one of the whole: %s', (text, fix) => {
    expect(parseDose(text)).toMatchObject({ found: `\`${text}\`` });
    expect(fixOf(parseDose(text))).toBe(fix);
    expect(parseDose(/`(.*)`/.exec(fix)![1]!)).toHaveProperty('per');
  });
  test('formatDose reads back', () => {
    for (const text of ['12 drops', '10 drops per 4 fl oz', '1 1/2 tsp per 1 cup', '2 %']) {
      const parsed = parseDose(text);
      if (isFault(parsed)) throw new Error(text);
      expect(parseDose(formatDose(parsed))).toEqual(parsed);
    }
  });
});
