import { expect, test } from 'vitest';
import { CARDS, type Place } from '../../../src/measuring-card/measuring-card.ts';
import { homographyOf } from '../../../src/photo/card/homography.ts';
import { leanAt } from '../../../src/photo/card/lean.ts';
import { readCard } from '../../../src/photo/card/read-card.ts';
import { surroundings } from '../../../src/photo/card/surroundings.ts';
import { expectClose } from '../../optics/close.ts';
import { Lens } from '../simulated/lens.ts';
import { photoOfCard, seenAt } from './seen-card.ts';

const { small } = CARDS;
const LOOK = { width: 900, height: 660, perMm: 6 };

test('a phone that lightens what lies in the dark: paper and greys come out as without', async () => {
  const plain = await photoOfCard(small, LOOK);
  const around = surroundings(plain);
  const lightened = ({ x, y }: Place) => {
    const level = 0.5 * Math.exp(-0.15 * (around(seenAt(small, LOOK, { x, y })) + 0.8));
    return [level, level, level] as const;
  };
  const [before, after] = [plain, await photoOfCard(small, LOOK, { light: lightened })].map(readCard);
  if (before?.kind !== 'read' || after?.kind !== 'read') return expect.fail('no card was read');
  expect(after.field.rms).toBeLessThan(0.01);
  for (const [i, { signal }] of after.signals.greys.entries())
    expectClose(signal.g / before.signals.greys[i]!.signal.g, 1, 0.03, `grey ${i}`);
  expectClose(after.signals.black.g / before.signals.black.g, 1, 0.05);
});

test('how far a line of sight leans is what the camera that made the photo has it', () => {
  const pose = {
    width: 1600,
    height: 1200,
    focal: 1200,
    tilt: 0.5,
    towards: 1,
    turn: 2,
    at: [70, 45] as const,
    distance: 260,
    radial: 0,
  };
  const lens = new Lens(pose);
  const corners = [
    [0, 0],
    [136, 0],
    [136, 96],
    [0, 96],
  ] as const;
  const pairs = corners.map(([x, y]) => {
    const [u, v] = lens.toPixel(x, y);
    return [
      { x, y },
      { x: u, y: v },
    ] as const;
  });
  const lean = leanAt(homographyOf(pairs)!, pose.width, pose.height);
  for (const [x, y] of [...corners, [68, 48] as const]) {
    const sight = { x: 0, y: 0, leanX: 0, leanY: 0, axis: 1 };
    lens.look(...lens.toPixel(x, y), sight);
    expectClose(lean({ x, y }).x, sight.leanX, 1e-3);
    expectClose(lean({ x, y }).y, sight.leanY, 1e-3);
  }
});
