import { describe, expect, test } from 'vitest';
import { readFrontMatter } from '../../src/recipe/front-matter.ts';
import { readThing } from '../../src/recipe/read-thing.ts';
import { kindOfPath, slugOf } from '../../src/recipe/source.ts';

const read = (text: string): ReturnType<typeof readFrontMatter> => readFrontMatter({ path: 'colours/smoke.md', text });
const place = (text: string, path: PropertyKey[], part?: 'key' | 'value'): string => {
  const found = read(text);
  if (!('place' in found)) throw new Error(found.map(({ code }) => code).join());
  const { start } = found.place(path, part);
  return `${start.line}:${start.column}`;
};

describe('readFrontMatter', () => {
  const text = '---\ntitle: Smoke\ncups:\n  body:\n    add:\n      peat: 22 drops\nlist: [one, two]\n---\nNotes.\n';
  test('place(path) is the line and column of a value in the file, or of its key', () => {
    expect(place(text, ['title'])).toBe('2:8');
    expect(place(text, ['cups', 'body', 'add', 'peat'])).toBe('6:13');
    expect(place(text, ['cups', 'body', 'add', 'peat'], 'key')).toBe('6:7');
    expect(place(text, ['list', 1])).toBe('7:13');
  });
  test('place(path that leads to nothing) is the nearest that exists', () => {
    expect(place(text, ['cups', 'body', 'plastic'])).toBe('4:3');
    expect(place(text, ['nothing'])).toBe('2:1');
  });
  test('place(path) is right with CRLF, with a byte order mark, and with both', () => {
    expect(place(text.replaceAll('\n', '\r\n'), ['cups', 'body', 'add', 'peat'])).toBe('6:13');
    expect(place(`\uFEFF${text}`, ['title'])).toBe('2:8');
    expect(place(`\uFEFF${text.replaceAll('\n', '\r\n')}`, ['list', 1])).toBe('7:13');
  });
  test('readFrontMatter tells a decimal comma in braces where it stands, with the point', () => {
    const found = read(
      '---\ntitle: Smoke\nadd: { peat: 0,05 g, straw: 3 drops }\nlist: [1,5]\nmap: { a: 1,b: 2 }\n---\n',
    );
    expect(found).toMatchObject([
      { code: 'front-matter/syntax', start: { line: 3, column: 14 }, found: '`0,05 g`', fix: 'write `0.05 g`' },
    ]);
  });
  test('readFrontMatter refuses a line that only begins as the end does, since what follows it would be no field', () => {
    for (const line of ['--- mine', '----', '---mine']) {
      expect(read(`---\ntitle: Smoke\n${line}\npublish: no\n---\n`)).toMatchObject([
        { code: 'front-matter/syntax', start: { line: 3, column: 1 }, found: `\`${line}\`` },
      ]);
    }
    expect(place('---\ntitle: Smoke\n---\nNotes.\n\n--- mine\n', ['title'])).toBe('2:8');
  });
  test('readFrontMatter gives the notes after the front matter', () => {
    const found = read(text);
    expect('body' in found && found.body).toBe('Notes.\n');
  });
  test('readFrontMatter reads YAML 1.2: no dates, no octals, no yes and no', () => {
    const found = read('---\na: 2026-03-14\nb: 010\nc: yes\nd: 1:30\n---\n');
    expect('data' in found && found.data).toEqual({ a: '2026-03-14', b: 10, c: 'yes', d: '1:30' });
  });
  test.each(['js', 'javascript', 'json', 'toml', 'coffee', 'jsLegacy'])(
    'readFrontMatter refuses ---%s without running it',
    (language) => {
      (globalThis as { ran?: boolean }).ran = false;
      const found = read(`---${language}\n{ a: (globalThis.ran = true) }\n---\n`);
      expect('place' in found ? [] : found.map(({ code }) => code)).toEqual(['front-matter/language']);
      expect((globalThis as { ran?: boolean }).ran).toBe(false);
    },
  );
  test('readFrontMatter gives the same fault a second time: nothing is cached', () => {
    const bad = '---\na: [1\n---\n';
    expect(read(bad)).toEqual(read(bad));
    expect('place' in read(bad)).toBe(false);
  });
  test('readFrontMatter refuses tags, aliases that grow, and a second document', () => {
    for (const bad of [
      '---\na: !!js/function "x"\n---\n',
      '---\na: &a [x, x]\nb: [*a, *a]\n---\n',
      '---\na: 1\na: 2\n---\n',
    ]) {
      expect('place' in read(bad)).toBe(false);
    }
  });
  test('readThing(__proto__) is an unknown field, and pollutes nothing', () => {
    const found = readThing('recipe', 'smoke', {
      path: 'colours/smoke.md',
      text: '---\ntitle: x\n__proto__:\n  polluted: true\n---\n',
    });
    expect('kind' in found ? [] : found.map(({ code }) => code)).toEqual(['field/unknown']);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });
  test('readThing reports all faults of a file at once, each in its place', () => {
    const found = readThing('recipe', 'smoke', {
      path: 'colours/smoke.md',
      text: '---\ntitel: x\npattern: sold\nmade: 2026-13-01\ncups:\n  body:\n    plastic: 120\n    add:\n      peat: 12 dorps\n---\n',
    });
    expect(
      'kind' in found ? [] : found.map(({ code, start }) => `${start.line}:${start.column} ${code}`).sort(),
    ).toEqual([
      '2:1 field/missing',
      '2:1 field/unknown',
      '3:10 field/value',
      '4:7 field/date',
      '7:14 field/quantity',
      '9:13 field/quantity',
    ]);
  });
});

describe('paths and names', () => {
  test('kindOfPath(path) goes by the folder', () => {
    expect(kindOfPath('book.md')).toEqual({ kind: 'book', id: 'book' });
    expect(kindOfPath('shelf/flakes/copper-040.md')).toEqual({ kind: 'flake', id: 'copper-040' });
    expect(kindOfPath('colours/deep/smoke.md')).toBeUndefined();
    expect(kindOfPath('readme.md')).toBeUndefined();
  });
  test('slugOf(title) drops accents and signs', () => {
    expect(slugOf('Crème Brûlée, No. 2!')).toBe('creme-brulee-no-2');
    expect(slugOf('水')).toBe('');
  });
});
