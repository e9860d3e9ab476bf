/**
 * What readers may have of a file as its maker wrote it, field by field.
 *
 * As in `shared-fields.ts`, a new field is private until it is named here. Photos are left out of files too: readers cannot have them, and
 * what one is called may tell where it was taken.
 *
 * @packageDocumentation
 */

import { FILED_KINDS, type FiledKind, isMaterialKind, type Kind, type MaterialKind } from '../../kinds/kinds.ts';
import type { SeenColour, TargetColour } from '../../recipe/colour-fields.ts';
import type { FieldPath } from '../../recipe/field-path.ts';
import { leaveOutFields } from '../../recipe/leave-out-fields.ts';
import type { PlasticAmount } from '../../recipe/plastic-field.ts';
import type { FieldsOf } from '../../recipe/schema.ts';
import { kindOfPath, type Source } from '../../recipe/source.ts';
import type { Quantity, Rate } from '../../units/quantity.ts';
import { required } from '../../values/required.ts';
import type { Sharing } from './field-table.ts';

/** What is written as one value, whatever is read from it. */
type Written =
  | string
  | number
  | boolean
  | Quantity
  | Rate
  | SeenColour
  | TargetColour
  | PlasticAmount
  | readonly string[]
  | readonly Quantity[]
  | readonly PlasticAmount[];

/** As `FieldTable`, of what a file holds: names that a maker chooses, of cups and materials, stand as `*`. */
type FileTable<T> = [T] extends [Written]
  ? Sharing
  : [T] extends [Written | readonly (infer Each)[]]
    ? 'private' | FileTable<Each>
    : 'private' | NestedTable<Exclude<T, Written>>;

type NestedTable<T> = string extends keyof T
  ? { readonly '*': FileTable<NonNullable<T[keyof T]>> }
  : { readonly [Key in NameOf<T>]: FileTable<NonNullable<ValueOf<T, Key>>> };

/** The names that any of some kinds of value has, and what stands there. */
type NameOf<T> = T extends unknown ? keyof T : never;
type ValueOf<T, Key> = T extends unknown ? (Key extends keyof T ? T[Key] : never) : never;

type Table = Sharing | { readonly [field: string]: Table };

const AMOUNTS = { '*': 'shared' } as const;

const CHIP = {
  dose: 'shared',
  thickness: 'shared',
  'over-white': 'shared',
  'over-black': 'shared',
  doubt: 'shared',
  'contrast-doubt': 'shared',
  photo: 'private',
  camera: 'private',
} as const;

/** Of all that stands on the shelf: a field means the same there, whatever kind of material has it. */
const MATERIAL: NestedTable<FieldsOf<MaterialKind>> = {
  title: 'shared',
  price: 'private',
  pack: 'shared',
  stock: 'private',
  highest: 'shared',
  bears: 'shared',
  most: 'shared',
  photos: 'private',
  look: { kind: 'shared', colour: 'shared', dose: 'shared', thickness: 'shared', chips: CHIP },
  density: 'shared',
  bulk: 'shared',
  drop: { count: 'shared', mass: 'shared' },
  cut: { of: 'shared', with: 'shared', 'one-in': 'shared' },
  shape: 'shared',
  size: 'shared',
  long: 'shared',
  film: 'shared',
  finish: 'shared',
  hardness: 'shared',
  use: 'shared',
  effect: 'shared',
  working: { from: 'shared', to: 'shared' },
};

const SEEN = {
  'over-white': 'shared',
  'over-black': 'shared',
  doubt: 'shared',
  'contrast-doubt': 'shared',
  note: 'shared',
  photo: 'private',
  camera: 'private',
  checked: 'shared',
  thickness: 'shared',
  after: 'shared',
  wet: 'shared',
} as const;

const LOG = {
  'new-cup': 'shared',
  heat: 'shared',
  held: 'shared',
  reheat: 'shared',
  plastic: 'shared',
  add: AMOUNTS,
  pour: 'shared',
  seen: SEEN,
  note: 'shared',
} as const;

const TARGET_PART = {
  'over-white': 'shared',
  'over-black': 'shared',
  thickness: 'shared',
  doubt: 'shared',
  'contrast-doubt': 'shared',
  camera: 'private',
  after: 'shared',
  wet: 'shared',
  flake: { colour: 'shared', size: 'shared', coverage: 'shared' },
  plastic: 'private',
} as const;

/** `book.md` is in no edition as a file. */
const SHARED_FILE_FIELDS: { readonly [K in Exclude<FiledKind, MaterialKind>]: FileTable<FieldsOf<K>> } = {
  recipe: {
    title: 'shared',
    made: 'shared',
    pattern: 'shared',
    order: 'shared',
    mold: 'shared',
    baits: 'shared',
    from: 'shared',
    for: 'shared',
    publish: 'shared',
    tags: 'shared',
    photos: 'private',
    streak: 'shared',
    cups: {
      '*': {
        share: 'shared',
        plastic: 'shared',
        from: 'shared',
        add: AMOUNTS,
        set: AMOUNTS,
        without: 'shared',
        log: LOG,
      },
    },
    seen: { ...SEEN, side: 'shared', rounds: { '*': 'shared' } },
  },
  chip: {
    title: 'shared',
    made: 'shared',
    plastic: 'shared',
    add: AMOUNTS,
    log: LOG,
    seen: SEEN,
    publish: 'shared',
  },
  mold: {
    title: 'shared',
    cavities: 'shared',
    cavity: 'shared',
    bait: 'shared',
    sprue: 'shared',
    body: 'shared',
    thin: 'shared',
    'thin-part': 'shared',
    gate: 'shared',
    length: 'shared',
    shape: 'shared',
    bag: 'shared',
    method: 'shared',
    manifold: 'shared',
    rejects: 'shared',
    photos: 'private',
  },
  target: {
    title: 'shared',
    ...TARGET_PART,
    parts: { '*': TARGET_PART },
    apart: 'shared',
    effect: 'shared',
    mold: 'shared',
    tolerance: 'shared',
    publish: 'shared',
    photo: 'private',
  },
};

function tableOf(kind: FiledKind): Table {
  return isMaterialKind(kind) ? MATERIAL : SHARED_FILE_FIELDS[kind];
}

/** Names of the fields of each kind that are private somewhere in its file. */
const PRIVATE_NAMES = new Map<Kind, ReadonlySet<string>>(
  FILED_KINDS.map((kind) => [kind, new Set(privateNames(tableOf(kind)))]),
);

function privateNames(table: Table): readonly string[] {
  if (typeof table === 'string') return [];
  return Object.entries(table).flatMap(([name, inside]) => (inside === 'private' ? [name] : privateNames(inside)));
}

/** A file as readers may have it: without its private fields, and otherwise as it is. */
export function sharedSource<S extends Source>(source: S): S {
  const kind = kindOfPath(source.path)?.kind;
  if (kind === undefined || kind === 'book') return source;
  const names = required(PRIVATE_NAMES, kind);
  const text = leaveOutFields(source.text, (path) => sharingAt(tableOf(kind), path) === 'private', names);
  return { ...source, text };
}

/** What the table says of a field; of one that it does not know, that it is private. */
function sharingAt(table: Table, path: FieldPath): Sharing {
  let at = table;
  for (const step of path) {
    if (typeof at === 'string') return at;
    // A list has the table of what is in it.
    if (typeof step === 'number') continue;
    const name = Object.hasOwn(at, '*') ? '*' : String(step);
    at = Object.hasOwn(at, name) ? at[name]! : 'private';
  }
  return typeof at === 'string' ? at : 'shared';
}
