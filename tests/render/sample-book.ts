import { compileBook } from '../../src/book/compile-book.ts';
import type { Edition } from '../../src/book/model/publish.ts';
import type { Book } from '../../src/book/model.ts';
import { EDITIONS } from '../../src/book/publish/editions.ts';
import { readManual } from '../../src/eleventy/manual.ts';
import type { GraphLayout } from '../../src/lineage/graph.ts';
import { layoutGraph } from '../../src/lineage/layout.ts';
import type { Assets, PageContext, PageKind } from '../../src/render/page.ts';
import { familyGraph, PAGES } from '../../src/render/pages.ts';
import { documentOf } from '../page-dom.ts';
import { ROOT } from '../run-cupbook.ts';

/** A title that would run if it were written as it is. */
export const HOSTILE_TITLE = `<script>alert("1")</script> & <img src=x onerror='alert(2)'>`;

/** Notes that would run, fetch or lead astray. */
export const HOSTILE_NOTES = `<script>alert(3)</script>

[run](javascript:alert(4)) and [data](data:text/html,x) and [elsewhere](//evil.example/x) and [file](file:///etc/passwd)

![spy](https://spy.example/pixel.png) ![here](local.png) <img src="https://spy.example/2.png">

[Foam](weir-foam.md) and [the peat](../shelf/colorants/peat.md) and [nowhere](no-such-thing.md) and [web](https://web.example/)

# Heading

\`\`\`js onload=alert(5)
code <b>
\`\`\`
`;

const file = (front: string, notes = ''): string => `---\n${front.trim()}\n---\n${notes}`;

