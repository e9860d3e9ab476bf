/**
 * The pictures that a site has of each bait: what they are called, and how large they are.
 *
 * @packageDocumentation
 */
import { isTall, masterFrame } from '../shapes/master-frame.ts';
import type { ShapedMold } from '../shapes/shaped-mold.ts';
import { paths } from './links.ts';
import { SHARED_PICTURE } from './shared-head.ts';

/**
 * What a picture is for: a page, over both backings; the same of a bait's other side; a tile, in two sizes; a shared link; a card and a
 * label, 300 dots an inch.
 */
export type PictureKind = 'page' | 'other' | 'tile' | 'tile-2x' | 'shared' | 'card' | 'label';

/** Width and height, px. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

const NAMES: Readonly<Record<PictureKind, string>> = {
  page: 'bait.webp',
  other: 'bait-other.webp',
  tile: 'tile.webp',
  'tile-2x': 'tile-2x.webp',
  shared: 'shared.jpg',
  card: 'card.jpg',
  label: 'label.jpg',
};

/** Path of a bait's picture from the root of the site. */
export function picturePath(id: string, kind: PictureKind): string {
  return `${paths.recipe(id)}${NAMES[kind]}`;
}

const PAGE_WIDTH = 990;
const TILE_WIDTH = 320;
/** Boxes on paper, at 300 dots an inch: 3 × 1.2 inches and 2 × 0.8. What is drawn smaller than its box fills it with fewer dots. */
const CARD = { width: 900, height: 360 } as const;
const LABEL = { width: 600, height: 240 } as const;

/** Whether a bait is so tall for its length that it lies beside itself over white and over black, and not above. */
export function liesBeside(mold: ShapedMold): boolean {
  return isTall(masterFrame(mold));
}

/** How much of the card the picture of a page shows from left to right, mm: over both backings where it lies beside itself. */
export function pageWidthMm(mold: ShapedMold): number {
  const { columns, pixelsPerMm } = masterFrame(mold);
  return ((liesBeside(mold) ? 2 : 1) * columns) / pixelsPerMm;
}

/** Size of a bait's picture. */
export function pictureSize(mold: ShapedMold, kind: PictureKind): PictureSize {
  const { columns, rows } = masterFrame(mold);
  const wide = (width: number): PictureSize => ({ width, height: Math.round((width * rows) / columns) });
  const inside = (box: PictureSize): PictureSize =>
    wide(Math.min(columns, box.width, Math.floor((box.height * columns) / rows)));
  switch (kind) {
    case 'page':
    case 'other': {
      if (liesBeside(mold)) return { width: PAGE_WIDTH, height: wide(PAGE_WIDTH / 2).height };
      const { width, height } = wide(PAGE_WIDTH);
      return { width, height: 2 * height };
    }
    case 'tile':
      return wide(TILE_WIDTH);
    case 'tile-2x': {
      const { width, height } = wide(TILE_WIDTH);
      return { width: 2 * width, height: 2 * height };
    }
    case 'shared':
      return SHARED_PICTURE;
    case 'card':
      return inside(CARD);
    case 'label':
      return inside(LABEL);
  }
}
