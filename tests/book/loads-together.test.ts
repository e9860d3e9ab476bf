import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import { EXAMPLE_BOOK } from '../../src/diagnostics/examples.ts';

const dye = (title: string, more = ''): string =>
  `---\ntitle: ${title}\nlook: { kind: dye, colour: "#5d8a3a", dose: 12 drops per 100 ml }\n${more}---\n`;

/** A cup of 100 ml of plastic with amounts of a green and a red dye, each drop 0.05 ml. */
const cup = (add: string, more = ''): readonly string[] => {
  const files = {
    ...EXAMPLE_BOOK,
    'shelf/colorants/sedge.md': dye('Sedge', more),
    'shelf/colorants/rowan.md': dye('Rowan'),
    'colours/smoke.md': `---\ntitle: Smoke\nmold: minnow\ncups: { body: { plastic: 100 ml supple, add: ${add} } }\n---\n`,
  };
  return compileBook(Object.entries(files).map(([path, text]) => ({ path, text }))).diagnostics.flatMap(
    ({ code, found, expected }) => (code.startsWith('recipe/') ? [`${code}: ${found}; ${expected}`] : []),
  );
};

describe('too much of one sort together', () => {
  test('60 drops of 0.05 ml in 100 ml are 3 % by volume, the most without a word', () => {
    expect(cup('{ sedge: 35 drops, rowan: 25 drops }')).toEqual([]);
    expect(cup('{ sedge: 40 drops, rowan: 25 drops }')).toEqual([
      'recipe/too-much-together: 3.3 % of liquid colour together, of which Sedge is 2 g per 100 ml; at most 3 % by volume of the plastic; usual are 0.2 % to 2 %',
    ]);
  });
  test('a supplier who allows more of one is heard', () => {
    // 40 of its own 80 drops, and 25 of 60: half full and five twelfths.
    expect(cup('{ sedge: 40 drops, rowan: 25 drops }', 'most: 80 drops per 100 ml\n')).toEqual([]);
    expect(cup('{ sedge: 50 drops, rowan: 25 drops }', 'most: 80 drops per 100 ml\n')).toHaveLength(1);
  });
  test('powder counts by mass, and nothing with what is of another sort', () => {
    expect(cup('{ frost: 1.9 %, sedge: 50 drops }')).toEqual([]);
    expect(cup('{ frost: 2.2 % }')[0]).toContain('recipe/too-much-together: 2.2 % of powder together');
  });
  test('what one material alone is too much of is told once', () => {
    expect(cup('{ sedge: 30 drops }', 'most: 20 drops per 100 ml\n')).toEqual([
      expect.stringContaining('recipe/overloaded'),
    ]);
    expect(cup('{ sedge: 60 drops, rowan: 10 drops }', 'most: 20 drops per 100 ml\n')).toHaveLength(1);
  });
});
