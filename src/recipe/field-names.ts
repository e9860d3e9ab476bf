/**
 * Names of fields, for texts that are not YAML and so have no schema yet.
 *
 * @packageDocumentation
 */
import { placesIn } from './known-places.ts';
import { SCHEMAS } from './schema.ts';

/** Names of all fields that stand at the top of some kind of file. */
export const TOP_FIELDS: ReadonlySet<string> = new Set(
  Object.values(SCHEMAS).flatMap((schema) => Object.keys(schema.shape)),
);

/** Names of all fields of some kind of file, at any depth. */
export const FIELDS: ReadonlySet<string> = new Set(
  Object.values(SCHEMAS).flatMap((schema) => placesIn(schema, []).map((place) => place.at(-1)!)),
);

/** Names of fields that hold text in a maker's own words. */
export const TEXT_FIELDS: ReadonlySet<string> = new Set([
  'title',
  'maker',
  'note',
  'caption',
  'thin-part',
  'currency',
  'file',
  'photo',
  'tags',
  'address',
]);
