import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readFrontMatter } from '../../src/recipe/front-matter.ts';

/** What is told of front matter with these lines, which begin at line 2. */
const told = (...lines: string[]): readonly string[] => {
  const found = readFrontMatter({ path: 'colours/smoke.md', text: `---\n${lines.join('\n')}\n---\nNotes.\n` });
  return 'place' in found
    ? []
    : found.map(({ start, found, fix }) => `${start.line}:${start.column} ${found} → ${fix}`);
};

describe('readFrontMatter tells a slip of the pen once, where it is, and what mends it', () => {
  test.each<[slip: string, lines: string[], told: string]>([
    [
      'a bare colour in { }, before other lines',
      ['seen: { over-white: #c5cc8a, over-black: "#4a3520" }', 'note: dark'],
      '2:21 `#c5cc8a` without quotes → write `"#c5cc8a"`',
    ],
    [
      'a colour without its second quote',
      ['seen: { over-white: "#c5cc8a, over-black: "#4a3520" }', 'note: dark'],
      '2:21 `"#c5cc8a` without its second quote → write `"#c5cc8a"`',
    ],
    [
      'text without its second quote',
      ['title: "Smoke', 'mold: minnow'],
      '2:8 `"Smoke` without its second quote → write a second " where the text ends',
    ],
    [
      'an apostrophe in single quotes',
      ["title: 'Nell's'"],
      `2:13 ' in the middle of a text in quotes → put the text between two " instead`,
    ],
    ['a second colon', ['title: Smoke: dark'], '2:8 second colon in `title: Smoke: dark` → write `"Smoke: dark"`'],
    [
      'a second colon and a number',
      ['title: Smoke: #2'],
      '2:8 second colon in `title: Smoke: #2` → write `"Smoke: #2"`',
    ],
    [
      'a second colon and a comment',
      ['title: Smoke: dark # old'],
      '2:8 second colon in `title: Smoke: dark` → write `"Smoke: dark"`',
    ],
    [
      'a second colon in { }',
      ['seen: { note: better: more green }'],
      '2:15 second colon in `note: better: more green` → write `"better: more green"`',
    ],
    [
      'a comma left out in { }',
      ['add: { peat: 3 drops straw: 4 drops }'],
      '2:14 `3 drops straw: 4 drops` without a comma → write `3 drops, straw: 4 drops`',
    ],
    [
      'one space too few',
      ['add:', '  peat: 3 drops', ' straw: 4 drops'],
      '4:2 `straw` after 1 space → begin the line with 2 spaces',
    ],
    [
      'one space too many',
      ['add:', '  peat: 3 drops', '   straw: 4 drops'],
      '4:4 `straw` after 3 spaces → begin the line with 2 spaces',
    ],
    [
      'one space too few in an entry of a list',
      ['log:', '  - pour: 3 ml', '   seen: dark'],
      '4:4 `seen` after 3 spaces → begin the line with 4 spaces',
    ],
    [
      'one space too few in the first of several fields',
      ['add:', ' peat: 3 drops', '  straw: 4 drops'],
      '3:2 `peat` after 1 space → begin the line with 2 spaces',
    ],
    [
      'a dash before the first of several fields',
      ['add:', '  - peat: 3 drops', '  straw: 4 drops'],
      '3:3 `- ` among fields → remove the `- `',
    ],
    [
      'a dash among fields',
      ['add:', '  peat: 3 drops', '  - straw: 4 drops', '  tea: 1 drop'],
      '4:3 `- ` among fields → remove the `- `',
    ],
    [
      'a field among entries',
      ['log:', '  - pour: 3 ml', '  note: dark'],
      '4:3 field `note` among the entries of a list → write `- note: …`, or put two more spaces before it if it belongs to the entry above',
    ],
    [
      'no dash before the first of several entries',
      ['seen:', '  { side: back }', '  - { side: belly }'],
      '3:3 entry of a list without a dash → write `- ` before it',
    ],
    [
      'no space after the colon',
      ['add:', '  peat:3 drops', '  straw: 4 drops'],
      '3:3 `peat:3 drops` without a space after the colon → write `peat: 3 drops`',
    ],
    [
      'no colon',
      ['add:', '  straw: 4 drops', '  peat 3 drops'],
      '4:3 `peat 3 drops` without a colon → write `peat: 3 drops`',
    ],
    [
      'a tab',
      ['add:', '\tpeat: 3 drops'],
      '3:1 tab at the beginning of a line → put spaces in its place, as many as in the lines beside it',
    ],
    ['an open bracket', ['add: { peat: 3 drops', 'mold: minnow'], '2:6 `{` without `}` → write `}` at the end'],
    ['a bracket too many', ['add: { peat: 3 drops }}', 'mold: minnow'], '2:23 `}` after the closing } → remove `}`'],
    ['a sign that YAML keeps for itself', ['title: @home'], '2:8 `@home` without quotes → write `"@home"`'],
    ['a name twice', ['title: Smoke', 'title: Dusk'], '3:1 second `title` → keep one of the two'],
  ])('%s', (_slip, lines, expected) => {
    expect(told(...lines)).toEqual([expected]);
  });

  test('whatever the line ends are', () => {
    const found = readFrontMatter({
      path: 'colours/smoke.md',
      text: '---\r\nadd:\r\n  peat: 3 drops\r\n straw: 4\r\n---\r\n',
    });
    expect(found).toMatchObject([{ start: { line: 4, column: 2 }, end: { line: 4, column: 7 } }]);
  });
});

