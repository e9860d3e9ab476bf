/**
 * What the files of a book are: all that the book knows of a kind stands in its entry, but for its fields (`src/recipe/schema.ts`).
 *
 * @packageDocumentation
 */

interface KindEntry {
  /** Folder of its files, from the book's folder. */
  readonly folder: string;
  /** One of it in a sentence. */
  readonly one: string;
  /** Fields that no other kind of file has: a text is told by them, wherever it lies. */
  readonly telling: readonly string[];
}

/** All that makes a kind of material, besides how its file is read: see `src/book/shelf/material-of-kind.ts`. */
interface MaterialEntry extends KindEntry {
  /** Its heading on the shelf, where kinds stand in the order of this table. */
  readonly heading: string;
  /** Whether plastic is coloured with it: such a material is tried in a match. */
  readonly colours: boolean;
  /**
   * When it goes into a cup: first, as a plastic does; wetted and into the cold plastic; stirred in hot; with what sinks; or by its use, as
   * an additive does. Common practice, no source.
   */
  readonly goesIn: 'first' | 'wetted' | 'stirred-in' | 'sinks' | 'by-use';
}

const MATERIALS = {
  colorant: {
    folder: 'shelf/colorants',
    one: 'a colorant',
    telling: ['cut'],
    heading: 'Colorants',
    colours: true,
    goesIn: 'stirred-in',
  },
  powder: {
    folder: 'shelf/powders',
    one: 'a powder',
    telling: [],
    heading: 'Powders',
    colours: true,
    goesIn: 'wetted',
  },
  flake: {
    folder: 'shelf/flakes',
    one: 'a flake',
    telling: ['finish', 'film'],
    heading: 'Flake',
    colours: false,
    goesIn: 'sinks',
  },
  plastic: {
    folder: 'shelf/plastics',
    one: 'a plastic',
    telling: ['hardness', 'working'],
    heading: 'Plastics',
    colours: false,
    goesIn: 'first',
  },
  additive: {
    folder: 'shelf/additives',
    one: 'an additive',
    telling: ['use'],
    heading: 'Additives',
    colours: false,
    goesIn: 'by-use',
  },
} as const satisfies Readonly<Record<string, MaterialEntry>>;

const ENTRIES = {
  recipe: {
    folder: 'colours',
    one: 'a recipe',
    telling: ['cups', 'pattern', 'baits', 'streak'],
  },
  chip: {
    folder: 'chips',
    one: 'a chip',
    telling: ['add', 'log'],
  },
  ...MATERIALS,
  mold: {
    folder: 'molds',
    one: 'a mold',
    telling: ['cavity', 'cavities', 'sprue', 'bait', 'bag', 'thin', 'gate'],
  },
  target: {
    folder: 'targets',
    one: 'a target',
    telling: ['parts', 'over-white', 'over-black', 'apart'],
  },
} as const satisfies Readonly<Record<string, KindEntry>>;

/** The kinds of material that stand on the shelf. */
export type MaterialKind = keyof typeof MATERIALS;

/** The kinds of file that lie in a folder of their own. */
export type FiledKind = keyof typeof ENTRIES;

/** What a file is: by the folder that it lies in, or the one that the book has its name from. */
export type Kind = 'book' | FiledKind;

export const KINDS: Readonly<Record<FiledKind, KindEntry>> = ENTRIES;
export const FILED_KINDS = Object.keys(ENTRIES) as readonly FiledKind[];

/** Folders of all kinds of file. */
export const FOLDERS: readonly string[] = FILED_KINDS.map((kind) => KINDS[kind].folder);

export const MATERIAL_KINDS: Readonly<Record<MaterialKind, MaterialEntry>> = MATERIALS;
/** In the order of the shelf. */
export const SHELF_ORDER = Object.keys(MATERIALS) as readonly MaterialKind[];

/** Whether files of a kind stand on the shelf. */
export function isMaterialKind(kind: Kind): kind is MaterialKind {
  return Object.hasOwn(MATERIALS, kind);
}
