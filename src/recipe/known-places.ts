import type { z } from 'zod';
import { slips } from '../diagnostics/nearest-name.ts';
import type { FieldPath } from './field-path.ts';

/** Steps to a field in a schema; `*` for any entry of a list, and for any name of a cup or the like. */
type Place = readonly string[];

const ANY = '*';

/** What an entry of a field is called; of all others an entry. */
const ENTRIES: Readonly<Record<string, string>> = { cups: 'a cup', parts: 'a part', log: 'a step', chips: 'a chip' };

/** Where a field belongs. */
export interface Move {
  /** The edit. */
  readonly fix: string;
  /** The list that it becomes part of an entry of, by its own name. */
  readonly entryOf?: string;
}

/**
 * The edit for a field that is unknown where it stands and known in another place of the same file, below or above: the nearest such
 * place; undefined where there is none.
 *
 * @param path steps to the fields that it stands among
 * @param isThere whether the file has that field in that place already, so that none can be moved there
 *
 * @example moveFix(SCHEMAS.recipe, ['cups', 'body', 'log', 1], 'photo', () => false) // { fix: 'move it into `seen`' }
 */
export function moveFix(
  schema: z.core.$ZodType,
  path: FieldPath,
  name: string,
  isThere: (place: FieldPath) => boolean,
): Move | undefined {
  const inFile = (place: Place): FieldPath => place.map((step, index) => (step === ANY ? (path[index] ?? ANY) : step));
  const places = placesIn(schema, []).filter((place) => !isThere(inFile(place)));
  return (
    nearestMove(
      places.filter((place) => place.at(-1) === name),
      path,
    ) ??
    nearestMove(
      places.filter((place) => slips(place.at(-1)!, name) <= 1),
      path,
      name,
    )
  );
}

function nearestMove(places: readonly Place[], path: FieldPath, misspelt?: string): Move | undefined {
  const moves = places.flatMap((place) => {
    const owner = place.slice(0, -1);
    if (!owner.every((step, index) => index >= path.length || step === ANY || step === path[index])) return [];
    const words = owner.length > path.length ? into(owner.slice(path.length)) : outOf(path, owner.length);
    if (owner.length === path.length) return [];
    const as = misspelt === undefined ? '' : `, as \`${place.at(-1)}\``;
    const isEntry = owner.length > path.length && owner.at(-1) === ANY && misspelt === undefined;
    const move = { fix: `move it ${words}${as}`, ...(isEntry ? { entryOf: owner.at(-2)! } : {}) };
    return [{ move, way: Math.abs(owner.length - path.length) }];
  });
  return moves.sort((one, other) => one.way - other.way)[0]?.move;
}

/** The way down to the fields of a field or of an entry of one. */
function into(steps: Place): string {
  const names = steps.flatMap((step, index) =>
    step === ANY ? [] : steps[index + 1] === ANY ? [`${ENTRIES[step] ?? 'an entry'} of \`${step}\``] : [`\`${step}\``],
  );
  return `into ${names.reverse().join(' in ')}`;
}

/** The way up to the fields that the first steps of a path lead to. */
function outOf(path: FieldPath, depth: number): string {
  return `out of \`${String(path[depth])}\`${depth === 0 ? ', beside `title`' : ''}`;
}

/** Every field that a schema knows, at any depth. What is read by a function of its own is known by its name alone. */
export function placesIn(schema: z.core.$ZodType, at: Place): readonly Place[] {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'object':
      return Object.entries(def.shape).flatMap(([name, inner]) => [[...at, name], ...placesIn(inner, [...at, name])]);
    case 'array':
      return placesIn(def.element, [...at, ANY]);
    case 'record':
      return placesIn(def.valueType, [...at, ANY]);
    case 'optional':
    case 'default':
    case 'prefault':
    case 'readonly':
      return placesIn(def.innerType, at);
    case 'pipe':
      return placesIn(eachOf(def.out), at);
    default:
      return [];
  }
}

/** Of one value or a list of them, what each is: it is mostly written without the list. */
function eachOf(schema: z.core.$ZodType): z.core.$ZodType {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  if (def.type === 'readonly') return eachOf(def.innerType);
  return def.type === 'array' ? def.element : schema;
}
