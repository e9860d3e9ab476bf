import { expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { firstRecipeFor } from '../../src/book/match/ask-matching.ts';
import { labsOfPart } from '../../src/book/match/asked-cup.ts';
import { unlikeSides } from '../../src/matching/target/unlike-sides.ts';
import { DEMO_BOOK } from '../render/demo-book.ts';
import { dose, projectFile, recipeOf } from './sample.ts';

/** Files that the manual shows: a paragraph that begins with a name in bold, then a block. */
function shownFiles(): { path: string; text: string }[] {
  const manual = ['your-book', 'matching'].map((name) => projectFile(`site/manual/${name}.md`)).join('\n');
  const found = manual.matchAll(/^\*\*`([^`]+)`\*\*(?:(?!```)[\s\S])*?```markdown\n([\s\S]*?)```/gm);
  return [...found].map(([, path, text]) => ({ path: path!, text: text! }));
}

test('the book in the manual compiles without a word', () => {
  const files = shownFiles();
  expect(files.map(({ path }) => path)).toEqual([
    'book.md',
    'shelf/plastics/supple.md',
    'shelf/colorants/peat.md',
    'shelf/colorants/peat-cut.md',
    'shelf/powders/ivory-pearl.md',
    'shelf/flakes/copper-hex-040.md',
    'molds/minnow-3.md',
    'colours/alder-smoke.md',
    'colours/night-alder.md',
    'targets/jar-elver.md',
  ]);
  const { book, diagnostics } = compileBook(files, { photos: ['photos/jar-elver.jpg'] });
  expect(diagnostics).toEqual([]);
  const [alder, night] = [recipeOf(book!, 'alder-smoke'), recipeOf(book!, 'night-alder')];
  expect(dose(night.cups[0]!, 'peat') - dose(alder.cups[0]!, 'peat')).toBeCloseTo((8 * 0.98) / 20, 9);
  expect(night.cups[1]!.contents).toEqual(alder.cups[1]!.contents);
});

test('the target in the manual has every field that a target can have', async () => {
  const { SCHEMAS } = await import('../../src/recipe/schema.ts');
  const { text } = shownFiles().find(({ path }) => path === 'targets/jar-elver.md')!;
  const missing = Object.keys(SCHEMAS.target.shape).filter((name) => !new RegExp(`\\b${name}:`).test(text));
  expect(missing).toEqual([]);
});

test('the target in the manual is a bait that the demo book’s shelf can make', () => {
  const { book } = compileBook(shownFiles(), { photos: ['photos/jar-elver.jpg'] });
  const [target] = book!.targets;
  expect(target!.unlikeSides).toBeUndefined();
  // What stands beside the parts is meant for each that says nothing else.
  expect(
    target!.parts.map(({ doubt, after, plastic, thicknessMm }) => [doubt.bound, after, plastic, thicknessMm]),
  ).toEqual([
    [4, 'next day', 'supple', 8],
    [6, 'next day', 'supple', 8],
  ]);
  // As if nobody had answered the question: none is asked of it.
  const { apart: _, ...unsaid } = target!;
  expect(unlikeSides(unsaid.parts.map(labsOfPart))).toBeUndefined();
  const [{ recipe } = expect.fail('no answer')] = firstRecipeFor(DEMO_BOOK, target!, { most: 3, plasticMl: 120 });
  expect(recipe.advice.kind).toBe('make');
  expect(recipe.proposals[0]!.deltaE).toBeLessThan(target!.tolerance);
  const flaked = recipe.proposals[0]!.cups.map(({ name, flakes }) => [name, flakes.length]);
  expect(flaked).toEqual([
    ['back', 1],
    ['belly', 0],
  ]);
});

test('every field of a file stands in the manual', async () => {
  const { SCHEMAS } = await import('../../src/recipe/schema.ts');
  const files = projectFile('site/manual/files.md');
  const missing = Object.entries(SCHEMAS).flatMap(([kind, schema]) =>
    Object.keys(schema.shape)
      .filter((name) => !new RegExp(`\`(?:${name}|${name}: [^\`]*)\``).test(files))
      .map((name) => `${kind}.${name}`),
  );
  expect(missing).toEqual([]);
});

test('every part of book.json stands in the manual', async () => {
  const { book } = compileBook(shownFiles(), { photos: ['photos/jar-elver.jpg'] });
  const data = projectFile('site/manual/data.md');
  expect(data).toContain(`| \`format\`, \`edition\` | ${book!.format};`);
  const parts = [...Object.keys(book!), ...Object.keys(book!.recipes[0]!.cups[1]!)];
  const known = [
    'name',
    'share',
    'from',
    'volumePerPlastic',
    'written',
    'leftMl',
    'highestReached',
    'reheats',
    'limitUnknown',
    'working',
    'contents',
  ];
  expect(parts.filter((part) => !data.includes(`\`${part}\``) && !known.includes(part))).toEqual([]);
});
