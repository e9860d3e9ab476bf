import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';

const file = (...front: string[]): string => `---\n${front.join('\n')}\n---\n`;

/** What is told of the example book with some files of its own: place, what was found, what was expected, why, and the edit. */
const told = (files: Record<string, string>, options: Parameters<typeof compileBook>[1] = {}): readonly string[] => {
  const sources = Object.entries({ ...EXAMPLE_BOOK, ...files }).map(([path, text]) => ({ path, text }));
  return compileBook(sources, options).diagnostics.map(
    ({ file, start, code, found, expected, why, fix }) =>
      `${file}:${start.line}:${start.column} ${code}: ${found}, expected ${expected}${why === undefined ? '' : `, because ${why}`} → ${fix}`,
  );
};
const PEAT = EXAMPLE_BOOK['shelf/colorants/peat.md']!;
const SMOKE = EXAMPLE_BOOK['colours/smoke.md']!;
const CRAW = EXAMPLE_BOOK['molds/minnow.md']!.replace('Minnow', 'Craw');

const dusk = (...front: string[]): Record<string, string> => ({ 'colours/dusk.md': file('title: Dusk', ...front) });
const BODY = 'cups: { body: { plastic: 60 ml supple } }';
const RECIPE_FIELDS =
  'one of title, made, pattern, order, mold, baits, from, for, publish, tags, photos, streak, cups, seen';

describe('a field is never offered', () => {
  const LOST = 'because Cupbook would silently ignore it';
  test('where the file has it already', () => {
    expect(told(dusk('titel: Dusk', 'mold: minnow', BODY))).toEqual([
      `colours/dusk.md:3:1 field/unknown: field \`titel\`, expected ${RECIPE_FIELDS}, because \`title\` is there already, and one of the two would be lost → keep \`title\`, and remove this one`,
    ]);
    expect(told({ 'book.md': file('title: Two Cups', 'loss: 8%', 'most: 3') })).toEqual([
      `book.md:4:1 field/unknown: field \`most\`, expected one of title, maker, address, publish, learn, units, tools, tolerance, loss, rejects, left-in-cup, cup, fill, plastic, measuring-card, ${LOST} → remove it, or move it to the notes`,
    ]);
  });
  test('where it could not hold what stands there', () => {
    const peat = PEAT.replace('look:', 'from: 30 ml\ndrop: 0.05 ml\nlook:');
    expect(told({ 'shelf/colorants/peat.md': peat })).toEqual([
      `shelf/colorants/peat.md:3:1 field/unknown: field \`from\`, expected one of title, price, pack, stock, highest, most, bears, photos, look, density, drop, effect, cut, ${LOST} → remove it, or move it to the notes`,
    ]);
  });
});

describe('notes that slid into the front matter', () => {
  const WHY = 'because it reads like a sentence of the notes, and they stand below the second `---`';
  test('are told with the `---` that is missing', () => {
    expect(told(dusk('mold: minnow', BODY, 'Colours: for the slow end of the canal.'))).toEqual([
      `colours/dusk.md:5:1 field/unknown: field \`Colours\`, expected ${RECIPE_FIELDS}, ${WHY} → write \`---\` on a line of its own above it`,
    ]);
    expect(told(dusk('mold: minnow', BODY, 'Good in stained water.'))).toEqual([
      `colours/dusk.md:5:1 front-matter/syntax: \`Good in stained water.\`, expected \`name: value\`, ${WHY} → write \`---\` on a line of its own above it`,
    ]);
  });
  test('are told to go below it where fields follow', () => {
    expect(told(dusk('Good in stained water.', 'mold: minnow', BODY))[0]).toMatch(/→ move it below the second `---`$/);
  });
  test('are no field whose colon was left out', () => {
    expect(told(dusk('made 2026-03-14', 'mold: minnow', BODY))[0]).toMatch(/→ write `made: 2026-03-14`$/);
    expect(told({ 'colours/dusk.md': file('title Good in stained water', 'mold: minnow', BODY) })[0]).toMatch(
      /→ write `title: Good in stained water`$/,
    );
  });
});

