/**
 * Draws the pictures of baits: a master of each side, from which all sizes are made, and their files.
 *
 * @packageDocumentation
 */

import { baitPicture } from '../../picture/bait-picture.ts';
import { above, beside } from '../../picture/laid-together.ts';
import type { BaitPicture } from '../../picture/light/drawn-picture.ts';
import { madeSmaller } from '../../picture/made-smaller.ts';
import type { PicturedBait } from '../../picture/pictured-bait.ts';
import type { Raster } from '../../picture/raster.ts';
import { liesBeside, type PictureKind, pictureSize } from '../../render/picture-files.ts';
import type { BaitField } from '../../shapes/bait-field.ts';
import { masterFrame } from '../../shapes/master-frame.ts';
import { baitField } from '../../shapes/mold-field.ts';
import type { ShapedMold } from '../../shapes/shaped-mold.ts';
import type { LinkWords, Pictured } from './pictured.ts';
import { plainMaster } from './plain-master.ts';
import { linkRaster, linkWords, sharpOf } from './shared-link.ts';
import { type Outlines, readOutlines } from './title-outlines.ts';

/** One side of a bait, or both. */
export interface Masters {
  readonly near: BaitPicture;
  readonly far?: BaitPicture;
}

/** A bait as films of its colours. */
export function plainMasters({ bait: { mold }, plain: { near, far } }: Pictured): Masters {
  return { near: plainMaster(mold, near), ...(far === undefined ? {} : { far: plainMaster(mold, far) }) };
}

/** Draws the sides of baits, those of one mold after one another in its field. */
export class DrawnMasters {
  readonly #fields = new Map<string, BaitField>();

  /** @param both whether its other side is wanted, too */
  of(bait: PicturedBait, both: boolean): Masters {
    const field = this.#fieldOf(bait.mold);
    return {
      near: baitPicture(bait, field, 'near'),
      ...(both ? { far: baitPicture(bait, field, 'far') } : {}),
    };
  }

  #fieldOf(mold: ShapedMold): BaitField {
    const key = JSON.stringify(mold);
    const field = this.#fields.get(key) ?? baitField(mold, masterFrame(mold));
    this.#fields.delete(key);
    this.#fields.set(key, field);
    const [oldest] = this.#fields.keys();
    if (this.#fields.size > MOST_FIELDS) this.#fields.delete(oldest!);
    return field;
  }
}

/** Fields that are kept: each is some 15 MB. */
const MOST_FIELDS = 4;

/** Makes files from masters, with the fonts in some files. */
export class PictureFiles {
  readonly #fonts: readonly string[];
  #outlines: Promise<Outlines> | undefined;
  /** The larger tile of a master, from which the small one is made in less time. */
  readonly #tiles = new WeakMap<Raster, Raster>();

  constructor(fonts: readonly string[]) {
    this.#fonts = fonts;
  }

  /** A picture as the bytes of its file. They hold its pixels, and nothing else. */
  async file(
    { near, far }: Masters,
    { bait: { mold } }: Pictured,
    kind: PictureKind,
    words?: LinkWords,
  ): Promise<Uint8Array> {
    const { width, height } = pictureSize(mold, kind);
    switch (kind) {
      case 'page':
      case 'other':
        return pageFile(bothBackings(kind === 'other' ? (far ?? near) : near, liesBeside(mold), width, height));
      case 'tile':
      case 'tile-2x': {
        const large = this.#largeTile(near.overWhite, mold);
        return sharpOf(madeSmaller(large, width, height))
          .webp({ quality: 52, effort: 2, preset: 'picture' })
          .toBuffer();
      }
      case 'card':
      case 'label':
        return sharpOf(madeSmaller(near.overWhite, width, height))
          .jpeg({ quality: 82 })
          .toBuffer();
      case 'shared': {
        this.#outlines ??= readOutlines(this.#fonts);
        const text = words && linkWords(words, await this.#outlines);
        const picture = sharpOf(linkRaster(near, liesBeside(mold)));
        return (text ? picture.composite([{ input: text }]) : picture).jpeg({ quality: 78 }).toBuffer();
      }
    }
  }

  #largeTile(master: Raster, mold: ShapedMold): Raster {
    const { width, height } = pictureSize(mold, 'tile-2x');
    const tile = this.#tiles.get(master) ?? madeSmaller(master, width, height);
    this.#tiles.set(master, tile);
    return tile;
  }
}

/** A page's picture. One that is full of flake is packed closer: among its glints nobody sees what is lost. */
async function pageFile(raster: Raster): Promise<Uint8Array> {
  const packed = (quality: number): Promise<Uint8Array> =>
    sharpOf(raster).webp({ quality, effort: 2, preset: 'picture' }).toBuffer();
  const file = await packed(70);
  return file.length > HEAVY ? packed(50) : file;
}

/** Bytes from which on a page's picture is heavy: two of them and the tiles of a bait are to stay below 80 kB. */
const HEAVY = 37_000;

function bothBackings({ overWhite, overBlack }: BaitPicture, besides: boolean, width: number, height: number): Raster {
  const size = besides ? ([width / 2, height] as const) : ([width, height / 2] as const);
  return (besides ? beside : above)(madeSmaller(overWhite, ...size), madeSmaller(overBlack, ...size));
}
