import { nearestFix, slips } from '../diagnostics/nearest-name.ts';
import type { Kind } from '../kinds/kinds.ts';
import type { FieldPath } from './field-path.ts';
import { moveFix } from './known-places.ts';
import { NOTES_WHY, notesFix } from './notes-in-fields.ts';
import { otherWord } from './other-words.ts';
import type { NamesOf } from './reference-fix.ts';
import { SCHEMAS } from './schema.ts';
import { valueAt } from './value-at.ts';

/** The file that a field stands in. */
interface FieldsFile {
  readonly kind: Kind;
  readonly data: unknown;
  readonly namesOf: NamesOf;
}

/** What is told of an unknown field besides its place and name. */
type Told = { readonly why: string; readonly fix: string; readonly nearest?: string };

const LOST = 'Cupbook would silently ignore it';

/**
 * Why a field that nobody knows is wrong, and the edit: it is misspelt, or belongs elsewhere in the file, or nowhere, or is no field at all but a
 * sentence of the notes. No name is offered that the file has there already, and none that could not hold what stands in it.
 *
 * @param allowed names of the fields that may stand there
 */
export function unknownField(file: FieldsFile, path: FieldPath, key: string, allowed: readonly string[]): Told {
  const { kind, data } = file;
  const isThere = (name: string): boolean => owner(data, path) !== undefined && Object.hasOwn(owner(data, path)!, name);
  const [, before, after] = /^([\w-]+)\s*=\s*(.*)$/s.exec(key) ?? [];
  if (before !== undefined && allowed.includes(before)) {
    return {
      why: 'a colon, not an equals sign, goes after the name of a field',
      fix: `write \`${before}: ${after}\``,
    };
  }
  if (kind === 'recipe' && isFinishedBait(path, key, valueAt(data, [...path, key]))) {
    return {
      why: 'a look with `side` or `rounds` is of the finished bait, not of one cup',
      fix: 'move the whole `seen` to the margin, beside `cups`',
    };
  }
  const free = allowed.filter((name) => !isThere(name));
  const near = nearestFix(key, free);
  if (near && slips(near.nearest, key) <= 1) return { why: LOST, ...near };
  const double = allowed.find((name) => isThere(name) && slips(name, key) <= 1);
  if (double !== undefined) {
    return {
      why: `\`${double}\` is there already, and one of the two would be lost`,
      fix: `keep \`${double}\`, and remove this one`,
    };
  }
  const other = otherWord(key, free);
  if (other) return { why: LOST, ...other };
  const notes = path.length === 0 ? notesFix(key, data, allowed) : undefined;
  if (notes !== undefined) return { why: NOTES_WHY, fix: notes };
  const fitting = nearestFix(
    key,
    free.filter((name) => couldHold(file, path, key, name)),
  );
  const move = moveFix(SCHEMAS[kind], path, key, (place) => valueAt(data, place) !== undefined);
  // A cup has either amounts or steps.
  if (move?.entryOf === 'log' && valueAt(data, [...path, 'add']) !== undefined) {
    return { why: LOST, fix: 'make `add` the first step of `log`, and move it into a step of it' };
  }
  return {
    why: LOST,
    ...(move === undefined ? (fitting ?? { fix: 'remove it, or move it to the notes' }) : { fix: move.fix }),
  };
}

/** What only a look at the finished bait says. */
const OF_BAIT = ['side', 'rounds'];

/** Whether a field of a cup or step tells a look at the finished bait: as one of the look's own fields, or as the look itself. */
function isFinishedBait(path: FieldPath, key: string, value: unknown): boolean {
  if (path[0] !== 'cups') return false;
  if (path.includes('seen')) return OF_BAIT.includes(key);
  const looks = key !== 'seen' ? [] : Array.isArray(value) ? value : [value];
  return looks.some((look) => typeof look === 'object' && look !== null && OF_BAIT.some((name) => name in look));
}

function owner(data: unknown, path: FieldPath): object | undefined {
  const found = valueAt(data, path);
  return typeof found === 'object' && found !== null ? found : undefined;
}

/** Whether what stands in a field would be right under another name beside it. */
function couldHold({ kind, data, namesOf }: FieldsFile, path: FieldPath, key: string, name: string): boolean {
  const value = valueAt(data, [...path, key]);
  const names = namesOf(name);
  if (names !== undefined && typeof value === 'string' && !names.includes(value)) return false;
  const renamed = structuredClone(data);
  const fields = owner(renamed, path) as Record<string, unknown>;
  fields[name] = fields[key];
  delete fields[key];
  const at = [...path, name];
  const { error } = SCHEMAS[kind].safeParse(renamed);
  return !error?.issues.some((issue) => at.every((step, index) => issue.path[index] === step));
}
