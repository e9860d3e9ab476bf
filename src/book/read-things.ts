import { CATALOGUE } from '../diagnostics/catalogue.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { readThing, type Thing } from '../recipe/read-thing.ts';
import {
  BOOK_FILE,
  FOLDERS,
  type Kind,
  kindOfPath,
  type MaterialKind,
  MEASUREMENTS_FILE,
  SLUG,
  type Source,
  slugOf,
} from '../recipe/source.ts';

/** Every file of a book that could be read by itself, by kind and by id. */
export interface Things {
  readonly book: Thing<'book'> | undefined;
  readonly recipes: ReadonlyMap<string, Thing<'recipe'>>;
  readonly materials: ReadonlyMap<string, Thing<MaterialKind>>;
  readonly molds: ReadonlyMap<string, Thing<'mold'>>;
  readonly targets: ReadonlyMap<string, Thing<'target'>>;
  /** The table of measured films, if there is one. */
  readonly measurements: Source | undefined;
  /** Names that exist but whose files have faults: a reference to one is not a second mistake. */
  readonly faulty: ReadonlySet<string>;
}

/** Key of a thing in `Things.faulty`; all materials share one name space. */
export function faultyKey(kind: Kind, id: string): string {
  return `${isMaterialKind(kind) ? 'material' : kind}/${id}`;
}

function isMaterialKind(kind: Kind): kind is MaterialKind {
  return kind === 'colorant' || kind === 'powder' || kind === 'flake' || kind === 'plastic' || kind === 'additive';
}

/** Reads every text of a book by itself, in the order of the paths. Faults are appended to `diagnostics`. */
export function readThings(sources: readonly Source[], diagnostics: Diagnostic[]): Things {
  const at = { line: 1, column: 1 };
  const byKind = {
    recipe: new Map<string, Thing<'recipe'>>(),
    mold: new Map<string, Thing<'mold'>>(),
    target: new Map<string, Thing<'target'>>(),
  };
  const materials = new Map<string, Thing<MaterialKind>>();
  const faulty = new Set<string>();
  let book: Thing<'book'> | undefined;
  let measurements: Source | undefined;

  for (const source of [...sources].sort((one, other) => (one.path < other.path ? -1 : 1))) {
    if (source.path === MEASUREMENTS_FILE) {
      measurements = source;
      continue;
    }
    const what = kindOfPath(source.path);
    if (what === undefined) {
      diagnostics.push({
        code: 'file/unknown-place',
        severity: CATALOGUE['file/unknown-place'].severity,
        file: source.path,
        start: at,
        found: `file in \`${source.path.replace(/[^/]*$/, '') || './'}\``,
        expected: `${BOOK_FILE}, or a file in ${Object.values(FOLDERS).join(', ')}`,
        why: 'the folder of a file says what it is',
        fix: 'move it to the folder of its kind',
      });
      continue;
    }
    const { kind, id } = what;
    if (!SLUG.test(id)) {
      faulty.add(faultyKey(kind, id));
      const slug = slugOf(id);
      diagnostics.push({
        code: 'file/name',
        severity: 'error',
        file: source.path,
        start: at,
        found: `file name \`${id}.md\``,
        expected: 'lower-case letters and digits, with single hyphens between words',
        why: 'the name is the id that other files use, and the address of the page',
        ...(slug === '' ? {} : { fix: `rename it to \`${slug}.md\``, nearest: slug }),
      });
      continue;
    }
    const thing = readThing(kind, id, source);
    if (!('kind' in thing)) {
      faulty.add(faultyKey(kind, id));
      diagnostics.push(...thing);
    } else if (isMaterialKind(kind)) {
      const twin = materials.get(id);
      if (twin) {
        diagnostics.push({
          code: 'file/same-name',
          severity: 'error',
          file: source.path,
          start: at,
          found: `second material \`${id}\``,
          expected: 'one name for each material of the shelf',
          why: 'a recipe that says the name could mean either',
          fix: `rename it, for instance to \`${id}-${kind}.md\``,
          related: [{ message: 'the other one is here', file: twin.source.path, start: at }],
        });
      } else materials.set(id, thing as Thing<MaterialKind>);
    } else if (kind === 'book') book = thing as Thing<'book'>;
    else (byKind[kind as 'recipe'] as Map<string, Thing>).set(id, thing as Thing);
  }
  return { book, recipes: byKind.recipe, materials, molds: byKind.mold, targets: byKind.target, measurements, faulty };
}
