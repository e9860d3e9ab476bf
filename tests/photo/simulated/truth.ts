/**
 * What is really in a simulated photo: colours over the book's two backings, flake, and what an instrument would say of the print.
 *
 * @packageDocumentation
 */
import { type Seen, seenColour } from '../../measure/foreign/physics/eye.ts';
import { type Spectrum, spectrumOf } from '../../measure/foreign/physics/spectra.ts';
import { acrossByArea, coveredPart } from './flakes.ts';
import type { Rgb } from './rgb.ts';
import type { Scene } from './scene.ts';
import { screenColour } from './screen-colour.ts';

/** The truth of a photo. */
export interface PhotoTruth {
  readonly overWhite: Seen;
  readonly overBlack: Seen;
  /** Y over black to Y over white. */
  readonly contrast: number;
  /** Flake in the middle of either half, and how large one is, mm across by area. */
  readonly flake?: { readonly name: string; readonly acrossMm: number; readonly white: number; readonly black: number };
  /** What the print would be certified as, linear sRGB under D65, and how long its 80 mm are. */
  readonly print: {
    readonly scaleMm: number;
    readonly paper: Rgb;
    readonly black: Rgb;
    readonly greys: readonly Rgb[];
  };
}

/** The book's backings (a convention of the book): here by themselves, since nothing of the program may be asked for the truth. */
const WHITE = spectrumOf(() => 0.9);
const BLACK = spectrumOf(() => 0.03);

/** Of a bait its middle counts, away from its ends and from where white and black meet. */
const MIDDLE_PART = 0.6;
const FROM_ENDS = 8;
const FROM_SEAM = 2.5;

/** Values of the printed greys in the card's file, and how long its scale is, mm: as they are printed on the card. */
const GREYS = [205, 160, 120, 80, 40];
const SCALE = 80;

/** The truth of a scene. */
export function truthOf(scene: Scene): PhotoTruth {
  const { bait, print } = scene;
  const white = body(scene, WHITE, -1);
  const black = body(scene, BLACK, 1);
  const certified = (value: number): Rgb => screenColour(print.reflectance(value, 1));
  const { flakes } = bait;
  return {
    overWhite: seenColour(white),
    overBlack: seenColour(black),
    contrast: lightness(black) / lightness(white),
    ...(flakes
      ? {
          flake: {
            name: flakes.kind.name,
            acrossMm: acrossByArea(flakes.kind),
            white: coveredPart(flakes, inMiddle(scene, -1)),
            black: coveredPart(flakes, inMiddle(scene, 1)),
          },
        }
      : {}),
    print: {
      scaleMm: SCALE * print.scale,
      paper: certified(255),
      black: certified(0),
      greys: GREYS.map(certified),
    },
  };
}

/** Whether a place of the bait is in the middle of one half: -1 the left one, 1 the right one. */
function inMiddle({ card, print, bait }: Scene, side: -1 | 1): (along: number, across: number) => boolean {
  const seam = (card.width * print.scale) / 2 - bait.shape.at[0];
  return (along, across) =>
    side * (along - seam) > FROM_SEAM &&
    Math.abs(along) < bait.shape.length / 2 - FROM_ENDS &&
    Math.abs(across) < MIDDLE_PART * bait.shape.halfWidth(along);
}

/** Mean spectrum of a bait's middle over a backing, its flake left out. */
function body(scene: Scene, backing: Spectrum, side: -1 | 1): Spectrum {
  const { shape, plastic, unitsPerMm } = scene.bait;
  const isIn = inMiddle(scene, side);
  const counts = new Map<number, number>();
  for (let along = -shape.length / 2; along < shape.length / 2; along += 0.5) {
    for (let part = -0.95; part < 1; part += 0.1) {
      const across = part * shape.halfWidth(along);
      if (!isIn(along, across)) continue;
      // Thickness to a tenth of a mm: finer makes no difference, and a layer takes a while.
      const thickness = Math.round(10 * shape.thickness(along, across)) / 10;
      counts.set(thickness, (counts.get(thickness) ?? 0) + shape.halfWidth(along));
    }
  }
  const sum = spectrumOf(() => 0);
  let all = 0;
  for (const [thickness, count] of counts) {
    all += count;
    plastic.over(backing, thickness * unitsPerMm).forEach((each, band) => {
      sum[band]! += count * each;
    });
  }
  return sum.map((each) => each / all);
}

function lightness(reflectance: Spectrum): number {
  const { L } = seenColour(reflectance);
  return L > 8 ? ((L + 16) / 116) ** 3 : L / 903.3;
}
