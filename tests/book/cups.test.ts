import { describe, expect, test } from 'vitest';
import type { Cup } from '../../src/book/model/cup.ts';
import { bookWith, compileWith, dose, file, recipeOf } from './sample.ts';

const PEAT_DROP = 0.05; // g: the default drop of 0.05 ml at 1 g/ml
// A dye, so that more of it is seen: the peat of the example book hides at a few drops.
const STRAW = {
  'shelf/colorants/straw.md': file(
    'title: Straw\nlook: { kind: dye, colour: "#b98a3a", dose: 20 drops per 100 ml, thickness: 9 mm }',
  ),
};

describe('a cup with a log', () => {
  const log = file(`
title: Logged
mold: minnow
cups:
  body:
    plastic: 100 ml supple
    log:
      - add: { straw: 20 drops }
      - heat: 174 °C
        pour: 31 ml
        seen: { over-white: "#8a6a45", note: too light }
      - reheat: true
        add: { straw: 10 drops }
      - pour: 14 ml
        seen: { over-white: "#6a4a35", over-black: "#4a3a25" }
`);
  const [cup] = recipeOf(bookWith({ ...STRAW, 'colours/logged.md': log }), 'logged').cups;

  test('compileBook keeps the ledger: later additions go into less plastic', () => {
    // 100 ml with 1 g in it (1 ml more); 31 ml poured of 101 leaves 70/101 of both; then half a gram.
    const plastic = (100 * 70) / 101;
    expect(dose(cup!, 'straw')).toBeCloseTo(((20 * PEAT_DROP * 70) / 101 + 10 * PEAT_DROP) * (100 / plastic), 9);
    expect(cup!.naive!.contents).toEqual([
      { material: 'straw', gramsPerMl: expect.closeTo((30 * PEAT_DROP) / 100, 9) },
    ]);
    expect(cup!.naive!.deltaE).toBeGreaterThan(0.5);
    expect(cup!.leftMl).toBeCloseTo(70 + 0.5 - 14, 9);
  });
  test('compileBook gathers the steps into rounds that end where something is added after a pour', () => {
    expect(
      cup!.rounds.map((round) => [round.number, round.pouredMl, round.heatedTo, round.reheated, round.seen[0]?.note]),
    ).toEqual([
      [1, 31, 174, false, 'too light'],
      [2, 14, undefined, true, undefined],
    ]);
    expect(cup!.rounds[1]!.change!.words).toContain('darker');
    expect(cup!.rounds[1]!.change!.doses[0]!.to).toBeCloseTo(dose(cup!, 'straw'), 9);
    expect(cup!.rounds[1]!.seen[0]!.missedBy).toEqual({ overWhite: expect.any(Number), overBlack: expect.any(Number) });
    expect(cup!.highestReached).toBe(174);
    expect(cup!.reheats).toBe(1);
  });
  test('compileBook keeps the recipe of a cup that was poured empty', () => {
    const emptied = log.replace('pour: 14 ml', 'pour: 70.5 ml');
    const [poured] = recipeOf(bookWith({ ...STRAW, 'colours/logged.md': emptied }), 'logged').cups;
    expect(poured!.leftMl).toBeCloseTo(0, 6);
    expect(dose(poured!, 'straw')).toBeCloseTo(dose(cup!, 'straw'), 9);
  });
  test('compileBook gives every step that pours too much its own line', () => {
    const { diagnostics } = compileWith({ ...STRAW, 'colours/logged.md': log.replace('pour: 14 ml', 'pour: 140 ml') });
    expect(diagnostics.map(({ code, start, fix }) => [code, start.line, fix])).toEqual([
      ['recipe/over-poured', 14, 'write `pour: 70.5 ml`, or correct an earlier step'],
    ]);
  });
});

