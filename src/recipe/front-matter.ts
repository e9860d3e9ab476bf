import matter from 'gray-matter';
import { type Document, isMap, isScalar, isSeq, type Node, parseDocument, type Tags } from 'yaml';
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { unseenIn } from './check-unseen.ts';
import type { FieldPath } from './field-path.ts';
import type { Source } from './source.ts';
import { textPlaces } from './text-places.ts';
import { type ParsedYaml, treeFaults } from './tree-faults.ts';
import { markLength, unreadable } from './unreadable.ts';
import { hasMoreThan, MOST_VALUES } from './yaml-bounds.ts';
import type { Place } from './yaml-faults.ts';

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

/**
 * Splits a text and parses its front matter as YAML 1.2 (core schema), with positions.
 *
 * A recipe comes from anybody, so nothing in it runs and nothing in it may blow up: every front matter language but YAML
 * is refused before the splitter sees it, aliases and tags are errors, and the size is capped.
 */
export function readFrontMatter(source: Source): FrontMatter | readonly Diagnostic[] {
  const { path, text } = source;
  const places = textPlaces(source);
  const refused = unreadable(text, places);
  if (refused) return [refused];

  const { document, yaml, base, notes } = split(text);
  if (hasMoreThan(MOST_VALUES, document)) {
    return [
      places.fault('file/too-large', 0, {
        found: `front matter of more than ${MOST_VALUES} names and values`,
        expected: 'as many as a page has',
        why: 'a recipe has a few dozen, and what is wrong with thousands takes minutes to find',
      }),
    ];
  }
  const problems = treeFaults({ document, yaml, base }, path, places);
  if (problems.length > 0) return problems;

  const { position } = places;
  return {
    data: document.toJS({ maxAliasCount: 0 }) ?? {},
    body: notes.replace(/^\r?\n/, ''),
    unseen: unseenIn({ path, text, document, yamlAt: base, yamlTo: base + yaml.length, position }),
    written: (fields) => {
      const node = document.getIn(fields, true);
      return isScalar(node) ? node.source : undefined;
    },
    place: (fields, part = 'value') => {
      const [from, to] = rangeOf(document, fields, part);
      return { start: position(base + from), end: position(base + to) };
    },
  };
}

function split(text: string): ParsedYaml & { readonly notes: string } {
  const mark = markLength(text);
  const content = text.slice(mark);
  let document: Document.Parsed | undefined;
  const parse = (yaml: string): object => {
    // The splitter leaves the carriage return before the closing line, which YAML takes for a character of its own.
    document = parseDocument(yaml.replace(/\r$/, ''), {
      schema: 'core',
      version: '1.2',
      // Told by `treeFaults`: the parser compares each name with each.
      uniqueKeys: false,
      customTags: plainNumbers,
      prettyErrors: false,
      logLevel: 'error',
    });
    return {};
  };
  // Options are always passed: without them gray-matter caches a failed parse and answers {} the second time.
  const parts = matter(content, {
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
  return {
    document: document ?? parseDocument('', { schema: 'core' }),
    yaml: parts.matter,
    base: mark + content.indexOf(parts.matter, 3),
    notes: parts.content,
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
