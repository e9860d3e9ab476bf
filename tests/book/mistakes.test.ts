import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';

const file = (...front: string[]): string => `---\n${front.join('\n')}\n---\n`;

/** What is told of the example book with some files of its own. */
const told = (files: Record<string, string>, options: Parameters<typeof compileBook>[1] = {}): readonly string[] => {
  const sources = Object.entries({ ...EXAMPLE_BOOK, ...files }).map(([path, text]) => ({ path, text }));
  return compileBook(sources, options).diagnostics.map(
    ({ file, code, found, fix }) => `${file} ${code}: ${found} → ${fix}`,
  );
};
const PEAT = EXAMPLE_BOOK['shelf/colorants/peat.md']!;
const SMOKE = EXAMPLE_BOOK['colours/smoke.md']!;

describe('all mistakes come in one run, and none that only follows from another', () => {
  test('two materials of one name, one of which has a fault', () => {
    const powder = file('title: Peat', 'drop: 0.05 ml', 'look: { kind: pearl, colour: "#e8e4da", dose: 1 % }');
    expect(told({ 'shelf/powders/peat.md': powder })).toEqual([
      'shelf/powders/peat.md file/same-name: second material `peat` → rename it, for instance to `peat-powder.md`',
      'shelf/powders/peat.md field/unknown: field `drop` → remove it, or move it to the notes',
    ]);
  });
  test('a mold with a wrong amount and with a thin part that is thicker than the body', () => {
    expect(told({ 'molds/minnow.md': file('title: Minnow', 'bait: 3.4 gm', 'body: 2 mm', 'thin: 9 mm') })).toEqual([
      'molds/minnow.md field/quantity: `3.4 gm` → write `3.4 g`',
      'molds/minnow.md mold/thickness: thin part of 9 mm → exchange `thin` and `body`, or correct one',
    ]);
  });
  test('a recipe with a wrong date, an unknown material and an unknown mold, and no word of what the date hides', () => {
    const recipe = file(
      'made: today',
      'mold: minow',
      'cups:',
      '  body:',
      '    plastic: 9 dorps',
      '    add: { paet: 3 drops }',
    );
    expect(told({ 'colours/smoke.md': recipe }).map((line) => line.split(':')[0])).toEqual([
      'colours/smoke.md field/missing',
      'colours/smoke.md field/date',
      'colours/smoke.md recipe/unknown-mold',
      'colours/smoke.md field/quantity',
      'colours/smoke.md recipe/unknown-material',
    ]);
  });
  test('a book.md with a fault, and a pattern that does not fit', () => {
    expect(
      told({
        'book.md': file('title: Two Cups', 'tolerence: 2', 'plastic: 3 l'),
        'shelf/plastics/stout.md': file('title: Stout'),
        'colours/smoke.md': file('title: Smoke', 'pattern: core', 'cups: { body: { plastic: 90 ml } }'),
      }).map((line) => line.split(':')[0]),
    ).toEqual(['book.md field/unknown', 'book.md field/value', 'colours/smoke.md recipe/pattern']);
  });
  test('an entry of a list that lacks a field and has one too many', () => {
    const photos = file('title: Smoke', 'photos:', '  - { fiel: a.jpg }', 'cups: { body: { plastic: 90 ml } }');
    expect(told({ 'colours/smoke.md': photos }).map((line) => line.split(':')[0])).toEqual([
      'colours/smoke.md field/missing',
      'colours/smoke.md field/unknown',
    ]);
  });
  test('a photo that a file with a fault may name is not called unused', () => {
    expect(told({ 'colours/smoke.md': file('title: Smoke: dark') }, { photos: ['photos/a.jpg'] })).toHaveLength(1);
  });
  test('a file that is no text is not to be created', () => {
    const dusk = file('title: Dusk', 'from: smoke');
    const { 'colours/smoke.md': _, ...others } = EXAMPLE_BOOK;
    const sources = Object.entries({ ...others, 'colours/dusk.md': dusk }).map(([path, text]) => ({ path, text }));
    expect(compileBook(sources, { unread: ['colours/smoke.md'] }).diagnostics).toEqual([]);
    expect(compileBook(sources).diagnostics).toHaveLength(1);
  });
});

