/**
 * HTML and SVG as values that know that they are safe: everything that is put into the template is escaped, unless it
 * is markup already.
 *
 * @packageDocumentation
 */

/** Markup that may be written as it is. Made by `html` only, or by `trusted` where another library has escaped. */
export class Html {
  readonly #text: string;

  constructor(text: string) {
    this.#text = text;
  }

  toString(): string {
    return this.#text;
  }
}

/** What a template takes. `undefined`, `null` and `false` write nothing; lists are joined. */
export type HtmlValue = Html | string | number | boolean | null | undefined | readonly HtmlValue[];

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

// biome-ignore lint/suspicious/noControlCharactersInRegex: no HTML may hold these (HTML Standard, 13.1.4)
const MARKED = /[&<>"'\u0000-\u0008\u000b\u000e-\u001f\u007f-\u009f]/g;

/**
 * A text with the five characters that markup gives a meaning written as entities, and U+FFFD for those that no page may hold; right
 * between tags and in quoted attributes.
 */
export function escapeHtml(text: string): string {
  return text.replace(MARKED, (character) => ENTITIES[character] ?? '\ufffd');
}

/** One value as markup. */
function markup(value: HtmlValue): string {
  if (value instanceof Html) return value.toString();
  if (typeof value === 'string') return escapeHtml(value);
  if (typeof value === 'number') return String(value);
  if (value === undefined || value === null || typeof value === 'boolean') return '';
  return value.map(markup).join('');
}

/**
 * Template of HTML or SVG. Attributes must be quoted.
 *
 * @example html`<p>${'a < b'}</p>`.toString() // '<p>a &lt; b</p>'
 */
export function html(parts: TemplateStringsArray, ...values: readonly HtmlValue[]): Html {
  let text = parts[0]!;
  for (let at = 0; at < values.length; at++) text += markup(values[at]) + parts[at + 1]!;
  return new Html(text);
}

/** Markup that a library has made and escaped: Markdown without HTML, a QR code. Never for a text of the book. */
export function trusted(text: string): Html {
  return new Html(text);
}

/** Markup of a list with something between its items: `a, b, c`. */
export function joined(values: readonly HtmlValue[], between: HtmlValue = ', '): Html {
  return html`${values.flatMap((value, at) => (at === 0 ? [value] : [between, value]))}`;
}

/** JSON for a `<script type="application/json">`: no text in it can close the element or open a comment. */
export function embeddedJson(value: unknown): Html {
  return new Html(JSON.stringify(value).replace(/</g, '\\u003c'));
}
