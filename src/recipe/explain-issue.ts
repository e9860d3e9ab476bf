import type { z } from 'zod';
import type { DiagnosticCode } from '../diagnostics/catalogue.ts';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { nearestFix } from '../diagnostics/nearest-name.ts';
import type { Kind } from '../kinds/kinds.ts';
import { commentedValue } from './commented-value.ts';
import type { FieldFault } from './field-fault.ts';
import { TEXT_FIELDS } from './field-names.ts';
import type { FieldPath } from './field-path.ts';
import { shown } from './fields.ts';
import type { FrontMatter } from './front-matter.ts';
import { isNeeded } from './needed-field.ts';
import { otherMeasure } from './other-measure.ts';
import { otherWord } from './other-words.ts';
import { type NamesOf, referenceFix } from './reference-fix.ts';
import type { Source } from './source.ts';
import { unknownField } from './unknown-field.ts';
import { valueAt, writtenPath } from './value-at.ts';
import { writtenOut } from './written-out.ts';

/** A file whose fields are explained. */
export interface ExplainedFile {
  readonly kind: Kind;
  readonly source: Source;
  readonly frontMatter: FrontMatter;
  readonly namesOf: NamesOf;
}

/** What a schema says of the data of a file, in a maker's words, each with its place. */
export function explainIssue(found: z.core.$ZodIssue, file: ExplainedFile): readonly Diagnostic[] {
  const { kind, source, frontMatter, namesOf } = file;
  const issue = { ...found, path: [...writtenPath(frontMatter.data, found.path)] };
  const at = (
    code: DiagnosticCode,
    path: FieldPath,
    part: 'key' | 'value',
    fault: Omit<FieldFault, 'code'>,
  ): Diagnostic => ({
    code,
    severity: 'error',
    file: source.path,
    ...frontMatter.place(path, part),
    ...(part === 'value' && input === null ? { fix: `write it after \`${lastName(path)}:\`` } : {}),
    ...fault,
  });
  const input = valueAt(frontMatter.data, issue.path);
  const empty = emptyField(issue, input, file);
  if (empty !== undefined) return [empty];
  const field = String(issue.path.at(-1) ?? 'front matter');
  const missing = (expected: string): Diagnostic =>
    at('field/missing', issue.path.slice(0, -1), 'key', {
      found: `${issue.path.length > 1 ? `\`${String(issue.path.at(-2))}\`` : 'front matter'} without \`${field}\``,
      expected: `a field \`${field}\` with ${expected}`,
      fix: inBraces(file, issue.path.slice(0, -1))
        ? `write \`${field}: …\` into its braces`
        : `add a line \`${field}: …\``,
    });

  switch (issue.code) {
    case 'custom': {
      const { code, asWritten: _, name, ...fault } = issue.params as unknown as FieldFault;
      if (input === undefined) return [missing(fault.expected)];
      const better =
        (input === null && (code === 'field/colour' || TEXT_FIELDS.has(lastName(issue.path)))
          ? commentedValue(source.text, frontMatter.place(issue.path, 'key').start)
          : undefined) ??
        (name ? referenceFix(lastName(issue.path), name, namesOf) : undefined) ??
        otherShares(issue.path, input, frontMatter.data) ??
        otherMeasure(kind, issue.path, input, frontMatter.data, fault.fix);
      return [at(code, issue.path, 'value', { ...fault, ...better })];
    }
    case 'unrecognized_keys': {
      const allowed = JSON.parse(issue.message) as string[];
      return issue.keys.map((key) => {
        return at('field/unknown', [...issue.path, key], 'key', {
          found: `field \`${key}\``,
          expected: `one of ${allowed.join(', ')}`,
          ...unknownField({ kind, namesOf, data: frontMatter.data }, issue.path, key, allowed),
        });
      });
    }
    case 'invalid_value': {
      const allowed = issue.values.map(String);
      if (input === undefined) return [missing(`one of ${allowed.join(', ')}`)];
      return [
        at('field/value', issue.path, 'value', {
          found: shown(input),
          expected: `one of ${allowed.join(', ')}`,
          ...(nearestFix(String(input), allowed) ?? otherWord(String(input), allowed)),
        }),
      ];
    }
    case 'invalid_type': {
      const expected = EXPECTED_TYPES[issue.expected] ?? issue.expected;
      return [
        input === undefined
          ? missing(expected)
          : at('field/type', issue.path, 'value', {
              found: shown(input),
              expected,
              ...typeFix(issue.expected, input, inBraces(file, issue.path)),
              ...writtenOut(field, input, frontMatter.data),
            }),
      ];
    }
    case 'too_small':
      return [
        at('field/type', issue.path, 'value', { found: shown(input), expected: `at least ${issue.minimum} entry` }),
      ];
    case 'invalid_format':
      return [
        at('field/value', issue.path, 'value', {
          found: shown(input),
          expected: 'an address such as `https://book.example/`',
        }),
      ];
    default:
      return [at('field/value', issue.path, 'value', { found: shown(input), expected: issue.message })];
  }
}