describe('a misspelt name may mean a file that is there and has faults', () => {
  const faulty = file('titel: A', 'title: A');
  const unknown = (lines: readonly string[]): readonly string[] =>
    lines.filter((line) => !line.includes('field/unknown'));
  const cup = (...lines: string[]): string => file('title: Dusk', ...lines);
  test.each([
    ['shelf/powders/moth-pearl.md', ['cups: { body: { plastic: 60 ml, add: { moth pearl: 1 % } } }'], 'moth-pearl'],
    ['shelf/plastics/stout.md', ['cups: { body: { plastic: 60 ml stuot } }'], 'stout'],
    ['colours/mud-hen.md', ['from: mud-hne'], 'mud-hen'],
    ['colours/mud-hen.md', ['cups: { body: { from: Mud Hen } }'], 'mud-hen'],
    ['colours/mud-hen.md', ['cups: { body: { from: Mud Hen/body } }'], 'mud-hen/body'],
    ['colours/mud-hen.md', ['titel: Dusk', 'cups: { body: { from: Mud Hen/body } }'], 'mud-hen/body'],
    ['molds/grub.md', ['mold: grbu', 'cups: { body: { plastic: 60 ml supple } }'], 'grub'],
    ['targets/elver.md', ['for: elvre', 'cups: { body: { plastic: 60 ml supple } }'], 'elver'],
  ])('%s', (path, lines, name) => {
    const found = unknown(told({ [path]: faulty, 'colours/dusk.md': cup(...lines) }));
    expect(found.filter((line) => line.includes('unknown-')).map((line) => line.split(' → ')[1])).toEqual([
      `write \`${name}\``,
    ]);
  });
  test('a plastic is not offered among the materials', () => {
    const dusk = cup('cups: { body: { plastic: 60 ml supple, add: { stuot: 1 % } } }');
    expect(told({ 'shelf/plastics/stout.md': faulty, 'colours/dusk.md': dusk })[0]).toMatch(
      /→ create shelf\/…\/stuot.md$/,
    );
  });
  test('the name that a misnamed file is to have is one that is there', () => {
    expect(told({ 'colours/Mud Hen.md': SMOKE, 'colours/dusk.md': cup('from: mud-hen') })).toHaveLength(1);
    expect(told({ 'colours/Mud Hen.md': SMOKE, 'colours/dusk.md': cup('from: mud-hne') })[1]).toMatch(
      /→ write `mud-hen`$/,
    );
  });
  test('a recipe that nobody knows is made a file that can be', () => {
    expect(told({ 'colours/dusk.md': cup('cups: { body: { from: Salt Lick/body } }') })).toEqual([
      'colours/dusk.md recipe/unknown-recipe: recipe `Salt Lick` → create colours/salt-lick.md, or remove `from`',
    ]);
  });
});

describe('a fix never takes anything from the maker', () => {
  test('a file is renamed to a name that no other has', () => {
    expect(told({ 'colours/Smoke.md': SMOKE, 'colours/SMOKE.md': SMOKE })).toEqual([
      'colours/SMOKE.md file/name: file name `SMOKE.md` → rename it to `smoke-2.md`; `smoke.md` is another file, so remove this one if it is an old copy of that',
      'colours/Smoke.md file/name: file name `Smoke.md` → rename it to `smoke-3.md`; `smoke.md` is another file, so remove this one if it is an old copy of that',
    ]);
    expect(told({ 'shelf/powders/Peat.md': PEAT })[0]).toMatch(/→ rename it to `peat-2.md`/);
    expect(
      told({
        'shelf/powders/peat.md': EXAMPLE_BOOK['shelf/powders/frost.md']!,
        'shelf/powders/peat-powder.md': EXAMPLE_BOOK['shelf/powders/frost.md']!.replace('Frost', 'Peat powder'),
      })[0],
    ).toMatch(/→ rename it, for instance to `peat-powder-2.md`/);
  });
  test.each([
    ['colours/dusk.markdown', 'rename it to `dusk.md`'],
    ['colours/Dusk.MD', 'rename it to `dusk.md`'],
    [
      'colours/smoke.txt',
      'rename it to `smoke-2.md`; `smoke.md` is another file, so remove this one if it is an old copy of that',
    ],
    ['colours/dusk.md.txt', 'rename it to `dusk.md`'],
    ['colours/dusk', 'rename it to `dusk.md`'],
    [
      'molds/minnow.docx',
      'open it in the program that wrote it, save it as plain text (UTF-8), and rename that to `minnow-2.md`',
    ],
    ['colours/dusk.jpg', 'move it to photos/, and name it in the file that it belongs to'],
    ['shelf/Measurements.CSV', 'rename it to `measurements.csv`'],
    ['shelf/films.xlsx', 'save it as CSV, with commas, under the name `measurements.csv`'],
    ['book.markdown', 'move it out of the book'],
  ])('%s is not read, and says so', (path, fix) => {
    const name = path.slice(path.lastIndexOf('/') + 1);
    expect(told({ [path]: '' })).toEqual([`${path} file/extension: \`${name}\`, which is not read → ${fix}`]);
  });
  test('a pour is put right with one that is possible', () => {
    const poured = (ml: string): string =>
      file(
        'title: Smoke',
        'cups:',
        '  body:',
        '    plastic: 90 ml',
        '    log:',
        '      - add: { peat: 18 drops }',
        `      - pour: ${ml}`,
      );
    const [over] = told({ 'colours/smoke.md': poured('301 ml') });
    const fix = /write `pour: (.* ml)`/.exec(over!)?.[1];
    expect(fix).toBe('90.9 ml');
    expect(told({ 'colours/smoke.md': poured(fix!) })).toEqual([]);
    expect(told({ 'colours/smoke.md': poured('90.95 ml') })[0]).toContain('90.95 ml poured');
  });
});

