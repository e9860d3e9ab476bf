import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts';
import { formatDiagnostics } from '../../src/diagnostics/format-diagnostics.ts';
import { bookWith, compileWith, file, recipeOf } from './sample.ts';

const FAHRENHEIT = { 'book.md': file('title: B\nunits: { temperature: °F }') };

const say = ({ file: path, start, severity, code, found, expected, why, fix }: Diagnostic): string =>
  `${path}:${start.line}:${start.column} ${severity} ${code} Unexpected ${found}, expected ${expected}, because ${why} → ${fix}`;
const told = (files: Readonly<Record<string, string>>): readonly string[] => compileWith(files).diagnostics.map(say);
const supple = (front: string): Record<string, string> => ({
  'shelf/plastics/supple.md': file(`title: Supple\n${front}`),
});
const frost = (front: string): Record<string, string> => ({
  'shelf/powders/frost.md': file(`title: Frost\n${front}\nlook: { kind: pearl, colour: "#e8e4da", dose: 1 % }`),
});
const heated = (heat: string): Record<string, string> => ({
  'colours/smoke.md': file(
    `title: Smoke\nmold: minnow\ncups:\n  body:\n    plastic: 120 ml supple\n    log:\n      - heat: ${heat}\n        add: { peat: 12 drops }`,
  ),
});
const SCORCHES = 'plastisol is jelly below it, and scorches and gives off hydrogen chloride above';

