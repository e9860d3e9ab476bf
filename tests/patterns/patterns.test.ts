import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cutAcross, evenly, regionsOf } from '../../src/patterns/cut.ts';
import { discBefore, discHalf, discPlace } from '../../src/patterns/disc.ts';
import { PATTERN_NAMES, PATTERNS, type Pattern } from '../../src/patterns/patterns.ts';
import { cupAt } from '../../src/patterns/through.ts';

/** A pattern with shares for as many cups as it takes, up to four. */
const poured = fc
  .constantFrom(...PATTERN_NAMES)
  .chain((pattern) => {
    const { least, most } = PATTERNS[pattern].cups;
    const parts = fc.array(fc.integer({ min: 1, max: 20 }), { minLength: least, maxLength: Math.min(4, most) });
    return fc.record({ pattern: fc.constant<Pattern>(pattern), parts });
  })
  .map(({ pattern, parts }) => {
    const sum = parts.reduce((all, part) => all + part, 0);
    return { pattern, shares: parts.map((part) => part / sum) };
  });

const place = fc.double({ min: 0, max: 1, noNaN: true });
const line = fc.record({ along: place, across: place });

test('a bait summed up place by place, as a round body, has of every cup what its share says', () => {
  const count = 60;
  const middles = Array.from({ length: count }, (_, index) => (index + 0.5) / count);
  fc.assert(
    fc.property(poured, ({ pattern, shares }) => {
      const held = shares.map(() => 0);
      let all = 0;
      for (const along of middles) {
        for (const across of middles) {
          const thick = discHalf(2 * across - 1);
          all += thick;
          for (const depth of middles) {
            held[cupAt(PATTERNS[pattern].through, shares, { along, across, depth })]! += thick / count;
          }
        }
      }
      for (const [cup, share] of shares.entries()) expect(Math.abs(held[cup]! / all - share)).toBeLessThan(0.015);
    }),
    { numRuns: 40 },
  );
});

test('a line of sight runs through cups that differ from one to the next, and through the whole thickness', () => {
  fc.assert(
    fc.property(poured, line, ({ pattern, shares }, sight) => {
      const runs = PATTERNS[pattern].through(shares, sight);
      expect(runs.reduce((sum, { part }) => sum + part, 0)).toBeCloseTo(1, 9);
      for (const [index, { cup, part }] of runs.entries()) {
        expect(part).toBeGreaterThan(0);
        expect(shares[cup]).toBeDefined();
        expect(runs[index + 1]?.cup).not.toBe(cup);
      }
    }),
  );
});

test('cups are seen beside one another where no line of sight runs through two, and only there', () => {
  const lines = evenly(20).flatMap((along) => evenly(20).map((across) => ({ along, across })));
  for (const pattern of PATTERN_NAMES) {
    const { beside, through, cups } = PATTERNS[pattern];
    if (cups.most < 2) continue;
    const alone = lines.every((sight) => through([0.6, 0.4], sight).length === 1);
    expect({ pattern, beside: alone }).toEqual({ pattern, beside });
  }
});

test('a cup that a face or a thin part names is one that every bait of the pattern has', () => {
  for (const pattern of PATTERN_NAMES) {
    const { cups, faces, thin } = PATTERNS[pattern];
    const named = faces.flatMap((face) => (face && 'alone' in face ? [face.alone] : []));
    for (const cup of [...named, ...(thin === 'body' ? [] : [thin.cup])]) expect(cup).toBeLessThan(cups.least);
  }
});

test('the regions of a cut across a bait fill it, each with the area that the places in it have', () => {
  fc.assert(
    fc.property(poured, ({ pattern, shares }) => {
      const { through } = PATTERNS[pattern];
      const areas = shares.map(() => 0);
      for (const { cup, edges } of regionsOf(cutAcross(through, shares), evenly(200))) {
        for (const [index, next] of edges.slice(1).entries()) {
          const last = edges[index]!;
          const height = (last.to - last.from + next.to - next.from) / 2;
          // The disc's own area between the two places, of which the region has its part of the height.
          areas[cup]! += height * (discBefore(2 * next.at - 1) - discBefore(2 * last.at - 1));
        }
      }
      expect(areas.reduce((sum, area) => sum + area, 0)).toBeCloseTo(1, 6);
      if (pattern === 'tipped') return;
      for (const [cup, share] of shares.entries()) expect(areas[cup]).toBeCloseTo(share, 2);
    }),
    { numRuns: 60 },
  );
});

test('discBefore(place) is the area before a chord, and discPlace(part) its inverse', () => {
  // A cap of half the radius: acos(1/2) − (1/2)·√(3)/2 over π.
  expect(discBefore(-0.5)).toBeCloseTo((Math.acos(0.5) - 0.5 * Math.sqrt(0.75)) / Math.PI, 12);
  fc.assert(
    fc.property(place, (part) => {
      expect(discBefore(discPlace(part))).toBeCloseTo(part, 9);
    }),
  );
});