/** Slips that a hand makes in a line; undefined where the line has no room for one. */
const SLIPS: Readonly<Record<string, (line: string) => string | undefined>> = {
  'a space too few': (line) => (line.startsWith(' ') ? line.slice(1) : undefined),
  'a space too many': (line) => ` ${line}`,
  'a tab': (line) => (line.startsWith('  ') ? line.replace(/^ +/, '\t') : undefined),
  'a quote lost': (line) => line.replace('"', ''),
  'the last quote lost': (line) => line.replace(/"(?=[^"]*$)/, ''),
  'both quotes lost': (line) => line.replace(/"([^"]*)"/, '$1'),
  'a bracket lost': (line) => line.replace(/[{[]/, ''),
  'the last bracket lost': (line) => line.replace(/[}\]](?=[^}\]]*$)/, ''),
  'a comma lost': (line) => line.replace(/(?<=\{.*),/, ''),
  'a colon lost': (line) => line.replace(':', ''),
  'the space after a colon lost': (line) => line.replace(': ', ':'),
  'a second colon': (line) => (/[{["]/.test(line) ? undefined : line.replace(/: (\w+)/, ': $1: ')),
  'a dash too many': (line) => (/^ +\w/.test(line) ? line.replace(/^ +/, '$&- ') : undefined),
  'a dash lost': (line) => line.replace(/^( *)- /, '$1'),
};

describe('a slip in any line of the demo book is told once, in that line', () => {
  const folder = new URL('../../recipes/colours/', import.meta.url);
  const texts = readdirSync(folder).map((name) => readFileSync(new URL(name, folder), 'utf8'));
  test.each(Object.entries(SLIPS))('%s', (_kind, slip) => {
    const astray: string[] = [];
    let told = 0;
    for (const text of texts) {
      const lines = text.split('\n');
      for (const [index, line] of lines.slice(0, lines.indexOf('---', 1)).entries()) {
        const slipped = index === 0 ? undefined : slip(line);
        if (slipped === undefined || slipped === line) continue;
        const found = readFrontMatter({ path: 'a.md', text: lines.with(index, slipped).join('\n') });
        if ('place' in found) continue;
        told += 1;
        if (found.length !== 1 || found[0]!.start.line !== index + 1) astray.push(`${slipped}: ${found[0]!.found}`);
      }
    }
    expect(told).toBeGreaterThan(20);
    expect(astray).toEqual([]);
  });
});

test('sound YAML that looks like a slip is read', () => {
  expect(
    told(
      'note: |',
      '  a: b: c',
      '  "open',
      'seen: { a: "x",',
      '  b: 3 }',
      'log:',
      '- a: 1',
      '- b: 2',
      'text: first',
      '  second: "half"'.replace(':', ''),
      "quote: 'it''s'",
      'address: https://book.example/',
    ),
  ).toEqual([]);
});

test('readFrontMatter(anything) answers', () => {
  const piece = fc.constantFrom(
    'a: ',
    '  ',
    '- ',
    '{ ',
    ' }',
    '[',
    ']',
    '"',
    "'",
    '#',
    '# 1',
    '\n',
    '\t',
    ', ',
    'b',
    ': ',
    '@',
    '|',
    '&',
    '*',
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
      const found = readFrontMatter({ path: 'a.md', text: `---\n${pieces.join('')}\n---\n` });
      if ('place' in found) return;
      expect(found.length).toBeGreaterThan(0);
      for (const { start } of found) expect(Math.min(start.line, start.column)).toBeGreaterThan(0);
    }),
  );
});
