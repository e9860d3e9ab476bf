import type { Cut } from '../../cup/cut.ts';
import type { DiagnosticCode } from '../../diagnostics/catalogue.ts';
import { nearestFileFix } from '../../diagnostics/nearest-name.ts';
import { type Kind, type MaterialKind, SHELF_ORDER } from '../../kinds/kinds.ts';
import { bareName } from '../../recipe/bare-name.ts';
import { namesThere } from '../../recipe/reference-fix.ts';
import { SLUG_WORDS, slugOf } from '../../recipe/source.ts';
import { SLUG } from '../../values/slug.ts';
import type { Finding } from '../report.ts';

/** What the ledger needs to know of a material. */
export interface CupMaterial {
  readonly id: string;
  readonly kind: MaterialKind;
  readonly density: number;
  readonly gramsPerMl: number;
  readonly gramsPerDrop?: number;
  /** Of a dilution: what it is of. */
  readonly cut?: Cut;
}

/** The shelf as a cup is filled from it. */
export interface CupShelf {
  readonly materials: ReadonlyMap<string, CupMaterial>;
  /** The plastic meant where none is named. */
  readonly plastic: string | undefined;
  /** Files with faults of their own, which are not reported again: what kind each of these names is. */
  readonly faulty: ReadonlyMap<string, Kind>;
  /** Materials on it that no recipe names. */
  readonly unused: ReadonlySet<string>;
  /** Whether a part of the shelf could not be read, so that any name may be in it. */
  readonly isHidden: boolean;
}

/** What a cup can be told to take. */
export type Wanted = 'plastic' | 'material';

/** Names on the shelf of plastics, or of all that is no plastic. */
export function shelfNames(shelf: CupShelf, wanted: Wanted): readonly string[] {
  return [...shelf.materials.values()].filter(({ kind }) => isWanted(kind, wanted)).map(({ id }) => id);
}

function isWanted(kind: Kind, wanted: Wanted): boolean {
  return (kind === 'plastic') === (wanted === 'plastic');
}

/** Whether nothing on the shelf has that name, not even a file with faults. */
export function isNoName(shelf: CupShelf, id: string): boolean {
  return !shelf.materials.has(id) && !shelf.faulty.has(id) && !shelf.isHidden;
}

/** Why a name cannot be taken from the shelf: undefined where it can, `faulty` where its own file was told of. */
export function nameFault(
  shelf: CupShelf,
  id: string,
  wanted: Wanted,
): { readonly code: DiagnosticCode; readonly finding: Finding } | 'faulty' | undefined {
  const material = shelf.materials.get(id);
  const isPlastic = material?.kind === 'plastic';
  if (material && isPlastic === (wanted === 'plastic')) return undefined;
  if (!material && !isNoName(shelf, id)) return 'faulty';
  const names = shelfNames(shelf, wanted);
  const faulty = [...shelf.faulty].flatMap(([name, kind]) => (SLUG.test(name) && isWanted(kind, wanted) ? [name] : []));
  if (wanted === 'plastic') {
    return {
      code: 'recipe/unknown-plastic',
      finding: {
        found: `plastic \`${id}\``,
        expected: `the name of a file in shelf/plastics/${namesThere(names)}`,
        ...nearestFileFix(bareName(id), [...names, ...faulty], newFile('shelf/plastics', id)),
      },
    };
  }
  if (isPlastic) {
    return {
      code: 'recipe/plastic-as-material',
      finding: {
        found: `plastic \`${id}\` among the materials`,
        expected: oneOf(SHELF_ORDER.filter((kind) => kind !== 'plastic')),
        why: 'plastic changes how much is in the cup, not only what is in it',
        fix: `write it as \`plastic: … ${id}\``,
      },
    };
  }
  return {
    code: 'recipe/unknown-material',
    finding: {
      found: `material \`${id}\``,
      expected: 'the name of a file in shelf/',
      why: 'what a material does to the colour is in its file',
      ...materialFix(bareName(id), [...names, ...faulty], shelf.unused, newFile('shelf/…', id)),
    },
  };
}

/** `a colorant, powder or flake` */
function oneOf(kinds: readonly MaterialKind[]): string {
  return `a ${kinds.slice(0, -1).join(', ')} or ${kinds.at(-1)}`;
}

/** The edit for a material that is not there: one that is near in its spelling, or one that looks renamed since nothing uses it under its name. */
function materialFix(
  id: string,
  names: readonly string[],
  unused: ReadonlySet<string>,
  otherwise: string,
): Pick<Finding, 'fix' | 'nearest'> {
  const found = nearestFileFix(id, names, otherwise);
  if (found.nearest !== undefined) return found;
  const renamed = [...unused].filter((name) => shareWords(id, name));
  const [only] = renamed;
  return only === undefined || renamed.length > 1
    ? found
    : { fix: `write \`${only}\`, if \`${id}\` is called that now; nothing uses it yet`, nearest: only };
}

/** Whether all words of one name are among the other's, as of \`copper-035\` and \`copper-hex-035\`. */
function shareWords(one: string, other: string): boolean {
  const [first, second] = [one.split('-'), other.split('-')];
  return first.every((word) => second.includes(word)) || second.every((word) => first.includes(word));
}

/** The edit that gives the shelf a file of that name, or of the nearest to it that a file can have. */
function newFile(folder: string, id: string): string {
  const slug = slugOf(bareName(id));
  if (slug === '') return `create it in ${folder}/, with a name of ${SLUG_WORDS}`;
  return `create ${folder}/${slug}.md${slug === id ? '' : `, and write \`${slug}\` here`}`;
}
