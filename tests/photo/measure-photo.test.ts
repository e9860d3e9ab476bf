import { expect, test } from 'vitest';
import { CARDS } from '../../src/measuring-card/measuring-card.ts';
import { measurePhoto } from '../../src/photo/measure-photo.ts';
import type { Pixels } from '../../src/photo/pixels.ts';
import { photoOfCard } from './card/seen-card.ts';

const LOOK = { width: 900, height: 660, perMm: 6 };

test('a photo without a card, and a card without a bait, each say so', async () => {
  const nothing: Pixels = { data: new Uint8Array(4 * 300 * 200).fill(180), width: 300, height: 200 };
  expect(measurePhoto(nothing, { scaleMm: 80 })).toEqual({ kind: 'refused', reason: 'too-few-marks', found: 0 });
  const empty = await photoOfCard(CARDS.small, LOOK);
  expect(measurePhoto(empty, { scaleMm: 80 })).toEqual({ kind: 'refused', reason: 'no-bait' });
});
