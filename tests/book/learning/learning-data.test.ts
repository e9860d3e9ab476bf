import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CompileMemory } from '../../../src/book/compile-memory.ts';
import { learningData } from '../../../src/book/learning/learning-data.ts';
import { prepareBook } from '../../../src/book/prepare-book.ts';
import { readThings } from '../../../src/book/read/read-things.ts';
import { reportInto } from '../../../src/book/report.ts';
import type { Diagnostic } from '../../../src/diagnostics/diagnostic.ts';
import { EXAMPLE_BOOK } from '../../../src/diagnostics/examples.ts';
import type { LearningData, TaughtLook, TaughtMaterial } from '../../../src/learning/learning-data.ts';
import { labFromHex } from '../../../src/optics/display.ts';
import { labByDaylight } from '../../../src/optics/stated-colour.ts';
import { required } from '../../../src/values/required.ts';
import { FILMS, MEASURED, table } from '../measured-shelf.ts';
import { file } from '../sample.ts';

/** A shelf with films. */
const SHELF = { ...MEASURED, 'shelf/measurements.csv': table(FILMS) };

/** What the example book with other files besides can be learned from; any mistake in it is an error of the test. */
function dataOf(files: Readonly<Record<string, string>>, inOrder = (paths: string[]): string[] => paths): LearningData {
  const texts: Readonly<Record<string, string>> = { ...EXAMPLE_BOOK, ...files };
  const sources = inOrder(Object.keys(texts)).map((path) => ({ path, text: texts[path]! }));
  const diagnostics: Diagnostic[] = [];
  const report = reportInto(diagnostics);
  const memory = new CompileMemory();
  const things = readThings(sources, report, memory.things);
  const { shelf, recipes, filledChips } = prepareBook(things, memory, report);
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  return learningData(things.materials, shelf, recipes, filledChips.values()).data;
}

const looksOf = (files: Readonly<Record<string, string>>): readonly TaughtLook[] => dataOf(files).looks;
const materialOf = (files: Readonly<Record<string, string>>, id: string): TaughtMaterial =>
  required(dataOf(files).materials, id);
const colorant = (look: string): Readonly<Record<string, string>> => ({
  'shelf/colorants/sedge.md': file(`title: Sedge\nlook: ${look}`),
});
const smoke = (front: string): Readonly<Record<string, string>> => ({
  'colours/smoke.md': file(`title: Smoke\nmold: minnow\n${front}`),
});

/** Drops of .05 ml at 1 g/ml (the defaults of a colorant), in g per ml of plastic. */
const drops = (count: number, plasticMl: number): number => (count * 0.05) / plasticMl;

function expectLab(found: TaughtLook['overWhite'], hex: string): void {
  const { L, a, b } = labFromHex(hex);
  expect(found!.L).toBeCloseTo(L, 4);
  expect(found!.a).toBeCloseTo(a, 4);
  expect(found!.b).toBeCloseTo(b, 4);
}

