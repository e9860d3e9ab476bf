import { plainNumberEdits } from './plain-number.ts';

const VULGAR: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

const NUMBER =
  /^(?:(?<whole>\d+)[\s-]+)?(?<over>\d+)\s*[/⁄]\s*(?<under>\d+)|^(?<integer>\d+)?\s*(?<vulgar>[½⅓⅔¼¾⅛⅜⅝⅞])|^(?<decimal>\d+(?:\.\d+)?|\.\d+)/;

/** The number that a text begins with, and how much of the text it is; undefined where it begins with none. */
export function numberAtStart(text: string): { readonly amount: number; readonly length: number } | undefined {
  const match = NUMBER.exec(text);
  if (!match?.groups) return undefined;
  const { whole, over, under, integer, vulgar, decimal } = match.groups;
  const amount =
    decimal !== undefined
      ? Number(decimal)
      : vulgar !== undefined
        ? Number(integer ?? 0) + VULGAR[vulgar]!
        : Number(whole ?? 0) + Number(over) / Number(under);
  return { amount, length: match[0].length };
}

/**
 * A number as it is typed into a field, written as in the files of a book, or with a comma where that can only mean decimals; NaN where
 * it is none, or could be two.
 *
 * @example readNumber('1 1/2') // 1.5
 * @example readNumber('1,5') // 1.5
 */
export function readNumber(text: string): number {
  const typed = text.trim();
  const readings = plainNumberEdits(typed);
  if (readings && readings.length !== 1) return Number.NaN;
  const plain = readings?.[0]?.text ?? typed;
  const read = numberAtStart(plain);
  return read?.length === plain.length && Number.isFinite(read.amount) ? read.amount : Number.NaN;
}
