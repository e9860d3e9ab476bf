import { describe, expect, test } from 'vitest';
import { roundTop, spectrumGraph } from '../../src/render/spectrum-graph.ts';
import { lightWords, peakWords } from '../../src/render/spectrum-words.ts';

const flat = Array.from({ length: 36 }, () => 0.5);
const hill = Array.from({ length: 36 }, (_, band) => Math.exp(-(((band - 17) / 4) ** 2)));

test.each([
  [0, 1],
  [0.07, 0.1],
  [0.1, 0.1],
  [0.11, 0.2],
  [3, 5],
  [7, 10],
])('roundTop(%d) is %d', (value, top) => {
  expect(roundTop(value)).toBeCloseTo(top, 12);
});

describe('spectrumGraph(…)', () => {
  const graph = spectrumGraph({
    id: 'g',
    title: 'A < B',
    description: 'Words.',
    unit: 'per mm',
    lines: [
      { name: 'one', values: flat, mark: 'solid' },
      { name: 'other', values: flat, mark: 'dashed' },
    ],
  }).toString();

  test('is a picture with a title and a description', () => {
    expect(graph).toContain('role="img" aria-labelledby="g-title g-desc"');
    expect(graph).toContain('<title id="g-title">A &lt; B</title><desc id="g-desc">Words.</desc>');
  });

  test('has a point for each value, inside the drawing', () => {
    const [, points] = /points="([^"]+)"/.exec(graph)!;
    const places = points!.split(' ').map((point) => point.split(',').map(Number));
    expect(places).toHaveLength(36);
    for (const [x, y] of places) expect(x! >= 0 && x! <= 330 && y! >= 0 && y! <= 200).toBe(true);
  });

  test('keeps the names of lines apart that end at the same height', () => {
    const heights = [...graph.matchAll(/class="graph-name" x="[\d.]+" y="([\d.]+)"/g)].map(([, y]) => Number(y));
    expect(Math.abs(heights[0]! - heights[1]!)).toBeGreaterThanOrEqual(14);
  });
});

test('peakWords(…) names where a spectrum is high and low, and says when it is even', () => {
  expect(peakWords(hill)).toBe('green (550 nm) most, red (730 nm) least');
  expect(peakWords(flat)).toBe('all colours of light about equally');
  expect(peakWords(flat.map(() => 0))).toBe('nothing anywhere');
});

test('lightWords(…) leaves out what hardly happens', () => {
  const trace = flat.map(() => 0.001);
  expect(lightWords(hill, trace)).toBe('absorbs green (550 nm) most, red (730 nm) least; hardly scatters any');
  expect(lightWords(trace, flat)).toBe('hardly absorbs any light; scatters all colours of light about equally');
});
