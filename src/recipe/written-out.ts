import { parseQuantity } from '../units/parse-quantity.ts';
import { isFault } from '../units/quantity.ts';
import { valueAt } from './value-at.ts';

/** Two temperatures in one text, as a supplier prints them: `330-355 F`, `165 °C to 177 °C`. */
const RANGE =
  /^(\d{2,3})\s*(?:°|deg\.?|degrees)?\s*([CF]?)\s*(?:\p{Pd}|to|\.\.)\s*(\d{2,3})\s*(?:°|deg\.?|degrees)?\s*([CF])$/iu;

/**
 * What a maker wrote as one text in the place of nested fields, written out as an edit; nothing where it is not known what was meant.
 *
 * @param data the front matter that it is in
 *
 * @example writtenOut('working', '330-355 F', {}) // { fix: 'write `{ from: 330 °F, to: 355 °F }`' }
 */
export function writtenOut(field: string, input: unknown, data: unknown): { readonly fix?: string } {
  if (typeof input !== 'string' && typeof input !== 'number') return {};
  const text = String(input).trim();
  if (field === 'working') {
    const [, from, first = '', to, last = ''] = RANGE.exec(text) ?? [];
    const scale = last.toUpperCase();
    return from === undefined || (first !== '' && first.toUpperCase() !== scale)
      ? { fix: 'write `{ from: …, to: … }` with the two temperatures that your supplier states' }
      : { fix: `write \`{ from: ${from} °${scale}, to: ${to} °${scale} }\`` };
  }
  if (field === 'units') {
    if (/^(?:u\.?s\.?a?\.?|imperial|american|fl\.? ?oz)$/i.test(text))
      return { fix: 'write `{ volume: fl oz, temperature: °F, currency: $ }`' };
    if (/^(?:metric|ml)$/i.test(text)) return { fix: 'write `{ volume: ml, temperature: °C }`' };
  }
  if (field === 'look' && /^(?:milky|clear)$/.test(text)) return { fix: `write \`{ kind: ${text} }\`` };
  if (field === 'injector' && !isFault(parseQuantity(text, ['volume']))) return { fix: `write \`{ holds: ${text} }\`` };
  if (field === 'flake')
    return {
      fix: 'write `[{ colour: "#…", size: …, coverage: … }]`, as it looks: a target names no file of the shelf',
    };
  if (field === 'reheat' && /^[2-9]$/.test(text)) return { fix: 'write `true`, in a step of its own for each reheat' };
  if (field === 'rounds' && /^[1-9]\d*$/.test(text)) {
    const cups = Object.keys((valueAt(data, ['cups']) as object | null | undefined) ?? {});
    const rounds = cups.map((cup) => `\`{ ${cup}: ${text} }\``);
    return rounds.length === 0 ? {} : { fix: `write ${rounds.join(' or ')}` };
  }
  return {};
}
