/**
 * Rendered photos for the demo book, whose makers are invented and have no camera: both sides of a laminate, each cut off and laid along
 * the card, three photos of either; and chips of three materials of the shelf.
 *
 * What lies in them is coloured as the demo book's own optics say of what is in the cup, so that a match by these photos can come out;
 * the card, the light, the print and the phone are those of the simulator. All of it is invented.
 *
 * @packageDocumentation
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import type { Book } from '../../../src/book/model.ts';
import { appearance } from '../../../src/optics/appearance.ts';
import { cupBody } from '../../../src/optics/cup-body.ts';
import { labFromLinear } from '../../../src/optics/display.ts';
import { BAND_COUNT } from '../../../src/optics/spectrum.ts';
import type { Body } from '../../../src/optics/stack.ts';
import type { Spectrum } from '../../measure/foreign/physics/spectra.ts';
import { WHOLE_DEMO_BOOK } from '../../render/demo-book.ts';
import { type BaitShape, chip, worm } from '../simulated/bait-shape.ts';
import type { CardPicture } from '../simulated/card-picture.ts';
import type { Plastic } from '../simulated/layers.ts';
import { type PhotoSet, photoSet } from '../simulated/photo-sets.ts';
import { printedCard } from '../simulated/printed-card.ts';
import { type Scene, sceneOf } from '../simulated/scene.ts';
import { photoOf, type SimulatedPhoto } from '../simulated/simulated-photo.ts';

/** What lies on the card, and how often it is photographed. */
interface DemoBait {
  readonly name: string;
  readonly plasticMl: number;
  readonly grams: Readonly<Record<string, number>>;
  readonly thicknessMm: number;
  readonly shape: 'worm' | 'chip';
  readonly photos: number;
}

/** The sides are what `match two-tone-elver` weighs out, at the thickness of that mold. */
export const DEMO_BAITS: readonly DemoBait[] = [
  {
    name: 'elver-back',
    plasticMl: 120,
    grams: { straw: 3.53, 'lamp-black': 0.58, 'frost-pearl': 0.1 },
    thicknessMm: 11,
    shape: 'worm',
    photos: 3,
  },
  {
    name: 'elver-belly',
    plasticMl: 120,
    grams: { 'ivory-pearl': 0.25, 'brass-pearl': 0.14, kingcup: 0.08 },
    thicknessMm: 11,
    shape: 'worm',
    photos: 3,
  },
  { name: 'leaf-pearl-chip', plasticMl: 100, grams: { 'leaf-pearl': 0.5 }, thicknessMm: 6, shape: 'chip', photos: 1 },
  { name: 'violet-hush-chip', plasticMl: 100, grams: { 'violet-hush': 0.5 }, thicknessMm: 6, shape: 'chip', photos: 1 },
  { name: 'rowan-chip', plasticMl: 100, grams: { rowan: 0.105 }, thicknessMm: 6, shape: 'chip', photos: 1 },
];

/** As a careful maker takes them: from nearly above, by even light. */
const CAREFUL: PhotoSet = {
  ...photoSet('b2'),
  name: 'demo',
  width: 1280,
  height: 960,
  tilt: 14,
  gradient: 0.12,
  shadow: 0,
  mixed: 0,
  glare: 0.8,
  flake: 0,
  bend: [0, 0.05],
  blur: [0.5, 0.6],
};

/** The maker's print and phone, and how large a photo may be in the book. */
const MAKER = 20;
const MOST_BYTES = 60_000;

/** A photo for the demo book, with what is really in it. */
export interface DemoPhoto {
  readonly file: string;
  readonly jpeg: Buffer;
  readonly bait: DemoBait;
  readonly photo: SimulatedPhoto;
}

/** Takes all photos for the demo book. */
export async function demoPhotos(): Promise<readonly DemoPhoto[]> {
  const card = await printedCard();
  const taken: DemoPhoto[] = [];
  for (const [at, bait] of DEMO_BAITS.entries()) {
    for (let shot = 1; shot <= bait.photos; shot++) {
      const photo = await photoOf(sceneWith(bait, card, 100 + 10 * at + shot));
      const file = `${bait.name}${bait.photos > 1 ? `-${shot}` : ''}-rendered.jpg`;
      taken.push({ file, jpeg: await smallEnough(photo), bait, photo });
    }
  }
  return taken;
}

