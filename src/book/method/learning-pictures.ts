/**
 * What the pictures show by which the page *Method* explains how a book learns, computed of its own looks.
 *
 * Units: doses in g per ml of plastic; spectra are 36 numbers, 380 to 730 nm.
 *
 * @packageDocumentation
 */
import { absorptionBand, type SpectrumBand } from '../../learning/absorption-band.ts';
import { learn } from '../../learning/learn.ts';
import { Posterior } from '../../learning/posterior.ts';
import { defined } from '../../values/defined.ts';
import type { Material } from '../model/shelf.ts';
import type { Book } from '../model.ts';
import { bestOf } from './best-of.ts';
import { type OffsetLine, offsetLine } from './offset-line.ts';

/** Light of each wavelength that is left of all, 0 to 1, after some way through a usual dose of a material. */
export interface LightLeft {
  readonly material: Material;
  readonly thicknessMm: number;
  /** By its file alone, and by all looks. */
  readonly before: SpectrumBand;
  readonly after: SpectrumBand;
  /** How many looks at something with it there are. */
  readonly looks: number;
}

/** What light is left of after so much, mm: half an ordinary bait. Convention of this book. */
const WAY_MM = 3;

export interface LearningPictures {
  readonly light?: LightLeft;
  readonly line?: OffsetLine;
}

/** The pictures of a book; of one that has learned from no look at a cup by itself, none. */
export function learningPictures(book: Pick<Book, 'learned' | 'materials' | 'optics'>): LearningPictures {
  const known = pictures.get(book.learned);
  if (known !== undefined) return known;
  const of = defined({ light: lightLeft(book), line: offsetLine(book) });
  pictures.set(book.learned, of);
  return of;
}

// Most edits change nothing that was learned.
const pictures = new WeakMap<Book['learned'], LearningPictures>();

// Of so many materials, those with most looks, one is drawn.
const MOST_MATERIALS = 8;

/** Of the colorant that looks have told most of. */
function lightLeft({ learned, materials }: Pick<Book, 'learned' | 'materials'>): LightLeft | undefined {
  const taught = materials
    .filter(({ kind, constants, typical, learnedFrom }) => kind === 'colorant' && constants && typical && learnedFrom)
    .toSorted((one, other) => other.learnedFrom! - one.learnedFrom! || (one.id < other.id ? -1 : 1))
    .slice(0, MOST_MATERIALS);
  if (taught.length === 0) return undefined;
  const now = new Posterior(learned);
  const drawn = taught.map((material): LightLeft => {
    const { id } = material;
    const alone = learn({ materials: learned.data.materials.filter((each) => each.id === id), looks: [] });
    return {
      material,
      thicknessMm: WAY_MM,
      before: leftBy(new Posterior(alone), material),
      after: leftBy(now, material),
      looks: material.learnedFrom!,
    };
  });
  return bestOf(drawn, ({ before, after }) => widthOf(before) - widthOf(after));
}

function leftBy(posterior: Posterior, { id, typical }: Material): SpectrumBand {
  const { middle, low, high } = absorptionBand(posterior, id);
  const left = (K: readonly number[]): readonly number[] => K.map((value) => Math.exp(-value * typical! * WAY_MM));
  return { middle: left(middle), low: left(high), high: left(low) };
}

function widthOf({ low, high }: SpectrumBand): number {
  return high.reduce((sum, value, band) => sum + value - low[band]!, 0);
}
