import matter from 'gray-matter';
import { type Document, isMap, isScalar, isSeq, LineCounter, type Node, parseDocument, type Tags, visit } from 'yaml';
import type { DiagnosticCode } from '../diagnostics/catalogue.ts';
import type { Diagnostic, Position } from '../diagnostics/diagnostic.ts';
import { unseenIn } from './check-unseen.ts';
import type { FieldPath } from './field-path.ts';
import { shown } from './fields.ts';
import { LONGEST_TEXT, type Source } from './source.ts';
import { DEEPEST, hasMoreThan, isNestedTooDeep, MOST_VALUES } from './yaml-bounds.ts';
import { badNames, decimalCommas, type Fault, type Place, syntaxFaults, textCommas } from './yaml-faults.ts';

/** Front matter as data that knows where each of its values stands. */
export interface FrontMatter {
  readonly data: unknown;
  /** Markdown after the front matter. */
  readonly body: string;
  /** Signs in it that nobody sees. */
  readonly unseen: readonly Diagnostic[];
  /** A value as it is written, such as `1.10` of the number 1.1; undefined where the path leads to no plain value. */
  written(path: FieldPath): string | undefined;
  /** Where a value stands, or its key; the nearest that exists where the path leads to nothing. */
  place(path: FieldPath, part?: 'key' | 'value'): Place;
}

const refuse = (): never => {
  throw new Error('only plain YAML front matter is read');
};

/** Numbers are digits with a point: `0x10`, `0o17`, `1e3`, `.nan` stay text, which no field takes for an amount. */
const plainNumbers = (tags: Tags): Tags =>
  tags.filter((tag) => typeof tag === 'string' || !('test' in tag && (tag.format || tag.test?.test('.nan'))));

/** First line of a file: front matter in YAML begins. */
export const OPENING: RegExp = /^---[ \t]*(?:\r?\n|$)/;
/** Line on which the front matter ends. */
export const CLOSING: RegExp = /\n---[ \t]*(?:\r?\n|$)/;

/**
 * Splits a text and parses its front matter as YAML 1.2 (core schema), with positions.
 *
 * A recipe comes from anybody, so nothing in it runs and nothing in it may blow up: every front matter language but YAML
 * is refused before the splitter sees it, aliases and tags are errors, and the size is capped.
 */
