import type { TaughtLook } from '../learning/learning-data.ts';
import type { Thing } from '../recipe/read-thing.ts';
import type { Source } from '../recipe/source.ts';
import { ColourMemory } from './colour-memory.ts';
import type { Compiled } from './compiled.ts';
import type { ChipSpec } from './cups/chip-spec.ts';
import type { CupMaterial } from './cups/cup-shelf.ts';
import type { FilledCup } from './cups/fill-cup.ts';
import type { Chip } from './model/chip.ts';
import type { Mold } from './model/shelf.ts';
import type { Target } from './model/target.ts';
import type { Settings } from './model.ts';
import { Remembered } from './remembered.ts';
import type { CutMaterial } from './shelf/compile-cut.ts';
import type { MaterialAmounts, MaterialCore } from './shelf/compile-material.ts';
import type { ShelfFit } from './shelf/shelf-fit.ts';

/** What one compile leaves for the next; a new one for each book. */
export class CompileMemory {
  /** All that the last compile was asked, and what came of it: a book has two editions, and is compiled once for both. */
  last: { readonly sources: readonly Source[]; readonly asked: string; readonly compiled: Compiled } | undefined;
  readonly things = new Remembered<Thing>();
  readonly settings = new Remembered<Settings>();
  readonly amounts = new Remembered<MaterialAmounts>();
  readonly films = new Remembered<ShelfFit>();
  readonly materials = new Remembered<MaterialCore>();
  readonly cuts = new Remembered<CutMaterial, MaterialCore>();
  readonly withCuts = new Remembered<MaterialCore>();
  readonly molds = new Remembered<Omit<Mold, 'usedIn'>>();
  readonly targets = new Remembered<Omit<Target, 'recipes'>, Omit<Mold, 'usedIn'>>();
  readonly filled = new Remembered<FilledCup, CupMaterial>();
  readonly filledChips = new Remembered<FilledCup<ChipSpec>, CupMaterial>();
  readonly chips = new Remembered<Chip, MaterialCore>();
  /** What the looks of each recipe teach. */
  readonly looks = new Remembered<readonly TaughtLook[]>();
  readonly colours = new ColourMemory();
  /** Of the book as readers get it, where they get fewer looks. */
  readonly readersColours = new ColourMemory();

  /** Begins a compile. */
  begin(): void {
    for (const kind of Object.values(this))
      if (kind instanceof Remembered || kind instanceof ColourMemory) kind.begin();
  }
}
