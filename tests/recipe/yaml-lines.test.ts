import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { scanLine } from '../../src/recipe/yaml-lines.ts';

const names = fc.stringMatching(/^[a-z]+(-[a-z]+)*$/).filter((name) => name.length < 12);
const values: fc.Arbitrary<unknown> = fc.letrec((tie) => ({
  value: fc.oneof(
    { depthSize: 'small' },
    fc.integer({ min: 0, max: 999 }),
    fc.boolean(),
    fc.string({ maxLength: 12 }),
    fc.constantFrom('#d9c48f', '3 drops', 'ember: the second try', "the club's", 'a "new" one', '[', '}', '@home'),
    fc.array(tie('value'), { maxLength: 3 }),
    fc.dictionary(names, tie('value'), { maxKeys: 3, noNullPrototype: true }),
  ),
})).value;
const flow = (value: unknown): string =>
  stringify(value, { collectionStyle: 'flow', lineWidth: 0, singleQuote: null }).trimEnd();
/** Text that a person would put on one line. */
const onOneLine = (text: string): boolean => !/[\n\r\u0085\u2028\u2029]/.test(text) && !/^[|>]/.test(text);

test('scanLine(line) finds no slip in a line that a YAML library has written, and its name', () => {
  fc.assert(
    fc.property(names, values.map(flow).filter(onOneLine), fc.nat(6), fc.boolean(), (name, text, indent, dash) => {
      const line = `${' '.repeat(indent)}${dash ? '- ' : ''}${name}: ${text}`;
      fc.pre(Object.keys(parse(`${name}: ${text}`))[0] === name);
      const inner = indent + (dash ? 2 : 0);
      const { slip, depth, open, ...found } = scanLine(line, 0);
      expect(slip, line).toBeUndefined();
      expect([depth, open], line).toEqual([0, undefined]);
      expect(found, line).toEqual({ indent, key: name, dash, hasValue: true, inner });
    }),
    { numRuns: 500 },
  );
});

test('scanLine(line) counts the brackets that a line leaves open, and points at the last', () => {
  fc.assert(
    fc.property(names, fc.array(fc.constantFrom('[', '{ a:'), { maxLength: 8 }), fc.nat(8), (name, opened, before) => {
      const line = `  ${name}: ${opened.join(' ')} 3`;
      const { slip, depth, open } = scanLine(line, 0);
      expect(slip, line).toBeUndefined();
      expect(depth, line).toBe(opened.length);
      const column = Math.max(line.lastIndexOf('['), line.lastIndexOf('{'));
      expect(open, line).toEqual(opened.length === 0 ? undefined : { column, bracket: line[column] });
      const closed = opened.toReversed().map((bracket) => (bracket === '[' ? ']' : '}'));
      expect(scanLine(closed.join(' '), before + opened.length), closed.join(' ')).toMatchObject({ depth: before });
    }),
  );
});

test('scanLine(line) never throws, and every slip lies within its line', () => {
  const signs = fc.constantFrom(
    ...' \t-:,;#"\'\\[]{}@`%&*!|>',
    'a',
    'dose',
    '3',
    'ml',
    ': ',
    '- ',
    '#d9c48f',
    'é',
    '🎣',
  );
  fc.assert(
    fc.property(fc.array(signs, { maxLength: 30 }), fc.nat(3), (parts, before) => {
      const line = parts.join('');
      const { slip, depth, indent, inner, open } = scanLine(line, before);
      expect(depth, line).toBeGreaterThanOrEqual(0);
      expect(indent <= inner && inner <= line.length, line).toBe(true);
      if (open) expect(line[open.column], line).toBe(open.bracket);
      if (slip === undefined) return;
      expect(slip.width, line).toBeGreaterThan(0);
      expect(slip.column >= 0 && slip.column + slip.width <= line.length, line).toBe(true);
    }),
    { numRuns: 2000 },
  );
});

test('scanLine(line) finds nothing once a bare colour is written as its fix says', () => {
  const colours = fc.stringMatching(/^#[0-9a-f]{6}$/);
  fc.assert(
    fc.property(fc.array(colours, { minLength: 1, maxLength: 3 }), fc.nat(), (all, at) => {
      const bare = all[at % all.length]!;
      const line = `seen: [${all.map((colour) => (colour === bare ? colour : `"${colour}"`)).join(', ')}]`;
      const { slip } = scanLine(line, 0);
      expect(line.slice(slip!.column, slip!.column + slip!.width)).toBe(bare);
      const written = /^write `(.*)`$/.exec(slip!.fix)![1]!;
      expect(scanLine(line.replaceAll(/(?<!")#[0-9a-f]{6}/g, written), 0)).toMatchObject({ depth: 0, hasValue: true });
      expect(scanLine(line.replaceAll(/(?<!")#[0-9a-f]{6}/g, written), 0).slip).toBeUndefined();
    }),
  );
});