/** A small book with every pattern, a log, a family, looks only, flake of each cut, and texts that mean no good. */
export const SAMPLE_FILES: Readonly<Record<string, string>> = {
  'book.md': file(
    'title: A Sample <b>Book</b>\nmaker: Nobody & Co\naddress: https://book.example/deep/\ntools: { scale: 0.01 g }',
    'A foreword.',
  ),
  'shelf/plastics/supple.md': file(
    'title: Supple\nhardness: soft\nhighest: 185 °C\nworking: { from: 160 °C, to: 175 °C }',
  ),
  'shelf/colorants/peat.md': file(
    'title: Peat\nhighest: 190 °C\nprice: 8\npack: 30 ml\nstock: 3 ml\nlook: { kind: dye, colour: "#8a5a2b", dose: 20 drops per 100 ml, thickness: 3 mm }',
    'The river’s brown. [Weir](../../colours/weir-foam.md)',
  ),
  'shelf/colorants/lamp-black.md': file(
    'title: Lamp Black\nlook: { kind: pigment, colour: "#202020", dose: 10 drops per 100 ml }',
  ),
  'shelf/powders/ivory-pearl.md': file(
    'title: Ivory Pearl\nbulk: 0.4 g/ml\nlook: { kind: pearl, colour: "#e8e0cc", dose: 1 g per 100 ml }',
  ),
  'shelf/flakes/copper-hex-040.md': file(
    'title: Copper hexagon\nbulk: 0.55 g/ml\nsize: 0.040 in\nlook: { colour: "#b8693a" }\nhighest: 182 °C',
  ),
  'shelf/flakes/dust-008.md': file(
    'title: Dust\nbulk: 0.55 g/ml\nsize: 0.008 in\nshape: square\nfinish: hologram\nlook: { colour: "#c0c0c8" }',
  ),
  'shelf/flakes/reed-strip.md': file(
    'title: Reed strip\nbulk: 0.55 g/ml\nsize: 0.3 mm\nlong: 4 mm\nshape: strip\nlook: { colour: "#4a7a3a" }',
  ),
  'shelf/additives/salt.md': file('title: Salt'),
  'molds/minnow-3.md': file(
    'title: Minnow\ncavities: 2\ncavity: 5.5 ml\nbody: 11 mm\nthin: 2 mm\nlength: 80 mm\nbag: 6',
  ),
  'molds/craw-3.md': file('title: Craw\ncavity: 6 ml\nbody: 10 mm\nthin: 2 mm\nthin-part: claws\nshape: craw'),
  'targets/rack.md': file(
    'title: On the rack\nover-white: "#a08050"\nover-black: "#504030"\nmold: minnow-3\nflake: [{ colour: "#b8693a", size: 0.040 in, coverage: 12% }]',
  ),
  'chips/peat.md': file(
    `title: ${JSON.stringify(`${HOSTILE_TITLE} chip`)}\nplastic: 100 ml supple\nlog:\n  - { add: { peat: 2 drops }, pour: 20 ml, seen: { over-white: "#d8c4a0", over-black: "#2c2a26", note: "<b>pale</b>" } }\n  - { add: { ivory-pearl: 1/8 tsp }, seen: { over-white: "#d2c4a6" } }\npublish: full`,
    HOSTILE_NOTES,
  ),
  'chips/lamp-black.md': file(
    'title: Zibeline drop\nplastic: 100 ml supple\nadd: { lamp-black: 1 drop }\nseen: { over-white: "#b4b3b0", over-black: "#22211f" }',
  ),
  'colours/weir-foam.md': file(
    'title: Weir Foam\nmade: 2026-03-14\npattern: solid\nmold: minnow-3\nbaits: 24\nfor: rack\ntags: [clear water]\ncups:\n  body:\n    plastic: 120 ml supple\n    log:\n      - add: { peat: 4 drops, dust-008: 1/8 tsp }\n        heat: 171 °C\n      - pour: 14 ml\n        seen: { over-white: "#b09468", over-black: "#6a5a44", note: you can see through it }\n      - add: { ivory-pearl: 1/4 tsp }\n        heat: 170 °C\n        reheat: true\n      - pour: 14 ml\n        seen: { over-white: "#b8a078" }\n        note: closer',
    'Foam below the weir.',
  ),
  'colours/alder-smoke.md': file(
    'title: Alder Smoke\nfrom: weir-foam\npattern: laminate\ncups:\n  back:\n    share: 40%\n    plastic: 100 ml supple\n    add: { peat: 20 drops, lamp-black: 2 drops, copper-hex-040: 1/8 tsp }\n  body: { from: weir-foam/body, set: { peat: 8 drops } }',
    '[Parent](weir-foam.md)',
  ),
  'colours/hostile.md': file(
    `title: ${JSON.stringify(HOSTILE_TITLE)}\nfrom: alder-smoke\npattern: swirl\nstreak: 2 mm\ntags: ["<i>tag</i>"]\ncups:\n  back: { from: alder-smoke/back }\n  body: { from: alder-smoke/body, add: { reed-strip: 0.2 g per 100 ml, salt: 5 g per 100 ml } }`,
    HOSTILE_NOTES,
  ),
  'colours/kernel.md': file(
    'title: Kernel\npattern: core\nmold: craw-3\ncups:\n  shell:\n    share: 60%\n    plastic: 100 ml supple\n    add: { peat: 3 drops }\n  heart:\n    plastic: 100 ml supple\n    add: { ivory-pearl: 2 g }',
  ),
  'colours/wick.md': file(
    'title: Wick\npattern: tipped\nmold: minnow-3\ncups:\n  body:\n    plastic: 100 ml supple\n    add: { lamp-black: 12 drops }\n  tip:\n    share: 20%\n    plastic: 40 ml supple\n    add: { peat: 9 drops }',
  ),
  'colours/otter-steps.md': file(
    'title: Otter Steps\npattern: layered\nmold: minnow-3\ncups:\n  back:\n    share: 30%\n    plastic: 100 ml supple\n    add: { peat: 30 drops }\n  side:\n    share: 30%\n    plastic: 100 ml supple\n    add: { ivory-pearl: 1 g }\n  belly:\n    plastic: 100 ml supple',
  ),
  'colours/hush.md': file(
    'title: Hush\npublish: look\nfrom: weir-foam\ncups:\n  body: { from: weir-foam/body, add: { lamp-black: 3 drops } }',
  ),
  'colours/secret.md': file(
    'title: Zibeline\npublish: no\npattern: solid\nmold: minnow-3\ncups:\n  body:\n    plastic: 100 ml supple\n    add: { peat: 50 drops }',
  ),
};

