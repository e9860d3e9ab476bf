import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CARDS, GREY_VALUES, type Place } from '../../../src/measuring-card/measuring-card.ts';
import { deltaE00 } from '../../../src/optics/delta-e00.ts';
import { labFromLinear } from '../../../src/optics/display.ts';
import { certifyCard, type SeenCard } from '../../../src/photo/certify/certify-card.ts';
import type { LinearRgb, Pixels } from '../../../src/photo/pixels.ts';
import { COLOUR_CHART } from '../../../src/tables/colour-chart.ts';
import { linearOf, type Triple } from './chart-light.ts';

const CHART = COLOUR_CHART.map(linearOf);

/** What a print of the card throws back: a warm paper, a printer that prints dark. */
const PAPER: Triple = [0.86, 0.85, 0.8];
const BLACK: Triple = [0.05, 0.048, 0.047];
const GREYS = GREY_VALUES.map((value): Triple => {
  const part = (value / 255) ** 2.6;
  return PAPER.map((paper, i) => BLACK[i]! + (paper - BLACK[i]!) * part) as unknown as Triple;
});

const card = CARDS.small;
const PIXELS_PER_MM = 3;
/** Where the chart lies: middle of its first patch, and the way from patch to patch, mm of the card. */
const [CHART_AT, PITCH, PATCH] = [{ x: 152, y: 26 }, 10, 8.5];
const [WIDTH, HEIGHT] = [216, 100];

const inside = ({ x, y }: Place, box: { x: number; y: number; width: number; height: number }): boolean =>
  x >= box.x && x < box.x + box.width && y >= box.y && y < box.y + box.height;

/** What lies at a place: the chart, the card, or a table. */
function thrownBack(place: Place): Triple {
  const grey = card.greys.find((each) => inside(place, each));
  if (grey) return GREYS[grey.step]!;
  if (inside(place, { ...card.window, x: card.seamX, width: card.window.width / 2 })) return BLACK;
  if (inside(place, { x: 0, y: 0, width: card.width, height: card.height })) return PAPER;
  const column = Math.round((place.x - CHART_AT.x) / PITCH);
  const row = Math.round((place.y - CHART_AT.y) / PITCH);
  const offX = Math.abs(place.x - CHART_AT.x - PITCH * column);
  const offY = Math.abs(place.y - CHART_AT.y - PITCH * row);
  const isPatch = column >= 0 && column < 6 && row >= 0 && row < 4 && Math.max(offX, offY) < PATCH / 2;
  return isPatch ? CHART[6 * row + column]! : [0.02, 0.02, 0.02];
}

interface Scene {
  /** Of white where the card's middle is, before the phone bends it. */
  readonly exposure: number;
  /** How much the phone's highlights are rounded off. */
  readonly shoulder: number;
  /** ln of the light, per mm, and how much it falls off from the middle of the card, per mm². */
  readonly across: number;
  readonly down: number;
  readonly falls: number;
  readonly tint: Triple;
}

const EVEN: Scene = { exposure: 0.7, shoulder: 0.5, across: 0.0008, down: -0.001, falls: 0, tint: [1.05, 1, 0.85] };

/** Linear light that the phone writes of what is thrown back at a place. */
function written({ exposure, shoulder, across, down, falls, tint }: Scene, place: Place, R: Triple): LinearRgb {
  const [x, y] = [place.x - card.width / 2, place.y - card.height / 2];
  const light = exposure * Math.exp(across * x + down * y - falls * (x * x + y * y));
  const [r, g, b] = R.map((value, i) => {
    const linear = Math.max(0, value) * light * tint[i]!;
    return Math.min(1, ((1 + shoulder) * linear) / (1 + shoulder * linear));
  }) as unknown as Triple;
  return { r, g, b };
}

const byteOf = (linear: number): number =>
  Math.round(255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055));

function photoOf(scene: Scene): Pixels {
  const [width, height] = [WIDTH * PIXELS_PER_MM, HEIGHT * PIXELS_PER_MM];
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const place = { x: (column + 0.5) / PIXELS_PER_MM, y: (row + 0.5) / PIXELS_PER_MM };
      const { r, g, b } = written(scene, place, thrownBack(place));
      data.set([byteOf(r), byteOf(g), byteOf(b)], 4 * (row * width + column));
    }
  return { data, width, height };
}

