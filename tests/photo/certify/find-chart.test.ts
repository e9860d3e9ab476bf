import { expect, test } from 'vitest';
import { CARDS, type Place } from '../../../src/measuring-card/measuring-card.ts';
import type { CardRead } from '../../../src/photo/card/card-read.ts';
import { readCard } from '../../../src/photo/card/read-card.ts';
import { findChart } from '../../../src/photo/certify/find-chart.ts';
import { spotOf } from '../../../src/photo/photo-spot.ts';
import type { Pixels } from '../../../src/photo/pixels.ts';
import { readPixels } from '../../../src/shell/read-pixels.ts';
import { referenceBytes, referenceRows, referenceTest } from '../../optics/reference.ts';
import type { Look } from '../card/seen-card.ts';
import { chartCorners, type LyingChart, photoOfBoth } from './card-and-chart.ts';

function cardOf(photo: Pixels): CardRead {
  const card = readCard(photo);
  if (card.kind === 'refused') expect.fail(`refused: ${card.reason}`);
  return card;
}

/** How far each found corner is from the nearest true one, in parts of the way from patch to patch. */
function worstCorner(found: readonly Place[], card: CardRead, chart: LyingChart): number {
  const wanted = chartCorners(chart);
  return Math.max(
    ...found.map((pixel) => {
      const { x, y } = card.toPlace(pixel);
      return Math.min(...wanted.map((corner) => Math.hypot(corner.x - x, corner.y - y))) / chart.pitch;
    }),
  );
}

const { width, height } = CARDS.small;
const CHARTS: readonly (readonly [string, Look, LyingChart])[] = [
  [
    'a small one to the right',
    { width: 1100, height: 560, perMm: 4.4, aside: { x: -180, y: 0 } },
    { at: { x: width + 18, y: 26 }, pitch: 12, turn: 0 },
  ],
  [
    'a large one below, upside down, the photo tilted',
    { width: 900, height: 1100, perMm: 2.9, tilt: 18, turn: 3, aside: { x: 0, y: -280 } },
    { at: { x: 175, y: height + 160 }, pitch: 40, turn: 181 },
  ],
  [
    'one that lies askew, the photo turned',
    { width: 1100, height: 900, perMm: 3.2, turn: 95, tilt: 8, aside: { x: 180, y: -40 } },
    { at: { x: 30, y: height + 30 }, pitch: 16, turn: 17 },
  ],
];

test.each(CHARTS)('findChart finds %s', async (_, look, chart) => {
  const photo = await photoOfBoth(look, chart, {
    light: ({ x, y }: Place) => 0.72 * Math.exp(0.0008 * x - 0.0006 * y),
  });
  const card = cardOf(photo);
  const found = findChart(photo, card);
  expect(found).toHaveLength(4);
  expect(worstCorner(found!, card, chart)).toBeLessThan(0.12);
});

test('findChart finds none where there is none, and where a part of it is outside the photo', async () => {
  const [, look, chart] = CHARTS[0]!;
  const bare = await photoOfBoth(look, undefined);
  expect(findChart(bare, cardOf(bare))).toBeUndefined();
  const cut = await photoOfBoth(look, { ...chart, at: { x: chart.at.x + 40, y: chart.at.y } });
  expect(findChart(cut, cardOf(cut))).toBeUndefined();
});

for (const name of ['a', 'b'])
  referenceTest(`findChart finds the chart of photo ${name}, a real one`, async () => {
    const photo = await readPixels(referenceBytes(`photo_chart_${name}.png`));
    const rows = referenceRows(`photo_chart_${name}_patches.csv`).slice(1);
    const spot = (patch: number) => rows[patch]!.slice(2, 6).map(Number) as [number, number, number, number];
    const [left, top, side] = spot(18);
    const white = spotOf(photo, left + side / 2, top + side / 2, side / 3);
    // As if a card lay to the left, outside the photo, a pixel a third of a mm.
    const beside = {
      card: { width: 136, height: 96 },
      field: { at: () => white },
      toPixel: ({ x, y }: Place) => ({ x: 3 * (x - 150), y: 3 * y }),
      toPlace: ({ x, y }: Place) => ({ x: x / 3 + 150, y: y / 3 }),
    };
    const found = findChart(photo, beside);
    for (const patch of [0, 5, 18, 23]) {
      const [x, y, width, height] = spot(patch);
      const isThere = (place: Place) => place.x >= x && place.x <= x + width && place.y >= y && place.y <= y + height;
      expect(found?.some(isThere)).toBe(true);
    }
  });
