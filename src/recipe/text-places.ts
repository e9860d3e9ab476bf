import { LineCounter } from 'yaml';
import type { DiagnosticCode } from '../diagnostics/catalogue.ts';
import type { Diagnostic, Position } from '../diagnostics/diagnostic.ts';
import type { Source } from './source.ts';
import type { Fault, Place } from './yaml-faults.ts';

/** Where things stand in a text, and what is wrong there. */
export interface TextPlaces {
  /** Line and column of an offset in UTF-16 units. */
  position(offset: number): Position;
  fault(code: DiagnosticCode, offset: number, what: Fault & Partial<Place>): Diagnostic;
}

/** The lines of a text, counted once. */
export function textPlaces({ path, text }: Source): TextPlaces {
  const lines = new LineCounter();
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) lines.addNewLine(at + 1);
  lines.lineStarts.unshift(0);
  const position = (offset: number): Position => {
    const { line, col } = lines.linePos(offset);
    return { line, column: col };
  };
  return {
    position,
    fault: (code, offset, what) => ({ code, severity: 'error', file: path, start: position(offset), ...what }),
  };
}
