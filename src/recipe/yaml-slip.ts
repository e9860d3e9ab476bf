import { TOP_FIELDS } from './field-names.ts';
import { shown } from './fields.ts';
import { isSentence, NOTES_WHY, sentenceFix } from './notes-in-fields.ts';
import { type LineSlip, type ScannedLine, scanLine } from './yaml-lines.ts';

/** A slip of the pen in YAML and the line that it is in, from 0. */
export interface YamlSlip extends LineSlip {
  readonly line: number;
}

interface PlacedLine extends ScannedLine {
  readonly number: number;
}

// Each line is compared with those above it, and its signs with one another: a person writes no more than this.
const MOST_LINES = 2000;
const LONGEST_LINE = 2000;

/**
 * The slip that a parser stumbles over, told in a maker's words: a tab, a bare colour, a quote or bracket that is not closed,
 * a second colon, a dash among fields, a line that is moved in too far or too little.
 *
 * Looked for from the top, in lines that a parser found wrong as a whole: sound YAML may look like some of these.
 * Undefined where none is recognised.
 *
 * @param first number of the first line in the file, from 1, for what points at another line
 * @param last the last line, from 0, where the slip can be: the parser stumbles there, or after it
 */
export function yamlSlip(lines: readonly string[], first: number, last: number): YamlSlip | undefined {
  if (last > MOST_LINES || lines.slice(0, last + 1).some((line) => line.length > LONGEST_LINE)) return undefined;
  const before: PlacedLine[] = [];
  let depth = 0;
  let opened: { indent: number; number: number; column: number; bracket: string } | undefined;
  let folded: number | undefined; // Indentation of the field whose text stands on the lines below it.
  for (const [number, line] of lines.slice(0, last + 1).entries()) {
    if (/^\s*(?:#.*)?$/.test(line)) continue;
    const tab = /^ *\t/.exec(line)?.[0];
    if (folded !== undefined && /^ */.exec(line)![0].length > folded) continue;
    folded = undefined;
    if (tab !== undefined && depth === 0) return { line: number, ...tabSlip(tab.length - 1) };
    const indent = /^ */.exec(line)![0].length;
    if (opened && indent <= opened.indent && !/^\s*[}\]]/.test(line)) {
      return { line: opened.number, ...openBracket(opened.column, opened.bracket) };
    }
    const scanned: PlacedLine = { ...scanLine(line, depth), number };
    if (scanned.slip) return { line: number, ...scanned.slip };
    if (depth === 0) {
      const slip = structureSlip(scanned, line, before, first, lines.slice(number + 1));
      if (slip) return { line: number, ...slip };
      before.push(scanned);
    }
    depth = scanned.depth;
    if (depth === 0) opened = undefined;
    else if (scanned.open) opened = { indent: opened?.indent ?? scanned.inner, number, ...scanned.open };
    if (/:\s*[|>][+-]?\s*$/.test(line)) folded = indent;
  }
  return opened && last >= lines.length - 1
    ? { line: opened.number, ...openBracket(opened.column, opened.bracket) }
    : undefined;
}