describe('a cup that was begun afresh within its log', () => {
  const text = file(`
title: Afresh
mold: minnow
cups:
  body:
    plastic: 100 ml supple
    log:
      - { add: { straw: 20 drops } }
      - { heat: 178 °C, pour: 31 ml, seen: { over-white: "#8a6a45" } }
      - { new-cup: 80 ml supple, add: { straw: 8 drops } }
      - { heat: 170 °C, pour: 20 ml, seen: { over-white: "#a08060" } }
`);
  const afresh = { ...STRAW, 'colours/afresh.md': text };
  const [cup] = recipeOf(bookWith(afresh), 'afresh').cups;

  test('compileBook takes the last cup for the recipe, with its plastic, its notes and its heat', () => {
    expect(dose(cup!, 'straw')).toBeCloseTo((8 * PEAT_DROP * 100) / 80, 9);
    expect(cup!.naive!.contents).toEqual([{ material: 'straw', gramsPerMl: expect.closeTo((8 * PEAT_DROP) / 80, 9) }]);
    expect(cup).toMatchObject({ startMl: 80, highestReached: 170 });
    expect(cup!.leftMl).toBeCloseTo(80.4 - 20, 9);
  });
  test('compileBook keeps all rounds, and to the gram what was poured away', () => {
    const [first, second] = cup!.rounds;
    expect(cup!.rounds.map(({ number, seen }) => [number, seen.length])).toEqual([
      [1, 1],
      [2, 1],
    ]);
    expect(second!.newCup!.plasticMl).toBe(80);
    expect(second!.newCup!.pouredAway).toEqual(first!.left);
    expect(second!.newCup!.pouredAwayMl).toBeCloseTo(70, 9);
    expect(second!.newCup!.pouredAway.materials.straw! + (31 / 101) * first!.cup.materials.straw!).toBeCloseTo(1, 9);
    expect(second).not.toHaveProperty('unlogged');
  });
  test('compileBook gives a recipe that comes from it the last cup', () => {
    const child = file('title: Child\nmold: minnow\nfrom: afresh\ncups: { body: { add: { straw: 4 drops } } }');
    const [derived] = recipeOf(bookWith({ ...afresh, 'colours/child.md': child }), 'child').cups;
    expect(derived!.startMl).toBe(80);
    expect(dose(derived!, 'straw')).toBeCloseTo((12 * PEAT_DROP * 100) / 80, 9);
  });
  test('compileBook judges a heat by the cup that was heated', () => {
    const tender = file(
      'title: Tender\nlook: { kind: dye, colour: "#b98a3a", dose: 20 drops per 100 ml, thickness: 9 mm }\nhighest: 172 °C',
    );
    const told = (log: string): readonly string[] =>
      compileWith({
        ...afresh,
        'shelf/colorants/tender.md': tender,
        'colours/afresh.md': log,
      }).diagnostics.flatMap(({ code, start }) => (code === 'recipe/too-hot' ? [`${start.line}`] : []));
    expect(told(text.replace('straw: 8', 'tender: 8'))).toEqual([]);
    expect(told(text.replace('straw: 20', 'tender: 20'))).toEqual(['9']);
  });
  test('compileBook tells of a plastic of it that is not on the shelf', () => {
    const { diagnostics } = compileWith({
      ...afresh,
      'colours/afresh.md': text.replace('80 ml supple', '80 ml suple'),
    });
    expect(diagnostics.map(({ code, start }) => [code, start.line])).toContainEqual(['recipe/unknown-plastic', 10]);
  });
});

