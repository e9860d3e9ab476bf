import { isCollection, isMap, isScalar, isSeq, type Node, type Pair, parseDocument, type YAMLMap } from 'yaml';
import type { FieldPath } from './field-path.ts';
import { CLOSING, OPENING } from './unreadable.ts';

/** A part of a text, and what stands in its place. */
interface Cut {
  readonly from: number;
  readonly to: number;
  readonly instead?: string;
}

/**
 * The text of a sound file without some of its fields, and otherwise as its maker wrote it. With a field go the comments that belong to it
 * (behind it, and right above it), and those in which it was once written: `# price: 8`.
 *
 * @param isLeftOut asked for each field, by its path
 * @param names names of the fields that may be left out: a text that cannot hold any of these is not parsed
 */
export function leaveOutFields(
  text: string,
  isLeftOut: (path: FieldPath) => boolean,
  names: ReadonlySet<string>,
): string {
  // A name in quotes may be written in escapes, `"pr\u0069ce"`.
  if (!text.includes('\\') && ![...names].some((name) => text.includes(name))) return text;
  const begin = /^\uFEFF?/.exec(text)![0].length;
  const opening = OPENING.exec(text.slice(begin));
  const base = begin + (opening?.[0].length ?? 0);
  const length = text.slice(base - 1).search(CLOSING);
  if (opening === null || length < 0) return text;
  // With the line end before the closing line: the last field's own.
  const yaml = text.slice(base, base + length);
  const cuts: Cut[] = [];
  const gather = (node: unknown, path: FieldPath): void => {
    if (isSeq(node)) for (const [index, item] of node.items.entries()) gather(item, [...path, index]);
    if (!isMap(node)) return;
    const isOut = node.items.map((pair) => isLeftOut([...path, nameOf(pair)]));
    if (path.length > 0 && isOut.length > 0 && isOut.every(Boolean)) {
      cuts.push({ from: node.range![0], to: endOf(node), instead: '{}' });
      return;
    }
    for (const [index, pair] of node.items.entries()) {
      if (isOut[index])
        cuts.push(node.flow === true ? flowCut(node, isOut, index) : blockCut(yaml, node, isOut, index));
      else gather(pair.value, [...path, nameOf(pair)]);
    }
  };
  gather(parseDocument(yaml, { schema: 'core', version: '1.2', prettyErrors: false, logLevel: 'error' }).contents, []);
  cuts.push(...commentCuts(yaml, names));
  return text.slice(0, base) + cutOut(yaml, cuts) + text.slice(base + length);
}

const nameOf = ({ key }: Pair): string => String(isScalar(key) ? key.value : key);

const startOf = ({ key }: Pair): number => (key as Node).range![0];

function endOf(node: unknown): number {
  const { range } = node as Node;
  // What stands behind the last item of a block is not the block's.
  const last = isCollection(node) && node.flow !== true ? node.items.at(-1) : undefined;
  if (last === undefined) return range![1];
  return endOfItem(last);
}

const endOfItem = (item: unknown): number =>
  typeof item === 'object' && item !== null && 'key' in item ? endOfPair(item as Pair) : endOf(item);

const endOfPair = ({ key, value }: Pair): number => {
  const node = value as Node | null;
  return node?.range ? Math.max(endOf(node), (key as Node).range![1]) : (key as Node).range![1];
};

/** `{ a: 1, b: 2 }`: a field with the comma behind it, of the last ones with the one before them. */
function flowCut({ items }: YAMLMap, isOut: readonly boolean[], index: number): Cut {
  const pair = items[index]!;
  const next = items[index + 1];
  if (next !== undefined && isOut.includes(false, index)) return { from: startOf(pair), to: startOf(next) };
  const kept = items.findLast((_, at) => at < index && !isOut[at]);
  return { from: kept === undefined ? startOf(pair) : endOfPair(kept), to: endOfPair(pair) };
}

/** A field on lines of its own, with its comments; one that begins behind `- ` up to the next field. */
function blockCut(yaml: string, { items }: YAMLMap, isOut: readonly boolean[], index: number): Cut {
  const pair = items[index]!;
  const start = startOf(pair);
  const line = lineStart(yaml, start);
  const indent = yaml.slice(line, start);
  if (indent.trim() !== '') {
    const kept = items.find((_, at) => at > index && !isOut[at]);
    return { from: start, to: kept === undefined ? endOfPair(pair) : startOf(kept) };
  }
  let from = line;
  while (from > 0 && isComment(yaml.slice(lineStart(yaml, from - 1), from))) from = lineStart(yaml, from - 1);
  const end = endOfPair(pair);
  // A block of text ends behind its last line.
  let to = yaml[end - 1] === '\n' ? end : nextLine(yaml, end);
  for (let after = nextLine(yaml, to); after > to; after = nextLine(yaml, to)) {
    const next = yaml.slice(to, after);
    if (!isComment(next) || next.indexOf('#') <= indent.length) break;
    to = after;
  }
  return { from, to };
}

const isComment = (line: string): boolean => /^[ \t]*#/.test(line);

const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;

/** Where the next line starts. */
function nextLine(text: string, at: number): number {
  const end = text.indexOf('\n', at);
  return end === -1 ? text.length : end + 1;
}

/** Lines that are a comment with such a field in it. */
function commentCuts(yaml: string, names: ReadonlySet<string>): readonly Cut[] {
  return [...yaml.matchAll(/^[ \t]*#[^\n]*(?:\n|$)/gm)].flatMap(({ 0: line, index }) =>
    [...names].some((name) => new RegExp(`\\b${name}["']?[ \\t]*:`).test(line))
      ? [{ from: index, to: index + line.length }]
      : [],
  );
}

function cutOut(text: string, cuts: readonly Cut[]): string {
  let [left, at] = ['', 0];
  for (const { from, to, instead = '' } of [...cuts].sort((one, other) => one.from - other.from)) {
    left += text.slice(at, Math.max(at, from)) + instead;
    at = Math.max(at, to);
  }
  return left + text.slice(at);
}