function structureSlip(
  at: PlacedLine,
  line: string,
  before: readonly PlacedLine[],
  first: number,
  after: readonly string[],
): (LineSlip & { readonly line?: number }) | undefined {
  const sibling = before.findLast(
    (other) => other.indent <= at.indent && !(other.dash && other.indent < at.indent && other.inner > at.indent),
  );
  const above = before.at(-1);
  if (at.key === undefined && (!at.dash || ENTRIES_WITH_FIELDS.has(ownerOf(at, before)?.key ?? ''))) {
    return sentence(at, line, after) ?? withoutColon(at, line, before);
  }
  const besideEntry = sibling?.dash === true && sibling.indent < at.indent && sibling.inner === at.indent;
  const beside = sibling !== undefined && (besideEntry || (sibling.indent === at.indent && !sibling.dash));
  if (at.dash && beside && (sibling.hasValue || sibling !== above)) {
    return dashAmongFields(at, `\`${sibling.key ?? ''}\` in line ${first + sibling.number}`);
  }
  if (at.dash && beside && sibling.key === undefined) {
    return {
      line: sibling.number,
      column: sibling.indent,
      width: 1,
      found: 'entry of a list without a dash',
      expected: 'a dash before each entry',
      fix: 'write `- ` before it',
    };
  }
  if (!at.dash && isAmongEntries(at, before)) {
    const entry = before.findLast(({ indent }) => indent === at.indent)!;
    const owner = ownerOf(entry, before);
    if (entry.key !== undefined && owner?.key !== undefined && !LISTS.has(owner.key)) {
      return { line: entry.number, ...dashAmongFields(entry, `\`${at.key}\` in line ${first + at.number}`) };
    }
    return {
      column: at.indent,
      width: at.key!.length,
      found: `field \`${at.key}\` among the entries of a list`,
      expected: '`- ` before it, or more spaces',
      fix: `write \`- ${at.key}: …\`, or put two more spaces before it if it belongs to the entry above`,
    };
  }
  if (
    above &&
    !at.dash &&
    !above.hasValue &&
    above.key !== undefined &&
    LISTS.has(above.key) &&
    at.indent > above.indent
  ) {
    return {
      column: at.indent,
      width: at.key!.length,
      found: `field \`${at.key}\` where a list begins`,
      expected: 'a dash before each entry',
      fix: `write \`- ${at.key}: …\``,
    };
  }
  const tooDeep = above && at.indent > Math.max(above.indent, above.inner);
  if (tooDeep && above.key !== undefined && above.hasValue) {
    const owner = before.at(-2);
    const depth = above.indent - (owner?.indent ?? 0);
    if (owner && !owner.hasValue && depth % 2 === 1 && (at.indent - owner.indent) % 2 === 0) {
      // The first of several fields has lost a space: the others go by twos.
      return { line: above.number, ...misplaced(above, at.indent, at, first) };
    }
    return misplaced(at, above.dash && !at.dash ? above.inner : above.indent, above, first);
  }
  const levels = levelsAt(at, before);
  if (above && at.indent < above.inner && !levels.some(({ indent }) => indent === at.indent)) {
    const [nearest] = [...levels].sort(
      (one, other) =>
        Math.abs(one.indent - at.indent) - Math.abs(other.indent - at.indent) || other.indent - one.indent,
    );
    if (nearest === undefined) return undefined;
    const owner = levels[levels.indexOf(nearest) - 1];
    const list = levels.findLast(({ indent }) => indent < above.indent);
    if (above.dash && nearest.line === above && list && (above.indent - list.indent) % 2 === 1) {
      return { line: above.number, ...misplaced(above, at.indent - (above.inner - above.indent), at, first) };
    }
    const from = owner?.indent ?? 0;
    const alone = before.filter(
      ({ indent, number }) => indent === nearest.indent && number > (owner?.line.number ?? -1),
    );
    const byTwos =
      (at.indent - from) % 2 === 0 && (nearest.indent - from) % 2 === 1 && (owner === undefined || at.indent > from);
    // The first of several fields was moved: the others go by twos.
    if (byTwos && alone.length === 1) return { line: alone[0]!.number, ...misplaced(alone[0]!, at.indent, at, first) };
    return misplaced(at, nearest.indent, nearest.line, first);
  }
  return undefined;
}

/** Fields of which the book has lists; of all others a dash is the slip. */
const LISTS: ReadonlySet<string> = new Set([
  'log',
  'tags',
  'photos',
  'chips',
  'flake',
  'spoons',
  'without',
  'plastic',
  'new-cup',
]);

/** Those whose entries have fields; of the others an entry may be text. */
const ENTRIES_WITH_FIELDS: ReadonlySet<string> = new Set(['log', 'chips', 'flake']);

/** The line whose list or fields a line belongs to. */
function ownerOf(at: PlacedLine, before: readonly PlacedLine[]): PlacedLine | undefined {
  return before.findLast(({ indent, number }) => number < at.number && indent < at.indent);
}

function dashAmongFields(at: PlacedLine, like: string): LineSlip {
  return {
    column: at.indent,
    width: 1,
    found: '`- ` among fields',
    expected: `a field like ${like}`,
    why: 'a dash begins an entry of a list',
    fix: at.key === undefined ? 'remove the line, or make all of them entries of a list' : 'remove the `- `',
  };
}

