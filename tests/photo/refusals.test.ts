import { expect, test } from 'vitest';
import { baitRefusal, cardRefusal, lightWarnings } from '../../src/photo/refusals.ts';

const SOUND = { edgeRmsMm: 0.03, edgesUsed: 0.97, clippedPaper: 0.05, paperLevel: 0.6 };

test('a sound card is not refused, and each fault of one has its reason', () => {
  expect(cardRefusal(SOUND)).toBeUndefined();
  expect(cardRefusal({ ...SOUND, clippedPaper: 0.31 })?.reason).toBe('too-bright');
  expect(cardRefusal({ ...SOUND, paperLevel: 0.14 })?.reason).toBe('too-dark');
  expect(cardRefusal({ ...SOUND, edgeRmsMm: 0.06 })?.reason).toBe('not-flat');
});

test('a card that bends far fools its edges’ rms, but not their number', () => {
  expect(cardRefusal({ ...SOUND, edgesUsed: 285 / 459 })?.reason).toBe('not-flat');
});

test('of a dark photo that is blurred too, the light is what is to be cured', () => {
  expect(cardRefusal({ ...SOUND, paperLevel: 0.1, edgeRmsMm: 0.07 })?.reason).toBe('too-dark');
});

test('one half in the glare, or washed out, spoils the bait', () => {
  const sound = { bodyShare: 0.8, clipped: 0.02, lightness: 96 };
  expect(baitRefusal([sound, sound])).toBeUndefined();
  expect(baitRefusal([sound, { ...sound, bodyShare: 0.2 }])?.reason).toBe('glare');
  expect(baitRefusal([{ ...sound, lightness: 99 }, sound])?.reason).toBe('glare');
  expect(baitRefusal([{ ...sound, bodyShare: 0.2, clipped: 0.3 }, sound])?.reason).toBe('bait-clipped');
});

test('two lights and a shadow are said, not refused', () => {
  expect(lightWarnings({ fieldRms: 0.02, tintSpan: 0.1 })).toEqual([]);
  expect(lightWarnings({ fieldRms: 0.06, tintSpan: 0.2 })).toEqual(['mixed-light', 'shadow']);
});
