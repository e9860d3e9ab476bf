import type { Chip } from '../book/model/chip.ts';
import type { DoubtedLook } from '../book/model/doubted-look.ts';
import type { Family, Recipe, RecipeLook } from '../book/model/recipe.ts';
import type { Material, Mold, ShelfCut } from '../book/model/shelf.ts';
import type { Target } from '../book/model/target.ts';
import type { Book } from '../book/model.ts';
import { required } from '../values/required.ts';
import { cutName } from '../words/cut.ts';

/** The things of a book by their ids. */
export interface BookIndex {
  readonly recipes: ReadonlyMap<string, Recipe>;
  readonly looks: ReadonlyMap<string, RecipeLook>;
  readonly materials: ReadonlyMap<string, Material>;
  /** Dilutions of the materials. */
  readonly cuts: ReadonlyMap<string, ShelfCut>;
  /** Of each material the chips that it is in; of plain plastic, those of that plastic. */
  readonly chipsOf: ReadonlyMap<string, readonly Chip[]>;
  /** Looks that count for little, by what they are of and its id. */
  readonly doubted: ReadonlyMap<string, readonly DoubtedLook[]>;
  readonly molds: ReadonlyMap<string, Mold>;
  readonly targets: ReadonlyMap<string, Target>;
  readonly families: ReadonlyMap<string, Family>;
  /** Family of each recipe that has relatives. */
  readonly familyOf: ReadonlyMap<string, Family>;
}

const byId = <T extends { readonly id: string }>(things: readonly T[]): ReadonlyMap<string, T> =>
  new Map(things.map((thing) => [thing.id, thing]));

// Each of a book's pages needs it, and a book never changes: without it a page would cost time in proportion to the book.
const indexes = new WeakMap<Book, BookIndex>();

/** Title of a material or a cut by its name. */
export function titleOnShelf(book: Book, id: string): string {
  const { materials, cuts } = bookIndex(book);
  const cut = cuts.get(id);
  return cut ? cutName(cut) : required(materials, id).title;
}

/** Index of a book, made once. */
export function bookIndex(book: Book): BookIndex {
  const known = indexes.get(book);
  if (known !== undefined) return known;
  const index = {
    recipes: byId(book.recipes),
    looks: byId(book.looks),
    materials: byId(book.materials),
    cuts: byId(book.materials.flatMap(({ cuts = [] }) => cuts)),
    chipsOf: chipsByMaterial(book.chips),
    doubted: doubtedByThing(book),
    molds: byId(book.molds),
    targets: byId(book.targets),
    families: byId(book.families),
    familyOf: new Map(book.families.flatMap((family) => family.members.map((member) => [member, family] as const))),
  };
  indexes.set(book, index);
  return index;
}

function doubtedByThing({ doubted = [] }: Book): BookIndex['doubted'] {
  const found = new Map<string, DoubtedLook[]>();
  for (const look of doubted) {
    const name = `${look.of} ${look.id}`;
    const looks = found.get(name);
    if (looks) looks.push(look);
    else found.set(name, [look]);
  }
  return found;
}

function chipsByMaterial(chips: readonly Chip[]): BookIndex['chipsOf'] {
  const found = new Map<string, Chip[]>();
  for (const chip of chips) {
    const held = chip.rounds.flatMap(({ contents, plastics }): readonly { readonly material: string }[] =>
      contents.length > 0 ? contents : plastics,
    );
    for (const material of new Set(held.map((each) => each.material)))
      found.set(material, [...(found.get(material) ?? []), chip]);
  }
  return found;
}
