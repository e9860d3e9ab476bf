import { describe, expect, test } from 'vitest';
import { CARDS, type Place } from '../../src/measuring-card/measuring-card.ts';
import type { CardValues } from '../../src/photo/card-values.ts';
import { measurePhoto } from '../../src/photo/measure-photo.ts';
import type { PhotoMeasured, PhotoRefused } from '../../src/photo/photo-measured.ts';
import type { Pixels } from '../../src/photo/pixels.ts';
import { difference } from '../measure/foreign/physics/eye.ts';
import { photoOfCard, seenAt } from './card/seen-card.ts';
import { daylight } from './simulated/lights.ts';
import { type PhotoSet, photoSet } from './simulated/photo-sets.ts';
import { printedCard } from './simulated/printed-card.ts';
import type { Rgb } from './simulated/rgb.ts';
import { type Scene, sceneOf } from './simulated/scene.ts';
import { photoOf, type SimulatedPhoto } from './simulated/simulated-photo.ts';

/** Small, by daylight, from nearly above, without flake or glare: what is then wrong is the program's fault. */
const KIND: PhotoSet = {
  ...photoSet('ideal'),
  width: 1000,
  height: 750,
  tilt: 25,
  gradient: 0.15,
  shadow: 0,
  mixed: 0,
  flake: 0,
  glare: 0,
  bend: [0, 0],
  exposure: [0.7, 0.8],
};

async function sceneLike(set: Partial<PhotoSet>, seed: number): Promise<Scene> {
  const scene = sceneOf({ ...KIND, ...set }, await printedCard(), { bait: seed, photo: seed });
  return { ...scene, lighting: { ...scene.lighting, main: daylight(6504) } };
}

async function taken(set: Partial<PhotoSet>, seed: number): Promise<SimulatedPhoto> {
  return photoOf(await sceneLike(set, seed));
}

function certified({ truth }: SimulatedPhoto): CardValues {
  const named = ([r, g, b]: Rgb) => ({ r, g, b });
  const { scaleMm, paper, black, greys } = truth.print;
  return { scaleMm, paper: named(paper), black: named(black), greys: greys.map(named) };
}

function measured(found: PhotoMeasured | PhotoRefused): PhotoMeasured {
  if (found.kind === 'refused') expect.fail(`refused: ${found.reason}`);
  return found;
}

const reasonOf = (found: PhotoMeasured | PhotoRefused): string =>
  found.kind === 'refused' ? found.reason : 'measured';

describe('a bait on a rendered photo', () => {
  // Seeds of three worms and two chips.
  test.each([0, 3, 5, 7, 9])(
    'of seed %d has the colours, the hiding and the width that it was made with',
    async (seed) => {
      const photo = await taken({}, seed);
      const found = measured(measurePhoto(photo.pixels, certified(photo)));
      const { truth, scene } = photo;
      expect(difference(found.overWhite!, truth.overWhite)).toBeLessThan(2.5);
      expect(difference(found.overBlack!, truth.overBlack)).toBeLessThan(2.5);
      expect(Math.abs(found.contrast!.ratio - truth.contrast)).toBeLessThan(0.04);
      expect(found.widthMm! / (2 * scene.bait.shape.halfWidth(0))).toBeGreaterThan(0.7);
      expect(found.widthMm! / (2 * scene.bait.shape.halfWidth(0))).toBeLessThan(1.15);
      expect(found.zonePixels).toHaveLength(2);
      expect(found.warnings).toEqual([]);
    },
  );

  test('turned by a quarter, and with the primaries of Display P3, is the same bait', async () => {
    const photo = await taken({}, 0);
    const before = measured(measurePhoto(photo.pixels, certified(photo)));
    for (const pixels of [turned(photo.pixels), inDisplayP3(photo.pixels)]) {
      const after = measured(measurePhoto(pixels, certified(photo)));
      expect(difference(after.overWhite!, before.overWhite!)).toBeLessThan(0.5);
      expect(difference(after.overBlack!, before.overBlack!)).toBeLessThan(0.5);
    }
  });
});

