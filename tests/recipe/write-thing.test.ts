import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import type { z } from 'zod';
import type { Kind } from '../../src/kinds/kinds.ts';
import { readFrontMatter } from '../../src/recipe/front-matter.ts';
import { readThing, type Thing } from '../../src/recipe/read-thing.ts';
import { SCHEMAS } from '../../src/recipe/schema.ts';
import { kindOfPath } from '../../src/recipe/source.ts';
import { unseenSigns } from '../../src/recipe/unseen-signs.ts';
import { frontMatterText, type Written, type WrittenFields } from '../../src/recipe/write-front-matter.ts';
import { writeThing } from '../../src/recipe/write-thing.ts';
import { UNITS } from '../../src/units/unit.ts';
import { filesBelow } from '../folder-tree.ts';

const KINDS = Object.keys(SCHEMAS) as Kind[];

/** Text that a file may have: signs of YAML, numbers, words that YAML reads otherwise, any letters. */
const text = fc
  .oneof(
    fc.string({ unit: 'grapheme', maxLength: 30 }),
    fc.string({ unit: fc.constantFrom(...`ab0 .,:;#-?!&*|>{}[]'"\\%@\`~=/<\n`), maxLength: 12 }),
    fc.constantFrom(
      'null',
      'True',
      '~',
      '1.10',
      '0x10',
      '1e3',
      '.5',
      '-',
      '- a',
      '? a',
      'a: b',
      'a #b',
      '---',
      '...',
      '.inf',
      'no',
      '{}',
      '🐟',
    ),
  )
  .filter((each) => unseenSigns(each).length === 0);

const digits = fc.oneof(
  fc.integer({ min: 1, max: 400 }).map(String),
  fc.double({ min: 0.002, max: 900, noNaN: true }).map((number) => number.toFixed(6)),
  fc.double({ min: 0.002, max: 900, noNaN: true }).map(String),
  fc.constantFrom('1/8', '1 1/2', '3/7', '½', '2⅓', '.5', '0.10', '0'),
);
const amount = fc.tuple(digits, fc.constantFrom(...Object.keys(UNITS))).map((pair) => pair.join(' '));
const slug = fc.stringMatching(/^[a-z0-9]{1,8}(-[a-z0-9]{1,4})?$/);
const hex = fc.stringMatching(/^#[0-9a-fA-F]{6}$/);
const number = fc.oneof(fc.integer({ min: 1, max: 999 }), fc.double({ min: 1e-7, max: 1e9, noNaN: true }));

/** What a field may be written as that is read by a function of its own. */
const WRITTEN: readonly fc.Arbitrary<Written>[] = [
  text,
  digits,
  amount,
  fc.tuple(amount, amount).map((pair) => pair.join(' per ')),
  fc.tuple(amount, slug).map((pair) => pair.join(' ')),
  slug,
  hex,
  number,
  fc.constant(0),
  fc.boolean(),
  fc.integer({ min: 1, max: 50 }).map((part) => `${part} %`),
  fc.double({ min: 0.02, max: 20, noNaN: true }).map((density) => `${density} g/ml`),
  fc
    .date({ min: new Date('1950-01-01'), max: new Date('2090-01-01'), noInvalidDate: true })
    .map((day) => day.toISOString().slice(0, 10)),
  slug.map((name) => `https://${name}.example/`),
  fc.record({
    lab: fc.tuple(...[0, 1, 2].map(() => fc.double({ min: 0, max: 100, noNaN: true }))),
    light: fc.constantFrom('D65', 'D50', 'A'),
  }),
  fc.record({ xyz: fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: 0, max: 100 }))) }),
  fc.record({ reflectance: fc.array(fc.double({ min: 2, max: 90, noNaN: true }), { minLength: 31, maxLength: 40 }) }),
  fc.record({ file: text, caption: text }, { requiredKeys: ['file'] }),
  fc.record({ count: fc.integer({ min: 1, max: 99 }), mass: amount }),
  fc.array(fc.oneof(slug, amount), { minLength: 1, maxLength: 3 }),
  fc.array(
    fc.tuple(amount, slug).map((pair) => pair.join(' ')),
    { minLength: 1, maxLength: 3 },
  ),
];

const known = new Map<z.core.$ZodType, fc.Arbitrary<Written>>();

/** Values that such a field takes, of every form that it takes. */
function leaf(schema: z.core.$ZodType): fc.Arbitrary<Written> {
  const { safeParse } = schema as z.ZodType;
  const isRead = (value: unknown): boolean => safeParse(value).success;
  const forms = WRITTEN.filter((form) => fc.sample(form, { numRuns: 60, seed: 1 }).some(isRead));
  if (forms.length === 0) throw new Error('a field takes none of the values that are tried');
  return fc.oneof(...forms.map((form) => form.filter(isRead)));
}

/** Of a field that takes one thing or a list of them, the fields of each; undefined of any other. */
function fieldsOfEach(schema: z.core.$ZodType): z.core.$ZodType | undefined {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  if (def.type === 'pipe') return fieldsOfEach(def.out);
  if (def.type === 'readonly') return fieldsOfEach(def.innerType);
  return def.type === 'array' && def.element._zod.def.type === 'object' ? def.element : undefined;
}

const oneOrMore = (each: fc.Arbitrary<Written>): fc.Arbitrary<Written> =>
  fc.oneof(each, fc.array(each, { minLength: 1, maxLength: 3 }));

