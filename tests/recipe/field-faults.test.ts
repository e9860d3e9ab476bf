import { describe, expect, test } from 'vitest';
import type { Kind } from '../../src/kinds/kinds.ts';
import { readThing } from '../../src/recipe/read-thing.ts';

/** What is told of a file with these fields. */
const told = (kind: Kind, ...lines: string[]): readonly string[] => {
  const path = 'a.md';
  const found = readThing(kind, 'a', { path, text: `---\ntitle: A\n${lines.join('\n')}\n---\n` });
  return 'kind' in found ? [] : found.map(({ found, why, fix }) => `${found}, ${why} → ${fix}`);
};
const recipe = (...lines: string[]): readonly string[] => told('recipe', ...lines);
const inCup = (...lines: string[]): readonly string[] =>
  recipe('cups:', '  body:', '    plastic: 90 ml', ...lines.map((line) => `    ${line}`));

describe('a field that is written otherwise than the book reads it is told with the edit that mends it', () => {
  test('what was written as one text in the place of nested fields', () => {
    const fix = (kind: Kind, line: string): string | undefined => told(kind, line)[0]?.split(' → ')[1];
    expect(fix('plastic', 'working: 330-355 F')).toBe('write `{ from: 330 °F, to: 355 °F }`');
    expect(fix('plastic', 'working: 165 °C to 177°C')).toBe('write `{ from: 165 °C, to: 177 °C }`');
    const two = 'write `{ from: …, to: … }` with the two temperatures that your supplier states';
    expect(fix('plastic', 'working: 350')).toBe(two);
    expect(fix('plastic', 'working: 165 °C to 350 °F')).toBe(two);
    expect(fix('book', 'units: US')).toBe('write `{ volume: fl oz, temperature: °F, currency: $ }`');
    expect(fix('book', 'units: metric')).toBe('write `{ volume: ml, temperature: °C }`');
    expect(fix('book', 'units: {}')).toBeUndefined();
    expect(fix('book', 'tools: { injector: 4 fl oz }')).toBe('write `{ holds: 4 fl oz }`');
    expect(fix('plastic', 'look: milky')).toBe('write `{ kind: milky }`');
    expect(fix('target', 'flake: copper-hex')).toMatch(
      /^write `\[\{ colour: "#…", size: …, coverage: … \}\]`, as it looks/,
    );
  });

  test('a part of a whole as so many in so many, or with the other part', () => {
    const fix = (kind: Kind, line: string): string | undefined => told(kind, line)[0]?.split(' → ')[1];
    expect(fix('book', 'rejects: 1 in 10')).toBe('write `10%`');
    expect(fix('book', 'rejects: 1 out of 20')).toBe('write `5%`');
    const manifold = (share: string): string | undefined =>
      told('mold', 'body: 9 mm', 'cavity: 6 ml', `manifold: ${share}`)[0]?.split(' → ')[1];
    expect(manifold('40/60')).toBe('write `40%`');
    expect(manifold('"40:60"')).toBe('write `40%`');
    expect(manifold('2/5')).toBe('write `40%`');
    expect(inCup('share: 50/50')[0]).toMatch(/→ write `50%`$/);
  });

  test('heats in words, and from so many to so many', () => {
    const fix = (bears: string): string | undefined => told('plastic', `bears: ${bears}`)[0]?.split(' → ')[1];
    expect(fix('three')).toBe('write `3 heats`');
    expect(fix('one heat')).toBe('write `1 heat`');
    expect(fix('2 to 3 heats')).toBe('write `2 heats`');
    expect(fix('5–7')).toBe('write `5 heats`');
    expect(fix('half')).toBe('undefined');
    expect(fix('3 to 2 heats')).toBe('undefined');
    expect(fix('often')).toBe('undefined');
  });

  test('true and false in figures, and more than once', () => {
    const fix = (reheat: string): string | undefined => inCup('log:', `  - reheat: ${reheat}`)[0]?.split(' → ')[1];
    expect(fix('1')).toBe('write `true`');
    expect(fix('0')).toBe('write `false`');
    expect(fix('2')).toBe('write `true`, in a step of its own for each reheat');
  });

  test('words that makers have for an effect, and for when they looked', () => {
    const fix = (effect: string): string | undefined =>
      told('colorant', 'look: { kind: dye, colour: "#8a5a2b", dose: 1 % }', `effect: ${effect}`)[0]?.split(' → ')[1];
    expect(fix('UV')).toBe('write `fluorescent`');
    expect(fix('glow in the dark')).toBe('write `glow`');
    expect(fix('chameleon')).toBe('write `shift`');
    expect(inCup('log:', '  - seen: { over-white: "#d9c48f", when: hot }')[0]).toMatch(/→ write `after`$/);
  });

  test('what is missing, or is to be a list, is mended in the braces where it stands', () => {
    const fix = (kind: Kind, ...lines: string[]): string | undefined => told(kind, ...lines)[0]?.split(' → ')[1];
    expect(fix('colorant', 'cut: { of: peat, with: supple }')).toBe('write `one-in: …` into its braces');
    expect(fix('colorant', 'cut:', '  of: peat', '  with: supple')).toBe('add a line `one-in: …`');
    const bare = '{ colour: "#8a5a2b", size: 1 mm }';
    expect(fix('target', 'over-white: "#8a5a2b"', `flake: ${bare}`)).toBe('write `[` before it and `]` behind it');
    expect(fix('target', 'over-white: "#8a5a2b"', `flake: [${bare}]`)).toBeUndefined();
  });

  test('days', () => {
    const order = 'the year comes first, then month and day in two digits each';
    expect(recipe('made: 14.3.2026')).toEqual([`\`14.3.2026\`, ${order} → write \`2026-03-14\``]);
    expect(recipe('made: 2026-3-4')).toEqual([`\`2026-3-4\`, ${order} → write \`2026-03-04\``]);
    expect(recipe('made: 3/14/2026')).toEqual([`\`3/14/2026\`, ${order} → write \`2026-03-14\``]);
    expect(recipe('made: 3/4/2026')).toEqual([`\`3/4/2026\`, ${order} → write \`2026-04-03\` or \`2026-03-04\``]);
    expect(recipe('made: 4/11/26')).toEqual([`\`4/11/26\`, ${order} → write \`2026-11-04\` or \`2026-04-11\``]);
    expect(recipe('made: 2026–06–10')).toEqual([`\`2026–06–10\`, ${order} → write \`2026-06-10\``]);
    expect(recipe('made: 2026-02-30')).toEqual([
      '`2026-02-30`, the calendar has no such day → correct it, or remove the line',
    ]);
  });
  test('prices', () => {
    const alone = 'only a number goes here, with a point before its decimals';
    expect(told('plastic', 'price: 7,20')).toEqual([`\`7,20\`, ${alone} → write \`7.20\``]);
    expect(told('plastic', 'price: 9 €')).toEqual([`\`9 €\`, ${alone} → write \`9\``]);
    expect(told('plastic', 'price: $1,250')).toEqual([
      `\`$1,250\`, ${alone} → write \`1250\`, or \`1.250\` if the comma marks decimals`,
    ]);
    expect(told('plastic', 'price: cheap')).toEqual(['`cheap`, undefined → undefined']);
  });
  test('a field that is left empty, or holds fields where an amount belongs', () => {
    const why = 'an amount begins with a number';
    const empty =
      'empty `pour`, the file is left out of the book until it is filled in → write it after `pour:`, or remove the line if it is not needed';
    expect(inCup('log:', '  - pour:')).toEqual([empty]);
    expect(inCup('log:', '  - pour: ""')).toEqual([empty]);
    expect(inCup('log:', '  - pour: { ml: 12 }')).toEqual([`nested fields, ${why} → undefined`]);
  });
  test('numbers without a unit', () => {
    expect(inCup('log:', '  - heat: 172')[0]).toMatch(/→ write `172 °C` or `172 °F`$/);
    expect(inCup('share: 0.4')[0]).toMatch(/→ write `40%`$/);
    expect(inCup('add: { peat: 12 }')[0]).toMatch(
      /→ write `12 drops` if drops are meant, or the unit that was counted$/,
    );
  });
  test('a flake as large as a hand', () => {
    expect(told('flake', 'size: 35 in', 'look: { colour: "#b8693a" }')).toEqual([
      '`35 in`, flake is sold from 0.008 to 0.125 in across flats → write `0.035 in` if thousandths are meant',
    ]);
    expect(told('flake', 'size: 0.125 in', 'look: { colour: "#b8693a" }')).toEqual([]);
  });
  test('a drop as large as a cup', () => {
    const colorant = (size: string): readonly string[] =>
      told('colorant', `drop: ${size}`, 'look: { kind: dye, colour: "#6b4a2b", dose: 10 drops per 100 ml }');
    expect(colorant('30 ml')).toEqual([
      '`30 ml`, all that is counted in drops is worked out with it → write how much one drop is, or remove the line: then a usual drop is taken',
    ]);
    expect(colorant('1/8 tsp')).toEqual([]);
    expect(colorant('0.048 ml')).toEqual([]);
    expect(colorant('{ count: 20, mass: 0.98 g }')).toEqual([]);
  });
  test('a density without its unit', () => {
    expect(told('plastic', 'density: 0.98')).toEqual(['`0.98`, undefined → write `0.98 g/ml`']);
    expect(told('plastic', 'density: .36')).toEqual(['`0.36`, undefined → write `0.36 g/ml`']);
    expect(told('plastic', 'density: 0')).toEqual(['`0`, undefined → undefined']);
  });
  test('a share is in per cent alone', () => {
    expect(inCup('share: 40 phr')).toEqual([
      '`40 phr`, phr counts a dose in plastic, not a part of a whole → write `40%`',
    ]);
    expect(inCup('share: 40 ml')[0]).toMatch(/^`40 ml`, ml measures/);
    expect(inCup('share: 40 pct')).toEqual(['`40 pct`, a share is in per cent → write `40%`']);
    expect(inCup('share: 40%')).toEqual([]);
  });
  test('what has run out is 0, of a unit or of none', () => {
    for (const stock of ['0', '0 ml', '0 fl oz', '0.0 g', '20 oz', '1/2 fl oz'])
      expect(told('plastic', `stock: ${stock}`)).toEqual([]);
    for (const stock of ['none', 'Empty', 'run out']) {
      expect(told('plastic', `stock: ${stock}`)).toEqual([
        `\`${stock}\`, an amount begins with a number → write \`0\``,
      ]);
    }
    expect(told('plastic', 'stock: 0 mll')[0]).toMatch(/→ write `0 ml`$/);
    expect(told('plastic', 'stock: -1 ml')).toHaveLength(1);
    for (const field of ['pack: 0', 'pack: 0 ml', 'most: 0 %', 'highest: 0', 'price: 0'])
      expect(told('plastic', field)).toHaveLength(1);
    expect(inCup('log:', '  - pour: 0 ml')).toEqual(['`0 ml`, an amount is a number above zero → undefined']);
  });
  test('an amount below zero', () => {
    expect(inCup('add: { peat: -30 drops }')).toEqual(['`-30 drops`, an amount is a number above zero → undefined']);
  });
  test('the name of a plastic with capitals or spaces', () => {
    const names = 'names are lower-case letters, digits and single hyphens';
    expect(recipe('cups: { body: { plastic: 120ml Supple } }')).toEqual([
      `plastic \`Supple\`, ${names} → write \`120 ml supple\``,
    ]);
    expect(recipe('cups: { body: { plastic: 4 fl oz Soft Supple } }')).toEqual([
      `plastic \`Soft Supple\`, ${names} → write \`4 fl oz soft-supple\``,
    ]);
  });
  test('ounces of a volume are those of a measuring cup', () => {
    const fix = (lines: readonly string[]): readonly string[] => lines.map((line) => line.split(' → ')[1]!);
    expect(fix(recipe('cups: { body: { plastic: 8 oz } }'))).toEqual(['write `8 fl oz`']);
    expect(fix(recipe('cups: { body: { plastic: 8 oz supple } }'))).toEqual(['write `8 fl oz supple`']);
    expect(fix(recipe('cups: { body: { plastic: 8 mll supple } }'))).toEqual(['write `8 ml supple`']);
    expect(fix(recipe('cups: { body: { plastic: 8 supple } }'))).toEqual(['write `8 ml supple` or `8 fl oz supple`']);
    expect(fix(inCup('log:', '  - pour: 1 oz'))).toEqual(['write `1 fl oz`']);
    expect(fix(inCup('add: { peat: 12 dorps per 4 oz }'))).toEqual(['write `12 drops per 4 fl oz`']);
    expect(fix(inCup('add: { peat: 12 drops per 4 oz }'))).toEqual(['write `12 drops per 4 fl oz`']);
    expect(fix(inCup('add: { peat: 12 drops per 4 mll }'))).toEqual(['write `12 drops per 4 ml`']);
    expect(inCup('add: { peat: 0.1 oz }')).toEqual([]);
  });
  test('a dose of a look is a rate, since there is no cup', () => {
    const path = 'a.md';
    const text = '---\ntitle: A\nlook:\n  kind: dye\n  colour: "#8a5a2b"\n  dose:\n---\n';
    const found = readThing('colorant', 'a', { path, text });
    expect('kind' in found ? [] : found.map(({ expected }) => expected)).toEqual([
      'a dose per volume of plastic, or a share of it, such as `22 drops per 100 ml`, `22 drops per 4 fl oz` or `1 %`',
    ]);
  });
  test('the size of a bait under the name of the other measure', () => {
    const fix = (...lines: string[]): string | undefined => told('mold', 'body: 9 mm', ...lines)[0]?.split(' → ')[1];
    expect(fix('cavity: 0.35 oz')).toBe('write `bait: 0.35 oz`, or `0.35 fl oz`');
    expect(fix('bait: 10 ml')).toBe('write `cavity: 10 ml`');
    expect(fix('bait: 9 g', 'cavity: 0.35 oz')).toBe('write `0.35 fl oz`');
  });
  test('a thickness without its unit', () => {
    const fix = (body: string): string | undefined => told('mold', 'cavity: 6 ml', `body: ${body}`)[0]?.split(' → ')[1];
    expect(fix('3/8')).toBe('write `3/8 in`');
    expect(fix('.040')).toBe('write `0.04 in`');
    expect(fix('9')).toBe('write `9 mm` or `9 in`');
  });
  test('words for a look, its time and its rounds', () => {
    const look = (line: string): string | undefined =>
      recipe('cups: { body: { plastic: 90 ml } }', 'seen:', '  over-white: "#8a5a2b"', `  ${line}`)[0]?.split(' → ')[1];
    expect(look('wet: yes')).toBe('write `true`');
    expect(look('wet: No')).toBe('write `false`');
    expect(look('after: overnight')).toBe('write `next day`');
    expect(look('after: 1 day')).toBe('write `next day`');
    expect(look('rounds: 3')).toBe('write `{ body: 3 }`');
    expect(told('book', 'units: { temperature: Fahrenheit }')[0]).toMatch(/→ write `°F`$/);
    expect(recipe('pattern: tiger stripe')[0]).toMatch(/→ write `striped`$/);
  });
  test('a look at the finished bait inside a cup', () => {
    const moved = 'move the whole `seen` to the margin, beside `cups`';
    expect(inCup('log:', '  - seen: { over-white: "#8a5a2b", side: body }')[0]).toMatch(moved);
    expect(inCup('seen: { over-white: "#8a5a2b", rounds: { body: 1 } }')[0]).toMatch(moved);
    expect(inCup('seen: { over-white: "#8a5a2b" }')[0]).toMatch('move it into a step of `log`');
  });
  test('a field of another place of the file, or of a part of its name', () => {
    const why = 'Cupbook would silently ignore it';
    expect(inCup('log:', '  - pour: 3 ml', '    photo: a.jpg')).toEqual([
      `field \`photo\`, ${why} → move it into \`seen\``,
    ]);
    expect(inCup('log:', '  - seen: { white: "#d9c48f", black: "#57503c" }')).toEqual([
      `field \`white\`, ${why} → write \`over-white\``,
      `field \`black\`, ${why} → write \`over-black\``,
    ]);
    expect(recipe('photo: [a.jpg]')).toEqual([`field \`photo\`, ${why} → write \`photos\``]);
    expect(recipe('form: dusk')).toEqual([`field \`form\`, ${why} → write \`from\``]);
    expect(recipe('weather: fair')).toEqual([`field \`weather\`, ${why} → remove it, or move it to the notes`]);
  });
  test('a word that begins the one that is allowed, or goes on after it', () => {
    expect(recipe('pattern: core-shot')).toEqual(['`core-shot`, undefined → write `core`']);
    expect(recipe('pattern: marble')).toEqual(['`marble`, undefined → write `swirl`']);
    expect(told('mold', 'body: 9 mm', 'shape: crawfish')).toEqual(['`crawfish`, undefined → write `craw`']);
    expect(told('flake', 'size: 1 mm', 'look: { colour: "#b8693a" }', 'shape: hex')).toEqual([
      '`hex`, undefined → write `hexagon`',
    ]);
  });
  test('a list for fields, and fields for a list', () => {
    expect(inCup('add:', '  - peat: 3 drops')).toEqual(['a list, undefined → remove the `- ` before each name']);
    expect(inCup('log:', '  pour: 3 ml')).toEqual(['nested fields, undefined → begin each entry with `- `']);
    expect(recipe('tags: dark')).toEqual(['`dark`, undefined → write `[dark]`']);
  });
  test('a colour in typographic quotes', () => {
    expect(inCup('log:', '  - seen: { over-white: “#d9c48f” }')[0]).toMatch(/→ write `"#d9c48f"`$/);
  });
});
