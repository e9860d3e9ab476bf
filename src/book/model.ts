/**
 * The compiled book: a plain, immutable value that survives `JSON.stringify` unchanged.
 *
 * Units: ml, g, mm, °C; doses in grams of material per millilitre of plastic (g/ml); shares as fractions of 1;
 * colours as CIELAB under D65 (1931 2° observer) and as sRGB `#rrggbb`; spectra as 36 numbers, 380 to 730 nm.
 * Absent is `undefined`, never null, so that a field that is missing in the JSON means the same.
 *
 * @packageDocumentation
 */

import type { Shop } from '../cup/plan-batch.ts';
import type { LearnedShelf } from '../learning/learned-shelf.ts';
import type { Tier } from '../optics/material-constants.ts';
import type { OpticalModel } from '../optics/optical-model.ts';
import type { CardPrint } from './model/card-print.ts';
import type { Chip } from './model/chip.ts';
import type { DoubtedLook } from './model/doubted-look.ts';
import type { Edition } from './model/publish.ts';
import type { Family, Recipe, RecipeLook } from './model/recipe.ts';
import type { Material, Mold } from './model/shelf.ts';
import type { Target } from './model/target.ts';

export type { Batch, BatchAmounts, BatchCup, BatchMaterial, Measured } from '../cup/batch.ts';
export type { Shop } from '../cup/plan-batch.ts';

export type { Tier };

/** How the maker works, and how amounts are shown. */
export interface Settings extends Shop {
  readonly volume: 'ml' | 'fl oz';
  readonly temperature: '°C' | '°F';
  readonly currency: string;
  /** Largest difference that counts as the same colour, ΔE00. */
  readonly tolerance: number;
  /** The book does not say what is lost: a mold whose method is known loses what that usually does. */
  readonly lossByMethod?: true;
  /** The plastic meant where none is named, if the book says. */
  readonly plastic?: string;
}

/** A compiled book, or an edition of one. */
export interface Book {
  /** Version of this layout; see `book.json` in the manual. */
  readonly format: 2;
  readonly edition: Edition;
  readonly title: string;
  readonly maker?: string;
  /** Address that the book is published at, ending in `/`. */
  readonly address?: string;
  /** Markdown. */
  readonly foreword: string;
  readonly settings: Settings;
  /** The maker's own print of the card for photos, as far as it is known. */
  readonly measuringCard?: CardPrint;
  /** What was learned knows cameras by numbers: these, by their names; only in the maker's edition. */
  readonly cameraNumbers?: Readonly<Record<string, string>>;
  /** By what all its colours are computed, but for K and S. */
  readonly optics: OpticalModel;
  readonly recipes: readonly Recipe[];
  /** Chips of the maker's own bottles. */
  readonly chips: readonly Chip[];
  /** Recipes of which only the look is published; filled by `publishedBook`. */
  readonly looks: readonly RecipeLook[];
  readonly materials: readonly Material[];
  readonly molds: readonly Mold[];
  readonly targets: readonly Target[];
  readonly families: readonly Family[];
  /** What its looks have taught of its shelf: all that its colours hang on, but for the recipes. */
  readonly learned: LearnedShelf;
  /** Looks that count for little in that, and logs that cannot be right; only in the maker's edition. */
  readonly doubted?: readonly DoubtedLook[];
  /** The same book as it is by published looks alone, of which the shared edition is made; only where others have taught something. */
  readonly readers?: Book;
}
