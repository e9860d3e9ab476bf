import { expect, test } from 'vitest';
import { bookWith, file, recipeOf } from './sample.ts';

/** What is advised of a recipe whose one drop of black moves it far, in 30 ml. */
function advice(settings: string): string {
  const book = bookWith({
    'book.md': file(`title: T\n${settings}`),
    'shelf/colorants/soot.md': file(
      'title: Soot\nlook: { kind: pigment, colour: "#101010", dose: 12 drops per 100 ml }',
    ),
    'colours/smoke.md': file(
      'title: Smoke\nmold: minnow\nbaits: 6\ncups: { body: { plastic: 100 ml, add: { frost: 1 %, soot: 2 drops } } }',
    ),
  });
  return recipeOf(book, 'smoke').repeatability.advice ?? '';
}

test('one drop that moves the colour too far: the batch that mends it, if a cup holds that much', () => {
  const mended = /^One drop of Soot moves the colour by ΔE ([\d.]+): make at least (\d+) ml in a cup\.$/.exec(
    advice('tools: { spoons: [1 tsp] }\ncup: 1000 ml'),
  )!;
  expect(Number(mended[1])).toBeGreaterThan(2);
  expect(Number(mended[2])).toBeLessThanOrEqual(500);
  expect(advice('tools: { spoons: [1 tsp] }\ncup: 1000 ml\nunits: { volume: fl oz }')).toMatch(
    /make at least [\d.]+ fl oz/,
  );
});

test('where no cup holds that much, another tool', () => {
  expect(advice('tools: { spoons: [1 tsp] }\ncup: 100 ml')).toMatch(
    /ΔE [\d.]+: a scale finer than that would mend it\.$/,
  );
});
