import { expect, test } from 'vitest';
import { bodyOf } from '../../../src/photo/bait/body-colour.ts';
import { averageFlakes } from '../../../src/photo/flake/average-flakes.ts';
import { photoFlakes } from '../../../src/photo/flake/photo-flakes.ts';
import { type ZoneFlakes, zoneFlakes } from '../../../src/photo/flake/zone-flakes.ts';
import { type DrawnZone, drawnZone } from './drawn-zone.ts';

const GREEN = [0.1, 0.2, 0.05] as const;
const PEARL = [0.7, 0.68, 0.6] as const;
const GOLD = [0.75, 0.55, 0.12] as const;
const BLACK = [0.02, 0.02, 0.02] as const;
const BLUE = [0.03, 0.08, 0.5] as const;

const seenIn = ({ patch }: DrawnZone): ZoneFlakes => zoneFlakes(patch, bodyOf(patch));

test.each([
  ['gold of 0.4 mm in green', GREEN, GOLD, 0.4, 0.08],
  ['gold of 0.9 mm in green', GREEN, GOLD, 0.9, 0.1],
  ['black of 0.6 mm in pearl', PEARL, BLACK, 0.6, 0.06],
  ['blue of 1.1 mm in pearl', PEARL, BLUE, 1.1, 0.15],
] as const)('%s: coverage and size within a fifth of what was thrown', (_, body, colour, across, wanted) => {
  const zone = drawnZone(body, [{ across, wanted, colour }]);
  const { kinds, tooFine } = seenIn(zone);
  expect(kinds).toHaveLength(1);
  expect(Math.abs(kinds[0]!.coverage / zone.covered[0]! - 1)).toBeLessThan(0.2);
  expect(Math.abs(kinds[0]!.sizeMm / zone.diameters[0]! - 1)).toBeLessThan(0.2);
  expect(tooFine).toBe(false);
});

test('two kinds are told apart by their colour', () => {
  const zone = drawnZone(GREEN, [
    { across: 0.6, wanted: 0.06, colour: GOLD },
    { across: 0.9, wanted: 0.08, colour: BLUE },
  ]);
  const { kinds } = seenIn(zone);
  expect(kinds).toHaveLength(2);
  const [gold, blue] = [...kinds].sort((one, other) => other.core[2] - one.core[2]);
  expect(Math.abs(gold!.coverage / zone.covered[0]! - 1)).toBeLessThan(0.3);
  expect(Math.abs(blue!.coverage / zone.covered[1]! - 1)).toBeLessThan(0.3);
});

test('a plain body has no flake, nor has a highlight along it', () => {
  for (const streak of [false, true]) {
    const { kinds, glare } = seenIn(drawnZone(GREEN, [], { streak }));
    expect(kinds).toEqual([]);
    expect(glare > 0.02).toBe(streak);
  }
});

test('a highlight along a bait is no flake, and takes little more than it hides from the flake beside it', () => {
  const zone = drawnZone(GREEN, [{ across: 0.9, wanted: 0.1, colour: BLUE }], { streak: true });
  const { kinds } = seenIn(zone);
  expect(kinds).toHaveLength(1);
  expect(Math.abs(kinds[0]!.coverage / zone.covered[0]! - 1)).toBeLessThan(0.3);
});

test('flake that only its glitter tells from the body is not counted, since some of it goes unseen', () => {
  const dull = seenIn(drawnZone(PEARL, [{ across: 0.6, wanted: 0.15, colour: [0.87, 0.845, 0.745], glitter: 0.1 }]));
  expect(dull.kinds).toEqual([]);
  expect(dull.tooFine).toBe(true);
});

test('flake of a pixel or two is too fine to be counted, which is said', () => {
  const found = seenIn(drawnZone(PEARL, [{ across: 0.3, wanted: 0.1, colour: BLACK }], { perMm: 8 }));
  expect(found.kinds).toEqual([]);
  expect(found.tooFine).toBe(true);
});

const WAY = { pixelsPerMm: 18, scale: 1, bend: ({ r, g, b }: { r: number; g: number; b: number }) => ({ r, g, b }) };

function flaked(zone: DrawnZone) {
  const body = bodyOf(zone.patch);
  return { found: zoneFlakes(zone.patch, body), body: body.lab, areaMm2: 130 };
}

test('a kind on both halves is one kind of all their flakes; black flake counts where it shows, not where black hides it', () => {
  const gold = [1, 2].map((seed) => drawnZone(GREEN, [{ across: 0.9, wanted: 0.1, colour: GOLD }], { seed }));
  const { flakes } = photoFlakes(gold.map(flaked), WAY);
  expect(flakes).toHaveLength(1);
  const truth = (gold[0]!.covered[0]! + gold[1]!.covered[0]!) / 2;
  expect(Math.abs(flakes![0]!.coverage / truth - 1)).toBeLessThan(0.2);
  const onPaper = drawnZone(PEARL, [{ across: 0.6, wanted: 0.06, colour: BLACK }]);
  const onBlack = drawnZone([0.025, 0.025, 0.025], [{ across: 0.6, wanted: 0.06, colour: BLACK }]);
  const black = photoFlakes([onPaper, onBlack].map(flaked), WAY);
  expect(Math.abs(black.flakes![0]!.coverage / onPaper.covered[0]! - 1)).toBeLessThan(0.2);
});

test('a coarse photo of a plain bait does not say that there is no flake, a fine one does', () => {
  const zones = [flaked(drawnZone(GREEN, []))];
  expect(photoFlakes(zones, WAY).noFlake).toBe('none-seen');
  expect(photoFlakes(zones, { ...WAY, pixelsPerMm: 7 }).noFlake).toBe('too-few-pixels');
});

test('where shine hides much of both halves nobody says that there is no flake; one dull half can tell', () => {
  const blots = { across: 2.5, wanted: 0.2, colour: [1.02, 1.02, 1.02], glitter: 0 } as const;
  const [shiny, dull] = [flaked(drawnZone(GREEN, [blots])), flaked(drawnZone(GREEN, []))];
  expect(photoFlakes([shiny, shiny], WAY).noFlake).toBe('glare');
  expect(photoFlakes([shiny, dull], WAY).noFlake).toBe('none-seen');
});

test('photos that shine tell nothing of flake beside one that is dull, and of several shiny ones the shine is said', () => {
  const flake = { sizeMm: 0.9, coverage: 0.1, coverageSd: 0.01, lab: { L: 60, a: 5, b: 40 }, count: 40 };
  expect(averageFlakes([{ noFlake: 'glare' }, { flakes: [flake] }]).flakes).toHaveLength(1);
  expect(averageFlakes([{ noFlake: 'glare' }, { noFlake: 'none-seen' }]).noFlake).toBe('none-seen');
  expect(averageFlakes([{ noFlake: 'glare' }, { noFlake: 'glare' }]).noFlake).toBe('glare');
  expect(averageFlakes([{ noFlake: 'glare' }, { noFlake: 'too-few-pixels' }]).noFlake).toBe('too-few-pixels');
});
