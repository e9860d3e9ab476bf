import { create } from 'qrcode';

/** Light modules that must surround a code: ISO/IEC 18004:2015, section 5.3.8 (from memory). */
const QUIET = 4;

/** Black on white whatever the colours of the terminal are: not every camera reads a code in light on dark. */
const BLACK_ON_WHITE = '\u001b[38;5;16;48;5;231m';
const AS_BEFORE = '\u001b[0m';

/**
 * A QR code as lines of text for a terminal: a letter is one module wide and two high.
 *
 * @example terminalCode('http://192.168.1.5:8080/').split('\n').length // 17
 */
export function terminalCode(text: string): string {
  const { modules } = create(text, { errorCorrectionLevel: 'L' });
  const size = modules.size + 2 * QUIET;
  const isDark = (row: number, column: number): boolean => {
    const [y, x] = [row - QUIET, column - QUIET];
    return y >= 0 && x >= 0 && y < modules.size && x < modules.size && modules.get(y, x) === 1;
  };
  const letter = (row: number, column: number): string => {
    const [upper, lower] = [isDark(row, column), isDark(row + 1, column)];
    if (upper) return lower ? '█' : '▀';
    return lower ? '▄' : ' ';
  };
  const lines = Array.from({ length: Math.ceil(size / 2) }, (_, line) =>
    Array.from({ length: size }, (__, column) => letter(2 * line, column)).join(''),
  );
  return lines.map((line) => BLACK_ON_WHITE + line + AS_BEFORE).join('\n');
}
