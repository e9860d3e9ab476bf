import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { flakeFields, photoFields, writtenColour } from '../../src/photo/photo-fields.ts';
import type { PhotoMeasured } from '../../src/photo/photo-measured.ts';
import { readThing } from '../../src/recipe/read-thing.ts';
import { frontMatterText } from '../../src/recipe/write-front-matter.ts';

const MEASURED = {
  overWhite: labFromHex('#8a6a44'),
  overBlack: { L: 75.44, a: -10.02, b: 95.31 },
  contrast: { ratio: 0.44, bound: 0.0384 },
  doubt: {
    bound: 7.648,
    largest: 'tone',
    terms: { tone: 3, paper: 1, camera: 1, field: 0, mixed: 0, own: 0, clip: 0 },
  },
  flakes: [{ sizeMm: 0.913, coverage: 0.0614, coverageSd: 0.01, lab: { L: 60, a: 20, b: 30 }, count: 40 }],
} as const satisfies Partial<PhotoMeasured>;

test('photoFields(measured, camera) has what a file takes: a hex, Lab beyond what a screen shows, and both doubts', () => {
  expect(photoFields(MEASURED, 'my phone')).toEqual({
    'over-white': '#8a6a44',
    'over-black': { lab: [75.4, -10, 95.3] },
    doubt: 7.6,
    'contrast-doubt': '3.8 %',
    camera: 'my phone',
  });
  const { contrast: _, overBlack: __, ...half } = MEASURED;
  expect(Object.keys(photoFields(half, 'my phone'))).toEqual(['over-white', 'doubt', 'camera']);
});

test('flakeFields(measured) is flake as a target has it, and nothing where none was seen', () => {
  expect(flakeFields(MEASURED)).toEqual([{ colour: expect.stringMatching(/^#/), size: '0.91 mm', coverage: '6.1 %' }]);
  expect([flakeFields({}), flakeFields({ flakes: [] })]).toEqual([undefined, undefined]);
});

test('what it writes is read again, in a chip and in a target', () => {
  const { camera, 'contrast-doubt': __, ...ofTarget } = photoFields(MEASURED, 'my phone');
  const seen = { ...ofTarget, 'contrast-doubt': '3.8 %', camera };
  const chip = { title: 'Peat', plastic: '100 ml supple', add: { peat: '1 drop' }, seen: { ...seen } };
  const target = { title: 'Roach', ...ofTarget, flake: flakeFields(MEASURED)!.map((each) => ({ ...each })) };
  for (const [kind, fields] of [
    ['chip', chip],
    ['target', target],
  ] as const) {
    const text = frontMatterText(fields);
    expect(readThing(kind, 'roach', { path: 'roach.md', text })).toMatchObject({
      kind,
      fields: { title: fields.title },
    });
  }
});

describe('writtenColour(lab)', () => {
  test('is never further off than a hex within the screen’s colours rounds, 0.5, and never at the end of a channel', () => {
    const axis = fc.double({ min: -90, max: 90, noNaN: true });
    fc.assert(
      fc.property(fc.record({ L: fc.double({ min: 2, max: 99, noNaN: true }), a: axis, b: axis }), (lab) => {
        const written = writtenColour(lab);
        if (typeof written === 'string') {
          expect(written).not.toMatch(/^#(?:..)*(?:00|ff)/);
          expect(deltaE00(labFromHex(written), lab)).toBeLessThan(0.7);
        } else {
          const [L, a, b] = written.lab;
          expect(deltaE00({ L, a, b }, lab)).toBeLessThan(0.15);
        }
      }),
    );
  });
});