describe('what spoils a rendered photo is its reason', () => {
  test.each<readonly [string, Partial<PhotoSet>, string]>([
    ['over-exposed', { exposure: [1.25, 1.35] }, 'too-bright'],
    ['far too dark', { exposure: [0.05, 0.09] }, 'too-dark'],
    ['a card that bends, seen on the slant', { bend: [1.2, 1.4], tilt: 35 }, 'not-flat'],
  ])('%s', async (_, set, reason) => {
    const { pixels, truth } = await taken(set, 0);
    expect(reasonOf(measurePhoto(pixels, { scaleMm: truth.print.scaleMm }))).toBe(reason);
  });

  test('a lamp that mirrors itself all over a flat chip washes it out', async () => {
    const scene = await sceneLike({}, 7);
    const { lens, lighting } = scene;
    const lit = {
      ...lighting,
      lamp: [-lens.towards[0], -lens.towards[1], lens.towards[2]] as const,
      lampWidth: 0.6,
      lampStrength: 2,
    };
    const { pixels } = await photoOf({ ...scene, lighting: lit });
    expect(reasonOf(measurePhoto(pixels, { scaleMm: 80 }))).toBe('bait-clipped');
  });

  test('flake of 0.2 mm in a photo of few pixels is not told, and a shadow is', async () => {
    const scene = await sceneLike({ flake: 1 }, 3);
    const lighting = {
      ...scene.lighting,
      shadow: { at: 10, towards: 1.2, soft: 2, depth: 0.4 },
    };
    const { pixels } = await photoOf({ ...scene, lighting });
    const { noFlake, warnings } = measured(measurePhoto(pixels, { scaleMm: 80 }));
    expect(noFlake).toBe('too-few-pixels');
    expect(warnings).toContain('shadow');
  });
});

