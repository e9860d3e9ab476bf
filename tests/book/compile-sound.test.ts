import { describe, expect, test } from 'vitest';
import { compileSound } from '../../src/book/compile-sound.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';
import { compileWith, file } from './sample.ts';

function soundOf(files: Readonly<Record<string, string>>): ReturnType<typeof compileSound> {
  const { diagnostics } = compileWith(files);
  const sources = Object.entries({ ...EXAMPLE_BOOK, ...files }).map(([path, text]) => ({ path, text }));
  return compileSound(sources, [], diagnostics);
}

const needs = (from: string): string => file(`title: ${from}ling\nfrom: ${from}`);

describe('compileSound', () => {
  test('compileSound leaves out what has errors, and all that needs it, in any number of steps', () => {
    const sound = soundOf({
      'colours/broken.md': file('title: Broken\nmold: minow\ncups:\n  body:\n    plastic: 90 ml supple'),
      'colours/child.md': needs('broken'),
      'colours/grandchild.md': needs('child'),
    })!;
    expect(sound.faulty).toEqual(['colours/broken.md']);
    expect([...sound.leftOut].sort()).toEqual(['colours/broken.md', 'colours/child.md', 'colours/grandchild.md']);
    expect(sound.book.recipes.map(({ id }) => id)).toEqual(['smoke']);
    expect([...sound.book.materials, ...sound.book.molds].map(({ id }) => id).sort()).toEqual([
      'frost',
      'minnow',
      'peat',
      'supple',
    ]);
  });
  test('compileSound keeps a recipe whose photo is not there', () => {
    const photo = EXAMPLE_BOOK['colours/smoke.md']!.replace('mold:', 'photos: [smoke.jpg]\nmold:');
    const sound = soundOf({ 'colours/smoke.md': photo })!;
    expect([sound.leftOut, sound.book.recipes.map(({ id }) => id)]).toEqual([[], ['smoke']]);
  });
  test('compileSound gives nothing where book.md itself has errors', () => {
    expect(soundOf({ 'book.md': file('titel: Mine') })).toBeUndefined();
  });
});
