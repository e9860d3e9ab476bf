import type { Book } from '../../src/book/model.ts';
import { readManual } from '../../src/eleventy/manual.ts';
import { layoutGraph } from '../../src/lineage/layout.ts';
import { type Assets, type PageContext, SCRIPTS } from '../../src/render/page.ts';
import { FILES, familyGraph, PAGES, searchRecords } from '../../src/render/pages.ts';
import { unitsKeptIn } from '../../src/render/unbroken.ts';
import { ROOT } from '../run-cupbook.ts';

const ASSETS: Assets = {
  css: 'assets/book.css',
  icon: 'assets/icon.svg',
  fonts: ['assets/text.woff2'],
  scripts: Object.fromEntries(SCRIPTS.map((name) => [name, [`assets/${name}.js`]])) as unknown as Assets['scripts'],
};

/**
 * Renders every page and file of an edition, and names what its readers must never see there, as `path: what`.
 *
 * @param words what may stand nowhere in it, by what it is called
 */
export async function sightsOf(book: Book, words: ReadonlyMap<string, RegExp>): Promise<readonly string[]> {
  const lineage: Record<string, Awaited<ReturnType<typeof layoutGraph>>> = {};
  for (const { id } of book.families) lineage[id] = await layoutGraph(familyGraph(book, id));
  const held = (text: string): readonly string[] =>
    [...words].flatMap(([name, pattern]) => (pattern.test(text) ? [name] : []));
  const seen: string[] = [];
  for (const kind of PAGES) {
    for (const item of kind.items(book)) {
      const url = kind.url(item);
      const context: PageContext = {
        book,
        url,
        assets: ASSETS,
        photos: {},
        pictures: {},
        lineage,
        manual: await readManual(ROOT, book.edition),
      };
      const page = unitsKeptIn(kind.render(context, item));
      seen.push(...[...held(url + page), ...pageFaults(page)].map((fault) => `${url}: ${fault}`));
    }
  }
  for (const kind of FILES) {
    for (const item of kind.items(book)) {
      const url = kind.url(item);
      seen.push(...held(url + kind.text(book, item, {})).map((word) => `${url}: ${word}`));
    }
  }
  return [...seen, ...held(JSON.stringify(searchRecords(book))).map((word) => `search: ${word}`)];
}

/** What no page may hold. Whatever a maker writes has its `<` escaped, so that every tag there is the program's. */
function pageFaults(html: string): readonly string[] {
  const faults: string[] = [];
  // biome-ignore lint/suspicious/noControlCharactersInRegex: HTML forbids them
  if (/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/.test(html)) faults.push('a control character');
  for (const [tag, name, attributes = ''] of html.matchAll(
    /<([a-z][a-z0-9-]*)((?:\s+[^\s=>"]+(?:="[^"]*")?)*)\s*\/?>/gi,
  )) {
    if (/^(?:iframe|object|embed|base|applet|frame)$/i.test(name!)) faults.push(tag);
    for (const [, attribute = '', value = ''] of attributes.matchAll(/\s+([^\s=>"]+)(?:="([^"]*)")?/g)) {
      const runs = /^(?:on.*|style|srcdoc|formaction)$/i.test(attribute);
      const leads = /^(?:href|src|srcset|action|poster|xlink:href)$/i.test(attribute);
      if (runs || (leads && !isHarmless(value, name === 'a'))) faults.push(tag);
    }
  }
  for (const [script, attributes, body] of html.matchAll(/<script\b([^>]*)>([\s\S]*?)<\/script>/gi)) {
    if (attributes!.includes('application/json')) JSON.parse(body!);
    else if (body !== '') faults.push(script);
  }
  return faults;
}

/** A place in the book, or for a link also one of the web. */
function isHarmless(address: string, link: boolean): boolean {
  const plain = address
    .replace(/&#(x?)([0-9a-f]+);/gi, (_, hex, digits) => String.fromCodePoint(Number.parseInt(digits, hex ? 16 : 10)))
    .replaceAll('&amp;', '&')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: browsers take these out of an address
    .replace(/[\u0000-\u0020]/g, '');
  if (/^(?:https?|mailto):/i.test(plain)) return link || plain.startsWith('https://book.example/');
  return !/^(?:[a-z][a-z0-9+.-]*:|\/\/|\\)/i.test(plain);
}
