import { FILED_KINDS, type FiledKind, KINDS } from '../../kinds/kinds.ts';
import { type FrontMatter, readFrontMatter } from '../../recipe/front-matter.ts';
import { SCHEMAS } from '../../recipe/schema.ts';
import type { Source } from '../../recipe/source.ts';
import { valueAt } from '../../recipe/value-at.ts';

/** What a text looks like, wherever it lies. */
export interface Likely {
  readonly kind: FiledKind;
  /** `a recipe` */
  readonly called: string;
  /** `colours/` */
  readonly folder: string;
}

/**
 * What a text looks like by its fields; undefined where nothing tells, and for a text that is no file of a book.
 *
 * A kind is told by a field that it alone has, and by most of the fields being its own; a material by what kind of look it has.
 */
export function kindOfText(source: Source): Likely | undefined {
  const frontMatter = readFrontMatter(source);
  if (!('place' in frontMatter)) return undefined;
  const kind = kindOf(frontMatter);
  return kind && { kind, called: KINDS[kind].one, folder: `${KINDS[kind].folder}/` };
}

function kindOf({ data }: FrontMatter): FiledKind | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const names = Object.keys(data);
  const told = FILED_KINDS.map((kind) => ({
    kind,
    telling: KINDS[kind].telling.filter((name) => names.includes(name)).length,
    own: names.filter((name) => name in SCHEMAS[kind].shape).length,
  })).filter(({ telling, own }) => telling > 0 && own > names.length / 2);
  const [best, second] = told.sort((one, other) => other.telling - one.telling || other.own - one.own);
  if (best && best.telling > (second?.telling ?? 0)) return best.kind;
  if (names.includes('size') && valueAt(data, ['look', 'colour']) !== undefined) return 'flake';
  const look = valueAt(data, ['look', 'kind']);
  if (look === 'pearl' || (look !== undefined && names.includes('bulk'))) return 'powder';
  const inDrops = names.includes('drop') || /\bdrops?\b/.test(String(valueAt(data, ['look', 'dose'])));
  return look === 'dye' || (look !== undefined && inDrops) ? 'colorant' : undefined;
}