describe('the name of a file', () => {
  const NAMES = 'without its folder and `.md`, because names are lower-case letters, digits and single hyphens';
  test('is not made of a number, an amount or a colour', () => {
    expect(told(dusk('mold: 1,5', BODY))).toEqual([
      `colours/dusk.md:3:7 field/value: \`1,5\`, expected the name of a file in molds/ (minnow), ${NAMES} → write such a name, or remove the line`,
    ]);
    expect(told(dusk('mold: minnow', 'from: "#000000"', BODY))).toEqual([
      `colours/dusk.md:4:7 field/value: \`#000000\`, expected the name of a file in colours/ (smoke), ${NAMES} → write such a name, or remove the line`,
    ]);
    expect(told(dusk('mold: minnow', 'for: 30 ml', BODY))[0]).toMatch(/→ write such a name, or remove the line$/);
  });
  test('that nobody has is made a file, or is the one that is near', () => {
    expect(told(dusk('mold: Big Grub', BODY))[0]).toMatch(/→ create molds\/big-grub\.md, and write `big-grub` here$/);
    expect(told(dusk('mold: Minow', BODY))[0]).toMatch(/→ write `minnow`$/);
    expect(told(dusk('mold: minnow', 'cups: { body: { plastic: 60 ml Suple } }'))[0]).toMatch(
      /→ write `60 ml supple`$/,
    );
  });
  test('of a plastic is told where it stands, behind its volume', () => {
    const cup = (plastic: string): string =>
      told({ ...dusk('mold: minnow', `cups: { body: { plastic: ${plastic} } }`) })[0]!.split(', expected')[0]!;
    expect(cup('60 ml suple')).toBe('colours/dusk.md:4:32 recipe/unknown-plastic: plastic `suple`');
    expect(cup('"60 ml suple"')).toBe('colours/dusk.md:4:33 recipe/unknown-plastic: plastic `suple`');
    expect(cup('[60 ml supple, 9 ml suple]')).toBe('colours/dusk.md:4:46 recipe/unknown-plastic: plastic `suple`');
  });
  test('of another size is not offered, but said', () => {
    expect(told({ ...dusk('mold: craw-4', BODY), 'molds/craw-3.md': CRAW })).toEqual([
      'colours/dusk.md:3:7 recipe/unknown-mold: mold `craw-4`, expected the name of a file in molds/ (craw-3, minnow) → create molds/craw-4.md; there is `craw-3`',
    ]);
  });
  test('of a recipe is never the recipe itself, nor one that is derived from it', () => {
    expect(
      told({
        'colours/olive-brown-copper.md': file('title: Olive', 'from: olive-brown', 'mold: minnow'),
        'colours/olive-brown-rust.md': file('title: Rust', 'from: olive-brown-copper', 'mold: minnow'),
      }),
    ).toEqual([
      'colours/olive-brown-copper.md:3:7 recipe/unknown-recipe: recipe `olive-brown`, expected the name of a file in colours/ (smoke) → create colours/olive-brown.md, or remove `from`',
    ]);
  });
  test('of a recipe with several cups comes with one of them', () => {
    const swirl = file('title: Swirl', 'mold: minnow', 'cups: { back: { plastic: 60 ml }, belly: { plastic: 60 ml } }');
    const cup = (from: string): readonly string[] =>
      told({ 'colours/swirl.md': swirl, ...dusk('mold: minnow', `cups: { body: { from: ${from} } }`) });
    expect(cup('swirl9…dark')).toEqual([
      'colours/dusk.md:4:23 recipe/unknown-recipe: recipe `swirl9…dark`, expected the name of a file in colours/ (smoke, swirl) → write `swirl/back` or `swirl/belly`',
    ]);
    expect(cup('swirl')[0]).toMatch(/because that recipe has several cups → write `swirl\/back` or `swirl\/belly`$/);
    expect(cup('Swirl/Belly')[0]).toMatch(/→ write `swirl\/belly`$/);
    expect(cup('swril/tail')[0]).toMatch(/→ write `swirl\/back` or `swirl\/belly`$/);
    expect(cup('swril/belly')[0]).toMatch(/→ write `swirl\/belly`$/);
  });
  test('of a bottle that was renamed is offered where nothing uses the new one', () => {
    const flake = file('title: Copper', 'look: { colour: "#b46a3c" }', 'size: 0.035 in');
    const files = {
      'shelf/flakes/copper-hex-035.md': flake,
      ...dusk('mold: minnow', 'cups: { body: { plastic: 60 ml, add: { copper-035: 1 pinch } } }'),
    };
    const SHELF = 'expected the name of a file in shelf/, because what a material does to the colour is in its file';
    expect(told(files)).toEqual([
      `colours/dusk.md:4:40 recipe/unknown-material: material \`copper-035\`, ${SHELF} → write \`copper-hex-035\`, if \`copper-035\` is called that now; nothing uses it yet`,
    ]);
    const used = file(
      'title: Dawn',
      'mold: minnow',
      'cups: { body: { plastic: 60 ml, add: { copper-hex-035: 1 pinch } } }',
    );
    expect(told({ ...files, 'colours/dawn.md': used })[0]).toMatch(/→ create shelf\/…\/copper-035\.md$/);
  });
  test('of a cup that is to be renamed is told once', () => {
    expect(
      told({
        'colours/dusk.md': file('title: Dusk', 'mold: minnow', 'cups: { Back: { plastic: 60 ml supple } }'),
        'colours/dawn.md': file('title: Dawn', 'from: dusk', 'cups: { back: { add: { peat: 1 drop } } }'),
        'colours/noon.md': file('title: Noon', 'from: dusk'),
      }),
    ).toEqual([
      'colours/dusk.md:4:9 file/name: cup named `Back`, expected lower-case letters and digits, with single hyphens between words, because the name of a cup is an id → write `back`',
    ]);
  });
});