describe('a cup that comes from another', () => {
  const deeper = (inside: string): string =>
    file(`title: Deeper\nmold: minnow\ncups:\n  body:\n    from: smoke\n${inside}`);
  const cupOf = (inside: string): ReturnType<typeof recipeOf>['cups'][number] =>
    recipeOf(bookWith({ 'colours/deeper.md': deeper(inside) }), 'deeper').cups[0]!;
  const smoke = (12 * PEAT_DROP * 100) / 120;

  test('compileBook scales it to its own plastic', () => {
    expect(dose(cupOf('    plastic: 300 ml'), 'peat')).toBeCloseTo(smoke, 9);
  });
  test('compileBook adds on top, sets instead, and leaves out', () => {
    expect(dose(cupOf('    add: { peat: 6 drops }'), 'peat')).toBeCloseTo(smoke * 1.5, 9);
    expect(dose(cupOf('    set: { peat: 6 drops }'), 'peat')).toBeCloseTo(smoke * 0.5, 9);
    expect(dose(cupOf('    without: peat\n    add: { frost: 1 % }'), 'peat')).toBe(0);
    expect(dose(cupOf('    add: { peat: 2 drops per 100 ml }'), 'peat')).toBeCloseTo(smoke + 2 * PEAT_DROP, 9);
  });
  test('compileBook recomputes what is below when a parent changes', () => {
    const changed = {
      'colours/smoke.md': file(
        'title: Smoke\nmold: minnow\ncups:\n  body:\n    plastic: 120 ml supple\n    add: { peat: 24 drops }',
      ),
    };
    const book = bookWith({ ...changed, 'colours/deeper.md': deeper('    add: { peat: 6 drops }') });
    expect(dose(recipeOf(book, 'deeper').cups[0]!, 'peat')).toBeCloseTo(smoke * 2.5, 9);
  });
  test('compileBook gives a derived recipe the cups, pattern and mold that it does not state', () => {
    const two = file(
      'title: Two\nmold: minnow\npattern: laminate\ncups:\n  back:\n    share: 40%\n    plastic: 80 ml supple\n    add: { peat: 12 drops }\n  belly:\n    plastic: 120 ml supple\n    add: { frost: 1 % }',
    );
    const child = file('title: Child\nfrom: two\ncups:\n  belly:\n    add: { peat: 1 drop per 100 ml }');
    const book = bookWith({ 'colours/two.md': two, 'colours/child.md': child });
    const recipe = recipeOf(book, 'child');
    expect(recipe).toMatchObject({ pattern: 'laminate', mold: 'minnow', parent: 'two', family: 'two' });
    expect(recipe.cups.map(({ name, share }) => [name, share])).toEqual([
      ['back', 0.4],
      ['belly', expect.closeTo(0.6, 12)],
    ]);
    expect(dose(recipe.cups[1]!, 'peat')).toBeCloseTo(PEAT_DROP, 9);
    expect(recipe.changes.map(({ cup, change }) => [cup, change.doses.map(({ material }) => material)])).toEqual([
      ['back', []],
      ['belly', ['peat']],
    ]);
    expect(recipeOf(book, 'two').children).toEqual(['child']);
  });
});

describe('a bait of several cups', () => {
  const cups =
    'cups:\n  back:\n    share: 40%\n    plastic: 80 ml supple\n    add: { peat: 1 drop }\n  belly:\n    plastic: 120 ml supple\n    add: { frost: 1 % }';
  test('compileBook shows each side of a laminate seen through the other', () => {
    const recipe = recipeOf(
      bookWith({ 'colours/two.md': file(`title: Two\nmold: minnow\npattern: laminate\n${cups}`) }),
      'two',
    );
    const [back, belly] = recipe.cups;
    expect(recipe.body.overWhite.lab.L).toBeLessThan(belly!.body.overWhite.lab.L);
    expect(recipe.other!.overWhite.lab.L).toBeGreaterThan(recipe.body.overWhite.lab.L);
    expect(recipe.body.overWhite.hex).not.toBe(back!.body.overWhite.hex);
    expect(recipe.contrast!.deltaE).toBeGreaterThan(2);
  });
  test.each(['laminate', 'swirl', 'core', 'tipped', 'layered'])(
    'compileBook counts the flakes of a cup of a %s in its share of the cavity',
    (pattern) => {
      const files = {
        'shelf/flakes/copper.md': file('title: Copper\nsize: 0.040 in\nlook: { colour: "#b8693a" }'),
        'colours/two.md': file(
          `title: Two\nmold: minnow\npattern: ${pattern}\ncups:\n  one:\n    share: 30%\n    plastic: 80 ml supple\n    add: { copper: 1/8 tsp }\n  rest:\n    plastic: 120 ml supple`,
        ),
      };
      const book = bookWith(files);
      const [flake] = recipeOf(book, 'two').cups[0]!.flakes;
      const { cavityMl } = book.molds.find(({ id }) => id === 'minnow')!;
      expect(flake!.perBait / (flake!.flakesPerMl * cavityMl)).toBeCloseTo(0.3, 9);
    },
  );
  test('compileBook does not care for the order of the files', () => {
    const files = {
      'colours/two.md': file(`title: Two\nmold: minnow\npattern: swirl\n${cups}`),
      'colours/child.md': file('title: Child\nfrom: two'),
    };
    const forward = bookWith(files);
    const backward = bookWith(Object.fromEntries(Object.entries(files).reverse()));
    expect(JSON.stringify(backward)).toBe(JSON.stringify(forward));
  });
  test('JSON.parse(JSON.stringify(book)) is the book', () => {
    const book = bookWith({ 'colours/two.md': file(`title: Two\nmold: minnow\npattern: core\n${cups}`) });
    expect(JSON.parse(JSON.stringify(book))).toEqual(book);
    expect(JSON.stringify(book)).not.toContain('null');
  });
});

