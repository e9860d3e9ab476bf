/**
 * Front matter from plain data, as a maker would type it: what is short in one line, quotes where YAML needs them.
 *
 * Small, and without a parser: the pages' scripts write files with it, too.
 *
 * @packageDocumentation
 */
import { plainDecimal } from '../units/written-quantity.ts';

/** A value of front matter. */
export type Written = string | number | boolean | ToFillIn | readonly Written[] | WrittenFields;

/** A field that is left empty, with a comment on what to write there. */
export class ToFillIn {
  readonly hint: string;

  constructor(hint: string) {
    this.hint = hint;
  }
}

/** Fields of front matter, in the order in which they are written; what is undefined is left out. */
export interface WrittenFields {
  readonly [name: string]: Written | undefined;
}

/**
 * The text of a file: `readFrontMatter` gives the same data and notes.
 *
 * @param fields no text among them with signs that nobody sees, which no file may have
 * @param notes Markdown, without white space around it
 * @param remarks comments behind the fields, a line each without its `#`: of a field that may be added, just as it is once the `#` is removed
 *
 * @example frontMatterText({ title: 'Elver', tags: ['spring'] }) // '---\ntitle: Elver\ntags: [spring]\n---\n'
 */
export function frontMatterText(fields: WrittenFields, notes = '', remarks: readonly string[] = []): string {
  const comments = remarks.map((remark) => `#${remark}`);
  return ['---', ...fieldLines(fields, ''), ...comments, '---', ...(notes === '' ? [] : ['', notes]), ''].join('\n');
}

/**
 * Fields alone, a line or more each, to be put into front matter that is there.
 *
 * @example fieldsText({ doubt: 7.6, camera: 'my phone' }) // 'doubt: 7.6\ncamera: my phone'
 */
export function fieldsText(fields: WrittenFields): string {
  return fieldLines(fields, '').join('\n');
}

/** Where a line ends at most that holds several values. */
const WIDTH = 120;
/** Most fields of one line. */
const MOST_IN_LINE = 3;

function fieldLines(fields: WrittenFields, indent: string): readonly string[] {
  return entriesOf(fields).flatMap(([name, value]) => below(`${indent}${scalarText(name)}:`, value, indent));
}

/** A value below its name, or behind it. */
function below(name: string, value: Written, indent: string): readonly string[] {
  if (value instanceof ToFillIn) return [`${name}  # ${value.hint}`];
  const line = `${name} ${flowText(value)}`;
  if (isScalar(value) || isShort(value, line)) return [line];
  const deeper = `${indent}  `;
  return [name, ...(isList(value) ? value.flatMap((each) => entry(each, deeper)) : fieldLines(value, deeper))];
}

/** An entry of a list of things that do not stand in one line together. */
function entry(value: Written, indent: string): readonly string[] {
  const line = `${indent}- ${flowText(value)}`;
  if (!isFields(value)) return [line];
  const [first, ...others] = fieldLines(value, `${indent}  `);
  return first === undefined ? [line] : [`${indent}- ${first.trimStart()}`, ...others];
}

type Scalar = string | number | boolean;

const isScalar = (value: Written): value is Scalar => typeof value !== 'object';

const isList = (value: Written): value is readonly Written[] => Array.isArray(value);

const isFields = (value: Written): value is WrittenFields =>
  !isScalar(value) && !isList(value) && !(value instanceof ToFillIn);

function entriesOf(fields: WrittenFields): readonly (readonly [string, Written])[] {
  return Object.entries(fields).flatMap(([name, value]) => (value === undefined ? [] : [[name, value] as const]));
}

/** Whether all that a value holds stands in one line with its name. */
function isShort(value: readonly Written[] | WrittenFields, line: string): boolean {
  const inside = isList(value) ? value : entriesOf(value).map(([, each]) => each);
  if (inside.every((each) => typeof each === 'number')) return true;
  if (line.length > WIDTH) return false;
  return isList(value) ? inside.every(isScalar) : inside.length <= MOST_IN_LINE && inside.every(isScalarOrColour);
}

/** A plain value or a list of them, or such as `{ lab: [80.1, 0.9, 29.4] }`. */
function isScalarOrColour(value: Written): boolean {
  if (isList(value)) return value.every(isScalar);
  return isScalar(value) || (isFields(value) && entriesOf(value).some(([, each]) => isList(each)));
}

function flowText(value: Written): string {
  if (isScalar(value)) return scalarText(value);
  if (value instanceof ToFillIn) return '';
  if (isList(value)) return `[${value.map(flowText).join(', ')}]`;
  const fields = entriesOf(value).map(([name, each]) => `${scalarText(name)}: ${flowText(each)}`);
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
}

/** Letters, digits and signs that mean nothing to YAML. */
const PLAIN = /^[\p{L}\p{N}.][\p{L}\p{N}\p{M} ._/%°'()+&!?€$-]*(?<! )$/u;
/** Words and numbers that YAML makes something else of. */
const NO_TEXT = /^(?:null|true|false|[-+.]?\d[\d._]*(?:[eE][-+]?\d+)?|0[xob][\da-fA-F]+|\.(?:inf|nan))$/i;

/** One value: of a text, JSON's strings are YAML's, and of one line. */
function scalarText(value: Scalar): string {
  if (typeof value === 'number') return plainDecimal(value);
  if (typeof value === 'boolean') return String(value);
  return PLAIN.test(value) && !NO_TEXT.test(value) ? value : JSON.stringify(value);
}