describe('a file that lies in the wrong place is told where it belongs', () => {
  const MISSING = 'because nothing else is looked for there, so that it is missing from the book';
  test.each([
    ['dusk.md', SMOKE, `recipe in \`./\`, expected a recipe in colours/, ${MISSING} → move it to colours/`],
    [
      'recipes/dusk.md',
      SMOKE,
      `recipe in \`recipes/\`, expected a recipe in colours/, ${MISSING} → move it to colours/`,
    ],
    [
      'smoke.md',
      SMOKE,
      `recipe in \`./\`, expected a recipe in colours/, ${MISSING} → move it to colours/, as \`smoke-2.md\``,
    ],
    [
      'Big Craw.md',
      CRAW,
      `mold in \`./\`, expected a mold in molds/, ${MISSING} → move it to molds/, as \`big-craw.md\``,
    ],
    [
      'umber.md',
      PEAT,
      `colorant in \`./\`, expected a colorant in shelf/colorants/, ${MISSING} → move it to shelf/colorants/`,
    ],
    [
      'readme.md',
      'hello',
      'file in `./`, expected book.md, or a file in colours, chips, shelf/colorants, shelf/powders, shelf/flakes, shelf/plastics, shelf/additives, molds, targets, because the folder of a file says what it is, and this one is not in the book → move it to the folder of its kind, or out of the book if it is none of it',
    ],
  ])('%s', (path, text, finding) => {
    expect(told({ [path]: text })).toEqual([`${path}:1:1 file/unknown-place: ${finding}`]);
  });
  test('in the folder of another kind', () => {
    const WHY = 'because the folder of a file says what it is';
    expect(told({ 'shelf/colorants/dusk.md': SMOKE, 'colours/craw.md': CRAW })).toEqual([
      `colours/craw.md:1:1 file/wrong-folder: what looks like a mold in \`colours/\`, expected a mold in molds/, ${WHY} → move it to molds/`,
      `shelf/colorants/dusk.md:1:1 file/wrong-folder: what looks like a recipe in \`shelf/colorants/\`, expected a recipe in colours/, ${WHY} → move it to colours/`,
    ]);
  });
  test('with what else is wrong in it, as the kind that it is', () => {
    const wrong = SMOKE.replace('mold:', 'baits: many\nmold:');
    expect(told({ 'shelf/colorants/dusk.md': wrong }).map((line) => line.split(':')[2]!.slice(2))).toEqual([
      'file/wrong-folder',
      'field/type',
    ]);
  });
  test('a text under a second ending, and a word processor’s', () => {
    const LEFT = 'which is not read, expected a name that ends in `.md`, because';
    expect(told({ 'colours/perch-mix.md.txt': '', 'colours/perch.docx': '' })).toEqual([
      `colours/perch-mix.md.txt:1:1 file/extension: \`perch-mix.md.txt\`, ${LEFT} other files are left alone, so that nothing in it is in the book → rename it to \`perch-mix.md\``,
      `colours/perch.docx:1:1 file/extension: \`perch.docx\`, ${LEFT} a word processor’s file is more than text, so that nothing in it is in the book → open it in the program that wrote it, save it as plain text (UTF-8), and rename that to \`perch.md\``,
    ]);
  });
});

