import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { expect, test } from 'vitest';
import { filesBelow } from './folder-tree.ts';
import { ROOT } from './run-cupbook.ts';

/** Rooms of which a maker reads texts. */
const ROOMS = ['words', 'render', 'browser', 'cli', 'book', 'recipe', 'diagnostics', 'tables', 'patterns'];

const THICKNESS = /\b(?:thin(?:s|n?e[dr]|n?est|ning|ly)?|thick(?:er|est|ly)?)\b/i;

// A part of a bait, or what one looks at, and how many millimetres it has.
const PART = '(?:parts?|tails?|body|bodies|bait|chips?|edges?|films?|layers?|lines?|walls?|claws?|ribbons?|paddles?)';

/** Where the words are millimetres: a part that is thin, a figure that is thick, how thick something is. */
const MILLIMETRES: readonly RegExp[] = [
  /\bthicker in its thin part\b/gi,
  new RegExp(`\\b(?:thin(?:ner|nest)?|thick(?:er|est)?) ${PART}\\b`, 'gi'),
  new RegExp(`\\b${PART} (?:is )?(?:thick|thin) enough\\b`, 'gi'),
  /(?:\bmm|\bin|\d|\{\}) (?:thick|thin)\b/gi,
  /\b(?:how|as) thick\b/gi,
  /\bbrown only where it is thick\b/gi,
  // Names of fields, of classes in the data, and of the command that was; words that are spoken of.
  /`[^`]*`/g,
  /\*thin\*/g,
  /^\s*thin(?:-part)?: /gm,
  /class="[^"]*"/g,
];

/** A line that says thin or thick of a colour; at a hot cup both are words for heat. */
function saysThin(text: string): boolean {
  return THICKNESS.test(MILLIMETRES.reduce((rest, allowed) => rest.replaceAll(allowed, ''), text));
}

/** Texts of a module that are more than a name, with `{}` for what is filled in. */
function textsIn(source: string): readonly string[] {
  const found: string[] = [];
  JSON.stringify(parseSync('a.ts', source).program.body, (_, value) => {
    if (value?.type === 'ImportDeclaration') return undefined;
    if (value?.type === 'Literal' && typeof value.value === 'string') found.push(value.value);
    if (value?.type === 'TemplateLiteral')
      found.push(value.quasis.map((part: { value: { cooked: string } }) => part.value.cooked).join('{}'));
    return typeof value === 'bigint' ? undefined : value;
  });
  return found.filter((text) => text.includes(' '));
}

test('the test tells a thickness from a colour that is called thin', () => {
  for (const text of [
    'much too thin',
    'The back is thin on purpose',
    '“a shade thicker than it was”',
    'keep it thick',
    'it is thinned with softener',
  ])
    expect([text, saysThin(text)]).toEqual([text, true]);
  for (const text of ['the thin tail', 'Body {} thick', 'claws 2.6 mm thick', 'how thick it is', 'a thinner chip'])
    expect([text, saysThin(text)]).toEqual([text, false]);
  expect(textsIn('const a = `too $' + "{size} thin`; const b = { thin: 'thin' };")).toEqual(['too {} thin']);
});

test.each(ROOMS)('src/%s/ never calls a colour thin or thick', (room) => {
  const folder = join(ROOT, 'src', room);
  const files = filesBelow(folder).filter((path) => path.endsWith('.ts'));
  expect(files.length).toBeGreaterThan(0);
  const said = files.flatMap((path) =>
    textsIn(readFileSync(join(folder, path), 'utf8')).flatMap((text) => (saysThin(text) ? [`${path}: ${text}`] : [])),
  );
  expect(said, 'say see-through or solid').toEqual([]);
});

test.each(['recipes', 'site/manual', 'README.md'])('%s never calls a colour thin or thick', (where) => {
  const paths = where.endsWith('.md') ? [where] : filesBelow(join(ROOT, where)).map((path) => `${where}/${path}`);
  const read = paths.filter((path) => path.endsWith('.md'));
  expect(read.length).toBeGreaterThan(0);
  const lines = read.flatMap((path) =>
    readFileSync(join(ROOT, path), 'utf8')
      .split('\n')
      .flatMap((line, at) => (saysThin(line) ? [`${path}:${at + 1}: ${line}`] : [])),
  );
  expect(lines, 'say see-through or solid').toEqual([]);
});
