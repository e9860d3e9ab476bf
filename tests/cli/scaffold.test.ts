import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { type Scaffolded, scaffoldText } from '../../src/cli/scaffold.ts';
import { KINDS, type Kind } from '../../src/kinds/kinds.ts';
import { SMALL_BOOK } from '../small-book.ts';

const UNITS: readonly Scaffolded['settings'][] = [
  { volume: 'ml', temperature: '°C' },
  { volume: 'fl oz', temperature: '°F' },
];
const FLAKE = '---\ntitle: Dust\nsize: 0.2 mm\nlook: { colour: "#b8693a" }\n---\n';
const POWDER = '---\ntitle: Chalk\nlook: { kind: white, colour: "#f0efea", dose: 1 % }\n---\n';
const FILES: Readonly<Record<string, string>> = {
  ...SMALL_BOOK,
  'shelf/flakes/dust.md': FLAKE,
  'shelf/powders/chalk.md': POWDER,
};
const IDS = new Map(
  Object.entries(KINDS).map(([kind, { folder }]) => [
    kind as Kind,
    Object.keys(FILES).flatMap((path) =>
      path.startsWith(`${folder}/`) ? [path.slice(folder.length + 1, -'.md'.length)] : [],
    ),
  ]),
);
const ALL: readonly Kind[] = ['book', ...(Object.keys(KINDS) as (keyof typeof KINDS)[])];

/** The first value that a hint proposes. */
function proposed(name: string, hint: string): string {
  if (name === 'over-black') return '"#4c3a20"';
  return /such as ("[^"]+"|\{.*?\}|[^:;]+)/.exec(hint)?.[1] ?? hint.replace(/,.*| or .*/, '');
}

const filled = (text: string): string =>
  text.replace(
    /^( *)([a-z-]+): {2}# (.*)$/gm,
    (_, indent: string, name: string, hint: string) => `${indent}${name}: ${proposed(name, hint)}`,
  );

const fresh = (kind: Kind, settings: Scaffolded['settings'], from?: 'from'): string =>
  scaffoldText({
    kind,
    title: 'Reed',
    ids: IDS,
    today: '2026-03-14',
    settings,
    ...(from && { parent: { id: 'bog-pool', cups: ['body'] } }),
  });

/** What is told as an error or as still empty of a book with this file. */
function told(kind: Kind, text: string): readonly string[] {
  const path = kind === 'book' ? 'book.md' : `${KINDS[kind].folder}/reed.md`;
  const sources = Object.entries({ ...FILES, [path]: text }).map(([path, text]) => ({ path, text }));
  return compileBook(sources).diagnostics.flatMap(({ severity, code, found, fix }) =>
    severity === 'error' || code === 'field/to-fill-in' ? [`${code}: ${found} → ${fix}`] : [],
  );
}

const CASES = UNITS.flatMap((settings) => ALL.map((kind) => ({ kind, settings, units: settings.volume })));

describe('a new file', () => {
  test.each(CASES)('is right once its hints are followed: a $kind in $units', ({ kind, settings }) => {
    expect(told(kind, filled(fresh(kind, settings)))).toEqual([]);
  });

  test.each(CASES)('has comments that are right once their # is removed: a $kind in $units', ({ kind, settings }) => {
    const lines = filled(fresh(kind, settings)).split('\n');
    const comments = lines.flatMap((line, index) => (/^#(?! )/.test(line) ? [index] : []));
    expect(comments).not.toEqual([]);
    for (const index of comments) {
      const line = lines[index]!.slice(1);
      expect([line, ...told(kind, lines.with(index, line).join('\n'))]).toEqual([line]);
    }
  });

  test('shows what is easily missed: a plastic that stays milky, an effect, a cut, and the sides of a target', () => {
    expect(fresh('plastic', UNITS[0]!)).toContain('#look: { kind: milky }');
    for (const kind of ['colorant', 'powder'] as const)
      expect(fresh(kind, UNITS[0]!)).toContain('#effect: fluorescent');
    expect(fresh('colorant', UNITS[0]!)).toContain('write `cut` in place');
    expect(fresh('target', UNITS[0]!)).toContain('write `parts` in place');
  });

  test('of a recipe has drops of a colorant, and spoons of powder and flake', () => {
    expect(fresh('recipe', UNITS[0]!)).toContain('such as { peat: 10 drops, chalk: 1/8 tsp, dust: 1/8 tsp }');
  });

  test('that comes from a recipe is right with the cup that it shows', () => {
    const text = fresh('recipe', UNITS[1]!, 'from')
      .replace(/^#(?! )|^#(?= {2})/gm, '')
      .replace('some-colorant', 'peat');
    expect(text).toContain('\ncups:\n  body:\n    add:\n      peat: 2 drops per 4 fl oz\n');
    expect(told('recipe', text)).toEqual([]);
  });
});