/** Data of a file that a schema takes. */
function written(schema: z.core.$ZodType): fc.Arbitrary<Written> {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'object': {
      const inside = Object.entries(def.shape) as [string, z.core.$ZodType][];
      const requiredKeys = inside.flatMap(([name, each]) =>
        (each as z.ZodType).safeParse(undefined).success || each._zod.optin === 'optional' ? [] : [name],
      );
      const any = fc.record(Object.fromEntries(inside.map(([name, each]) => [name, written(each)])), { requiredKeys });
      // Some fields go together, and others not.
      return def.checks ? any.filter((data) => (schema as z.ZodType).safeParse(data).success) : any;
    }
    case 'array':
      return fc.array(written(def.element), { minLength: 1, maxLength: 3 });
    case 'record':
      return fc.dictionary(
        fc.oneof(
          slug,
          text.filter((name) => name !== '__proto__'),
        ),
        written(def.valueType),
        { maxKeys: 3 },
      );
    case 'enum':
      return fc.constantFrom(...(Object.values(def.entries) as string[]));
    case 'boolean':
      return fc.boolean();
    case 'optional':
    case 'default':
    case 'prefault':
      return written(def.innerType);
    default: {
      const each = fieldsOfEach(schema);
      const arbitrary = known.get(schema) ?? (each ? oneOrMore(written(each)) : leaf(schema));
      known.set(schema, arbitrary);
      return arbitrary;
    }
  }
}

function read<K extends Kind>(kind: K, file: string): Thing<K> {
  const found = readThing(kind, 'it', { path: 'it.md', text: file });
  if (!('kind' in found)) throw new Error(`${JSON.stringify(found, null, 1)}\n${file}`);
  return found;
}

describe('frontMatterText(data, notes)', () => {
  test('is read as the same data and notes', () => {
    // In braces the reader takes `1, 5` for a number with a comma.
    const name = fc.oneof(slug, text).filter((each) => each !== '__proto__' && !/^\d/.test(each));
    const { value } = fc.letrec<{ value: Written; fields: WrittenFields }>((tie) => ({
      value: fc.oneof(
        { maxDepth: 4 },
        text,
        number,
        fc.boolean(),
        fc.array(tie('value'), { maxLength: 4 }),
        tie('fields'),
      ),
      fields: fc.dictionary(name, tie('value'), { maxKeys: 5 }),
    }));
    const fields = fc.dictionary(name, value, { maxKeys: 5 });
    const notes = fc.constantFrom('', 'Sunk.', '# A\n\n---\n\n- b');
    fc.assert(
      fc.property(fields, notes, (data, body) => {
        const file = frontMatterText(data, body);
        const found = readFrontMatter({ path: 'it.md', text: file });
        expect('data' in found && { data: found.data, body: found.body.trim() }, file).toEqual({ data, body });
        expect(parse(file.split('\n---\n')[0]!) ?? {}, file).toEqual(data);
      }),
      { numRuns: 300 },
    );
  });

  test('is what a maker would type', () => {
    const data = {
      title: 'Elver: "late"',
      tags: ['spring', '2026'],
      cups: {
        back: {
          share: '40%',
          plastic: '4 fl oz supple',
          add: { peat: '22 drops', 'lamp-black': '5 drops', 'copper-hex-040': '1/8 tsp', straw: '1/4 tsp per cup' },
          log: [
            {
              add: { peat: '2 drops' },
              seen: { 'over-white': { lab: [60.1, -2, 30] }, note: "it's too thin, and pale" },
            },
            { add: {}, reheat: true },
          ],
        },
      },
    };
    expect(frontMatterText(data, 'Sunk.')).toBe(`---
title: "Elver: \\"late\\""
tags: [spring, "2026"]
cups:
  back:
    share: 40%
    plastic: 4 fl oz supple
    add:
      peat: 22 drops
      lamp-black: 5 drops
      copper-hex-040: 1/8 tsp
      straw: 1/4 tsp per cup
    log:
      - add: { peat: 2 drops }
        seen: { over-white: { lab: [60.1, -2, 30] }, note: "it's too thin, and pale" }
      - add: {}
        reheat: true
---

Sunk.
`);
  });
});

describe('writeThing(kind, fields, notes)', () => {
  test.each(KINDS)('of any %s is read as the same fields and notes', (kind) => {
    fc.assert(
      fc.property(written(SCHEMAS[kind]), (data) => {
        const { fields } = read(kind, frontMatterText(data as WrittenFields));
        const file = writeThing(kind, fields, 'Sunk.');
        const again = read(kind, file);
        expect(again.fields, file).toEqual(fields);
        expect(again.notes).toBe('Sunk.');
        expect(writeThing(kind, again.fields, 'Sunk.')).toBe(file);
      }),
      { numRuns: 40 },
    );
  });

  const folder = fileURLToPath(new URL('../../recipes/', import.meta.url));
  const demo = filesBelow(folder).flatMap((path) => {
    const what = kindOfPath(path);
    return what === undefined ? [] : [{ path, kind: what.kind }];
  });

  test.each(demo)('of $path is read as that file is', ({ path, kind }) => {
    const { fields, notes } = read(kind, readFileSync(`${folder}${path}`, 'utf8'));
    expect(read(kind, writeThing(kind, fields, notes))).toMatchObject({ fields, notes });
  });
});
