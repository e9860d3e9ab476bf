import { describe, expect, test } from 'vitest';
import { CARDS, GREY_VALUES, type MeasuringCard, type Place } from '../../../src/measuring-card/measuring-card.ts';
import type { CardRead } from '../../../src/photo/card/card-read.ts';
import { readCard } from '../../../src/photo/card/read-card.ts';
import { CHANNELS } from '../../../src/photo/channels.ts';
import type { Pixels } from '../../../src/photo/pixels.ts';
import { expectClose } from '../../optics/close.ts';
import { type Look, photoOfCard, type Surroundings, seenAt } from './seen-card.ts';

const { small, large } = CARDS;
const STRAIGHT: Look = { width: 900, height: 660, perMm: 6 };

async function read(card: MeasuringCard, look: Look, around?: Surroundings): Promise<CardRead> {
  const found = readCard(await photoOfCard(card, look, around));
  if (found.kind === 'refused') expect.fail(`refused: ${found.reason}, ${found.found} marks`);
  return found;
}

/** Root mean square of how far places of the card's window are off, mm. */
function placeError(card: MeasuringCard, look: Look, { toPixel, toPlace, pixelsPerMm }: CardRead): number {
  const { x, y, width, height } = card.window;
  const squares = [0, 0.25, 0.5, 0.75, 1].flatMap((along) =>
    [0, 0.5, 1].map((down) => {
      const place = { x: x + along * width, y: y + down * height };
      const pixel = seenAt(card, look, place);
      const back = toPlace(pixel);
      const there = toPixel(place);
      expect(Math.hypot(there.x - pixel.x, there.y - pixel.y) / pixelsPerMm).toBeLessThan(0.15);
      return (back.x - place.x) ** 2 + (back.y - place.y) ** 2;
    }),
  );
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length);
}

describe('readCard finds every place of the card', () => {
  const looks: Readonly<Record<string, Look>> = {
    'from above': STRAIGHT,
    'turned and tilted': { ...STRAIGHT, turn: 160, tilt: 35, perMm: 5 },
    'upright, with a lens that bends': { width: 700, height: 940, perMm: 6, turn: 80, tilt: 20, k1: -0.06 },
    'aside, so small that marks have 50 pixels': {
      ...STRAIGHT,
      perMm: 3.6,
      turn: -20,
      tilt: 25,
      aside: { x: 80, y: -60 },
    },
  };
  for (const [name, look] of Object.entries(looks))
    test(`${name}: within 0.03 mm`, async () => {
      const found = await read(small, look);
      expect(found.card).toBe(small);
      expect(placeError(small, look, found)).toBeLessThan(0.03);
      expect(found.edgeRmsMm).toBeLessThan(0.03);
      expect(found.edgesUsed).toBeGreaterThan(0.97);
    });

  test('the large card, its own way', async () => {
    const look: Look = { width: 1000, height: 760, perMm: 3.4, turn: 185, tilt: 15 };
    const found = await read(large, look);
    expect(found.card).toBe(large);
    expect(placeError(large, look, found)).toBeLessThan(0.05);
  });

  test('one mark is covered', async () => {
    const thumb = ({ x, y }: Place) => (Math.hypot(x - 130, y - 90) < 22 ? 0.3 : undefined);
    const found = await read(small, { ...STRAIGHT, tilt: 20 }, { covered: thumb });
    expect(placeError(small, { ...STRAIGHT, tilt: 20 }, found)).toBeLessThan(0.05);
  });

  test('a sheet that was not cut: one of its cards, whole', async () => {
    const look: Look = { ...STRAIGHT, perMm: 3, turn: 4, tilt: 10, aside: { x: -180, y: -120 } };
    const found = await read(small, look, { sheet: [2, 2] });
    const corner = found.toPlace(seenAt(small, look, { x: 0, y: 0 }));
    expectClose(Math.abs(corner.x) % small.width, 0, 0.1);
    expectClose(Math.abs(corner.y) % small.height, 0, 0.1);
    expect(found.edgeRmsMm).toBeLessThan(0.05);
  });
});

describe('readCard reads light', () => {
  const INK = 0.04;
  const slanting = ({ x, y }: Place) => {
    const level = 0.8 * Math.exp(-0.003 * x - 0.002 * y);
    return [level, 0.9 * level, (0.8 - 0.0008 * x) * level] as const;
  };

  test('light of two colours that falls off: the field is what fell, the greys are what was printed', async () => {
    const { field, signals, clippedPaper, paperLevel } = await read(small, STRAIGHT, { light: slanting, ink: INK });
    for (const place of [
      { x: 20, y: 48 },
      { x: 68, y: 40 },
      { x: 120, y: 60 },
    ]) {
      const { r, g, b } = field.at(place);
      const wanted = slanting(place);
      [r, g, b].forEach((value, i) => {
        expectClose(value / wanted[i]!, 1, 0.01, `${place.x} ${i}`);
      });
    }
    expect(field.degree).toBe(2);
    expect(field.rms).toBeLessThan(0.01);
    expectClose(field.tintSpan, Math.log(0.8 / (0.8 - 0.0008 * 130)), 0.03);
    expect(signals.greys).toHaveLength(10);
    for (const { step, signal } of signals.greys) {
      const v = GREY_VALUES[step]! / 255;
      const printed = INK + (1 - INK) * ((v + 0.055) / 1.055) ** 2.4;
      for (const channel of CHANNELS) expectClose(signal[channel] / printed, 1, 0.03, `${step} ${channel}`);
    }
    for (const channel of CHANNELS) expectClose(signals.black[channel], INK, 0.003, channel);
    expect(clippedPaper).toBe(0);
    expectClose(paperLevel, 0.9 * 0.8 * Math.exp(-0.003 * 68 - 0.002 * 48), 0.06);
  });

  test('too bright: paper is at the end of what a camera tells', async () => {
    expect((await read(small, STRAIGHT, { light: () => [1.2, 1.1, 1] })).clippedPaper).toBeGreaterThan(0.9);
  });

  test('a hard shadow is what the field leaves over', async () => {
    const shadow = ({ x }: Place) => (x > 90 ? ([0.4, 0.4, 0.4] as const) : ([0.8, 0.8, 0.8] as const));
    expect((await read(small, STRAIGHT, { light: shadow })).field.rms).toBeGreaterThan(0.05);
  });
});

describe('readCard refuses', () => {
  test('a photo without a card', () => {
    const nothing: Pixels = { data: new Uint8Array(4 * 300 * 200).fill(180), width: 300, height: 200 };
    expect(readCard(nothing)).toEqual({ kind: 'refused', reason: 'too-few-marks', found: 0 });
  });

  test('two marks: the rest could lie anywhere', async () => {
    const hidden = ({ x }: Place) => (x > 100 ? 0.3 : undefined);
    expect(readCard(await photoOfCard(small, STRAIGHT, { covered: hidden }))).toEqual({
      kind: 'refused',
      reason: 'too-few-marks',
      found: 2,
    });
  });

  test('no light at all', () => {
    expect(readCard({ data: new Uint8Array(4 * 300 * 200), width: 300, height: 200 }).kind).toBe('refused');
  });
});