/** The indentations at which a line may stand, with the last line at each. */
function levelsAt(at: PlacedLine, before: readonly PlacedLine[]): readonly { indent: number; line: PlacedLine }[] {
  const levels: { indent: number; line: PlacedLine }[] = [];
  for (const line of before) {
    while (levels.length > 0 && levels.at(-1)!.indent >= line.indent) levels.pop();
    levels.push({ indent: line.indent, line });
    if (line.inner > line.indent) levels.push({ indent: line.inner, line });
  }
  return levels.filter(({ line, indent }) => !at.dash || line.dash || indent !== line.inner || !line.hasValue);
}

/** Whether a field stands where only entries of a list can. */
function isAmongEntries(at: PlacedLine, before: readonly PlacedLine[]): boolean {
  const same = before
    .slice(before.findLastIndex(({ indent }) => indent < at.indent) + 1)
    .filter(({ indent }) => indent === at.indent);
  return same.length > 0 && same.every(({ dash }) => dash);
}

function misplaced(at: PlacedLine, indent: number, like: PlacedLine, first: number): LineSlip {
  const spaces = (count: number): string => (count === 0 ? 'no space' : count === 1 ? '1 space' : `${count} spaces`);
  const name = at.dash ? `- ${at.key ?? '…'}` : (at.key ?? '');
  return {
    column: at.indent,
    width: Math.max(1, name.length),
    found: `\`${name}\` after ${spaces(at.indent)}`,
    expected: `${spaces(indent)} before it, to fit line ${first + like.number}`,
    why: 'fields that belong together begin in the same column',
    fix: indent === 0 ? 'remove the spaces before it' : `begin the line with ${spaces(indent)}`,
  };
}

/** A sentence of the notes that stands among the fields. */
function sentence(at: PlacedLine, line: string, after: readonly string[]): LineSlip | undefined {
  const text = line.trim();
  const name = /^[\w-]+/.exec(text)?.[0] ?? '';
  if (at.indent > 0 || at.dash || TOP_FIELDS.has(name) || !isSentence(text)) return undefined;
  const fieldsBelow = after.some((each) => TOP_FIELDS.has(/^([\w-]+):/.exec(each)?.[1] ?? ''));
  return {
    column: 0,
    width: text.length,
    found: shown(text),
    expected: '`name: value`',
    why: NOTES_WHY,
    fix: sentenceFix(fieldsBelow),
  };
}

/** A field whose colon, or the space after it, was left out. */
function withoutColon(at: PlacedLine, line: string, before: readonly PlacedLine[]): LineSlip | undefined {
  const above = before.at(-1);
  const written = line.slice(at.inner).trim();
  const among =
    above !== undefined && (at.dash || at.indent <= above.inner || !above.hasValue) && !/^["'{[|>]/.test(written);
  const alone = /^[\w-]+(?=\s*(?:#.*)?$)/.exec(written)?.[0];
  if (alone !== undefined && (above === undefined || among)) {
    return {
      column: at.inner,
      width: alone.length,
      found: `\`${alone}\` without a colon`,
      expected: '`name: value`, or `name:` above its fields',
      fix: `write \`${alone}:\``,
    };
  }
  const [, name, sign, value] = /^([\w-]+)(\s*[:=]\s*|\s+)(\S.*)$/.exec(written) ?? [];
  if ((above !== undefined && !among) || name === undefined || value === undefined || value.startsWith('//'))
    return undefined;
  return {
    column: at.inner,
    width: written.length,
    found: `\`${written}\` without ${sign!.includes(':') ? 'a space after the colon' : 'a colon'}`,
    expected: '`name: value`',
    fix: `write \`${name}: ${value}\``,
  };
}

function tabSlip(column: number): LineSlip {
  return {
    column,
    width: 1,
    found: 'tab at the beginning of a line',
    expected: 'spaces',
    why: 'a tab is as wide as each editor likes',
    fix: 'put spaces in its place, as many as in the lines beside it',
  };
}

function openBracket(column: number, bracket: string): LineSlip {
  const closing = bracket === '{' ? '}' : ']';
  return {
    column,
    width: 1,
    found: `\`${bracket}\` without \`${closing}\``,
    expected: `\`${closing}\` where the list of values ends`,
    fix: `write \`${closing}\` at the end`,
  };
}
