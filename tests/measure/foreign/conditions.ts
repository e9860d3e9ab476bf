/**
 * What a book of the foreign bench goes through. Seeds 1 to 6 are there to tune by, 101 to 112 to report.
 *
 * @packageDocumentation
 */

/** One way to keep a book. */
export interface Condition {
  readonly name: string;
  /** In words, for the table. */
  readonly says: string;
  /** What the files of the shelf say of a look: a hex each, or of half of them a chip. */
  readonly labels: 'half' | 'hex';
  readonly means: 'instrument' | 'photo';
  /** Root mean square of a look's error, ΔE00, and the doubt that is written; without one what the book takes as usual. */
  readonly deviation: number;
  readonly doubt?: number;
  /**
   * Where the book says that three photos of the target would tell more, they are taken, and their mean is noted as it says; where it says
   * that another look at the test pour would, that is made, once a pour.
   */
  readonly morePhotos?: true;
  /** Reported books. */
  readonly books: number;
  readonly recipes: number;
  readonly offShelf?: true;
  /** Of additions 3.5 % and of looks 2 % are not what the log says. */
  readonly falseLogs?: true;
  /** Chips that the book asks for before its first recipe. */
  readonly chips?: number;
  /** The hex of what is no dye is of a body that hides what is behind it, not of a bait. */
  readonly thickLabels?: true;
  /** A scale beside drops and spoons. */
  readonly scale?: true;
  /** Only where it is asked for by name. */
  readonly besides?: true;
}

const INSTRUMENT = { means: 'instrument', deviation: 0.7 } as const;
const PHOTO = { means: 'photo', labels: 'half', morePhotos: true, recipes: 40, books: 6 } as const;

/** Every condition, in the order in which they are run. */
export const CONDITIONS: readonly Condition[] = [
  { name: 'half', says: 'half hex, half chip; instrument', labels: 'half', ...INSTRUMENT, books: 12, recipes: 40 },
  { name: 'hex', says: 'all hex; instrument', labels: 'hex', ...INSTRUMENT, books: 6, recipes: 40 },
  { name: 'photo2', says: 'by photo, ΔE 2', ...PHOTO, deviation: 2, doubt: 2.9 },
  { name: 'photo4', says: 'by photo, ΔE 4', ...PHOTO, deviation: 4, doubt: 5.8 },
  {
    name: 'false',
    says: 'half; instrument; 3.5 % of additions and 2 % of looks false',
    labels: 'half',
    ...INSTRUMENT,
    books: 6,
    recipes: 40,
    falseLogs: true,
  },
  {
    name: 'chips',
    says: '12 chips that the book asks for',
    labels: 'half',
    ...INSTRUMENT,
    books: 12,
    recipes: 0,
    chips: 12,
  },
  {
    name: 'typed',
    says: 'all hex; looks and targets typed as hex',
    labels: 'hex',
    means: 'photo',
    deviation: 3.5,
    books: 6,
    recipes: 15,
  },
  {
    name: 'off-shelf',
    says: 'half; instrument; a bottle of each target is not there',
    labels: 'half',
    ...INSTRUMENT,
    books: 6,
    recipes: 15,
    offShelf: true,
  },
  // As the coloured patches of four photographed charts with known greys came out: median 4.4, p90 9.5 (a study of ours).
  { name: 'charts', says: 'by photo, as real charts', ...PHOTO, deviation: 6, doubt: 8.6 },
  {
    name: 'photo2-one',
    says: 'by photo, ΔE 2; one photo of each target, whatever the book says',
    means: 'photo',
    labels: 'half',
    deviation: 2,
    doubt: 2.9,
    books: 6,
    recipes: 40,
    besides: true,
  },
  {
    name: 'thick',
    says: 'half, hex of a hiding body; instrument',
    labels: 'half',
    ...INSTRUMENT,
    books: 6,
    recipes: 40,
    thickLabels: true,
    besides: true,
  },
  {
    name: 'scale',
    says: 'half; instrument; with a scale',
    labels: 'half',
    ...INSTRUMENT,
    books: 6,
    recipes: 40,
    scale: true,
    besides: true,
  },
];

/** A condition by its name. Throws a RangeError with the names that there are. */
export function conditionNamed(name: string): Condition {
  const found = CONDITIONS.find((each) => each.name === name);
  if (!found) throw new RangeError(`no condition ${name}; there are ${CONDITIONS.map((each) => each.name).join(', ')}`);
  return found;
}

/** `--quick`: this many books of this many recipes, of the first condition. */
export const QUICK = { books: 2, recipes: 15 } as const;

/** The first of the seeds that are reported, and of those to tune by. */
export const REPORTED_FROM = 101;