describe('what a cup’s flake meets of the lines of sight', () => {
  // Cauchy: a line of sight meets a flake of n per mm³ and area A within z with the chance 1 − exp(−n A z / 2).
  const area = (Math.sqrt(3) / 2) * 1.016 ** 2;
  const inPattern = (
    pattern: string,
    finish = 'metallic',
  ): { readonly met: number; readonly through: (mm: number) => number } => {
    const book = bookWith({
      'shelf/flakes/copper.md': file(`title: Copper\nsize: 0.040 in\nfinish: ${finish}\nlook: { colour: "#b8693a" }`),
      'colours/two.md': file(
        `title: Two\nmold: minnow\npattern: ${pattern}\ncups:\n  main: { share: 30%, plastic: 100 ml, add: { copper: 1 g } }\n  other: { plastic: 100 ml }`,
      ),
    });
    const [flake] = recipeOf(book, 'two').cups[0]!.flakes;
    const perMm = flake!.flakesPerMl / 1000;
    return { met: flake!.coverage, through: (mm) => 1 - Math.exp((-perMm * area * mm) / 2) };
  };
  // The body of the mold is 9 mm.
  test.each(['laminate', 'layered'])('%s: all of them, through the cup’s part of the thickness', (pattern) => {
    const { met, through } = inPattern(pattern);
    expect(met).toBeCloseTo(through(0.3 * 9), 6);
  });
  test('core: all of them, through the shell on both sides of a core with √0.7 of the diameter', () => {
    const { met, through } = inPattern('core');
    expect(met).toBeCloseTo(through((1 - Math.sqrt(0.7)) * 9), 6);
  });
  test('a flake that lets light through is met as often as one that does not', () => {
    const { met, through } = inPattern('laminate', 'translucent');
    expect(met).toBeCloseTo(through(0.3 * 9), 6);
  });
  test.each(['swirl', 'tipped'])('%s: its share of them, all the way', (pattern) => {
    const { met, through } = inPattern(pattern);
    expect(met).toBeCloseTo(0.3 * through(9), 6);
  });
});

describe('what is seen of a cup’s flake', () => {
  const flakedWith = (pattern: string, chalk: string, other = ''): Cup['flakes'][number] => {
    const book = bookWith({
      'shelf/flakes/copper.md': file('title: Copper\nsize: 0.040 in\nlook: { colour: "#b8693a" }'),
      'shelf/colorants/chalk.md': file(
        'title: Chalk\nlook: { kind: white, colour: "#f0f0ee", dose: 10 drops per 100 ml }',
      ),
      'colours/two.md': file(
        `title: Two\nmold: minnow\npattern: ${pattern}\ncups:\n  main: { share: 30%, plastic: 100 ml, add: { copper: 1 g, chalk: ${chalk} } }\n  other: { plastic: 100 ml${other} }`,
      ),
    });
    return recipeOf(book, 'two').cups[0]!.flakes[0]!;
  };
  const patterns = ['laminate', 'layered', 'core', 'swirl', 'tipped', 'striped'] as const;

  test.each(patterns)('%s: nearly all of it where the plastic is clear, and no more than there is', (pattern) => {
    const { seen, coverage } = flakedWith(pattern, '0.001 g');
    expect(seen).toBeLessThanOrEqual(coverage);
    expect(seen).toBeGreaterThan(0.9 * coverage);
  });

  test.each(patterns)('%s: far less of it where the plastic is solid', (pattern) => {
    const { seen, coverage, contrast } = flakedWith(pattern, '1.5 g');
    expect(seen).toBeLessThan(0.6 * coverage);
    expect(seen).toBeGreaterThan(0);
    expect(contrast).toBeGreaterThan(20);
  });

  test('laminate: a cup is looked at from its own side, whatever the other hides', () => {
    const { seen, coverage } = flakedWith('laminate', '0.001 g', ', add: { chalk: 3 g }');
    expect(seen).toBeGreaterThan(0.8 * coverage);
  });
});