describe('learningData() takes the label of a material', () => {
  test.each([
    ['{ kind: dye, colour: "#5d8a3a", dose: 10 drops per 100 ml }', 'dye', 10],
    ['{ kind: dye, colour: "#5d8a3a", dose: 10 drops per 100 ml, thickness: 3 mm }', 'dye', 3],
    ['{ kind: clear, colour: "#5d8a3a", dose: 10 drops per 100 ml }', 'dye', 10],
    ['{ kind: pigment, colour: "#5d8a3a", dose: 10 drops per 100 ml }', 'pigment', 6],
    ['{ kind: pearl, colour: "#5d8a3a", dose: 10 drops per 100 ml }', 'pearl', 6],
    ['{ kind: white, colour: "#5d8a3a", dose: 10 drops per 100 ml }', 'white', 6],
  ])('%s as a colour over white, off by 4', (look, kind, thicknessMm) => {
    const { prior, labels } = materialOf(colorant(look), 'sedge');
    const [label, ...others] = labels;
    expect(others).toEqual([]);
    const perDrop = kind === 'white' ? (label!.dose / 10) * 100 : 0.05;
    expect(prior).toEqual({ kind, typical: label!.dose });
    expect(label!.dose).toBeCloseTo((10 * perDrop) / 100, 12);
    expect(label!.thicknessMm).toBe(thicknessMm);
    expectLab(label!.overWhite, '#5d8a3a');
    expect(label!.overBlack).toBeUndefined();
    expect(label!.axisSd * Math.sqrt(3)).toBeCloseTo(4, 12);
  });

  test('with a channel at its end as one that tells next to nothing', () => {
    for (const colour of ['#00a0c0', '#a0ff30', '#3020FF']) {
      const { labels } = materialOf(colorant(`{ kind: dye, colour: "${colour}", dose: 10 drops per 100 ml }`), 'sedge');
      expect(labels[0]!.axisSd * Math.sqrt(3)).toBeCloseTo(8, 12);
    }
    const { labels } = materialOf(colorant('{ kind: dye, colour: "#100f0f", dose: 10 drops per 100 ml }'), 'sedge');
    expect(labels[0]!.axisSd * Math.sqrt(3)).toBeCloseTo(4, 12);
  });

  test('by chips as both views of each, off by 1.3, whatever light they were measured under', () => {
    const light = { lab: [60, 10, 20], light: 'A' } as const;
    const { prior, labels } = materialOf(
      colorant(
        `{ chips: [{ dose: 4 drops per 100 ml, thickness: 3 mm, over-white: "#c08040", over-black: "#302010" }, { dose: 8 drops per 100 ml, thickness: 6 mm, over-white: ${JSON.stringify(light)}, over-black: "#201810" }] }`,
      ),
      'sedge',
    );
    expect(prior).toEqual({ kind: 'unknown', typical: drops(8, 100) });
    expect(labels.map(({ dose, thicknessMm }) => [dose, thicknessMm])).toEqual([
      [drops(4, 100), 3],
      [drops(8, 100), 6],
    ]);
    expectLab(labels[0]!.overWhite, '#c08040');
    expectLab(labels[0]!.overBlack, '#302010');
    const daylight = labByDaylight({ lab: { L: 60, a: 10, b: 20 }, light: 'A' });
    expect(labels[1]!.overWhite!.a).toBeCloseTo(daylight.a, 4);
    for (const { axisSd } of labels) expect(axisSd * Math.sqrt(3)).toBeCloseTo(1.3, 12);
  });

  test('by chips of a photo, each with its doubt, and with a number for its camera that looks share', () => {
    const chip = 'thickness: 3 mm, over-white: { lab: [60, 10, 20] }, over-black: "#302010"';
    const data = dataOf({
      ...colorant(
        `{ chips: [{ dose: 4 drops per 100 ml, ${chip}, doubt: 8, contrast-doubt: 6 %, camera: tall phone }, { dose: 8 drops per 100 ml, ${chip}, camera: pocket }, { dose: 9 drops per 100 ml, ${chip}, doubt: 3 }] }`,
      ),
      ...smoke(
        'cups: { body: { plastic: 100 ml supple, log: [{ add: { sedge: 1 drop }, pour: 9 ml, seen: { over-white: "#b09468", camera: tall phone } }] } }',
      ),
    });
    const { labels } = required(data.materials, 'sedge');
    const bounds = labels.map(({ axisSd }) => axisSd * Math.sqrt(3) * 1.44);
    for (const [index, bound] of [8, 5, 3].entries()) expect(bounds[index]).toBeCloseTo(bound, 10);
    expect(labels.map(({ camera }) => camera)).toEqual(['2', '1', undefined]);
    expect(data.looks.map(({ camera }) => camera)).toEqual(['2']);
  });

  test('by chips beside its kind with what such materials are', () => {
    const chips = '[{ dose: 4 drops per 100 ml, thickness: 3 mm, over-white: "#c08040", over-black: "#302010" }]';
    expect(materialOf(colorant(`{ kind: pigment, chips: ${chips} }`), 'sedge').prior.kind).toBe('pigment');
  });

  test('by chips as a pearl that may have one hue over white and another over black', () => {
    const chips = '[{ dose: 4 drops per 100 ml, thickness: 3 mm, over-white: "#d5dbe0", over-black: "#3d4b68" }]';
    expect(materialOf(colorant(`{ kind: pearl, chips: ${chips} }`), 'sedge').prior.kind).toBe('twoViewPearl');
  });

  test('and nothing but K, S and their doubt of one with films', () => {
    const { materials } = dataOf(SHELF);
    const known = materials.filter(({ prior }) => prior.kind === 'known');
    expect(known.length).toBeGreaterThan(0);
    for (const { prior, labels } of known) {
      expect(labels).toEqual([]);
      expect(prior.kind === 'known' && prior.doubt.absorption).toHaveLength(3);
    }
  });

  test('with plastics and flake as they are, and without what does not colour', () => {
    const { materials } = dataOf({
      'shelf/flakes/copper.md': file('title: Copper .040\nlook: { colour: "#a05a2c" }\nsize: 0.040 in'),
      'shelf/additives/salt.md': file('title: Salt\nuse: salt'),
    });
    expect(materials.map(({ id, prior }) => [id, prior.kind])).toEqual([
      ['copper', 'flake'],
      ['frost', 'pearl'],
      ['peat', 'pigment'],
      ['supple', 'plastic'],
    ]);
  });
});

