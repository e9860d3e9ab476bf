import { isMaterialKind, KINDS, type Kind } from '../../kinds/kinds.ts';
import { bareName } from '../../recipe/bare-name.ts';
import type { Thing } from '../../recipe/read-thing.ts';
import { BOOK_FILE, MEASUREMENTS_FILE } from '../../recipe/source.ts';
import { plasticsOfTarget } from '../checks/check-references.ts';
import { namesInCup } from '../checks/unused-materials.ts';
import type { CupFields } from '../cups/cup-specs.ts';
import type { ShelfFit } from '../shelf/shelf-fit.ts';
import { type InheritedField, unreadOrigin } from './inherited-field.ts';
import type { Things } from './read-things.ts';

/** What is meant where a recipe names nothing. */
export interface Unnamed {
  readonly inherited: InheritedField;
  readonly plastic: string | undefined;
  readonly films: ShelfFit;
}

/**
 * The files that each file of a book needs: those that it names, and those of which one is meant where it names none. Where one of these
 * cannot be used, nobody knows which was meant, so that all of them are needed.
 *
 * @param faulty paths of the files that cannot be used for their errors, or could not be read
 */
export function needsOf(
  things: Things,
  { inherited, plastic, films }: Unnamed,
  faulty: ReadonlySet<string>,
): ReadonlyMap<string, readonly string[]> {
  const pathOf = (kind: Kind, id: string): string =>
    knownOf(things, kind, id)?.source.path ?? things.faulty.pathOf(kind, id) ?? filePath(kind, id);
  const oneOf = (kind: 'plastic' | 'mold', usual: string | undefined): readonly string[] => {
    const folder = things.faulty.folderOf(kind);
    const others = [...faulty].filter((path) => path.startsWith(`${KINDS[kind].folder}/`));
    if (folder !== undefined || others.length > 0) return folder === undefined ? others : [folder, ...others];
    if (usual !== undefined) return [pathOf(kind, usual)];
    // What waits to be filled in is meant where there is nothing else. Where there is none at all, the folder lacks one.
    const waiting = [...things.faulty.waiting].filter((path) => path.startsWith(`${KINDS[kind].folder}/`));
    return waiting.length > 0 ? waiting : [KINDS[kind].folder];
  };
  const stated = things.book?.fields.plastic;
  const usualPlastic = stated === undefined ? oneOf('plastic', plastic) : [pathOf('plastic', stated)];
  const usualMold = oneOf('mold', things.molds.size === 1 ? [...things.molds.keys()][0] : undefined);

  const moldOf = (recipe: Thing<'recipe'>): readonly string[] => {
    const mold = inherited(recipe, 'mold');
    if (mold !== undefined) return [pathOf('mold', mold)];
    // What it comes from would say, and is needed itself.
    return unreadOrigin(recipe, things.recipes) === undefined ? usualMold : [];
  };
  const inCup = (cup: CupFields): readonly string[] => [
    ...namesInCup(cup).map((id) => pathOf('colorant', id)),
    ...[
      ...(cup.plastic ?? []),
      ...(cup.log ?? []).flatMap((step) => [...(step['new-cup'] ?? []), ...(step.plastic ? [step.plastic] : [])]),
    ].flatMap((amount) => (amount.plastic === undefined ? usualPlastic : [pathOf('plastic', amount.plastic)])),
  ];
  const ofRecipe = (recipe: Thing<'recipe'>): readonly string[] => {
    const { from, for: target, cups = {} } = recipe.fields;
    const recipeOf = (name: string): string => pathOf('recipe', bareName(name).replace(/\/.*/s, ''));
    return [
      ...moldOf(recipe),
      ...(from === undefined ? [] : [recipeOf(from)]),
      ...(target === undefined ? [] : [pathOf('target', target)]),
      ...Object.values(cups).flatMap((cup) => [...(cup.from === undefined ? [] : [recipeOf(cup.from)]), ...inCup(cup)]),
    ];
  };
  const isMeasured = ({ fields }: Thing): boolean =>
    'look' in fields && fields.look !== undefined && 'kind' in fields.look && fields.look.kind === 'measured';

  return new Map<string, readonly string[]>([
    ...(things.book
      ? [[BOOK_FILE, usualPlastic.filter((path) => stated !== undefined && !things.faulty.waiting.has(path))] as const]
      : []),
    ...[...things.materials.values()].map(
      (thing) => [thing.source.path, isMeasured(thing) ? [MEASUREMENTS_FILE] : []] as const,
    ),
    ...[...things.cuts.values()].map(
      ({ source, fields: { cut } }) => [source.path, [cut.of, cut.with].map((id) => pathOf('colorant', id))] as const,
    ),
    ...[...things.molds.values()].map(({ source }) => [source.path, []] as const),
    ...[...things.targets.values()].map((target) => {
      const { mold } = target.fields;
      const plastics = plasticsOfTarget(target).map(({ id }) => pathOf('plastic', id));
      return [target.source.path, [...(mold === undefined ? [] : [pathOf('mold', mold)]), ...plastics]] as const;
    }),
    ...[...things.recipes.values()].map((recipe) => [recipe.source.path, ofRecipe(recipe)] as const),
    ...[...things.chips.values()].map(({ source, fields }) => [source.path, inCup(fields)] as const),
    ...(things.measurements === undefined
      ? []
      : [[MEASUREMENTS_FILE, filmsNeed(films, things, (id) => pathOf('colorant', id))] as const]),
  ]);
}

/** What the table of films needs: all that the films which count hold. */
function filmsNeed({ holds }: ShelfFit, { faulty }: Things, pathOf: (id: string) => string): readonly string[] {
  const folder = faulty.folderOf('colorant');
  return [...(folder === undefined ? [] : [folder]), ...holds.map(pathOf)];
}

function knownOf(things: Things, kind: Kind, id: string): Pick<Thing, 'source'> | undefined {
  if (isMaterialKind(kind))
    return (things.materials.get(id) ?? things.cuts.get(id)) as Pick<Thing, 'source'> | undefined;
  if (kind === 'recipe') return things.recipes.get(id);
  if (kind === 'chip') return things.chips.get(id);
  if (kind === 'mold') return things.molds.get(id);
  return kind === 'target' ? things.targets.get(id) : things.book;
}

/** Where a file that is not there would be. */
function filePath(kind: Kind, id: string): string {
  return kind === 'book' ? BOOK_FILE : `${KINDS[kind].folder}/${id}.md`;
}
