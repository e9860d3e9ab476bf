import { computeAccessibleName, getRole } from 'dom-accessibility-api';
import { parseHTML } from 'linkedom';

/** HTML as it is written, or as a renderer gives it. */
type Markup = string | { toString(): string };

/** What is looked for besides a role. */
interface Wanted {
  /** Its name to somebody who hears the page: all of it, or a pattern in it. */
  readonly name?: string | RegExp;
}

/** Roles that elements have of themselves and that the library does not know, by their names in upper case. */
const OWN_ROLES: Readonly<Record<string, string>> = { P: 'paragraph', CODE: 'code', B: 'strong', STRONG: 'strong' };

/** Nothing is hidden by a style sheet here: none is read. */
const NO_STYLE = {
  getPropertyValue: () => '',
  display: 'inline',
  visibility: 'visible',
} as unknown as CSSStyleDeclaration;

/** The document of a page, or one that holds a part of a page. */
export function documentOf(markup: Markup): Document {
  const html = String(markup);
  return parseHTML(/^\s*<!doctype/i.test(html) ? html : `<!doctype html><html><body>${html}</body></html>`).document;
}

/** What an element is, to somebody who hears the page. */
export function roleOf(element: Element): string | undefined {
  if (element.getAttribute('scope') === 'row' && element.tagName === 'TH') return 'rowheader';
  return getRole(element) ?? OWN_ROLES[element.tagName];
}

/** The words by which an element is called, with plain spaces. */
export function nameOf(element: Element): string {
  return plain(computeAccessibleName(element, { getComputedStyle: () => NO_STYLE }));
}

/** The words in an element, or in a whole page, with plain spaces; those of scripts are none. */
export function wordsIn(root: Document | Element): string {
  return plain(textOf('body' in root ? root.body : root));
}

function textOf(node: Node): string {
  if (node.nodeType === node.TEXT_NODE) return node.nodeValue ?? '';
  if (node.nodeName === 'SCRIPT' || node.nodeName === 'STYLE') return '';
  const text = [...node.childNodes].map(textOf).join('');
  return WITHIN_A_LINE.test(node.nodeName) ? text : ` ${text} `;
}

const WITHIN_A_LINE = /^(?:A|ABBR|B|CODE|EM|I|SMALL|SPAN|STRONG|SUB|SUP|TIME)$/;

/** Everything of a role, in the order of the page. */
export function allByRole(root: Document | Element, role: string, { name }: Wanted = {}): readonly Element[] {
  return [...('body' in root ? root.body : root).querySelectorAll('*')].filter(
    (element) => roleOf(element) === role && (name === undefined || isCalled(nameOf(element), name)),
  );
}

/** The one element of a role and name. @throws if there is none, or more; the message has the names that there are. */
export function byRole(root: Document | Element, role: string, wanted: Wanted = {}): Element {
  const found = allByRole(root, role, wanted);
  if (found.length === 1) return found[0]!;
  const names = allByRole(root, role).map(nameOf);
  throw new Error(
    `${found.length} of the role ${role} are called ${wanted.name ?? 'anything'}; there are: ${JSON.stringify(names)}`,
  );
}

/** What stands in a table, row by row, by the heads of its columns. */
export function rowsOf(table: Element): readonly Readonly<Record<string, string>>[] {
  const heads = allByRole(table, 'columnheader').map(wordsIn);
  return [...table.querySelectorAll('tbody tr')].map((row) =>
    Object.fromEntries([...row.children].map((cell, at) => [heads[at] ?? '', wordsIn(cell)])),
  );
}

const plain = (text: string): string => text.replace(/\s+/g, ' ').trim();
const isCalled = (found: string, name: string | RegExp): boolean =>
  typeof name === 'string' ? found === name : name.test(found);
