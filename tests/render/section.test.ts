import { describe, expect, test } from 'vitest';
import { PATTERN_NAMES, PATTERNS } from '../../src/patterns/patterns.ts';
import { section } from '../../src/render/swatch/section.ts';

type Point = readonly [x: number, y: number];

/** Area within a path of straight lines. */
function areaOf(path: string): number {
  let [x, y] = [0, 0];
  const points = [...path.matchAll(/[Ml](-?[\d.]+) ?(-?[\d.]+)/g)].map(([, across, down]): Point => {
    [x, y] = [x + Number(across), y + Number(down)];
    return [x, y];
  });
  return Math.abs(
    points.reduce((sum, [fromX, fromY], index) => {
      const [nextX, nextY] = points[(index + 1) % points.length]!;
      return sum + (fromX * nextY - nextX * fromY) / 2;
    }, 0),
  );
}

describe('the cut of a pattern', () => {
  const parts = [
    { hex: '#aa0000', share: 0.7 },
    { hex: '#00bb00', share: 0.3 },
  ];

  for (const pattern of PATTERN_NAMES.filter((name) => PATTERNS[name].cups.most > 1)) {
    test(`${pattern} shows its second cup as large as its share`, () => {
      const text = section(pattern, parts).toString();
      const [, rx, ry] = /rx="([\d.]+)" ry="([\d.]+)"/.exec(text)!.map(Number);
      const paths = [...text.matchAll(/d="([^"]+)" fill="#00bb00"/g)].map(([, path]) => path!);
      const area = paths.reduce((sum, path) => sum + areaOf(path), 0) / (Math.PI * rx! * ry!);
      // Streaks are shared out over the thickness of a bait, which a level cut does not show.
      expect(Math.abs(area - 0.3)).toBeLessThan(pattern === 'swirl' ? 0.05 : 0.01);
    });
  }
});
