/**
 * A photo of a bait on a printed card, made by chance: nothing in it is shared with what measures photos but the card's picture.
 *
 * @packageDocumentation
 */
import sharp from 'sharp';
import type { CardPicture } from './card-picture.ts';
import { developed } from './develop.ts';
import { type PhotoSet, photoSet } from './photo-sets.ts';
import { rendered } from './render-scene.ts';
import { type Scene, type SceneSeeds, sceneOf } from './scene.ts';
import { type PhotoTruth, truthOf } from './truth.ts';

/** A simulated photo, and the truth of it. */
export interface SimulatedPhoto {
  /** Four bytes a pixel, as a canvas has them. */
  readonly pixels: { readonly data: Uint8Array; readonly width: number; readonly height: number };
  readonly jpeg: Buffer;
  readonly scene: Scene;
  readonly truth: PhotoTruth;
  /** Where a place of the card lies in the photo: mm as designed to pixels. */
  toPixel(x: number, y: number): readonly [u: number, v: number];
}

/** Takes a photo of a set. The same seeds give the same photo; a bait's seed also gives its print and its phone. */
export async function takePhoto(
  set: PhotoSet | string,
  card: CardPicture,
  seeds: SceneSeeds | number,
): Promise<SimulatedPhoto> {
  const each = typeof seeds === 'number' ? { bait: seeds, photo: seeds } : seeds;
  return photoOf(sceneOf(typeof set === 'string' ? photoSet(set) : set, card, each));
}

/** Takes the photo of a scene. */
export async function photoOf(scene: Scene): Promise<SimulatedPhoto> {
  const { print, lens, development, camera, lighting } = scene;
  const paper = camera.in(lighting.main)(print.reflectance(255, lighting.main.ultraviolet))[1];
  const { data, width, height } = developed(rendered(scene), paper, scene);
  const jpeg = await sharp(data, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: development.quality, chromaSubsampling: '4:2:0' })
    .toBuffer();
  const rows = await sharp(jpeg).ensureAlpha().raw().toBuffer();
  return {
    pixels: { data: new Uint8Array(rows.buffer, rows.byteOffset, rows.length), width, height },
    jpeg,
    scene,
    truth: truthOf(scene),
    toPixel: (x, y) => lens.toPixel(x * print.scale, y * print.scale),
  };
}