describe('learningData() takes every look', () => {
  const LOGGED = `cups:
  body:
    plastic: 100 ml supple
    log:
      - add: { peat: 6 drops }
        pour: 20 ml
        seen: { over-white: "#b09468", over-black: "#403020", thickness: 3 mm }
      - add: { peat: 4 drops }
        pour: 10 ml
        seen: [{ over-white: { lab: [50, 5, 20], light: D65 }, camera: pocket, doubt: 2 }, { over-white: "#a08458", thickness: 2 mm, after: hot, checked: true }]
      - new-cup: 50 ml supple
        add: { peat: 3 drops }
        pour: 10 ml
        seen: { over-white: "#b09468" }
      - note: only a word
        pour: 5 ml`;

  test('at a cup, round by round, with what was in it then', () => {
    const looks = looksOf(smoke(LOGGED));
    expect(looks.map(({ key, cup, round }) => [key, cup, round])).toEqual([
      ['smoke/body/1/1', 'smoke/body', 1],
      ['smoke/body/2/1', 'smoke/body', 2],
      ['smoke/body/2/2', 'smoke/body', 2],
      ['smoke/body/3/1', 'smoke/body#2', 3],
    ]);
    const layers = looks.map((look) => look.layers);
    expect(layers.map(([layer]) => layer!.thicknessMm)).toEqual([3, 9, 2, 9]);
    for (const [layer, ...behind] of layers) {
      expect(behind).toEqual([]);
      expect(layer!.plastics).toEqual([['supple', 1]]);
    }
    const peat = layers.map(([layer]) => layer!.contents[0]![1]);
    // A pour takes of everything alike: what is left of 20 of 100.3 ml (peat is as dense as water) still holds 6 drops in 100 ml.
    const left = 100 * (1 - 20 / (100 + 0.3));
    const second = drops(6, 100) + drops(4, left);
    for (const [index, dose] of [drops(6, 100), second, second, drops(3, 50)].entries())
      expect(peat[index]! / dose).toBeCloseTo(1, 5);
    expectLab(looks[0]!.overWhite, '#b09468');
    expectLab(looks[0]!.overBlack, '#403020');
    expect(looks[1]!.overWhite).toEqual({ L: 50, a: 5, b: 20 });
    expect(looks.map(({ means }) => means)).toEqual(['screen', 'screen', 'screen', 'screen']);
    const byInstrument = looksOf(smoke(LOGGED.replace(' camera: pocket,', '')));
    expect(byInstrument.map(({ means }) => means)).toEqual(['screen', 'instrument', 'screen', 'screen']);
    expect(looks.map(({ camera, checked }) => [camera, checked])).toEqual([
      [undefined, undefined],
      ['1', undefined],
      [undefined, true],
      [undefined, undefined],
    ]);
    // Nine in ten within the bound, which is 1.44 root mean squares of three axes: see `lookDoubt`.
    const bounds = looks.map(({ axisSd }) => axisSd * Math.sqrt(3) * 1.44);
    for (const [index, bound] of [5, 2, Math.hypot(5, 4), 5].entries()) expect(bounds[index]).toBeCloseTo(bound, 10);
  });

  test('with a channel at its end as one that is off by 6', () => {
    const looks = looksOf(
      smoke(
        'cups:\n  body:\n    plastic: 100 ml supple\n    log: [{ add: { peat: 6 drops }, pour: 9 ml, seen: { over-white: "#ffd0a0", doubt: 2 } }]',
      ),
    );
    expect(looks[0]!.axisSd * Math.sqrt(3)).toBeCloseTo(6, 12);
  });

  test('at a cup that comes from another, by the name of its own', () => {
    const looks = looksOf({
      ...smoke(LOGGED),
      'colours/haze.md': file(
        'title: Haze\nfrom: smoke\nmold: minnow\ncups:\n  body:\n    from: smoke/body\n    plastic: 80 ml\n    log: [{ add: { frost: 1 g }, pour: 9 ml, seen: { over-white: "#b8a088" } }]',
      ),
    });
    const [haze] = looks.filter(({ cup }) => cup === 'haze/body');
    expect(haze!.layers[0]!.contents.map(([id]) => id)).toEqual(['frost', 'peat']);
    expect(haze!.layers[0]!.contents[0]![1]).toBeCloseTo(1 / 80, 6);
    expect(looks).toHaveLength(5);
  });

  const TWO = `cups:
  back: { share: 40 %, plastic: 60 ml supple, add: { peat: 12 drops } }
  belly: { plastic: 60 ml supple, add: { frost: 1 g } }`;
  const seen = (fields: string): string => `seen: { over-white: "#b8a088"${fields} }`;

  test('at a laminate, through the side that faced the eye', () => {
    const sides = [seen(''), seen(', side: belly, thickness: 5 mm')].map(
      (look) => looksOf(smoke(`pattern: laminate\n${TWO}\n${look}`))[0]!,
    );
    expect(sides.map(({ key, cup }) => [key, cup])).toEqual([
      ['smoke//bait/1', 'smoke//bait'],
      ['smoke//bait/1', 'smoke//bait'],
    ]);
    const [near, far] = sides.map(({ layers }) =>
      layers.map(({ contents, thicknessMm }) => [contents[0]![0], thicknessMm]),
    );
    expect(near).toEqual([
      ['peat', 0.4 * 9],
      ['frost', 0.6 * 9],
    ]);
    expect(far).toEqual([
      ['frost', 3],
      ['peat', 2],
    ]);
  });

  test('at a swirl, as streaks, or at a streak that is named by itself', () => {
    const [whole, streak] = [seen(''), seen(', side: belly')].map(
      (look) => looksOf(smoke(`pattern: swirl\n${TWO}\n${look}`))[0]!,
    );
    expect(whole!.streaks).toEqual([0.4, 0.6]);
    expect(whole!.layers.map(({ contents, thicknessMm }) => [contents[0]![0], thicknessMm])).toEqual([
      ['peat', 9],
      ['frost', 9],
    ]);
    expect(streak!.streaks).toBeUndefined();
    expect(streak!.layers.map(({ contents, thicknessMm }) => [contents[0]![0], thicknessMm])).toEqual([['frost', 9]]);
  });

  test('at the tip of a tipped bait and at a core, each alone', () => {
    for (const [pattern, order] of [
      ['tipped', ''],
      ['core', 'order: core first\n'],
    ]) {
      const [look] = looksOf(smoke(`pattern: ${pattern}\n${order}${TWO}\n${seen(', side: belly')}`));
      expect(look!.layers.map(({ contents, thicknessMm }) => [contents[0]![0], thicknessMm])).toEqual([['frost', 9]]);
    }
  });

  test('but at a layer that faces nobody', () => {
    const three = `${TWO}\n  vein: { plastic: 60 ml supple }`;
    expect(looksOf(smoke(`pattern: layered\n${three.replace('40 %', '20 %')}\n${seen(', side: belly')}`))).toEqual([]);
  });

  test('at a bait of one cup as one of that cup, after the round that it was poured after', () => {
    const looks = looksOf(smoke(`${LOGGED}\n${seen(', rounds: { body: 1 }')}`));
    const bait = looks.find(({ key }) => key.includes('//bait'))!;
    expect(bait.cup).toBe('smoke/body');
    expect(bait.layers[0]!.contents[0]![1] / drops(6, 100)).toBeCloseTo(1, 5);
  });
});