describe('cups of a derived recipe', () => {
  const swirl = file(
    'title: Canal',
    'pattern: swirl',
    'cups:',
    ...['main', 'ribbon'].map((name) => `  ${name}: { plastic: 60 ml }`),
  );
  test('a misspelt one is told once, with the name that was meant', () => {
    const dusk = file('title: Dusk', 'from: canal', 'cups:', '  ribbn: { add: { paet: 3 drops } }');
    expect(told({ 'colours/canal.md': swirl, 'colours/dusk.md': dusk })).toEqual([
      'colours/dusk.md recipe/unknown-cup: cup `ribbn` → write `ribbon`',
      'colours/dusk.md recipe/unknown-material: material `paet` → write `peat`',
    ]);
  });
  test('one with plastic of its own that holds nothing of the parent is told of, unless it was meant so', () => {
    const cupOfPeat = (name: string): string => `  ${name}: { plastic: 60 ml, add: { peat: 9 drops } }`;
    const dusk = (...cups: string[]): readonly string[] =>
      told({
        'colours/canal.md': file('title: Canal', 'pattern: swirl', 'cups:', ...['main', 'ribbon'].map(cupOfPeat)),
        'colours/dusk.md': file('title: Dusk', 'from: canal', 'cups:', ...cups),
      });
    expect(dusk('  main: { plastic: 90 ml, add: { frost: 1 % } }')).toEqual([
      'colours/dusk.md recipe/begun-anew: cup `main` without `peat` of canal/main → add `from: canal/main` to the cup, or say of another that it does: `ribbon: { from: canal/ribbon }`',
    ]);
    expect(dusk('  main: { plastic: 90 ml, add: { frost: 1 %, peat: 3 drops } }')).toEqual([]);
    expect(dusk('  main: { plastic: 90 ml, log: [{ add: { frost: 1 % } }] }')).toEqual([]);
    expect(dusk('  main: { plastic: 90 ml }', '  ribbon: { from: canal/ribbon, add: { frost: 1 % } }')).toEqual([]);
    expect(dusk('  main: { from: canal/main, plastic: 90 ml, add: { frost: 1 % } }')).toEqual([]);
  });
  test('a name that nobody knows is made a file that can be, or is left away where nothing of it is in the cup', () => {
    const dusk = (...cup: string[]): string => file('title: Dusk', 'cups:', '  body:', ...cup);
    expect(
      told({
        'colours/dawn.md': dusk('    from: smoke/body', '    without: [peat, cobalt-blue]').replace('Dusk', 'Dawn'),
        'colours/dusk.md': dusk('    plastic: 60 ml', '    add: { Cobalt Blue: 3 drops, 青: 1 drop }'),
      }),
    ).toEqual([
      'colours/dawn.md recipe/not-in-cup: material `cobalt-blue` → remove it there',
      'colours/dusk.md recipe/unknown-material: material `Cobalt Blue` → create shelf/…/cobalt-blue.md, and write `cobalt-blue` here',
      'colours/dusk.md recipe/unknown-material: material `青` → create it in shelf/…/, with a name of lower-case letters and digits, with single hyphens between words',
    ]);
  });
  test('the name of a file that is written as its title or its path', () => {
    const dusk = (mold: string): string => file('title: Dusk', `mold: ${mold}`, 'cups: { body: { plastic: 60 ml } }');
    expect(
      ['Grub 2', './molds/grub-2.md', '"molds\\\\grub-2.MD"', 'grub/two'].flatMap((mold) =>
        told({
          'colours/dusk.md': dusk(mold),
          'molds/grub-2.md': EXAMPLE_BOOK['molds/minnow.md']!.replace('Minnow', 'Grub'),
        }),
      ),
    ).toEqual([
      'colours/dusk.md field/value: `Grub 2` → write `grub-2`',
      'colours/dusk.md field/value: `./molds/grub-2.md` → write `grub-2`',
      'colours/dusk.md field/value: `molds\\grub-2.MD` → write `grub-2`',
      'colours/dusk.md field/value: `grub/two` → undefined',
    ]);
  });
  test('a recipe and a material that are written as their paths', () => {
    const dusk = file('title: Dusk', 'cups:', '  body:', '    from: colours/smoke.md');
    expect(told({ 'colours/dusk.md': dusk })).toEqual([
      'colours/dusk.md recipe/unknown-recipe: `colours/smoke.md` → write `smoke`',
    ]);
    const dawn = file('title: Dawn', 'cups: { body: { plastic: 9 ml, add: { shelf/colorants/peat: 1 drop } } }');
    expect(told({ 'colours/dawn.md': dawn })).toEqual([
      'colours/dawn.md recipe/unknown-material: material `shelf/colorants/peat` → write `peat`',
    ]);
  });
  test('a name that nobody knows under `set` is told once', () => {
    const dusk = file('title: Dusk', 'cups: { body: { from: smoke/body, set: { nix: 2 drops } } }');
    expect(told({ 'colours/dusk.md': dusk })).toHaveLength(1);
  });
  test('what a step holds, in a cup of amounts, comes with them into a log', () => {
    const dusk = file('title: Dusk', 'cups: { body: { plastic: 9 ml, heat: 170 °C, add: { peat: 1 drop } } }');
    expect(told({ 'colours/dusk.md': dusk })).toEqual([
      'colours/dusk.md field/unknown: field `heat` → make `add` the first step of `log`, and move it into a step of it',
    ]);
  });
  test('a target of a plain colour is seen over white', () => {
    expect(told({ 'targets/claw.md': file('title: Claw', 'colour: "#c9a866"') }).at(-1)).toBe(
      'targets/claw.md field/unknown: field `colour` → write `over-white`',
    );
  });
  test('a pattern that the kept ones do not fit says which they are, and how to take one alone', () => {
    const dusk = file('title: Dusk', 'from: canal', 'pattern: solid', 'cups:', '  body: { plastic: 60 ml }');
    expect(told({ 'colours/canal.md': swirl, 'colours/dusk.md': dusk })).toEqual([
      "colours/dusk.md recipe/pattern: pattern `solid` with 3 cups, of which `main`, `ribbon` come from `canal` → write `pattern: swirl`; or, for some of the cups alone, remove the recipe's `from` and write `from: canal/CUP` in each cup",
    ]);
  });
});