/** An edition of the book of some files. An error in them is an error of the test. */
export function bookOf(files: Readonly<Record<string, string>>, edition: Edition = 'shared'): Book {
  const { complete, book, diagnostics } = compileBook(Object.entries(files).map(([path, text]) => ({ path, text })));
  if (!complete) {
    throw new Error(
      diagnostics
        .map((found) => `${found.file}:${found.start.line} ${found.code} ${found.found} ${found.expected}`)
        .join('\n'),
    );
  }
  return EDITIONS[edition](book);
}

/** The sample book, as published. */
export const SAMPLE_BOOK: Book = bookOf(SAMPLE_FILES);

/** The sample book, as its maker has it. */
export const MAKERS_BOOK: Book = bookOf(SAMPLE_FILES, 'mine');

export const ASSETS: Assets = {
  css: 'assets/book.css',
  icon: 'assets/icon.svg',
  fonts: ['assets/text.woff2'],
  scripts: {
    theme: ['assets/theme.js'],
    find: ['assets/find.js'],
    filter: ['assets/filter.js'],
    planner: ['assets/planner.js'],
    plan: ['assets/plan.js'],
    print: ['assets/print.js'],
    match: ['assets/match.js'],
    solver: ['assets/match.js', 'assets/solver.js'],
    unfold: ['assets/unfold.js'],
    share: ['assets/share.js'],
    labels: ['assets/labels.js'],
    photograph: ['assets/photograph.js'],
    bench: ['assets/bench.js'],
  },
  pagefind: 'pagefind/',
};

const LINEAGES = new WeakMap<Book, PageContext['lineage']>();

/** The pictures of a book's families: no page changes them, and to lay them out takes longer than a page. */
async function lineageOf(book: Book): Promise<PageContext['lineage']> {
  const lineage: Record<string, GraphLayout> = {};
  for (const { id } of book.families) lineage[id] = await layoutGraph(familyGraph(book, id));
  return lineage;
}

/** What a page of a book is rendered with. */
export async function contextOf(book: Book, url: string): Promise<PageContext> {
  const lineage = LINEAGES.get(book) ?? (await lineageOf(book));
  LINEAGES.set(book, lineage);
  return { book, url, assets: ASSETS, photos: {}, pictures: {}, lineage, manual: await readManual(ROOT, book.edition) };
}

/** One kind of page. */
export function kindOf(kind: string): PageKind {
  const found = PAGES.find((page) => page.kind === kind);
  if (found === undefined) throw new Error(`no kind of page is called ${kind}`);
  return found;
}

/** A page of a book as HTML. */
export async function pageOf(kind: string, item = '', book: Book = SAMPLE_BOOK): Promise<string> {
  const page = kindOf(kind);
  return page.render(await contextOf(book, page.url(item)), item);
}

/** The same, to ask for what is on it. */
export async function readPage(kind: string, item = '', book: Book = SAMPLE_BOOK): Promise<Document> {
  return documentOf(await pageOf(kind, item, book));
}

/** Every page of a book, as `[path, html]`. */
export async function everyPage(book: Book = SAMPLE_BOOK): Promise<readonly (readonly [string, string])[]> {
  const context = await contextOf(book, '');
  return PAGES.flatMap((kind) =>
    kind.items(book).map((item) => {
      const url = kind.url(item);
      return [url, kind.render({ ...context, url }, item)] as const;
    }),
  );
}
