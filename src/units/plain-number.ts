import type { Edit } from './edit.ts';

// Signs that part groups of three digits and begin no decimals.
const GAP = "[ _'’\\u00a0\\u202f]";
const PLAIN = /^(?:\d+(?:\.\d+)?|\.\d+)$/;
const FRACTION_FOLLOWS = /^\s*[/⁄½⅓⅔¼¾⅛⅜⅝⅞]/;
const RUN = new RegExp(`^[.,]?\\d(?:(?:[\\d.,]|${GAP})*\\d)?`);

const BY_GAPS = new RegExp(`^[1-9]\\d{0,2}(?:${GAP}\\d{3})+(?:[.,]\\d+)?$`);
const BY_COMMAS = /^[1-9]\d{0,2}(?:(?:,\d{3})+\.\d+|(?:,\d{3}){2,})$/;
const BY_POINTS = /^[1-9]\d{0,2}(?:(?:\.\d{3})+,\d+|(?:\.\d{3}){2,})$/;
const ONE_GROUP = /^[1-9]\d{0,2},\d{3}$/;
const DECIMAL_COMMA = /^\d*,\d+$/;

/** Why a number that is not plain is refused. */
export const PLAIN_NUMBER_WHY = 'a number is digits without gaps, with a point before its decimals';

// What programs write: sixteens, eights, twos, and powers of ten.
const PROGRAMMED = /^(?:0x[\da-f]+|0o[0-7]+|0b[01]+|(?:\d+(?:\.\d*)?|\.\d+)e[-+]?\d+)(?![\p{L}\d.,])/iu;
const MOST_DIGITS = 12;

/**
 * The edits for a text that begins with a number as programs write it; none where it has more digits than anybody counts, undefined where
 * there is no such number.
 *
 * @example programmedEdits('0x10 drops') // [{ text: '16 drops' }]
 */
export function programmedEdits(text: string): readonly Edit[] | undefined {
  const run = PROGRAMMED.exec(text)?.[0];
  if (run === undefined) return undefined;
  const value = Number(run);
  if (!(value >= 10 ** -MOST_DIGITS && value < 10 ** MOST_DIGITS)) return [];
  return [{ text: `${value.toFixed(MOST_DIGITS).replace(/\.?0+$/, '')}${text.slice(run.length)}` }];
}

/**
 * The edits for a text that begins with a number which has gaps, groups or a comma, or is written as programs do: none where that number is nothing that can be told for
 * sure, undefined where it is plain, or a fraction, or there is none.
 *
 * One comma with three digits after it can mean either, so both edits are told.
 *
 * @example plainNumberEdits('1e3 ml') // [{ text: '1000 ml' }]
 * @example plainNumberEdits('1.000,5 ml') // [{ text: '1000.5 ml' }]
 * @example plainNumberEdits('1,000 ml') // [{ text: '1000 ml' }, { text: '1.000 ml', when: 'the comma marks decimals' }]
 */
export function plainNumberEdits(text: string): readonly Edit[] | undefined {
  const programmed = programmedEdits(text);
  if (programmed) return programmed;
  const run = RUN.exec(text)?.[0];
  if (run === undefined || PLAIN.test(run) || FRACTION_FOLLOWS.test(text.slice(run.length))) return undefined;
  return readings(run).map((edit) => ({ ...edit, text: `${edit.text}${text.slice(run.length)}` }));
}

/** The plain numbers that a run of digits, signs and gaps can stand for. */
function readings(run: string): readonly Edit[] {
  const grouped = run.replace(/[^\d.,]/g, '').replace(',', '.');
  if (BY_GAPS.test(run)) return [{ text: grouped }];
  if (BY_COMMAS.test(run)) return [{ text: run.replaceAll(',', '') }];
  if (BY_POINTS.test(run)) return [{ text: run.replaceAll('.', '').replace(',', '.') }];
  if (!DECIMAL_COMMA.test(run)) return [];
  const decimal = run.replace(',', '.').replace(/^\./, '0.');
  return ONE_GROUP.test(run)
    ? [{ text: run.replace(',', '') }, { text: decimal, when: 'the comma marks decimals' }]
    : [{ text: decimal }];
}