/** A photo of a worm with so many grams in 120 ml, taken as those for the demo book are. */
export async function wormPhoto(grams: DemoBait['grams'], seed: number): Promise<Buffer> {
  const bait: DemoBait = { name: 'worm', plasticMl: 120, grams, thicknessMm: 11, shape: 'worm', photos: 1 };
  return smallEnough(await photoOf(sceneWith(bait, await printedCard(), seed)));
}

/** Writes them into a folder of photos, and says what they show and what print they are on. */
export async function writeDemoPhotos(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const text = ({ L, a, b }: { L: number; a: number; b: number }): string =>
    [L, a, b].map((each) => each.toFixed(1)).join(', ');
  for (const { file, jpeg, bait, photo } of await demoPhotos()) {
    writeFileSync(join(folder, file), jpeg);
    const { overWhite, overBlack, print } = photo.truth;
    const grams = Object.entries(bait.grams).map(([material, each]) => `${each} g ${material}`);
    console.log(
      `${file} (${Math.round(jpeg.length / 1000)} kB): ${grams.join(', ')} in ${bait.plasticMl} ml supple, ${bait.thicknessMm} mm; Lab over white ${text(overWhite)}, over black ${text(overBlack)}`,
    );
    const [paper, black, ...greys] = [print.paper, print.black, ...print.greys].map(([r, g, b]) =>
      text(labFromLinear({ r, g, b })),
    );
    console.log(
      `  its 80 mm are ${print.scaleMm.toFixed(1)}; paper ${paper}; black ${black}; greys ${greys.join('; ')}`,
    );
  }
}

function sceneWith(bait: DemoBait, card: CardPicture, seed: number): Scene {
  const scene = sceneOf(CAREFUL, card, { bait: MAKER, photo: seed });
  const { at, turned } = scene.bait.shape;
  const shape = shapeOf(bait, { at, turned });
  return { ...scene, bait: { shape, plastic: demoPlastic(WHOLE_DEMO_BOOK, bait), unitsPerMm: 1, sideways: 0.1 } };
}

function shapeOf({ shape, thicknessMm }: DemoBait, lying: Pick<BaitShape, 'at' | 'turned'>): BaitShape {
  if (shape === 'chip') return chip(60, 10, thicknessMm, lying);
  const measures = { length: 76, radius: thicknessMm / 2, flat: 1, tail: 0.75, head: 1, ribs: 0, ribPitch: 2 } as const;
  return worm(measures, lying);
}

/** What is in the cup of a bait or chip, as the demo book's optics have it by what its looks have taught. */
export function demoBody(
  { learned: { constants, optics } }: Book,
  { plasticMl, grams }: Pick<DemoBait, 'plasticMl' | 'grams'>,
): Body {
  const contents = Object.entries(grams).map(([material, each]) => ({ material, gramsPerMl: each / plasticMl }));
  return cupBody(
    { plastics: [{ material: 'supple', fraction: 1 }], contents },
    (material) => ({ constants: constants[material]! }),
    optics,
  );
}

/** It as the simulator has plastics; a unit is a mm. */
function demoPlastic(book: Book, bait: DemoBait): Plastic {
  const { optics } = book.learned;
  const body = demoBody(book, bait);
  const own = { absorption: body.absorption, scattering: body.scattering };
  return {
    name: bait.name,
    over: (backing, thickness) => {
      const under = Array.from(backing.subarray(0, BAND_COUNT));
      const backings = { white: under, black: under };
      const { spectrum } = appearance(own, {
        thickness: Math.max(1e-3, thickness),
        optics: { ...optics, backings },
      }).overWhite;
      return extended(spectrum, backing.length);
    },
  };
}

/** The book's bands end one before those of the simulator: the last one twice. */
function extended(spectrum: ArrayLike<number>, bands: number): Spectrum {
  return Float64Array.from({ length: bands }, (_, band) => spectrum[Math.min(spectrum.length - 1, band)]!);
}

async function smallEnough({ scene, pixels }: SimulatedPhoto): Promise<Buffer> {
  const { data, width, height } = pixels;
  for (let quality = scene.development.quality; ; quality -= 4) {
    const jpeg = await sharp(data, { raw: { width, height, channels: 4 } })
      .removeAlpha()
      .jpeg({ quality, chromaSubsampling: '4:2:0' })
      .toBuffer();
    if (jpeg.length <= MOST_BYTES || quality < 40) return jpeg;
  }
}