test('a plastic without a highest temperature is not heated above its pouring range without a word', () => {
  const heated = (plastic: string): readonly string[] =>
    compileWith({
      'shelf/plastics/soft.md': file(`title: Soft\n${plastic}`),
      'colours/smoke.md': file(
        'title: Smoke\nmold: minnow\ncups: { body: { plastic: 100 ml soft, log: [{ add: { peat: 9 drops }, heat: 195 °C }] } }',
      ),
    })
      .diagnostics.filter(({ code }) => code === 'recipe/too-hot')
      .map(({ expected }) => expected);
  expect(heated('working: { from: 160 °C, to: 177 °C }')).toEqual([
    'at most 177 °C, the top of the pouring range of Soft, which has no `highest`',
  ]);
  expect(heated('working: { from: 160 °C, to: 177 °C }\nhighest: 185 °C')).toEqual([
    'at most 185 °C, the highest for Soft',
  ]);
  expect(heated('working: { from: 160 °C, to: 177 °C }\nhighest: 196 °C')).toEqual([]);
});

test('an additive of which nothing is said is taken for a liquid, and that is said', () => {
  const spooned = (extra: string): { readonly grams: number; readonly assumed: readonly string[] } => {
    const book = bookWith({
      'shelf/additives/salt.md': file(`title: Salt\n${extra}`),
      'colours/smoke.md': file(
        'title: Smoke\nmold: minnow\ncups: { body: { plastic: 100 ml, add: { peat: 9 drops, salt: 2 tbsp } } }',
      ),
    });
    const [cup] = recipeOf(book, 'smoke').cups;
    const assumed = cup!.assumptions.flatMap((each) => (each.title === 'Salt' ? [each.assumed.kind] : []));
    return { grams: dose(cup!, 'salt'), assumed };
  };
  const TWO_SPOONS = 29.5735;
  const unsaid = spooned('');
  expect(unsaid.grams).toBeCloseTo(TWO_SPOONS * 1.0, 3);
  expect(unsaid.assumed).toContain('liquid');
  expect(spooned('bulk: 1.2 g/ml').grams).toBeCloseTo(TWO_SPOONS * 1.2, 3);
  expect(spooned('density: 2.16 g/ml').grams).toBeCloseTo(TWO_SPOONS * 1.2, 3);
  expect(spooned('density: 2.16 g/ml').assumed).not.toContain('liquid');
  const sold = spooned('price: 4\npack: 3 lb');
  expect(sold.grams).toBeCloseTo(TWO_SPOONS * 1.2, 3);
  expect(sold.assumed).toContain('salt');
  const salt = spooned('use: salt');
  expect(salt.grams).toBeCloseTo(TWO_SPOONS * 1.2, 3);
  expect(salt.assumed).not.toContain('salt');
  const scent = spooned('use: scent\nprice: 4\npack: 3 lb');
  expect(scent.grams).toBeCloseTo(TWO_SPOONS * 1.0, 3);
  expect(scent.assumed).not.toContain('liquid');
});

test('a clear cup is as sure as its plastic: estimated, and never certain', () => {
  const clear = recipeOf(
    bookWith({ 'colours/smoke.md': file('title: Smoke\nmold: minnow\ncups: { body: { plastic: 100 ml } }') }),
    'smoke',
  );
  expect(clear.tier).toBe('estimated');
  expect(clear.cups[0]!.tier).toBe('estimated');
  expect(clear.spread.bound).toBeGreaterThan(0.3);
  expect(clear.spread.bound).toBeLessThan(10);
});

