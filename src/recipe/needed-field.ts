import type { Kind } from '../kinds/kinds.ts';
import type { FieldPath } from './field-path.ts';
import { SCHEMAS } from './schema.ts';
import { valueAt } from './value-at.ts';

type Fields = Readonly<Record<PropertyKey, unknown>>;

/** Fields that a file must have although its schema lets them be left out: each because of what else the file has, or has not. */
const NEEDED: Readonly<Record<string, (owner: Fields, file: Fields) => boolean>> = {
  'look/kind': (look) => !has(look, 'chips'),
  'look/colour': (look) => !has(look, 'chips') && look.kind !== 'measured',
  'look/dose': (look) => !has(look, 'chips') && look.kind !== 'measured',
  'colorant/cut': (colorant) => !has(colorant, 'look'),
  'mold/cavity': (mold) => !has(mold, 'bait'),
  'mold/bait': (mold) => !has(mold, 'cavity'),
  'target/over-white': (target) => !has(target, 'parts'),
  'target/parts': (target) => !has(target, 'over-white'),
  'recipe/cups': (recipe) => !has(recipe, 'from'),
  'cups/plastic': (cup, recipe) => !has(recipe, 'from') && !has(cup, 'from') && !has(cup, 'log'),
};

/**
 * Whether a file must have a field that it has, so that nobody is told to remove it.
 *
 * @param data the front matter, with the field
 */
export function isNeeded(kind: Kind, data: unknown, path: FieldPath): boolean {
  const without = structuredClone(data);
  const owner = valueAt(without, path.slice(0, -1)) as Record<PropertyKey, unknown>;
  delete owner[path.at(-1)!];
  const { issues = [] } = SCHEMAS[kind].safeParse(without).error ?? {};
  if (issues.some((other) => other.path.join('/') === path.join('/'))) return true;
  return NEEDED[whereOf(kind, path)]?.(owner, without as Fields) ?? false;
}

/** The names that lead to a field: of a file's own field its kind first, of a cup's no name of the cup. */
function whereOf(kind: Kind, path: FieldPath): string {
  const names = path.length === 1 ? [kind, ...path] : path[0] === 'cups' ? ['cups', ...path.slice(2)] : path;
  return names.join('/');
}

const has = (fields: Fields, name: string): boolean => Object.hasOwn(fields, name);
