/**
 * Lines of YAML taken apart by themselves, for what a parser cannot say: where a slip of the pen began.
 *
 * @packageDocumentation
 */

import { unitOf } from '../units/unit.ts';
import { FIELDS, TEXT_FIELDS } from './field-names.ts';

/** What went wrong within a line; columns from 0. */
export interface LineSlip {
  readonly column: number;
  readonly width: number;
  readonly found: string;
  readonly expected: string;
  readonly why?: string;
  readonly fix: string;
}

/** A line as the scanner has seen it. */
export interface ScannedLine {
  readonly indent: number;
  /** Name of the field, where the line is `name: …` or `- name: …`. */
  readonly key?: string;
  /** Whether the line begins with the `- ` of a list. */
  readonly dash: boolean;
  /** Whether something stands after `name:`, other than a comment. */
  readonly hasValue: boolean;
  /** Column after the `- `, where the fields of its entry stand. */
  readonly inner: number;
  /** Brackets that are open at its end; those of earlier lines included. */
  readonly depth: number;
  /** Column and sign of the last bracket that it leaves open. */
  readonly open?: { readonly column: number; readonly bracket: string };
  readonly slip?: LineSlip;
}

const BARE_COLOUR = /^#[0-9a-f]{3,8}(?![\w#])/i;
const CLOSERS: Readonly<Record<string, string>> = { '{': '}', '[': ']' };

