/**
 * Numbers that stay with their units where a line ends: a spoon's name at the end of one line and its number on the line before
 * are misread.
 *
 * @packageDocumentation
 */
import { unitSpellings } from '../units/unit.ts';

const NO_BREAK = '\u00a0';

/** A measure that breaks only after its plus signs and before a bracket. */
export function unbroken(measure: string): string {
  return measure.replaceAll(' ', NO_BREAK).replaceAll(`+${NO_BREAK}`, '+ ').replaceAll(`${NO_BREAK}(`, ' (');
}

// Units that pages write and no file of a book does.
const [METRES, FEET, DEGREES] = ['m', 'ft', ['°C', '°F']] as const;
const SPELLINGS = [...unitSpellings(['volume', 'mass', 'length', 'drop', 'part']), METRES, FEET, ...DEGREES]
  .filter((spelling) => /[\p{L}%]/u.test(spelling))
  // Longer before shorter, so that `fl oz` is not left at `fl`.
  .sort((one, other) => other.length - one.length)
  .map((spelling) => spelling.replaceAll('.', '\\.'));
const NUMBER_AND_UNIT = new RegExp(`([\\d½¼¾]) (${SPELLINGS.join('|')})(?![\\p{L}\\d])`, 'gu');
const DIFFERENCE = /(ΔE|ΔE00) (?=\d)/g;

/** A text in which no line ends between a number and its unit, or between ΔE and its number. */
export function unitsKept(text: string): string {
  return text
    .replace(NUMBER_AND_UNIT, (_, digit: string, unit: string) => digit + NO_BREAK + unit.replace(' ', NO_BREAK))
    .replace(DIFFERENCE, `$1${NO_BREAK}`);
}

// What is not prose keeps its spaces, as what is copied from it must. Tags that follow one another are one token: a drawing has thousands.
const TOKENS =
  /<(script|style|pre|code|textarea)\b[\s\S]*?<\/\1>|(?:<(?!(?:script|style|pre|code|textarea)\b)[^>]*>)+|<[^>]*>|[^<]+/g;

/** A page in whose text no line ends between a number and its unit; tags, scripts and code stay as they are. */
export function unitsKeptIn(page: string): string {
  return page.replace(TOKENS, (token) => (token.startsWith('<') ? token : unitsKept(token)));
}