/** Straight photos of the card with a grey bait, drawn from the printed picture by another camera. */
describe('a grey bait on a drawn card', () => {
  const LOOK = { width: 900, height: 660, perMm: 6 };
  const LARGE = { width: 1000, height: 760, perMm: 3.5 };
  const values = { scaleMm: 80, paper: { r: 0.9, g: 0.9, b: 0.9 } };
  const L = (found: PhotoMeasured) => found.overWhite!.L;

  test('the large card tells the same as the small one', async () => {
    const bait =
      (middle: number) =>
      ({ x, y }: Place) =>
        Math.abs(y - middle) < 5 && x > 30 && x < 105 ? 0.25 : undefined;
    const small = measured(measurePhoto(await photoOfCard(CARDS.small, LOOK, { covered: bait(48) }), values));
    const onLarge = ({ x, y }: Place) => (Math.abs(y - 99) < 5 && x > 84 && x < 184 ? 0.25 : undefined);
    const large = measured(measurePhoto(await photoOfCard(CARDS.large, LARGE, { covered: onLarge }), values));
    // 0.25 of a paper that throws back 0.9 has L* 54.6 (CIE 15).
    for (const found of [small, large]) {
      expect(Math.abs(L(found) - 54.6)).toBeLessThan(1.5);
      expect(found.contrast!.ratio).toBeGreaterThan(0.95);
      expect(found.widthMm).toBeGreaterThan(9);
      expect(found.widthMm).toBeLessThan(11);
    }
    expect([small.card, large.card]).toEqual(['small', 'large']);
  });

  test('a line along one of two chips tells which is meant', async () => {
    const chips = ({ x, y }: Place) => {
      if (Math.abs(x - 68) > 20) return undefined;
      return Math.abs(y - 41) < 4 ? 0.5 : Math.abs(y - 55) < 4 ? 0.15 : undefined;
    };
    const pixels = await photoOfCard(CARDS.small, LOOK, { covered: chips });
    const along = (y: number) => [50, 86].map((x) => seenAt(CARDS.small, LOOK, { x, y })) as [Place, Place];
    const [light, dark] = [41, 55].map((y) => L(measured(measurePhoto(pixels, values, { line: along(y) }))));
    // 0.45 and 0.135 (CIE 15).
    expect(Math.abs(light! - 72.9)).toBeLessThan(1.5);
    expect(Math.abs(dark! - 43.5)).toBeLessThan(1.5);
  });

  test('on paper alone only that half is told, and nothing of how well it hides', async () => {
    const onPaper = ({ x, y }: Place) => (Math.abs(y - 48) < 5 && x > 22 && x < 60 ? 0.25 : undefined);
    const found = measured(measurePhoto(await photoOfCard(CARDS.small, LOOK, { covered: onPaper }), values));
    expect(found.warnings).toContain('one-half');
    expect(found.overBlack).toBeUndefined();
    expect(found.contrast).toBeUndefined();
  });

  test('pieces of reflections of which none is most of the bait are glare', async () => {
    const shades = [0.027, 0.11, 0.287, 0.59, 1];
    const bait = ({ x, y }: Place) =>
      Math.abs(y - 48) < 5 && x > 30 && x < 105 ? shades[(Math.floor(x) * 2 + Math.floor(y) * 3) % 5] : undefined;
    expect(reasonOf(measurePhoto(await photoOfCard(CARDS.small, LOOK, { covered: bait }), values))).toBe('glare');
  });

  test('light of two colours is said', async () => {
    const bait = ({ x, y }: Place) => (Math.abs(y - 48) < 5 && x > 30 && x < 105 ? 0.25 : undefined);
    const lamps = ({ x }: Place) => [0.6 + 0.001 * x, 0.65, 0.8 - 0.002 * x] as const;
    const found = measured(measurePhoto(await photoOfCard(CARDS.small, LOOK, { covered: bait, light: lamps }), values));
    expect(found.warnings).toEqual(['mixed-light']);
    expect(Math.abs(L(found) - 54.6)).toBeLessThan(1.5);
  });

  test('no card, an empty card, a bait that is too short: each has its reason', async () => {
    const nothing: Pixels = { data: new Uint8Array(4 * 300 * 200).fill(180), width: 300, height: 200 };
    expect(measurePhoto(nothing, values)).toEqual({ kind: 'refused', reason: 'too-few-marks', found: 0 });
    expect(reasonOf(measurePhoto(await photoOfCard(CARDS.small, LOOK), values))).toBe('no-bait');
    const crumb = ({ x, y }: Place) => (Math.hypot(x - 68, y - 48) < 4 ? 0.25 : undefined);
    expect(reasonOf(measurePhoto(await photoOfCard(CARDS.small, LOOK, { covered: crumb }), values))).toBe('too-short');
  });
});

/** A photo turned by a quarter, to the right. */
function turned({ data, width, height }: Pixels): Pixels {
  const out = new Uint8Array(data.length);
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++)
      for (let byte = 0; byte < 4; byte++)
        out[4 * (column * height + height - 1 - row) + byte] = data[4 * (row * width + column) + byte]!;
  return { data: out, width: height, height: width };
}

/** The same light by the primaries of Display P3: matrix of CSS Color 4, from memory. */
function inDisplayP3({ data, width, height }: Pixels): Pixels {
  const out = new Uint8Array(data.length);
  const light = Float64Array.from({ length: 256 }, (_, byte) =>
    byte < 11 ? byte / 255 / 12.92 : ((byte / 255 + 0.055) / 1.055) ** 2.4,
  );
  const byteOf = (v: number): number =>
    Math.round(255 * (v < 0.0031308 ? 12.92 * Math.max(0, v) : 1.055 * Math.min(1, v) ** (1 / 2.4) - 0.055));
  for (let at = 0; at < data.length; at += 4) {
    const [r, g, b] = [light[data[at]!]!, light[data[at + 1]!]!, light[data[at + 2]!]!];
    out[at] = byteOf(0.822462 * r + 0.177538 * g);
    out[at + 1] = byteOf(0.033194 * r + 0.966806 * g);
    out[at + 2] = byteOf(0.017083 * r + 0.072397 * g + 0.91052 * b);
    out[at + 3] = 255;
  }
  return { data: out, width, height, space: 'display-p3' };
}
