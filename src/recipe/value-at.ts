import type { FieldPath } from './field-path.ts';

/** What stands at a path of data; undefined where the path leads to nothing. */
export function valueAt(data: unknown, path: FieldPath): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, step)
        ? (value as Record<PropertyKey, unknown>)[step]
        : undefined,
    data,
  );
}

/** A path without the step into a list of one that was written as its only entry. */
export function writtenPath(data: unknown, path: FieldPath): FieldPath {
  return path.filter((step, depth) => typeof step !== 'number' || Array.isArray(valueAt(data, path.slice(0, depth))));
}