describe('looks at a cup, one after another', () => {
  const rounds = (...steps: string[]): readonly (readonly unknown[])[] =>
    recipeOf(
      bookWith({
        'colours/smoke.md': file(
          `title: Smoke\nmold: minnow\ncups:\n  body:\n    plastic: 120 ml\n    log:\n${steps.map((step) => `      - ${step}`).join('\n')}`,
        ),
      }),
      'smoke',
    ).cups[0]!.rounds.map(({ pouredMl, seen, added }) => [
      added.length,
      pouredMl,
      seen[0]?.overWhite?.hex,
      seen[0]?.overBlack?.hex,
    ]);

  test('each is a round of its own, with its pour, though nothing was added between', () => {
    expect(
      rounds(
        '{ add: { peat: 9 drops } }',
        '{ pour: 14 ml, seen: { over-white: "#8a6a45", note: too light } }',
        '{ pour: 10 ml, seen: { over-white: "#8a6b46" } }',
        '{ pour: 12 ml }',
        '{ seen: { over-white: "#896a45" } }',
      ),
    ).toEqual([
      [1, 14, '#8a6a45', undefined],
      [0, 10, '#8a6b46', undefined],
      [0, 12, '#896a45', undefined],
    ]);
  });
  test('over white and then over black is one look, and the baits that are poured at last are none', () => {
    expect(
      rounds(
        '{ add: { peat: 9 drops } }',
        '{ pour: 14 ml }',
        '{ seen: { over-white: "#8a6a45" } }',
        '{ seen: { over-black: "#3a2a25" } }',
        '{ pour: 60 ml }',
      ),
    ).toEqual([[1, 74, '#8a6a45', '#3a2a25']]);
  });
});

test('a cup without rounds is as large as its file says', () => {
  const cup = (plastic: string): number =>
    recipeOf(
      bookWith({
        'colours/smoke.md': file(
          `title: Smoke\nmold: minnow\ncups: { body: { plastic: ${plastic}, add: { peat: 9 drops } } }`,
        ),
        'colours/dusk.md': file('title: Dusk\nmold: minnow\nfrom: smoke\ncups: { body: { add: { frost: 1 % } } }'),
      }),
      'dusk',
    ).cups[0]!.startMl;
  expect(cup('90 ml')).toBeCloseTo(90, 9);
  expect(cup('8 fl oz')).toBeCloseTo(236.588, 3);
});

test('a cup of a derived recipe keeps the share of the cup of its name, wherever its contents come from', () => {
  const two = 'cups:\n  back: { share: 30%, plastic: 100 ml, add: { peat: 9 drops } }\n  belly: { plastic: 100 ml }';
  const book = bookWith({
    'colours/two.md': file(`title: Two\nmold: minnow\npattern: laminate\n${two}`),
    'colours/other.md': file('title: Other\nmold: minnow\ncups: { body: { plastic: 100 ml, add: { peat: 2 drops } } }'),
    'colours/child.md': file('title: Child\nfrom: two\ncups: { back: { from: other/body } }'),
    'colours/anew.md': file('title: Anew\nfrom: two\ncups: { back: { plastic: 80 ml, add: { peat: 5 drops } } }'),
  });
  for (const id of ['child', 'anew']) expect(recipeOf(book, id).cups.map(({ share }) => share)).toEqual([0.3, 0.7]);
});

test('shares of the parent make room, in proportion, for those that a derived recipe states', () => {
  const three =
    'cups:\n  back: { share: 20%, plastic: 100 ml }\n  side: { share: 30%, plastic: 100 ml }\n  belly: { share: 50%, plastic: 100 ml }';
  const book = bookWith({
    'colours/three.md': file(`title: Three\nmold: minnow\npattern: layered\n${three}`),
    'colours/child.md': file('title: Child\nfrom: three\ncups: { belly: { share: 40% } }'),
    'colours/grandchild.md': file('title: Grandchild\nfrom: child\ncups: { back: { plastic: 80 ml } }'),
  });
  const sharesIn = (id: string): readonly number[] => recipeOf(book, id).cups.map(({ share }) => share);
  for (const [index, share] of [0.24, 0.36, 0.4].entries()) {
    expect(sharesIn('child')[index]).toBeCloseTo(share, 9);
    expect(sharesIn('grandchild')[index]).toBeCloseTo(share, 9);
  }
});

test('another mold is no change of the colour', () => {
  const book = bookWith({
    'molds/thick.md': file('title: Thick\ncavity: 20 ml\nbody: 20 mm'),
    'colours/one.md': file('title: One\nmold: minnow\ncups: { body: { plastic: 100 ml, add: { peat: 9 drops } } }'),
    'colours/child.md': file('title: Child\nfrom: one\nmold: thick'),
  });
  expect(recipeOf(book, 'child').changes[0]!.change).toMatchObject({ deltaE: 0, words: [] });
});