/**
 * A field that waits to be filled in; undefined for any other issue. Nobody knows who may see a recipe whose `publish` is empty, and there is no
 * book without `book.md`: there it is an error.
 */
function emptyField(
  issue: z.core.$ZodIssue,
  input: unknown,
  { kind, source, frontMatter }: ExplainedFile,
): Diagnostic | undefined {
  const isEmpty = input === null || (typeof input === 'string' && input.trim() === '');
  if (!isEmpty || kind === 'book' || issue.path.at(-1) === 'publish') return undefined;
  const place = frontMatter.place(issue.path, 'key');
  if (input === null && commentedValue(source.text, place.start)) return undefined;
  const name = lastName(issue.path);
  const isEntry = typeof issue.path.at(-1) === 'number';
  return {
    code: 'field/to-fill-in',
    severity: 'warning',
    file: source.path,
    ...place,
    found: isEntry ? `empty entry of \`${name}\`` : `empty \`${name}\``,
    expected: expectedOf(issue),
    why: 'the file is left out of the book until it is filled in',
    fix: isEntry
      ? 'fill it in, or remove the line'
      : `write it after \`${name}:\`${isNeeded(kind, frontMatter.data, issue.path) ? '' : ', or remove the line if it is not needed'}`,
  };
}

/** What a schema expects in words. */
function expectedOf(issue: z.core.$ZodIssue): string {
  if (issue.code === 'custom') return (issue.params as unknown as FieldFault).expected;
  if (issue.code === 'invalid_value') return `one of ${issue.values.map(String).join(', ')}`;
  return issue.code === 'invalid_type' ? (EXPECTED_TYPES[issue.expected] ?? issue.expected) : issue.message;
}

/** How a list becomes fields, or the other way round; and yes and no what YAML has for them. */
function typeFix(expected: string, input: unknown, braces: boolean): { fix?: string } {
  if ((expected === 'object' || expected === 'record') && Array.isArray(input)) {
    return { fix: 'remove the `- ` before each name' };
  }
  if (expected === 'boolean' && /^(?:yes|y|on|1)$/i.test(String(input))) return { fix: 'write `true`' };
  if (expected === 'boolean' && /^(?:no|n|off|0)$/i.test(String(input))) return { fix: 'write `false`' };
  if (expected !== 'array' || input === null) return {};
  if (typeof input !== 'object') return { fix: `write \`[${String(input)}]\`` };
  return { fix: braces ? 'write `[` before it and `]` behind it' : 'begin each entry with `- `' };
}

/** Whether the fields below a name stand in braces, in the line of that name. */
function inBraces({ source, frontMatter }: ExplainedFile, path: FieldPath): boolean {
  if (path.length === 0) return false;
  const { line, column } = frontMatter.place(path, 'key').start;
  const written = source.text.split('\n', line)[line - 1]?.slice(column - 1) ?? '';
  return /^(?:[^:{]*:\s*|-\s*)?\{/.test(written);
}

const EXPECTED_TYPES: Readonly<Record<string, string>> = {
  object: 'nested fields',
  record: 'nested fields',
  array: 'a list',
  boolean: '`true` or `false`',
  string: 'text',
  number: 'a number',
};

/** The last name on a path: of an entry of a list, the list's. */
function lastName(path: FieldPath): string {
  return String(path.findLast((step) => typeof step === 'string') ?? '');
}

/** For a share of more than the whole, what the other cups leave of it. */
function otherShares(path: FieldPath, input: unknown, data: unknown): { readonly fix: string } | undefined {
  if (path.length !== 3 || path[0] !== 'cups' || path[2] !== 'share' || !/^\d+(?:\.\d+)? ?%$/.test(String(input)))
    return undefined;
  const cups = Object.entries((valueAt(data, ['cups']) ?? {}) as Record<string, unknown>);
  const others = cups.filter(([name]) => name !== path[1]);
  const shares = others.map(
    ([name]) => /^(\d+(?:\.\d+)?) ?%$/.exec(String(valueAt(data, ['cups', name, 'share'])))?.[1],
  );
  const left = 100 - shares.reduce((sum, share) => sum + Number(share ?? 0), 0);
  if (others.length === 0) return { fix: 'remove the line: the only cup is the whole bait' };
  if (left <= 0 || left >= 100) return undefined;
  const alone = shares.every((share) => share !== undefined);
  return {
    fix: alone
      ? `write \`${left}%\`, which is what the other cups leave`
      : `correct it to less than the ${left}% that the other cups leave`,
  };
}
