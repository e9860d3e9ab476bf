import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Place } from '../../../src/measuring-card/measuring-card.ts';
import { type CardView, pixelsPerMm, toPixel, toPlace } from '../../../src/photo/card/card-view.ts';
import { after, homographyOf, inverse, mapped } from '../../../src/photo/card/homography.ts';
import { expectClose } from '../../optics/close.ts';

const CORNERS: readonly Place[] = [
  { x: 5, y: 5 },
  { x: 131, y: 5 },
  { x: 131, y: 91 },
  { x: 5, y: 91 },
];
const place = fc.record({
  x: fc.double({ min: 0, max: 136, noNaN: true }),
  y: fc.double({ min: 0, max: 96, noNaN: true }),
});
/** A camera that looks at a card from somewhere. */
const view = fc
  .record({
    scale: fc.double({ min: 3, max: 25, noNaN: true }),
    turn: fc.double({ min: 0, max: 6.28, noNaN: true }),
    tilt: fc.double({ min: -0.002, max: 0.002, noNaN: true }),
    lean: fc.double({ min: -0.002, max: 0.002, noNaN: true }),
    k1: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
  })
  .map(({ scale, turn, tilt, lean, k1 }): CardView => {
    const [c, s] = [scale * Math.cos(turn), scale * Math.sin(turn)];
    const H = after([c, -s, 800, s, c, 600, tilt, lean, 1], [1, 0, -68, 0, 1, -48, 0, 0, 1]);
    return { H, k1, width: 1600, height: 1200 };
  });

describe('homographyOf', () => {
  test('is the one known case: a square onto a trapezium', () => {
    // Worked by hand: (x, y) → (x / (1 + y), 2 y / (1 + y)).
    const pairs = [
      [
        { x: 0, y: 0 },
        { x: 0, y: 0 },
      ],
      [
        { x: 1, y: 0 },
        { x: 1, y: 0 },
      ],
      [
        { x: 1, y: 1 },
        { x: 0.5, y: 1 },
      ],
      [
        { x: 0, y: 1 },
        { x: 0, y: 1 },
      ],
    ] as const;
    const { x, y } = mapped(homographyOf(pairs)!, { x: 0.5, y: 0.5 });
    expectClose(x, 1 / 3, 1e-12);
    expectClose(y, 2 / 3, 1e-12);
  });

  test('finds any view again from its corners, and through noise nearly', () => {
    fc.assert(
      fc.property(view, place, ({ H }, somewhere) => {
        const found = homographyOf(CORNERS.map((corner) => [corner, mapped(H, corner)] as const))!;
        const [one, other] = [mapped(found, somewhere), mapped(H, somewhere)];
        expectClose(one.x, other.x, 1e-4);
        expectClose(one.y, other.y, 1e-4);
      }),
    );
  });

  test('undefined where all lie on a line; less than four is a fault', () => {
    const line = [0, 1, 2, 3, 4].map(
      (x) =>
        [
          { x, y: 2 * x },
          { x: 3 * x, y: x },
        ] as const,
    );
    expect(homographyOf(line)).toBeUndefined();
    expect(() => homographyOf(line.slice(0, 3))).toThrow(/give four/);
  });

  test('inverse goes back', () => {
    fc.assert(
      fc.property(view, place, ({ H }, somewhere) => {
        const back = mapped(inverse(H), mapped(H, somewhere));
        expectClose(back.x, somewhere.x, 1e-7);
        expectClose(back.y, somewhere.y, 1e-7);
      }),
    );
  });
});

describe('a view', () => {
  test('toPlace is the inverse of toPixel, with a lens that bends too', () => {
    fc.assert(
      fc.property(view, place, (from, somewhere) => {
        const pixel = toPixel(from, somewhere);
        // Far outside of the photo a lens of one number means nothing.
        fc.pre(pixel.x > 0 && pixel.y > 0 && pixel.x < from.width && pixel.y < from.height);
        const back = toPlace(from, pixel);
        expectClose(back.x, somewhere.x, 1e-3);
        expectClose(back.y, somewhere.y, 1e-3);
      }),
    );
  });

  test('pixelsPerMm is the scale of a view from above, wherever', () => {
    const H = [8, 0, 100, 0, 8, 60, 0, 0, 1];
    expectClose(pixelsPerMm({ H, k1: 0, width: 1600, height: 1200 }, { x: 30, y: 70 }), 8, 1e-9);
  });
});
