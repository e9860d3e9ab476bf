import { expect, test } from 'vitest';
import { FILED_KINDS, FOLDERS, isMaterialKind, KINDS, MATERIAL_KINDS, SHELF_ORDER } from '../../src/kinds/kinds.ts';
import { SCHEMAS } from '../../src/recipe/schema.ts';
import { kindOfPath } from '../../src/recipe/source.ts';

test('every kind has a folder of its own, by which a path tells it', () => {
  expect(new Set(FOLDERS).size).toBe(FILED_KINDS.length);
  for (const kind of FILED_KINDS) {
    expect(kindOfPath(`${KINDS[kind].folder}/smoke.md`)).toEqual({ kind, id: 'smoke' });
    expect(KINDS[kind].folder.startsWith('shelf/')).toBe(isMaterialKind(kind));
  }
});

test('a field that tells a kind is one that the kind has, and no other', () => {
  for (const kind of FILED_KINDS) {
    for (const field of KINDS[kind].telling) {
      const having = FILED_KINDS.filter((other) => Object.hasOwn(SCHEMAS[other].shape, field));
      expect({ field, having }).toEqual({ field, having: [kind] });
    }
  }
});

test('a plastic goes into a cup before all other kinds, and only an additive goes in by what it is for', () => {
  const kinds = (goesIn: string): readonly string[] =>
    SHELF_ORDER.filter((kind) => MATERIAL_KINDS[kind].goesIn === goesIn);
  expect(kinds('first')).toEqual(['plastic']);
  expect(kinds('by-use')).toEqual(['additive']);
});