describe('days', () => {
  const ORDER = 'the year comes first, then month and day in two digits each';
  test.each([
    ['2026-13-05', 'the calendar has no such day', 'write `2026-05-13`'],
    ['2026-13-40', 'the calendar has no such day', 'correct it, or remove the line'],
    ['March 20', 'the year is missing', 'write the year, and then `-03-20`'],
    ['20th of March', 'the year is missing', 'write the year, and then `-03-20`'],
    ['March 20, 2026', ORDER, 'write `2026-03-20`'],
    ['20 March 2026', ORDER, 'write `2026-03-20`'],
    ['soon', ORDER, 'correct it, or remove the line'],
  ])('%s', (made, why, fix) => {
    expect(told(dusk(`made: ${made}`, 'mold: minnow', BODY))).toEqual([
      `colours/dusk.md:3:7 field/date: \`${made}\`, expected a day of the calendar such as \`2026-03-14\`, because ${why} → ${fix}`,
    ]);
  });
});

describe('shares of more than the whole', () => {
  test.each([
    [
      'back: { share: 140%, plastic: 60 ml }, belly: { share: 60%, plastic: 60 ml }',
      'write `40%`, which is what the other cups leave',
    ],
    ['back: { share: 140%, plastic: 60 ml }', 'remove the line: the only cup is the whole bait'],
    [
      'a: { share: 140%, plastic: 60 ml }, b: { share: 60%, plastic: 60 ml }, c: { plastic: 60 ml }',
      'correct it to less than the 40% that the other cups leave',
    ],
  ])('%s', (cups, fix) => {
    const pattern = cups.includes('c:') ? ['pattern: layered'] : [];
    expect(told(dusk('mold: minnow', ...pattern, `cups: { ${cups} }`))[0]).toMatch(
      new RegExp(`\`140%\`, expected at most 100% → ${fix}$`),
    );
  });
});

describe('signs that mean something else to YAML', () => {
  test('the name of a colour is told with what a screen shows by it', () => {
    const why = (name: string, hex: string): string =>
      `expected a colour such as \`"#d9c48f"\`, because a name can mean many colours; on a screen, \`${name}\` is ${hex} → write \`"${hex}"\` if that is yours, or take yours from a photo on the Match page`;
    expect(
      told({
        'shelf/colorants/peat.md': PEAT.replace('"#5b4327"', 'green'),
        'targets/reed.md': file('title: Reed', 'over-white: Dark Olive Green'),
      }),
    ).toEqual([
      `shelf/colorants/peat.md:3:32 field/colour: \`green\`, ${why('green', '#008000')}`,
      `targets/reed.md:3:13 field/colour: \`Dark Olive Green\`, ${why('darkolivegreen', '#556b2f')}`,
    ]);
  });
  test('a comma in a text in braces', () => {
    const log = file('title: Dusk', 'mold: minnow', 'cups:', '  body:', '    plastic: 60 ml', '    log:');
    const step = (text: string): readonly string[] =>
      told({ 'colours/dusk.md': log.replace('log:\n', `log:\n      - { ${text} }\n`) });
    expect(step('pour: 14 ml, note: better, still yellow')).toEqual([
      'colours/dusk.md:8:30 front-matter/syntax: `better, still yellow` without quotes, expected text with a comma in quotes, because inside `{ }` a comma begins the next field → write `"better, still yellow"`',
    ]);
    expect(step('note: better, still yellow, pour: 14 ml')[0]).toMatch(/→ write `"better, still yellow"`$/);
    expect(step('note: better, pour: 14 ml')).toEqual([]);
  });
  test('a sign of a number at the beginning of a text, and a colour without quotes', () => {
    const WHY = 'because a bare # begins a comment, which hides the rest of the line';
    expect(
      told({
        'colours/smoke.md': SMOKE.replace('Smoke', '#1 Perch'),
        'shelf/colorants/peat.md': PEAT.replace(
          'look: { kind: pigment, colour: "#5b4327", dose: 12 drops per 100 ml }',
          'look:\n  kind: pigment\n  colour: #5b4327\n  dose: 12 drops per 100 ml',
        ),
      }),
    ).toEqual([
      `colours/smoke.md:2:8 field/type: \`#1 Perch\` without quotes, expected text, ${WHY} → write \`"#1 Perch"\``,
      `shelf/colorants/peat.md:5:11 field/colour: \`#5b4327\` without quotes, expected a colour such as \`"#d9c48f"\`, ${WHY} → write \`"#5b4327"\``,
    ]);
  });
  test('a field with nothing after it is told where to write it', () => {
    expect(told({ 'colours/smoke.md': SMOKE.replace(' Smoke', ''), ...dusk('mold:', BODY) })).toEqual([
      'colours/dusk.md:3:1 field/to-fill-in: empty `mold`, expected the name of a file, without its folder and `.md`, because the file is left out of the book until it is filled in → write it after `mold:`, or remove the line if it is not needed',
      'colours/smoke.md:2:1 field/to-fill-in: empty `title`, expected text, because the file is left out of the book until it is filled in → write it after `title:`',
    ]);
  });
  test('a second colon in an amount makes it no text', () => {
    expect(told(dusk('baits: 24: about', 'mold: minnow', BODY))).toEqual([
      'colours/dusk.md:3:8 front-matter/syntax: second colon in `baits: 24: about`, expected one value after the name of a field, because a colon ends the name of a field → write `24 # about`',
    ]);
  });
  test('no-break spaces are told once, with the lines that they are in', () => {
    const told4 = told({ 'colours/dusk.md': SMOKE.replaceAll('    ', '\u00a0\u00a0\u00a0\u00a0') });
    expect(told4).toEqual([
      'colours/dusk.md:6:1 front-matter/syntax: no-break spaces before a field or its value in lines 6, 7, 8, expected plain spaces, because they look like spaces, as a web page or word processor leaves them, and YAML takes them for letters → replace each of them by a plain space, also between the words of the line',
    ]);
    expect(told({ 'colours/dusk.md': SMOKE.replace('mold: ', 'mold:\u00a0') })[0]).toMatch(
      /^colours\/dusk\.md:3:6 front-matter\/syntax: no-break spaces before a field or its value, /,
    );
    expect(told({ 'colours/dusk.md': SMOKE.replace('Smoke', 'Old\u00a0Smoke') })).toEqual([]);
  });
});