/** Takes one line apart, given the brackets that are open before it. */
export function scanLine(line: string, depthBefore: number): ScannedLine {
  const indent = /^ */.exec(line)![0].length;
  const marker = depthBefore === 0 ? (/^ *(- +)/.exec(line)?.[1] ?? '') : '';
  const inner = indent + marker.length;
  const dash = marker !== '' || (depthBefore === 0 && /^ *-$/.test(line.trimEnd()));
  const [, key, after] =
    /^("[^"]*"|'[^']*'|[^\s"'{[#&*!|>%@`-][^:{["]*?|-[^\s:]+)\s*:(?:\s+(.*))?$/.exec(line.slice(inner)) ?? [];
  const named = depthBefore === 0 && key !== undefined;
  const walked = walk(line, named ? line.indexOf(':', inner + key.length) + 1 : inner, depthBefore);
  return {
    indent,
    ...(named ? { key } : {}),
    dash,
    hasValue: named && after !== undefined && !/^(?:#.*)?$/.test(after.trim()),
    inner,
    ...walked,
  };
}

function walk(line: string, from: number, depthBefore: number): Pick<ScannedLine, 'depth' | 'open' | 'slip'> {
  const open: { column: number; bracket: string }[] = [];
  let depth = depthBefore;
  let fresh = true; // Whether a value may begin here.
  for (let at = from; at < line.length; at++) {
    const sign = line[at]!;
    const state = (): { depth: number; open?: { column: number; bracket: string } } => {
      const last = open.at(-1);
      return { depth, ...(last ? { open: last } : {}) };
    };
    if (/\s/.test(sign)) continue;
    if (sign === '#' && (at === 0 || /\s/.test(line[at - 1]!) || fresh)) {
      const colour = depth > 0 && fresh ? BARE_COLOUR.exec(line.slice(at))?.[0] : undefined;
      return { ...state(), ...(colour ? { slip: bareColour(at, colour) } : {}) };
    }
    if (fresh && (sign === '"' || sign === "'")) {
      const end = closingQuote(line, at);
      const rest = end === -1 ? '' : line.slice(end + 1);
      if (end === -1 || !(/^\s*(?:$|\s#|:(?:\s|$))/.test(rest) || (depth > 0 && /^\s*[,:}\]]/.test(rest)))) {
        return { ...state(), slip: openQuote(line, at, end) };
      }
      at = end;
      fresh = false;
    } else if (fresh && sign in CLOSERS) {
      depth++;
      open.push({ column: at, bracket: sign });
    } else if (depth > 0 && (sign === '}' || sign === ']')) {
      const bracket = open.pop()?.bracket;
      if (bracket !== undefined && CLOSERS[bracket] !== sign) {
        return {
          ...state(),
          slip: {
            column: at,
            width: 1,
            found: `\`${sign}\` after \`${bracket}\``,
            expected: `\`${CLOSERS[bracket]}\``,
            fix: `write \`${CLOSERS[bracket]}\` before it, or in its place`,
          },
        };
      }
      depth--;
      fresh = false;
      const rest = line.slice(at + 1).trim();
      if (depth === 0 && rest !== '' && !/^[#:]/.test(rest)) {
        return { ...state(), slip: afterBracket(line.indexOf(rest, at + 1), rest, sign) };
      }
    } else if (depth > 0 && (sign === ',' || (sign === ':' && /\s|$/.test(line[at + 1] ?? '')))) {
      fresh = true;
    } else if (fresh) {
      const plain = plainAt(line, at, depth);
      if (/[@`%]/.test(sign)) return { ...state(), slip: reservedSign(at, plain) };
      const afterName = depth === 0 || /:\s*$/.test(line.slice(0, at));
      if (afterName && from > 0 && /:\s|:$/.test(plain) && (depth > 0 || /:\s*$/.test(line.slice(0, at)))) {
        return { ...state(), slip: colonInText(line, at, plain) };
      }
      at += Math.max(1, afterName ? plain.length : (/^[^:,}\]]*/.exec(plain)?.[0].length ?? 1)) - 1;
      fresh = false;
    }
  }
  const last = open.at(-1);
  return { depth, ...(last ? { open: last } : {}) };
}

/** Text without quotes from a column on, to where it ends. */
function plainAt(line: string, at: number, depth: number): string {
  const rest = line.slice(at).replace(/\s#.*$/, '');
  return (depth > 0 ? /^[^,[\]{}]*/.exec(rest)![0] : rest).trimEnd();
}

function closingQuote(line: string, at: number): number {
  const quote = line[at]!;
  for (let to = at + 1; to < line.length; to++) {
    if (quote === '"' && line[to] === '\\') to++;
    else if (line[to] === quote) {
      if (quote === "'" && line[to + 1] === "'") to++;
      else return to;
    }
  }
  return -1;
}

function bareColour(column: number, colour: string): LineSlip {
  return {
    column,
    width: colour.length,
    found: `\`${colour}\` without quotes`,
    expected: 'a colour in quotes',
    why: 'a bare # begins a comment, which hides the rest of the line',
    fix: `write \`"${colour}"\``,
  };
}

function openQuote(line: string, column: number, end: number): LineSlip {
  const quote = line[column]!;
  const colour = /^#[0-9a-f]{6}(?![\w"'])/i.exec(line.slice(column + 1))?.[0];
  if (colour !== undefined) {
    return {
      column,
      width: colour.length + 1,
      found: `\`${quote}${colour}\` without its second quote`,
      expected: 'a colour between two quotes',
      fix: `write \`"${colour}"\``,
    };
  }
  if (end === -1) {
    const text = line.slice(column, column + 24).trimEnd();
    return {
      column,
      width: line.trimEnd().length - column,
      found: `\`${text}${line.trimEnd().length > column + 24 ? '…' : ''}\` without its second quote`,
      expected: 'text between two quotes',
      fix: `write a second ${quote} where the text ends`,
    };
  }
  return {
    column: end,
    width: 1,
    found: `${quote} in the middle of a text in quotes`,
    expected: `two ${quote}, one before the text and one after it`,
    fix:
      quote === "'"
        ? 'put the text between two " instead'
        : "put the text between two ' instead, or remove the inner quotes",
  };
}

function afterBracket(column: number, rest: string, bracket: string): LineSlip {
  return {
    column,
    width: rest.length,
    found: `\`${rest}\` after the closing ${bracket}`,
    expected: 'the end of the line',
    fix: /^[}\]]+$/.test(rest) ? `remove \`${rest}\`` : `move it before the ${bracket}, or to a line of its own`,
  };
}

function reservedSign(column: number, plain: string): LineSlip {
  return {
    column,
    width: plain.length,
    found: `\`${plain}\` without quotes`,
    expected: `a text that begins with ${plain[0]} in quotes`,
    fix: `write \`"${plain}"\``,
  };
}

function colonInText(line: string, column: number, plain: string): LineSlip {
  const [, amount, next] = /^(\d.*?)(?:\s*;|\s)\s*([a-z0-9-]+\s*:\s.*)$/.exec(plain) ?? [];
  const isUnit = unitOf(/^[^:\s]*/.exec(next ?? '')![0]) !== undefined;
  if (amount !== undefined && next !== undefined && !isUnit && /[{,]/.test(line.slice(0, column))) {
    return {
      column,
      width: plain.length,
      found: `\`${plain}\` without a comma`,
      expected: 'a comma between two fields in { }',
      fix: `write \`${amount}, ${next}\``,
    };
  }
  const name = /([\w-]+)\s*:\s*$/.exec(line.slice(0, column))?.[1] ?? '';
  const [, value, rest] = /^(.*?)\s*:\s+(.*)$/.exec(plain) ?? [];
  // Only what is text may hold a colon: of an amount or a name nothing is right in quotes but itself.
  if (value !== undefined && rest !== undefined && !TEXT_FIELDS.has(name) && (FIELDS.has(name) || /^\d/.test(value))) {
    const inBraces = /[{,]/.test(line.slice(0, column));
    return {
      column,
      width: plain.length,
      found: `second colon in \`${/[\w-]+\s*:\s*$/.exec(line.slice(0, column))?.[0] ?? ''}${plain}\``,
      expected: 'one value after the name of a field',
      why: 'a colon ends the name of a field',
      fix: inBraces ? `write \`${value}\`, and the rest into a note` : `write \`${value} # ${rest}\``,
    };
  }
  // `#2` is a number of the text; a comment has a space after its sign.
  const text = plain + (/^\s+#\S.*?(?=\s*$)/.exec(line.slice(column + plain.length))?.[0] ?? '');
  const quoted = text.includes('"') ? `'${text.replaceAll("'", "''")}'` : `"${text}"`;
  return {
    column,
    width: text.length,
    found: `second colon in \`${/[\w-]+\s*:\s*$/.exec(line.slice(0, column))?.[0] ?? ''}${text}\``,
    expected: 'text with a colon in quotes',
    why: 'a colon ends the name of a field',
    fix: `write \`${quoted}\``,
  };
}