describe('the temperatures of a plastic', () => {
  test('a pouring range in the wrong scale is an error at each end, with the edit', () => {
    expect(told(supple('working: { from: 330 °C, to: 350 °C }'))).toEqual([
      `shelf/plastics/supple.md:3:18 error plastic/heat Unexpected 330 °C, expected a temperature from 120 °C to 205 °C, because ${SCORCHES} → write \`330 °F\``,
      `shelf/plastics/supple.md:3:30 error plastic/heat Unexpected 350 °C, expected a temperature from 120 °C to 205 °C, because ${SCORCHES} → write \`350 °F\``,
    ]);
  });
  test('a book in °F hears °F, with what the file says before it', () => {
    expect(told({ ...FAHRENHEIT, ...supple('highest: 375 °C') })).toEqual([
      `shelf/plastics/supple.md:3:10 error plastic/heat Unexpected 375 °C (707 °F), expected a temperature from 248 °F to 446 °F, because ${SCORCHES} → write \`375 °F\``,
    ]);
    expect(told({ ...FAHRENHEIT, ...supple('working: { from: 165 °F, to: 350 °F }') })).toEqual([
      `shelf/plastics/supple.md:3:18 error plastic/heat Unexpected 165 °F, expected a temperature from 248 °F to 401 °F, because ${SCORCHES} → write \`329 °F\``,
    ]);
  });
  test('a range that is too cold is one of the other scale', () => {
    expect(told(supple('working: { from: 165 °F, to: 177 °C }'))).toEqual([
      `shelf/plastics/supple.md:3:18 error plastic/heat Unexpected 165 °F (74 °C), expected a temperature from 120 °C to 205 °C, because ${SCORCHES} → write \`165 °C\``,
    ]);
  });
  test('one that is wrong beside others that are right is told alone', () => {
    expect(told(supple('working: { from: 330 °C, to: 350 °F }\nhighest: 375 F'))).toEqual([
      `shelf/plastics/supple.md:3:18 error plastic/heat Unexpected 330 °C, expected a temperature from 120 °C to 205 °C, because ${SCORCHES} → write \`330 °F\``,
    ]);
  });
  test('a number that fits in neither scale has no edit', () => {
    expect(told(supple('highest: 240 °C'))).toEqual([
      `shelf/plastics/supple.md:3:10 error plastic/heat Unexpected 240 °C, expected a temperature from 120 °C to 230 °C, because ${SCORCHES} → look at the supplier’s sheet again`,
    ]);
  });
  test('hotter than most is a warning', () => {
    expect(told(supple('working: { from: 180 °C, to: 200 °C }'))).toEqual([
      'shelf/plastics/supple.md:3:30 warning plastic/hot Unexpected pouring range up to 200 °C, expected at most 193 °C, as most plastisol is poured, because it scorches and gives off hydrogen chloride not far above (common practice, no source) → look at the supplier’s sheet again, and keep it if it says so',
    ]);
  });
  test('a reversed range, and a highest below it, are errors', () => {
    expect(told(supple('working: { from: 177 °C, to: 165 °C }'))).toEqual([
      'shelf/plastics/supple.md:3:18 error plastic/range Unexpected pouring range from 177 °C to 165 °C, expected the lower temperature as `from`, the higher as `to`, because nothing can be poured in it → exchange `from` and `to`, or correct one',
    ]);
    expect(told(supple('working: { from: 165 °C, to: 177 °C }\nhighest: 150 °C'))).toEqual([
      'shelf/plastics/supple.md:4:10 error plastic/range Unexpected highest of 150 °C with a pouring range from 165 °C, expected a highest temperature that is not below the pouring range, because the plastic could never be poured → correct `highest` or `working` by the supplier’s sheet',
    ]);
  });
  test('they are told of a file with another fault, too', () => {
    expect(told(supple('hardnes: soft\nhighest: 375 °C')).map((line) => line.split(' ')[2])).toEqual([
      'field/unknown',
      'plastic/heat',
    ]);
  });
  test('the bounds themselves are in order, in either scale', () => {
    for (const [working, highest] of [
      ['{ from: 140 °C, to: 193 °C }', '205 °C'],
      ['{ from: 284 °F, to: 379.4 °F }', '401 °F'],
    ]) {
      expect(told(supple(`working: ${working}\nhighest: ${highest}`))).toEqual([]);
      expect(told({ ...FAHRENHEIT, ...supple(`working: ${working}\nhighest: ${highest}`) })).toEqual([]);
    }
  });
  test('what few plastics are poured at is only warned of', () => {
    expect(told(supple('working: { from: 120 °C, to: 205 °C }\nhighest: 230 °C'))).toEqual([
      expect.stringContaining(
        ':3:18 warning plastic/cold Unexpected pouring range from 120 °C, expected at least 140 °C',
      ),
      expect.stringContaining(':3:30 warning plastic/hot Unexpected pouring range up to 205 °C'),
      expect.stringContaining(':4:10 warning plastic/hot Unexpected highest of 230 °C, expected at most 205 °C'),
    ]);
  });
  test('every edit that is offered is in order', () => {
    const degrees = fc.integer({ min: 0, max: 500 });
    fc.assert(
      fc.property(degrees, fc.constantFrom('°C', '°F'), fc.constantFrom({}, FAHRENHEIT), (amount, unit, book) => {
        const heat = `${Math.max(1, amount)} ${unit}`;
        const [found] = compileWith({ ...book, ...supple(`highest: ${heat}`) }).diagnostics;
        const edit = /^write `(.*)`$/.exec(found?.fix ?? '')?.[1];
        if (edit !== undefined) expect(told({ ...book, ...supple(`highest: ${edit}`) })).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the highest temperature of a material', () => {
  test('that no cup reaches is a warning, and the book says nothing of it', () => {
    const { book, diagnostics } = compileWith(frost('highest: 375 °C'));
    expect(diagnostics.map(say)).toEqual([
      'shelf/powders/frost.md:3:10 warning material/heat Unexpected 375 °C, expected a temperature from 120 °C to 230 °C, because no cup gets as hot, so that the book says nothing of it → write `375 °F`',
    ]);
    expect(book!.materials.find(({ id }) => id === 'frost')!.highest).toBeUndefined();
  });
  test('that is below hot plastic is a warning, and stays the limit', () => {
    const { book, diagnostics } = compileWith(frost('highest: 165 °F'));
    expect(diagnostics.map(say)).toEqual([
      'shelf/powders/frost.md:3:10 warning material/heat Unexpected 165 °F (74 °C), expected a temperature from 120 °C to 230 °C, because nothing that takes less goes into hot plastic → write `165 °C`',
    ]);
    expect(book!.materials.find(({ id }) => id === 'frost')!.highest).toBeCloseTo(73.9, 1);
  });
  test('never raises the limit of a cup', () => {
    const smoke = file('title: Smoke\nmold: minnow\ncups: { body: { plastic: 120 ml supple, add: { frost: 1 % } } }');
    const limit = (plastic: string): unknown =>
      compileWith({ ...supple(plastic), ...frost('highest: 225 °C'), 'colours/smoke.md': smoke }).book!.recipes[0]!
        .cups[0]!.limit;
    expect(limit('highest: 185 °C')).toEqual({ celsius: 185, material: 'supple' });
    expect(limit('working: { from: 160 °C, to: 175 °C }')).toEqual({
      celsius: 175,
      material: 'supple',
      ofRange: true,
    });
    expect(limit('hardness: soft')).toBeUndefined();
  });
});

describe('the heat of a log', () => {
  test('that fits in the other scale is an error with the edit', () => {
    expect(told(heated('340 °C'))).toEqual([
      'colours/smoke.md:8:15 error recipe/heat-scale Unexpected 340 °C, expected at most 200 °C, which is more than a cup is heated to, because the number fits in the other scale, and whoever pours by this one breathes hydrogen chloride → write `340 °F`',
    ]);
    expect(told({ ...FAHRENHEIT, ...heated('340 °C') })).toEqual([
      'colours/smoke.md:8:15 error recipe/heat-scale Unexpected 340 °C (644 °F), expected at most 392 °F, which is more than a cup is heated to, because the number fits in the other scale, and whoever pours by this one breathes hydrogen chloride → write `340 °F`',
    ]);
    expect(told(heated('340 °F'))).toEqual([]);
  });
  test.each(['215 °C', '430 °F', '480 °C'])('of %s is what was: a warning that says what happened', (heat) => {
    const { book, diagnostics } = compileWith(heated(heat));
    expect(diagnostics).toMatchObject([
      { code: 'recipe/burnt', severity: 'warning', start: { line: 8, column: 15 }, expected: 'at most 200 °C' },
    ]);
    expect(diagnostics[0]!.why).toBe(
      'vinyl breaks down there and gives off hydrogen chloride: that cup is spent, and its colour is no guide to the next one',
    );
    expect(diagnostics[0]!.fix).toMatch(/leave the cup where it is, switch the heat off, get out .*`care\/#smoke`/);
    expect(book!.recipes[0]!.cups[0]!.rounds[0]!.burnt).toBe(true);
  });
  test('at which nothing gels is a warning where the number fits in the other scale', () => {
    expect(told(heated('170 °F'))).toEqual([
      'colours/smoke.md:8:15 warning recipe/too-cold Unexpected 170 °F (77 °C), expected at least 120 °C, because plastisol is jelly below it, and the number fits in the other scale → write `170 °C`',
    ]);
    expect(told(heated('60 °C'))).toEqual([]);
  });
  test('points at its line in what is printed', () => {
    const files = heated('340 °C');
    const { diagnostics } = compileWith(files);
    expect(formatDiagnostics(diagnostics, new Map(Object.entries(files)))).toContain(
      '    8 |       - heat: 340 °C\n      |               ^^^^^^',
    );
  });
});

describe('what is poured together', () => {
  test('plastics that share no range are a warning', () => {
    expect(
      told({
        ...supple('working: { from: 150 °C, to: 162 °C }'),
        'shelf/plastics/stout.md': file('title: Stout\nworking: { from: 166 °C, to: 180 °C }'),
        'colours/smoke.md': file(
          'title: Smoke\nmold: minnow\ncups:\n  body:\n    plastic: [60 ml supple, 60 ml stout]',
        ),
      }),
    ).toEqual([
      'colours/smoke.md:6:5 warning recipe/no-range Unexpected Supple, poured at 162 °C at most, with Stout, poured from 166 °C, expected plastics with a common pouring range, because at any heat one of them is too cold to pour, or too hot → use one of them, or ask their suppliers whether they go together',
    ]);
  });
  test('cups of a laminate are shot together, those of a bait in layers are not', () => {
    const two = (pattern: string): readonly string[] =>
      told({
        ...supple('working: { from: 150 °C, to: 162 °C }'),
        'shelf/plastics/stout.md': file('title: Stout\nworking: { from: 166 °C, to: 180 °C }'),
        'colours/smoke.md': file(
          `title: Smoke\nmold: minnow\npattern: ${pattern}\ncups:\n  back: { plastic: 60 ml supple }\n  belly: { plastic: 60 ml stout }`,
        ),
      });
    expect(two('laminate')).toEqual([
      'colours/smoke.md:7:3 warning recipe/no-range Unexpected Supple, poured at 162 °C at most, with Stout, poured from 166 °C, expected plastics with a common pouring range in the cups of a laminate, because they are shot together, and at any heat one of them is too cold or too hot → use the plastic of the other cup',
    ]);
    expect(two('layered')).toEqual([]);
  });
  test('a scent that bears less is not said to scorch before, since it goes in last', () => {
    const [scent] = told({
      ...FAHRENHEIT,
      ...supple('working: { from: 330 °F, to: 350 °F }'),
      'shelf/additives/scent.md': file('title: Garlic\nuse: scent\ndrop: 0.05 ml\nhighest: 300 °F'),
      'colours/smoke.md': file(
        'title: Smoke\nmold: minnow\ncups:\n  body:\n    plastic: 60 ml supple\n    add:\n      scent: 5 drops',
      ),
    });
    expect(scent).toMatch(/Garlic, which takes 300 °F/);
    expect(scent).toMatch(
      /because even stirred in last, off the heat, it meets plastic that still pours → leave Garlic/,
    );
  });
  test('a material that scorches before its plastic pours is a warning, in the book’s unit', () => {
    expect(
      told({
        ...FAHRENHEIT,
        ...supple('working: { from: 330 °F, to: 350 °F }'),
        ...frost('highest: 300 °F'),
        'colours/smoke.md': file(
          'title: Smoke\nmold: minnow\ncups:\n  body:\n    plastic: 60 ml supple\n    add:\n      frost: 1 %',
        ),
      }),
    ).toEqual([
      'colours/smoke.md:8:14 warning recipe/no-range Unexpected Frost, which takes 300 °F, with Supple, poured from 330 °F, expected what takes the heat at which its plastic is poured, because it scorches before the plastic runs → leave Frost out, or correct `highest` in its file',
    ]);
  });
});

describe('how much a cup of plastic takes', () => {
  const salted = (amount: string, salt = 'bulk: 1.2 g/ml'): Record<string, string> => ({
    'shelf/additives/salt.md': file(`title: Salt\n${salt}`),
    'colours/smoke.md': file(
      `title: Smoke\nmold: minnow\ncups:\n  body:\n    plastic: 100 ml supple\n    add:\n      salt: ${amount}`,
    ),
  });
  test('more of other things than of plastic is an error', () => {
    expect(told(salted('120 %'))).toEqual([
      'colours/smoke.md:8:13 error recipe/more-than-plastic Unexpected 120 % of other things in the plastic, of which Salt is 126 g per 100 ml, expected less of them than of plastic, by mass, because a bait is made of plastic, and what holds more of something else does not set → correct the number or the unit',
    ]);
  });
  test('in a log it is a warning: a log is what was', () => {
    const logged = salted('120 %')['colours/smoke.md']!.replace(
      'add:\n      salt: 120 %',
      'log:\n      - add: { salt: 120 % }',
    );
    expect(told({ ...salted('1 %'), 'colours/smoke.md': logged })).toEqual([
      'colours/smoke.md:8:22 warning recipe/overloaded Unexpected 120 % of other things in the plastic, of which Salt is 126 g per 100 ml, expected less of them than of plastic, by mass, because a bait is made of plastic, and what holds more of something else does not set → correct the number or the unit',
    ]);
  });
  test('more of one than is usual is a warning, unless its file says how much', () => {
    expect(told(salted('80 %'))).toEqual([
      'colours/smoke.md:8:13 warning recipe/overloaded Unexpected 80 % of Salt (84 g per 100 ml), expected at most 67 % of an additive, by mass of the plastic, because more weakens the bait, or does not stay in it (common practice, no source) → correct the number or the unit, or write `most` in its file if its supplier allows as much',
    ]);
    expect(told(salted('80 %', 'bulk: 1.2 g/ml\nmost: 85 %'))).toEqual([]);
    expect(told(salted('60 %'))).toEqual([]);
  });
});

test('nobody asks how much heat salt bears, and of anything else without a highest temperature somebody does', () => {
  const unknown = (extra: string): readonly string[] => {
    const book = bookWith({
      'shelf/additives/salt.md': file(`title: Salt\nbulk: 1.2 g/ml\n${extra}`),
      'shelf/colorants/peat.md': file(
        'title: Peat\nhighest: 190 °C\nlook: { kind: pigment, colour: "#5b4327", dose: 12 drops per 100 ml }',
      ),
      'colours/smoke.md': file(
        'title: Smoke\nmold: minnow\ncups: { body: { plastic: 100 ml supple, add: { peat: 9 drops, salt: 10 g } } }',
      ),
    });
    return recipeOf(book, 'smoke').cups[0]!.limitUnknown;
  };
  expect(unknown('')).toEqual(['salt']);
  expect(unknown('use: salt')).toEqual([]);
});