/** The card as it would be read: its light and its signals without noise. */
function seenCard(scene: Scene): SeenCard {
  const signalAt = (place: Place, R: Triple): LinearRgb => {
    const [seen, paper] = [written(scene, place, R), written(scene, place, PAPER)];
    return { r: seen.r / paper.r, g: seen.g / paper.g, b: seen.b / paper.b };
  };
  return {
    card,
    field: { at: (place) => written(scene, place, PAPER) },
    signals: {
      greys: card.greys.map((grey) => ({
        step: grey.step,
        signal: signalAt({ x: grey.x + grey.width / 2, y: grey.y + grey.height / 2 }, GREYS[grey.step]!),
      })),
      black: signalAt({ x: card.seamX + 20, y: card.height / 2 }, BLACK),
    },
    toPixel: ({ x, y }) => ({ x: x * PIXELS_PER_MM, y: y * PIXELS_PER_MM }),
    toPlace: ({ x, y }) => ({ x: x / PIXELS_PER_MM, y: y / PIXELS_PER_MM }),
  };
}

const corner = (column: number, row: number): Place => ({
  x: (CHART_AT.x + PITCH * column) * PIXELS_PER_MM,
  y: (CHART_AT.y + PITCH * row) * PIXELS_PER_MM,
});
const CORNERS = [corner(0, 0), corner(5, 0), corner(5, 3), corner(0, 3)] as const;

const rgb = ([r, g, b]: Triple): LinearRgb => ({ r, g, b });
const differenceOf = (found: LinearRgb, there: Triple): number =>
  deltaE00(labFromLinear(found), labFromLinear(rgb(there)));

/** The largest ΔE00 of paper and greys. */
function worst(found: ReturnType<typeof certifyCard>): number {
  if (found.kind !== 'certified') throw new Error(`It was refused: ${found.reason}`);
  return Math.max(
    differenceOf(found.paper, PAPER),
    ...found.greys.map((grey, step) => differenceOf(grey, GREYS[step]!)),
  );
}

/** Any of 1001 steps from one value to another, none of them likelier. */
const evenly = (from: number, to: number): fc.Arbitrary<number> =>
  fc.noBias(fc.integer({ min: 0, max: 1000 })).map((step) => from + ((to - from) * step) / 1000);

describe('certifyCard(pixels, card, corners)', () => {
  test('finds paper, greys and black of a print, however the phone rounds off what is light', () => {
    for (const shoulder of [0, 0.5, 0.9]) {
      const scene = { ...EVEN, shoulder };
      const found = certifyCard(photoOf(scene), seenCard(scene), CORNERS);
      expect(worst(found)).toBeLessThan(2);
      if (found.kind !== 'certified') continue;
      expect(differenceOf(found.black, BLACK)).toBeLessThan(2.5);
      expect(found.chartDeltaE).toBeLessThan(3);
    }
  });

  test('takes the corners in any order', () => {
    const [photo, seen] = [photoOf(EVEN), seenCard(EVEN)];
    const found = certifyCard(photo, seen, CORNERS);
    const [one, two, three, four] = CORNERS;
    for (const order of [
      [three, four, one, two],
      [four, three, two, one],
      [one, three, two, four],
    ] as const)
      expect(certifyCard(photo, seen, order)).toEqual(found);
  });

  test('says how far off it may be: nine in ten within, in light that falls off as lamps make it', () => {
    const ratios: number[] = [];
    fc.assert(
      fc.property(
        fc.record({
          exposure: evenly(0.45, 0.72),
          shoulder: evenly(0, 0.9),
          across: evenly(-0.0015, 0.0015),
          down: evenly(-0.0015, 0.0015),
          falls: evenly(0, 6e-6),
          tint: fc.constant<Triple>([1.05, 1, 0.85]),
        }),
        (scene) => {
          const found = certifyCard(photoOf(scene), seenCard(scene), CORNERS);
          if (found.kind === 'certified') ratios.push(worst(found) / found.bound);
          else expect(found.reason).not.toBe('no-chart');
        },
      ),
      { numRuns: 25 },
    );
    expect(ratios.length).toBeGreaterThan(12);
    expect(ratios.filter((ratio) => ratio < 1).length / ratios.length).toBeGreaterThanOrEqual(0.85);
  });

  test.each([
    ['no-chart', EVEN, [corner(0, 0), corner(2, 0), corner(2, 2), corner(0, 2)]],
    ['chart-clipped', { ...EVEN, exposure: 1.3, tint: [1, 1, 1] }, CORNERS],
    ['uneven-light', { ...EVEN, exposure: 0.5, falls: 6e-5 }, CORNERS],
  ] as const)('refuses for %s', (reason, scene, corners) => {
    expect(certifyCard(photoOf(scene), seenCard(scene), corners)).toEqual({ kind: 'not-certified', reason });
  });
});