test('a cup above the limit says where, by how much, and where the limit comes from', () => {
  const recipe = (...cup: string[]): string =>
    file('title: Smoke', 'cups:', '  body:', ...cup.map((line) => `    ${line}`));
  expect(told({ 'colours/smoke.md': recipe('plastic: 300 ml') })).toEqual([
    'colours/smoke.md recipe/over-full: 300 ml in the cup → begin with less, or write the size of your cups as `cup: … ml` in book.md',
  ]);
  expect(told({ 'colours/smoke.md': recipe('plastic: 190 ml') })).toEqual([]);
  expect(told({ 'colours/smoke.md': recipe('plastic: 150 ml', 'log:', '  - plastic: 90 ml') })).toHaveLength(1);
  expect(told({ 'colours/smoke.md': recipe('plastic: 300 ml'), 'book.md': file('title: B', 'cup: 700 ml') })).toEqual(
    [],
  );
});

describe('what is told of a cup is in the unit in which its file has it', () => {
  const OUNCES = file('title: B', 'units: { volume: fl oz, temperature: °F }', 'cup: 20 fl oz');
  const said = (cup: readonly string[], files: Record<string, string> = {}): readonly string[] => {
    const smoke = file('title: Smoke', 'cups:', '  body:', ...cup.map((line) => `    ${line}`));
    const sources = Object.entries({ ...EXAMPLE_BOOK, 'book.md': OUNCES, ...files, 'colours/smoke.md': smoke });
    return compileBook(sources.map(([path, text]) => ({ path, text }))).diagnostics.map(
      ({ found, expected, why, fix }) => `${found}; ${expected}; ${why}; ${fix}`,
    );
  };
  test.each([
    ['2.5 fl oz', '2 fl oz', '6 fl oz'],
    ['1/2 cup', '0.25 cup', '0.75 cup'],
    ['73 ml', '59.1 ml', '177.4 ml'],
    ['0.1 l', '0.0591 l', '0.1774 l'],
    ['20 tbsp', '4 tbsp', '12 tbsp'],
  ])('a pour of %s where %s are left', (pour, left, poured) => {
    const log = (amount: string): readonly string[] => [
      'plastic: 8 fl oz',
      'log:',
      '  - pour: 6 fl oz',
      `  - pour: ${amount}`,
    ];
    expect(said(log(pour))).toEqual([
      `${pour} poured; at most the ${left} that are left in the cup; the pours before it have taken ${poured}; write \`pour: ${left}\`, or correct an earlier step`,
    ]);
    expect(said(log(left))).toEqual([]);
  });
  const plastic = (highest: string): Record<string, string> => ({
    'shelf/plastics/supple.md': file('title: Supple', `highest: ${highest}`),
  });
  test.each([
    ['350 °F', '340 °F', '350 °F', '340 °F'],
    ['350 F', '171 °C', '350 F', '339 °F'],
    ['172.5 °C', '340 °F', '172.5 °C (343 °F)', '340 °F'],
  ])('a heat of %s where the limit is %s, in the book’s unit', (heat, limit, found, told) => {
    const log = (degrees: string): readonly string[] => ['plastic: 8 fl oz', 'log:', `  - heat: ${degrees}`];
    const [first, ...others] = said(log(heat), plastic(limit));
    expect(first?.startsWith(`${found}; at most ${told}, the highest for Supple;`)).toBe(true);
    expect(others).toEqual([]);
    expect(said(log(told), plastic(limit))).toEqual([]);
  });
  test('a load is told for what the book states doses for', () => {
    const frost = {
      'shelf/powders/frost.md': file(
        'title: Frost',
        'most: 1 g per 4 fl oz',
        'look: { kind: pearl, colour: "#e8e4da", dose: 1 % }',
      ),
    };
    expect(said(['plastic: 8 fl oz', 'add: { frost: 3 g }'], frost)[0]).toMatch(
      /^1\.5 g of Frost per 4 fl oz; at most 1 g, as its file says;/,
    );
  });
  test('a gate in inches that is one in millimetres, and none for one that can be', () => {
    const mold = (gate: string): Record<string, string> => ({
      'molds/minnow.md': file('title: Minnow', 'cavity: 0.1 fl oz', 'body: 3/8 in', `gate: ${gate}`),
    });
    expect(said(['plastic: 8 fl oz'], mold('5 in'))[0]).toMatch(
      /^gate 5 in wide at its narrowest; at most 2 times the body's 3\/8 in;/,
    );
    expect(said(['plastic: 8 fl oz'], mold('3/4 in'))).toEqual([]);
  });
  test('a thin part', () => {
    const mold = file('title: Minnow', 'cavity: 0.1 fl oz', 'body: 1/8 in', 'thin: 3/8 in');
    expect(said(['plastic: 8 fl oz'], { 'molds/minnow.md': mold })[0]).toMatch(
      /^thin part of 3\/8 in; at most the body's 1\/8 in;/,
    );
  });
});
