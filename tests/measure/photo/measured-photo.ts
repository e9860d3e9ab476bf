/**
 * One simulated photo put to the proof: measured with a card that nobody has measured, with a certified one, and by a touched spot.
 *
 * @packageDocumentation
 */
import { readCard } from '../../../src/photo/card/read-card.ts';
import type { CardValues } from '../../../src/photo/card-values.ts';
import { measurePhoto } from '../../../src/photo/measure-photo.ts';
import type { PhotoMeasured, PhotoRefused } from '../../../src/photo/photo-measured.ts';
import { flakeInZone } from '../../photo/simulated/flake-in-zone.ts';
import type { Rgb } from '../../photo/simulated/rgb.ts';
import type { SimulatedPhoto } from '../../photo/simulated/simulated-photo.ts';
import type { PhotoTruth } from '../../photo/simulated/truth.ts';
import { difference } from '../foreign/physics/eye.ts';
import type { Outcome, PhotoResult } from './photo-result.ts';
import { touchedSpot } from './touched-spot.ts';

/** What a certified print's owner has noted. */
export function certifiedValues({ print }: PhotoTruth): CardValues {
  const named = ([r, g, b]: Rgb) => ({ r, g, b });
  return {
    scaleMm: print.scaleMm,
    paper: named(print.paper),
    black: named(print.black),
    greys: print.greys.map(named),
  };
}

/** What an owner has noted who has only laid a ruler on the scale. */
export function ruledValues({ print }: PhotoTruth): CardValues {
  return { scaleMm: print.scaleMm };
}

/** Colours and contrast against the truth. */
export function outcomeOf(measured: PhotoMeasured | PhotoRefused, truth: PhotoTruth): Outcome {
  if (measured.kind === 'refused') return { refused: measured.reason };
  const { overWhite, overBlack, contrast, doubt, warnings } = measured;
  return {
    ...(overWhite ? { white: difference(overWhite, truth.overWhite) } : {}),
    ...(overBlack ? { black: difference(overBlack, truth.overBlack) } : {}),
    bound: doubt.bound,
    largest: doubt.largest,
    ...(contrast ? { contrast: contrast.ratio - truth.contrast, contrastBound: contrast.bound } : {}),
    warnings,
  };
}

/** Measures a photo in every way. */
export function measuredPhoto(
  photo: SimulatedPhoto,
  {
    set,
    seed,
    bait,
    taken,
  }: { readonly set: string; readonly seed: number; readonly bait: number; readonly taken: number },
): PhotoResult {
  const { pixels, truth, scene } = photo;
  const start = process.cpuUsage();
  const any = measurePhoto(pixels, ruledValues(truth));
  const { user, system } = process.cpuUsage(start);
  const placeMm = placesOff(photo);
  return {
    set,
    seed,
    bait,
    light: scene.lighting.main.kind,
    kelvin: scene.lighting.main.kelvin,
    shape: scene.bait.shape.kind,
    cardFound: placeMm !== undefined,
    ...(placeMm === undefined ? {} : { placeMm }),
    anyCard: outcomeOf(any, truth),
    certified: outcomeOf(measurePhoto(pixels, certifiedValues(truth)), truth),
    touched: touchedSpot(photo),
    ...flakeOf(photo, any),
    cpuSeconds: { taken, measured: (user + system) / 1e6 },
  };
}

/** How far places of the window are from where they really lie, mm: root mean square; undefined where no card was read. */
function placesOff({ pixels, toPixel, scene }: SimulatedPhoto): number | undefined {
  const read = readCard(pixels);
  if (read.kind === 'refused') return undefined;
  const { window } = read.card;
  const squares = [0.05, 0.275, 0.5, 0.725, 0.95].flatMap((across) =>
    [0.1, 0.5, 0.9].map((down) => {
      const place = { x: window.x + across * window.width, y: window.y + down * window.height };
      const [u, v] = toPixel(place.x, place.y);
      const found = read.toPixel(place);
      return ((found.x - u) ** 2 + (found.y - v) ** 2) / read.pixelsPerMm ** 2;
    }),
  );
  return scene.print.scale * Math.sqrt(squares.reduce((sum, each) => sum + each, 0) / squares.length);
}

function flakeOf(
  { scene, truth }: SimulatedPhoto,
  measured: PhotoMeasured | PhotoRefused,
): Pick<PhotoResult, 'flake' | 'falseFlake'> {
  if (measured.kind === 'refused' || measured.noFlake === 'too-few-pixels') return {};
  const flakes = measured.flakes ?? [];
  const coverage = flakes.reduce((sum, flake) => sum + flake.coverage, 0);
  if (!truth.flake) return { falseFlake: coverage };
  return {
    flake: {
      coverage,
      trueCoverage: flakeInZone(scene, measured.zonePixels),
      sizeMm: flakes[0]?.sizeMm ?? Number.NaN,
      trueSizeMm: truth.flake.acrossMm,
      kinds: flakes.length,
      name: truth.flake.name,
    },
  };
}