describe('where the book cannot know which was meant, both are offered, in the units of the book', () => {
  test('which cup of a bait with a core goes in first', () => {
    const cups =
      'cups: { shell: { share: 60%, plastic: 80 ml supple }, core: { plastic: 80 ml supple, add: { peat: 2 drops } } }';
    expect(told(dusk('mold: minnow', 'pattern: core', cups))[0]).toMatch(
      /^colours\/dusk\.md:4:10 recipe\/order: .* → add a line `order: core first`, or `order: shell first`$/,
    );
  });
  test('an injector that holds no more than stays in it', () => {
    const book = (units: string): string =>
      told({ 'book.md': file('title: Two Cups', units, 'tools: { injector: { holds: 2 fl oz, left: 3 fl oz } }') })[0]!;
    expect(book('units: { volume: fl oz }')).toBe(
      'book.md:4:10 book/injector: 3 fl oz left in an injector that holds 2 fl oz, expected less than it holds, because it shoots only what it holds above that → write what it draws as `holds` and what you scrape out of it as `left`, such as `injector: { holds: 2 fl oz, left: 0.25 fl oz }`',
    );
    expect(book('units: { volume: ml }')).toMatch(/`injector: \{ holds: 60 ml, left: 8 ml \}`$/);
  });
});

describe('a part of a target that no cup has the name of', () => {
  const target = (...parts: string[]): Record<string, string> => ({
    'targets/elver.md': file('title: Elver', 'parts:', ...parts.map((name) => `  ${name}: { over-white: "#7a6a4c" }`)),
    ...dusk(
      'mold: minnow',
      'pattern: laminate',
      'for: elver',
      'cups: { back: { plastic: 60 ml supple, add: { peat: 2 drops } }, belly: { plastic: 60 ml supple } }',
    ),
  });
  test('is told of with the name of the cup that has none', () => {
    expect(told(target('top', 'belly'))).toEqual([
      'colours/dusk.md:5:6 recipe/no-part: target `elver` with the part `top`, and no cup of that name, expected a part for each of the cups `back`, or none, because each cup is compared with the part that has its name → write `back` in place of `top` in targets/elver.md',
    ]);
  });
  test('is not, where every cup has one, or every part is for a cup', () => {
    expect(told(target('back', 'belly', 'tail'))).toEqual([]);
    expect(told(target('belly'))).toEqual([]);
  });
});