test('learningData() takes every look at a chip, of a cup that no recipe has', () => {
  const chip = file(
    'title: Peat\nplastic: 100 ml\nadd: { peat: 2 drops }\nseen: [{ over-white: "#c8b48e", thickness: 3 mm }, { over-white: "#a8946e" }]',
  );
  const found = looksOf({ 'chips/smoke.md': chip }).filter(({ key }) => key.startsWith('chips/'));
  expect(found.map(({ key, cup, round }) => [key, cup, round])).toEqual([
    ['chips/smoke/chip/1/1', 'chips/smoke/chip', 1],
    ['chips/smoke/chip/1/2', 'chips/smoke/chip', 1],
  ]);
  expect(found.map(({ layers }) => layers)).toEqual(
    [3, 6].map((thicknessMm) => [{ plastics: [['supple', 1]], contents: [['peat', drops(2, 100)]], thicknessMm }]),
  );
});

test('learningData() is the same from files in any order, names every look once, and survives JSON', () => {
  const files = {
    ...SHELF,
    'colours/one.md': file(
      'title: One\nmold: minnow\ncups:\n  body:\n    plastic: 100 ml supple\n    log: [{ add: { peat: 6 drops }, pour: 9 ml, seen: { over-white: "#b09468" } }, { add: { frost: 1 g }, pour: 9 ml, seen: [{ over-white: "#b09468" }, { over-white: "#b09469" }] }]\nseen: [{ over-white: "#a09468" }, { over-white: "#a09368" }]',
    ),
    'colours/two.md': file('title: Two\nfrom: one\nmold: minnow\nseen: { over-white: "#a09468", camera: pocket }'),
  };
  const paths = Object.keys({ ...EXAMPLE_BOOK, ...files });
  const data = dataOf(files);
  expect(data.looks).toHaveLength(6);
  expect(new Set(data.looks.map(({ key }) => key)).size).toBe(6);
  expect(JSON.parse(JSON.stringify(data))).toEqual(data);
  fc.assert(
    fc.property(fc.shuffledSubarray(paths, { minLength: paths.length }), (order) => {
      expect(dataOf(files, () => order)).toEqual(data);
    }),
    { numRuns: 5 },
  );
});
