import { USUAL_OPTICS } from '../optics/optical-model.ts';
import { type FieldsOf, SCHEMAS } from '../recipe/schema.ts';
import { BOOK_FILE } from '../recipe/source.ts';
import { cardPrint } from './card-print.ts';
import { checkKept } from './checks/check-kept.ts';
import { checkPartial } from './checks/check-partial.ts';
import { checkReferences } from './checks/check-references.ts';
import { unusedMaterials } from './checks/unused-materials.ts';
import { fillChips } from './chips/fill-chips.ts';
import type { CompileMemory } from './compile-memory.ts';
import { computedEach } from './computed.ts';
import type { ChipSpec } from './cups/chip-spec.ts';
import type { CupMaterial, CupShelf } from './cups/cup-shelf.ts';
import { cupSpecs } from './cups/cup-specs.ts';
import type { FilledCup } from './cups/fill-cup.ts';
import type { CardPrint } from './model/card-print.ts';
import type { Mold } from './model/shelf.ts';
import type { Settings } from './model.ts';
import { publishOf } from './publish/publish-of.ts';
import { inheritedFields } from './read/inherited-field.ts';
import type { Things } from './read/read-things.ts';
import { usualPlastic } from './read/usual-things.ts';
import { fillCups } from './recipes/fill-cups.ts';
import { partsOfRecipes, type RecipeParts } from './recipes/recipe-parts.ts';
import { NOTHING } from './remembered.ts';
import type { Report } from './report.ts';
import { settingsOf, withRoom } from './settings.ts';
import type { MaterialCore } from './shelf/compile-material.ts';
import { compileMold } from './shelf/compile-mold.ts';
import { compileShelf } from './shelf/compile-shelf.ts';
import type { ShelfFit } from './shelf/shelf-fit.ts';

/** What the files of a book give before any colour of a recipe is computed: its shelf as the labels have it, and what is in every cup. */
export interface Prepared {
  readonly fields: FieldsOf<'book'>;
  readonly settings: Settings;
  readonly measuringCard: CardPrint | undefined;
  readonly shelf: ReadonlyMap<string, MaterialCore>;
  readonly films: ShelfFit;
  readonly molds: ReadonlyMap<string, Omit<Mold, 'usedIn'>>;
  readonly filled: ReadonlyMap<string, FilledCup>;
  /** The cups of chips, by the name of the chip. */
  readonly filledChips: ReadonlyMap<string, FilledCup<ChipSpec>>;
  /** Recipes of which all is known that their colours hang on. */
  readonly recipes: readonly RecipeParts[];
  /** What is meant where a recipe names nothing. */
  readonly plastic: string | undefined;
  readonly inherited: ReturnType<typeof inheritedFields>;
}

/** Compiles the shelf and the molds, keeps the ledger of every cup, and finds what each recipe is made of. */
export function prepareBook(things: Things, memory: CompileMemory, report: Report): Prepared {
  // Without a `book.md` there is no book, but the recipes can be checked.
  const fields = things.book?.fields ?? SCHEMAS.book.parse({ title: BOOK_FILE });
  const {
    materials: shelf,
    cuts,
    films,
  } = compileShelf(things, fields.units.temperature, USUAL_OPTICS, memory, report);
  const molds = computedEach(things.molds, memory.molds, { shelf: NOTHING }, report, compileMold);
  const specs = cupSpecs(things, report);
  checkReferences(things, report);
  const plastic = usualPlastic(things, shelf, report);
  const inCups = new Map<string, CupMaterial>([...shelf, ...cuts]);
  const cupShelf: CupShelf = {
    materials: inCups,
    plastic,
    faulty: faultyMaterials(things, inCups),
    unused: unusedMaterials(things),
    isHidden: things.faulty.folderOf('plastic') !== undefined,
  };
  const filled = fillCups(specs.cups, cupShelf, memory.filled, report);
  for (const cup of filled.values()) checkKept(cup, filled, report);
  const filledChips = fillChips(things, cupShelf, memory.filledChips, report);
  checkPartial(things, specs.parts, cupShelf, report);
  const stated = withRoom(things.book, settingsOf(withPlasticThere(fields, things)), report);
  const settings = memory.settings.of(BOOK_FILE, [JSON.stringify(stated)], NOTHING, report, () => stated);
  const measuringCard = cardPrint(things.book, report);
  const inherited = inheritedFields(things.recipes);
  const publish = publishOf(things.recipes, specs.ofRecipe, fields.publish);
  const recipes = partsOfRecipes(things, specs.ofRecipe, filled, { molds, inherited, publish, report });
  return { fields, settings, measuringCard, shelf, films, molds, filled, filledChips, recipes, plastic, inherited };
}

/** The fields of a book without the plastic that it names, as long as that waits to be filled in. */
function withPlasticThere(fields: FieldsOf<'book'>, { faulty }: Things): FieldsOf<'book'> {
  const { plastic, ...others } = fields;
  return plastic === undefined || faulty.isWaiting('plastic', plastic) ? others : fields;
}

/** Materials whose files have faults, by themselves or once they are compiled. */
function faultyMaterials(things: Things, shelf: CupShelf['materials']): CupShelf['faulty'] {
  const uncompiled = [...things.materials.values(), ...things.cuts.values()].filter(({ id }) => !shelf.has(id));
  return new Map([...things.faulty.materials, ...uncompiled.map(({ id, kind }) => [id, kind] as const)]);
}