export function readFrontMatter({ path, text }: Source): FrontMatter | readonly Diagnostic[] {
  const lines = new LineCounter();
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) lines.addNewLine(at + 1);
  lines.lineStarts.unshift(0);
  const position = (offset: number): Position => {
    const { line, col } = lines.linePos(offset);
    return { line, column: col };
  };
  const fault = (code: DiagnosticCode, offset: number, what: Fault & Partial<Place>): Diagnostic[] => [
    { code, severity: 'error', file: path, start: position(offset), ...what },
  ];

  if (text.length > LONGEST_TEXT) {
    return fault('file/too-large', 0, {
      found: `text of ${Math.round(text.length / 1024)} KiB`,
      expected: `at most ${LONGEST_TEXT / 1024} KiB`,
      why: 'a recipe is a page, and longer front matter takes minutes to read',
    });
  }
  const nul = text.indexOf('\0');
  if (nul !== -1) {
    return fault('file/not-text', nul, {
      found: 'NUL character',
      expected: 'text',
      why: 'the file is damaged or is no text file',
    });
  }
  const mark = text.startsWith('\uFEFF') ? 1 : 0;
  const content = text.slice(mark);
  if (!OPENING.test(content)) {
    const language = /^---+[ \t]*(\S+)/.exec(content)?.[1];
    return language === undefined
      ? fault('front-matter/missing', 0, {
          found: 'text without front matter',
          expected: 'a first line `---`',
          why: 'the data of a book stands between two lines `---`',
          fix: 'write `---` as the first line, then the fields, then `---`',
        })
      : fault('front-matter/language', mark, {
          found: `\`---${language}\``,
          expected: 'a first line that is `---` alone',
          why: 'front matter is YAML here, never a program',
          fix: 'write `---`',
        });
  }
  if (!CLOSING.test(content)) {
    return fault('front-matter/missing', 0, {
      found: 'front matter without an end',
      expected: 'a line `---` after the fields',
      fix: 'write `---` on a line of its own above the notes',
    });
  }

  // The splitter ends the front matter there, and what follows would go among the notes: `publish: no` perhaps.
  const rule = content.indexOf('\n---', 3);
  const end = content.search(CLOSING);
  if (rule < end) {
    const line = content.slice(rule + 1).split(/\r?\n/, 1)[0]!;
    return fault('front-matter/syntax', mark + rule + 1, {
      found: shown(line),
      expected: 'a line `---` alone, where the fields end',
      why: 'it is not clear which lines are fields and which are notes',
      fix: 'write `---` if the fields end there, else remove it',
    });
  }
  if (isNestedTooDeep(content.slice(0, end))) {
    return fault('file/too-large', 0, {
      found: `fields nested more than ${DEEPEST} deep`,
      expected: 'fields as the manual describes them',
      why: 'no file of a book nests so deep, and reading it takes minutes',
    });
  }

  let document: Document.Parsed | undefined;
  const parse = (yaml: string): object => {
    // The splitter leaves the carriage return before the closing line, which YAML takes for a character of its own.
    document = parseDocument(yaml.replace(/\r$/, ''), {
      schema: 'core',
      version: '1.2',
      // Told below: the parser compares each name with each.
      uniqueKeys: false,
      customTags: plainNumbers,
      prettyErrors: false,
      logLevel: 'error',
    });
    return {};
  };
  // Options are always passed: without them gray-matter caches a failed parse and answers {} the second time.
  const split = matter(content, {
    language: 'yaml',
    engines: {
      yaml: { parse },
      javascript: refuse,
      js: refuse,
      json: refuse,
      toml: refuse,
      coffee: refuse,
      cson: refuse,
    },
  });
  document ??= parseDocument('', { schema: 'core' });
  const base = mark + content.indexOf(split.matter, 3);
  const parsed = document;
  if (hasMoreThan(MOST_VALUES, parsed)) {
    return fault('file/too-large', 0, {
      found: `front matter of more than ${MOST_VALUES} names and values`,
      expected: 'as many as a page has',
      why: 'a recipe has a few dozen, and what is wrong with thousands takes minutes to find',
    });
  }

  const problems: Diagnostic[] = syntaxFaults(parsed, split.matter, position(base).line).map((what) => ({
    code: 'front-matter/syntax',
    severity: 'error',
    file: path,
    ...what,
  }));
  // What a parser that stumbled took for a name is no mistake of its own.
  const sound = problems.length === 0;
  const first = position(base).line;
  visit(parsed, {
    Map: (_key, node) => {
      if (sound)
        problems.push(
          ...badNames(node, split.matter, first).map((what) => ({ severity: 'error', file: path, ...what }) as const),
        );
      for (const { written, from, to } of decimalCommas(node)) {
        problems.push(
          ...fault('front-matter/syntax', base + from, {
            end: position(base + to),
            found: `\`${written}\``,
            expected: 'a number with a point',
            why: 'inside `{ }` a comma begins the next field',
            fix: `write \`${written.replace(',', '.')}\``,
          }),
        );
      }
      for (const { written, from, to } of textCommas(node)) {
        problems.push(
          ...fault('front-matter/syntax', base + from, {
            end: position(base + to),
            found: `\`${written}\` without quotes`,
            expected: 'text with a comma in quotes',
            why: 'inside `{ }` a comma begins the next field',
            fix: `write \`"${written.replaceAll('"', "'")}"\``,
          }),
        );
      }
    },
    Alias: (_key, node) => {
      problems.push(
        ...fault('front-matter/alias', base + (node.range?.[0] ?? 0), {
          found: `alias \`*${node.source}\``,
          expected: 'the value itself',
          why: 'a file that points into itself can grow without bounds',
          fix: 'write the value out',
        }),
      );
    },
  });
  if (problems.length > 0) return problems;

  return {
    data: parsed.toJS({ maxAliasCount: 0 }) ?? {},
    body: split.content.replace(/^\r?\n/, ''),
    unseen: unseenIn({
      path,
      text,
      document: parsed,
      yamlAt: base,
      yamlTo: base + split.matter.length,
      position,
    }),
    written: (fields) => {
      const node = parsed.getIn(fields, true);
      return isScalar(node) ? node.source : undefined;
    },
    place: (fields, part = 'value') => {
      const [from, to] = rangeOf(parsed, fields, part);
      return { start: position(base + from), end: position(base + to) };
    },
  };
}

function rangeOf(document: Document.Parsed, path: FieldPath, part: 'key' | 'value'): readonly [number, number] {
  let node: unknown = document.contents;
  const first = document.contents?.range?.[0] ?? 0;
  let range: readonly [number, number] = [first, first + 1];
  for (const step of path) {
    // The only entry of a list may be written without it.
    if (typeof step === 'number' && isMap(node)) continue;
    let next: Node | null | undefined;
    let shown: Node | null | undefined;
    if (isMap(node)) {
      const pair = node.items.find((item) => isScalar(item.key) && String(item.key.value) === String(step));
      next = pair?.value as Node | null | undefined;
      shown = (part === 'value' && isScalar(next) ? next : pair?.key) as Node | undefined;
    } else if (isSeq(node)) {
      next = shown = node.items[Number(step)] as Node | undefined;
    }
    if (!shown?.range) break;
    range = [shown.range[0], isScalar(shown) ? shown.range[1] : shown.range[0] + 1];
    node = next;
  }
  return range;
}
