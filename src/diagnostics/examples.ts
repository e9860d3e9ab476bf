/**
 * For every diagnostic code one book that provokes it and the same book mended. The tests compile both; `explain` shows them.
 *
 * @packageDocumentation
 */
import type { DiagnosticCode } from './catalogue.ts';

/** Texts by path; `undefined` takes a file of `EXAMPLE_BOOK` away. */
export type ExampleFiles = Readonly<Record<string, string | undefined>>;

/** A mistake and the same mended, as changes to `EXAMPLE_BOOK`. */
export interface DiagnosticExample {
  readonly bad: ExampleFiles;
  readonly good: ExampleFiles;
}

const text = (front: string, notes = ''): string => `---\n${front.trim()}\n---\n${notes}`;

/** A small book without mistakes. */
export const EXAMPLE_BOOK: Readonly<Record<string, string>> = {
  'book.md': text('title: Two Cups'),
  'colours/smoke.md': text(
    'title: Smoke\nmold: minnow\ncups:\n  body:\n    plastic: 120 ml supple\n    add:\n      peat: 12 drops',
  ),
  'shelf/plastics/supple.md': text('title: Supple\nhighest: 185 °C'),
  'shelf/colorants/peat.md': text('title: Peat\nlook: { kind: pigment, colour: "#5b4327", dose: 12 drops per 100 ml }'),
  'shelf/powders/frost.md': text('title: Frost\nlook: { kind: pearl, colour: "#e8e4da", dose: 1 % }'),
  'molds/minnow.md': text('title: Minnow\ncavity: 3.1 ml\nbody: 9 mm\nthin: 2 mm'),
};

const change = (path: string, bad: string | undefined, good: string | undefined): DiagnosticExample => ({
  bad: { [path]: bad },
  good: { [path]: good },
});

const cup = (inside: string): string =>
  text(`title: Smoke\nmold: minnow\ncups:\n  body:\n${inside.replace(/^/gm, '    ')}`);
const smoke = (bad: string, good: string): DiagnosticExample => change('colours/smoke.md', cup(bad), cup(good));
const front = (bad: string, good: string): DiagnosticExample => change('colours/smoke.md', text(bad), text(good));
const PLAIN_CUP = 'cups:\n  body:\n    plastic: 120 ml supple';
const PEAT_CUP = `${PLAIN_CUP}\n    add: { peat: 6 drops }`;
const LOGGED_CUP = `${PLAIN_CUP}\n    log: [{ add: { peat: 6 drops }, pour: 14 ml }]`;
const TWO_CUPS: ExampleFiles = {
  'colours/smoke.md': text(
    'title: Smoke\nmold: minnow\nfor: elver\ncups:\n  back: { plastic: 60 ml supple, add: { peat: 12 drops } }\n  belly: { plastic: 60 ml supple }',
  ),
};
const plastic = (bad: string, good: string): DiagnosticExample => {
  const supple = (working: string): string => text(`title: Supple\nworking: ${working}`);
  return change('shelf/plastics/supple.md', supple(bad), supple(good));
};
/** Two plastics that pour at no common temperature. */
const RANGES: ExampleFiles = {
  'shelf/plastics/supple.md': text('title: Supple\nworking: { from: 150 °C, to: 162 °C }'),
  'shelf/plastics/stout.md': text('title: Stout\nworking: { from: 166 °C, to: 180 °C }'),
};
/** A flake that bears two heats, and a cup with it. */
const COPPER: ExampleFiles = {
  'shelf/flakes/copper.md': text('title: Copper .040\nlook: { colour: "#a05a2c" }\nsize: 0.040 in\nbears: 2 heats'),
};
/** Another bottle, and a cup that looks the same before and after something went in. */
const RUST: ExampleFiles = {
  'shelf/colorants/rust.md': text('title: Rust\nlook: { kind: pigment, colour: "#b5451f", dose: 12 drops per 100 ml }'),
};
const seenTwice = (second: string): string =>
  cup(
    `plastic: 120 ml supple
log:
  - { add: { peat: 6 drops }, pour: 14 ml, seen: { over-white: "#8a6b47", over-black: "#4a4032" } }
  - { add: ${second}, pour: 14 ml, seen: { over-white: "#896a46", over-black: "#494032" } }`,
  );
const SEDGE = text('title: Sedge\nlook: { kind: dye, colour: "#5d8a3a", dose: 12 drops per 100 ml }');
const COPPERED = 'plastic: 120 ml supple\nlog:\n  - add: { peat: 12 drops, copper: 1/8 tsp }\n    pour: 14 ml';
/** A mold with a gate, a flake that jams in it, and one that does not. */
const GATED: ExampleFiles = {
  'molds/minnow.md': text('title: Minnow\ncavity: 3.1 ml\nbody: 9 mm\nthin: 2 mm\ngate: 3 mm'),
  'shelf/flakes/brick.md': text('title: Brick .062\nlook: { colour: "#8f3f2c" }\nsize: 0.062 in'),
  'shelf/flakes/gold.md': text('title: Gold .015\nlook: { colour: "#c8a24a" }\nsize: 0.015 in'),
};
const cutOfPeat = (diluent: string, more = ''): string =>
  text(`title: Peat Cut\ncut: { of: peat, with: ${diluent}, one-in: 10 }${more}`);
const photo = (file: string): string => text(`title: Smoke\nmold: minnow\nphotos: [${file}]\n${PLAIN_CUP}`);

/** Films of peat in clear plastic, at four wavelengths: enough for an example. */
const films = (composition: string, onWhite = '61.2,66.7,73.0,77.9'): string =>
  [
    '# unit: percent',
    'sample,composition,thickness,surface,400,500,600,700',
    `thin,${composition},1,bare_white,86,88,88,88`,
    `thin,${composition},1,film_on_white,${onWhite}`,
    `thin,${composition},1,bare_black,5,5,5,5`,
    `thin,${composition},1,film_on_black,5.9,5.9,6.0,6.1`,
    '',
  ].join('\n');
const MEASURED_PEAT = text('title: Peat\nlook: { kind: measured }');
const measured = (table: string | undefined): ExampleFiles => ({
  'shelf/colorants/peat.md': MEASURED_PEAT,
  'shelf/measurements.csv': table,
});
const PEAT_FILMS = films('peat=4 drops per 100 ml');

const DUSK = text('title: Dusk\nfrom: smoke');
const PEAT_POWDER = text('title: Peat powder\nlook: { kind: pearl, colour: "#5b4327", dose: 1 % }');

const UNLIKE_SIDES =
  'title: Elver\nparts:\n  back: { over-white: "#5b4a2f", over-black: "#483a26" }\n  belly: { over-white: "#cdb98c", over-black: "#97865f" }';

export const EXAMPLES: Readonly<Record<DiagnosticCode, DiagnosticExample>> = {
  'file/name': {
    bad: { 'colours/Old Smoke.md': DUSK },
    good: { 'colours/old-smoke.md': DUSK },
  },
  'file/too-large': change(
    'colours/smoke.md',
    `${EXAMPLE_BOOK['colours/smoke.md']}${'mud '.repeat(70_000)}`,
    EXAMPLE_BOOK['colours/smoke.md'],
  ),
  'file/not-text': change(
    'colours/smoke.md',
    `${EXAMPLE_BOOK['colours/smoke.md']}\0`,
    EXAMPLE_BOOK['colours/smoke.md'],
  ),
  'file/unknown-place': { bad: { 'drafts/smoke.md': 'not yet' }, good: { 'drafts/smoke.md': undefined } },
  'file/wrong-folder': {
    bad: { 'shelf/colorants/dusk.md': text(`title: Dusk\nmold: minnow\n${PLAIN_CUP}`) },
    good: { 'colours/dusk.md': text(`title: Dusk\nmold: minnow\n${PLAIN_CUP}`) },
  },
  'file/extension': {
    bad: { 'colours/dusk.markdown': DUSK },
    good: { 'colours/dusk.md': DUSK },
  },
  'file/not-portable': {
    bad: { 'colours/aux.md': text(`title: Auk\nmold: minnow\n${PLAIN_CUP}`) },
    good: { 'colours/auk.md': text(`title: Auk\nmold: minnow\n${PLAIN_CUP}`) },
  },
  'file/same-name': {
    bad: { 'shelf/powders/peat.md': PEAT_POWDER },
    good: { 'shelf/powders/peat-powder.md': PEAT_POWDER },
  },
  'file/same-title': {
    bad: { 'colours/dusk.md': text('title: smoke\nfrom: smoke') },
    good: { 'colours/dusk.md': DUSK },
  },
  'file/quoted-title': front(`title: “Smoke”\nmold: minnow\n${PLAIN_CUP}`, `title: Smoke\nmold: minnow\n${PLAIN_CUP}`),
  'file/unseen-sign': front(
    `title: Smo\u200bke\nmold: minnow\n${PLAIN_CUP}`,
    `title: Smoke\nmold: minnow\n${PLAIN_CUP}`,
  ),
  'file/not-computed': {
    bad: {
      'shelf/colorants/peat.md': text(
        'title: Peat\nmost: 20 %\nlook: { kind: pigment, colour: "#5b4327", dose: 0.1 mg per 1000 l }',
      ),
      'colours/smoke.md': cup('plastic: 60 ml supple\nadd:\n  peat: 6 g'),
    },
    good: {
      'shelf/colorants/peat.md': text(
        'title: Peat\nmost: 20 %\nlook: { kind: pigment, colour: "#5b4327", dose: 0.5 g per 100 ml }',
      ),
      'colours/smoke.md': cup('plastic: 60 ml supple\nadd:\n  peat: 0.3 g'),
    },
  },
  'front-matter/missing': change('colours/smoke.md', 'title: Smoke\n', EXAMPLE_BOOK['colours/smoke.md']),
  'front-matter/language': change(
    'colours/smoke.md',
    `---js\n${EXAMPLE_BOOK['colours/smoke.md']!.slice(4)}`,
    EXAMPLE_BOOK['colours/smoke.md'],
  ),
  'front-matter/syntax': front(
    `title: Smoke: dark\nmold: minnow\n${PLAIN_CUP}`,
    `title: "Smoke: dark"\nmold: minnow\n${PLAIN_CUP}`,
  ),
  'front-matter/alias': front(
    `title: &name Smoke\nmold: minnow\ntags: [*name]\n${PLAIN_CUP}`,
    `title: Smoke\nmold: minnow\ntags: [Smoke]\n${PLAIN_CUP}`,
  ),
  'field/unknown': front(`title: Smoke\nmolt: minnow\n${PLAIN_CUP}`, `title: Smoke\nmold: minnow\n${PLAIN_CUP}`),
  'field/missing': front(`mold: minnow\n${PLAIN_CUP}`, `title: Smoke\nmold: minnow\n${PLAIN_CUP}`),
  'field/type': front(
    `title: Smoke\nmold: minnow\nbaits: many\n${PLAIN_CUP}`,
    `title: Smoke\nmold: minnow\nbaits: 40\n${PLAIN_CUP}`,
  ),
  'field/value': front(
    `title: Smoke\nmold: minnow\npattern: sold\n${PLAIN_CUP}`,
    `title: Smoke\nmold: minnow\npattern: solid\n${PLAIN_CUP}`,
  ),
  'field/quantity': smoke('plastic: 120 ml supple\nadd:\n  peat: 12', 'plastic: 120 ml supple\nadd:\n  peat: 12 drops'),
  'field/colour': change(
    'shelf/colorants/peat.md',
    text('title: Peat\nlook: { kind: pigment, colour: "#5b432", dose: 12 drops per 100 ml }'),
    text('title: Peat\nlook: { kind: pigment, colour: "#5b4327", dose: 12 drops per 100 ml }'),
  ),
  'field/too-long': front(
    `title: ${'Smoke '.repeat(60)}\nmold: minnow\n${PLAIN_CUP}`,
    `title: Smoke\nmold: minnow\n${PLAIN_CUP}`,
  ),
  'field/to-fill-in': change(
    'shelf/powders/frost.md',
    text('title: Frost\nlook:\n  kind: pearl\n  colour:  # of a body that hides what is behind it\n  dose: 1 %'),
    text('title: Frost\nlook:\n  kind: pearl\n  colour: "#e8e4da"\n  dose: 1 %'),
  ),
  'field/waits-for': change(
    'molds/minnow.md',
    text('title: Minnow\ncavity: 3.1 ml\nbody:'),
    text('title: Minnow\ncavity: 3.1 ml\nbody: 9 mm'),
  ),
  'field/day-to-come': front(
    `title: Smoke\nmade: 2062-03-14\nmold: minnow\n${PLAIN_CUP}`,
    `title: Smoke\nmade: 2026-03-14\nmold: minnow\n${PLAIN_CUP}`,
  ),
  'field/date': front(
    `title: Smoke\nmade: 2026-02-30\nmold: minnow\n${PLAIN_CUP}`,
    `title: Smoke\nmade: 2026-02-28\nmold: minnow\n${PLAIN_CUP}`,
  ),
  'book/missing': change('book.md', undefined, EXAMPLE_BOOK['book.md']),
  'book/no-plastic': {
    bad: { 'shelf/plastics/supple.md': undefined, 'colours/smoke.md': cup('plastic: 120 ml') },
    good: { 'colours/smoke.md': cup('plastic: 120 ml') },
  },
  'book/unknown-plastic': change(
    'book.md',
    text('title: Two Cups\nplastic: suple'),
    text('title: Two Cups\nplastic: supple'),
  ),
  'book/injector': change(
    'book.md',
    text('title: Two Cups\ntools: { injector: { holds: 8 ml } }'),
    text('title: Two Cups\ntools: { injector: { holds: 60 ml } }'),
  ),
  'book/measuring-card': change(
    'book.md',
    text('title: Two Cups\nmeasuring-card: { scale: 8 mm }'),
    text('title: Two Cups\nmeasuring-card: { scale: 79.6 mm }'),
  ),
  'book/left-in-cup': change(
    'book.md',
    text('title: Two Cups\nleft-in-cup: 180 ml'),
    text('title: Two Cups\nleft-in-cup: 3 ml'),
  ),
  'recipe/unknown-material': smoke(
    'plastic: 120 ml supple\nadd:\n  paet: 12 drops',
    'plastic: 120 ml supple\nadd:\n  peat: 12 drops',
  ),
  'recipe/unknown-plastic': smoke('plastic: 120 ml suple', 'plastic: 120 ml supple'),
  'recipe/unknown-mold': front(`title: Smoke\nmold: minow\n${PLAIN_CUP}`, `title: Smoke\nmold: minnow\n${PLAIN_CUP}`),
  'recipe/unknown-recipe': smoke('from: smok/body', 'plastic: 120 ml supple'),
  'recipe/unknown-cup': {
    bad: { 'colours/dusk.md': text('title: Dusk\nmold: minnow\ncups:\n  body:\n    from: smoke/bode') },
    good: { 'colours/dusk.md': text('title: Dusk\nmold: minnow\ncups:\n  body:\n    from: smoke/body') },
  },
  'recipe/unknown-target': front(
    `title: Smoke\nmold: minnow\nfor: elver\n${PLAIN_CUP}`,
    `title: Smoke\nmold: minnow\n${PLAIN_CUP}`,
  ),
  'recipe/no-part': {
    bad: { ...TWO_CUPS, 'targets/elver.md': text('title: Elver\nover-white: "#7a6a4c"') },
    good: { ...TWO_CUPS, 'targets/elver.md': text('title: Elver\nparts: { back: { over-white: "#7a6a4c" } }') },
  },
  'recipe/no-cups': front('title: Smoke\nmold: minnow', `title: Smoke\nmold: minnow\n${PLAIN_CUP}`),
  'recipe/no-plastic': smoke('add:\n  peat: 12 drops', 'plastic: 120 ml supple\nadd:\n  peat: 12 drops'),
  'recipe/begun-anew': change(
    'colours/dusk.md',
    text('title: Dusk\nfrom: smoke\ncups:\n  body: { plastic: 90 ml supple, add: { frost: 1 % } }'),
    text('title: Dusk\nfrom: smoke\ncups:\n  body: { from: smoke/body, plastic: 90 ml supple, add: { frost: 1 % } }'),
  ),
  'recipe/add-and-log': smoke(
    'plastic: 120 ml supple\nadd:\n  peat: 12 drops\nlog:\n  - pour: 14 ml',
    'plastic: 120 ml supple\nlog:\n  - add: { peat: 12 drops }\n  - pour: 14 ml',
  ),
  'recipe/pattern': front(
    `title: Smoke\nmold: minnow\npattern: laminate\n${PLAIN_CUP}`,
    `title: Smoke\nmold: minnow\npattern: solid\n${PLAIN_CUP}`,
  ),
  'recipe/order': front(
    'title: Smoke\nmold: minnow\npattern: core\ncups:\n  shell: { share: 60%, plastic: 80 ml supple }\n  core: { plastic: 80 ml supple }',
    'title: Smoke\nmold: minnow\npattern: core\norder: core first\ncups:\n  shell: { share: 60%, plastic: 80 ml supple }\n  core: { plastic: 80 ml supple }',
  ),
  'recipe/shares': front(
    'title: Smoke\nmold: minnow\npattern: laminate\ncups:\n  back:\n    share: 60%\n    plastic: 80 ml supple\n  belly:\n    share: 60%\n    plastic: 80 ml supple',
    'title: Smoke\nmold: minnow\npattern: laminate\ncups:\n  back:\n    share: 60%\n    plastic: 80 ml supple\n  belly:\n    plastic: 80 ml supple',
  ),
  'recipe/uneven-shares': {
    bad: {
      'molds/minnow.md': text('title: Minnow\nmethod: injected\ncavity: 3.1 ml\nbody: 9 mm\nthin: 2 mm'),
      'colours/smoke.md': text(
        'title: Smoke\nmold: minnow\ncups:\n  back: { share: 30%, plastic: 80 ml supple }\n  belly: { plastic: 80 ml supple }',
      ),
    },
    good: {
      'molds/minnow.md': text('title: Minnow\nmethod: injected\ncavity: 3.1 ml\nbody: 9 mm\nthin: 2 mm'),
      'colours/smoke.md': text(
        'title: Smoke\nmold: minnow\ncups:\n  back: { share: 50%, plastic: 80 ml supple }\n  belly: { plastic: 80 ml supple }',
      ),
    },
  },
  'recipe/cycle': {
    bad: {
      'colours/dusk.md': text('title: Dusk\nmold: minnow\nfrom: dawn'),
      'colours/dawn.md': text('title: Dawn\nmold: minnow\nfrom: dusk'),
    },
    good: {
      'colours/dusk.md': text('title: Dusk\nmold: minnow\nfrom: smoke'),
      'colours/dawn.md': text('title: Dawn\nmold: minnow\nfrom: dusk'),
    },
  },
  'recipe/over-poured': smoke(
    'plastic: 120 ml supple\nlog:\n  - pour: 90 ml\n  - pour: 40 ml',
    'plastic: 120 ml supple\nlog:\n  - pour: 90 ml\n  - pour: 20 ml',
  ),
  'recipe/empty-cup': smoke(
    'plastic: 120 ml supple\nlog:\n  - pour: 120 ml\n  - add: { peat: 3 drops }',
    'plastic: 120 ml supple\nlog:\n  - pour: 14 ml\n  - add: { peat: 3 drops }',
  ),
  'recipe/not-in-cup': {
    bad: { 'colours/dusk.md': text('title: Dusk\nmold: minnow\ncups:\n  body:\n    from: smoke\n    without: frost') },
    good: { 'colours/dusk.md': text('title: Dusk\nmold: minnow\ncups:\n  body:\n    from: smoke\n    without: peat') },
  },
  'recipe/wrong-measure': smoke(
    'plastic: 120 ml supple\nadd:\n  frost: 12 drops',
    'plastic: 120 ml supple\nadd:\n  frost: 1/4 tsp',
  ),
  'recipe/plastic-as-material': smoke('plastic: 120 ml supple\nadd:\n  supple: 20 ml', 'plastic: 140 ml supple'),
  'recipe/overloaded': {
    bad: {
      'shelf/powders/frost.md': text('title: Frost\nmost: 2 %\nlook: { kind: pearl, colour: "#e8e4da", dose: 1 % }'),
      'colours/smoke.md': cup('plastic: 120 ml supple\nadd:\n  frost: 3 %'),
    },
    good: {
      'shelf/powders/frost.md': text('title: Frost\nmost: 2 %\nlook: { kind: pearl, colour: "#e8e4da", dose: 1 % }'),
      'colours/smoke.md': cup('plastic: 120 ml supple\nadd:\n  frost: 1.5 %'),
    },
  },
  'recipe/too-much-together': {
    bad: {
      'shelf/colorants/sedge.md': SEDGE,
      'colours/smoke.md': cup('plastic: 120 ml supple\nadd:\n  peat: 48 drops\n  sedge: 36 drops'),
    },
    good: {
      'shelf/colorants/sedge.md': SEDGE,
      'colours/smoke.md': cup('plastic: 120 ml supple\nadd:\n  peat: 24 drops\n  sedge: 18 drops'),
    },
  },
  'recipe/large-flake': {
    bad: { ...GATED, 'colours/smoke.md': cup('plastic: 120 ml supple\nadd:\n  brick: 1/8 tsp') },
    good: { ...GATED, 'colours/smoke.md': cup('plastic: 120 ml supple\nadd:\n  gold: 1/8 tsp') },
  },
  'recipe/over-full': smoke('plastic: 300 ml supple', 'plastic: 170 ml supple'),
  'recipe/too-hot': smoke(
    'plastic: 120 ml supple\nlog:\n  - heat: 192 °C\n    add: { peat: 12 drops }',
    'plastic: 120 ml supple\nlog:\n  - heat: 175 °C\n    add: { peat: 12 drops }',
  ),
  'recipe/burnt': smoke(
    'plastic: 120 ml supple\nlog:\n  - heat: 215 °C\n    add: { peat: 12 drops }',
    'plastic: 120 ml supple\nlog:\n  - heat: 175 °C\n    add: { peat: 12 drops }',
  ),
  'recipe/worn': {
    bad: { ...COPPER, 'colours/smoke.md': cup(`${COPPERED}\n  - reheat: true\n  - reheat: true`) },
    good: { ...COPPER, 'colours/smoke.md': cup(`${COPPERED}\n  - reheat: true`) },
  },
  'recipe/held-long': smoke(
    'plastic: 120 ml supple\nlog:\n  - held: 25 min\n    add: { peat: 12 drops }',
    'plastic: 120 ml supple\nlog:\n  - held: 15 min\n    add: { peat: 12 drops }',
  ),
  'recipe/heat-scale': smoke(
    'plastic: 120 ml supple\nlog:\n  - heat: 340 °C\n    add: { peat: 12 drops }',
    'plastic: 120 ml supple\nlog:\n  - heat: 340 °F\n    add: { peat: 12 drops }',
  ),
  'recipe/too-cold': smoke(
    'plastic: 120 ml supple\nlog:\n  - heat: 170 °F\n    add: { peat: 12 drops }',
    'plastic: 120 ml supple\nlog:\n  - heat: 170 °C\n    add: { peat: 12 drops }',
  ),
  'recipe/no-range': {
    bad: { ...RANGES, 'colours/smoke.md': cup('plastic: [60 ml supple, 60 ml stout]') },
    good: { ...RANGES, 'colours/smoke.md': cup('plastic: 120 ml stout') },
  },
  'recipe/more-than-plastic': smoke(
    'plastic: 120 ml supple\nadd:\n  frost: 120 %',
    'plastic: 120 ml supple\nadd:\n  frost: 1.2 %',
  ),
  'material/look-incomplete': change(
    'shelf/colorants/peat.md',
    text('title: Peat\nlook: { kind: pigment, colour: "#5b4327" }'),
    EXAMPLE_BOOK['shelf/colorants/peat.md'],
  ),
  'material/chip': change(
    'shelf/colorants/peat.md',
    text(
      'title: Peat\nlook:\n  chips:\n    - { dose: 12 drops per 100 ml, thickness: 3 mm, over-white: "#4a3520", over-black: "#8a6a45" }',
    ),
    text(
      'title: Peat\nlook:\n  chips:\n    - { dose: 12 drops per 100 ml, thickness: 3 mm, over-white: "#8a6a45", over-black: "#4a3520" }',
    ),
  ),
  'material/heat': change(
    'shelf/powders/frost.md',
    text('title: Frost\nhighest: 375 °C\nlook: { kind: pearl, colour: "#e8e4da", dose: 1 % }'),
    text('title: Frost\nhighest: 375 °F\nlook: { kind: pearl, colour: "#e8e4da", dose: 1 % }'),
  ),
  'plastic/heat': plastic('{ from: 330 °C, to: 177 °C }', '{ from: 330 °F, to: 177 °C }'),
  'plastic/hot': plastic('{ from: 165 °C, to: 199 °C }', '{ from: 165 °C, to: 177 °C }'),
  'plastic/cold': plastic('{ from: 125 °C, to: 177 °C }', '{ from: 165 °C, to: 177 °C }'),
  'plastic/range': plastic('{ from: 177 °C, to: 165 °C }', '{ from: 165 °C, to: 177 °C }'),
  'material/pack': change(
    'shelf/colorants/peat.md',
    text('title: Peat\nprice: 6\nlook: { kind: pigment, colour: "#5b4327", dose: 12 drops per 100 ml }'),
    text('title: Peat\nprice: 6\npack: 30 ml\nlook: { kind: pigment, colour: "#5b4327", dose: 12 drops per 100 ml }'),
  ),
  'material/cut': change('shelf/colorants/peat-cut.md', cutOfPeat('frost'), cutOfPeat('supple')),
  'material/cut-beside': change(
    'shelf/colorants/peat-cut.md',
    cutOfPeat('supple', '\ndensity: 1.1 g/ml'),
    cutOfPeat('supple'),
  ),
  'material/not-measured': { bad: measured(undefined), good: measured(PEAT_FILMS) },
  'shelf/measurements': {
    bad: {
      ...measured(PEAT_FILMS),
      'shelf/measurements.csv': `${PEAT_FILMS}${films('paet=4 drops per 100 ml').split('\n').slice(2).join('\n').replaceAll('thin', 'thick')}`,
    },
    good: measured(PEAT_FILMS),
  },
  'shelf/film': { bad: measured(films('peat=4 drops per 100 ml', '5.1,5.2,5.2,5.3')), good: measured(PEAT_FILMS) },
  'mold/no-volume': change(
    'molds/minnow.md',
    text('title: Minnow\nbody: 9 mm'),
    text('title: Minnow\nbody: 9 mm\nbait: 3.4 g'),
  ),
  'mold/two-volumes': change(
    'molds/minnow.md',
    text('title: Minnow\ncavity: 3.1 ml\nbait: 3.4 g\nbody: 9 mm'),
    text('title: Minnow\ncavity: 3.1 ml\nbody: 9 mm'),
  ),
  'mold/thickness': change(
    'molds/minnow.md',
    text('title: Minnow\ncavity: 3.1 ml\nbody: 2 mm\nthin: 9 mm'),
    text('title: Minnow\ncavity: 3.1 ml\nbody: 9 mm\nthin: 2 mm'),
  ),
  'mold/gate': change(
    'molds/minnow.md',
    text('title: Minnow\ncavity: 3.1 ml\nbody: 9 mm\ngate: 4 in'),
    text('title: Minnow\ncavity: 3.1 ml\nbody: 9 mm\ngate: 4 mm'),
  ),
  'mold/length': change(
    'molds/minnow.md',
    text('title: Minnow\ncavity: 31 ml\nbody: 9 mm\nlength: 75 mm'),
    text('title: Minnow\ncavity: 3.1 ml\nbody: 9 mm\nlength: 75 mm'),
  ),
  'target/no-colour': {
    bad: { 'targets/elver.md': text('title: Elver') },
    good: { 'targets/elver.md': text('title: Elver\nover-white: "#7a6a4c"') },
  },
  'target/flake-beside-parts': change(
    'targets/elver.md',
    text(
      'title: Elver\nflake: [{ colour: "#1d1c1b", size: 0.040 in }]\nparts:\n  back:\n    over-white: "#7a6a4c"\n  belly:\n    over-white: "#b3a386"',
    ),
    text(
      'title: Elver\nparts:\n  back:\n    over-white: "#7a6a4c"\n    flake: [{ colour: "#1d1c1b", size: 0.040 in }]\n  belly:\n    over-white: "#b3a386"',
    ),
  ),
  'target/unknown-plastic': change(
    'targets/elver.md',
    text('title: Elver\nover-white: "#7a6a4c"\nplastic: suple'),
    text('title: Elver\nover-white: "#7a6a4c"\nplastic: supple'),
  ),
  'target/unlike-sides': change('targets/elver.md', text(UNLIKE_SIDES), text(`${UNLIKE_SIDES}\napart: true`)),
  'seen/reversed': {
    bad: { 'targets/elver.md': text('title: Elver\nover-white: "#4a3a2c"\nover-black: "#8a7a5c"') },
    good: { 'targets/elver.md': text('title: Elver\nover-white: "#8a7a5c"\nover-black: "#4a3a2c"') },
  },
  'seen/unlogged': smoke(
    'plastic: 120 ml supple\nlog:\n  - { add: { peat: 6 drops }, pour: 14 ml, seen: { over-white: "#b09468" } }\n  - { pour: 14 ml, seen: { over-white: "#8a6a44" } }',
    'plastic: 120 ml supple\nlog:\n  - { add: { peat: 6 drops }, pour: 14 ml, seen: { over-white: "#b09468" } }\n  - { add: { peat: 6 drops }, pour: 14 ml, seen: { over-white: "#8a6a44" } }',
  ),
  'log/does-not-fit': {
    bad: { ...RUST, 'colours/smoke.md': seenTwice('{ rust: 12 drops }') },
    good: { ...RUST, 'colours/smoke.md': seenTwice('{}') },
  },
  'seen/unknown-cup': front(
    `title: Smoke\nmold: minnow\n${PEAT_CUP}\nseen: { side: bodi, over-white: "#704e29" }`,
    `title: Smoke\nmold: minnow\n${PEAT_CUP}\nseen: { side: body, over-white: "#704e29" }`,
  ),
  'seen/unknown-round': front(
    `title: Smoke\nmold: minnow\n${LOGGED_CUP}\nseen: { rounds: { body: 2 }, over-white: "#b09468" }`,
    `title: Smoke\nmold: minnow\n${LOGGED_CUP}\nseen: { rounds: { body: 1 }, over-white: "#b09468" }`,
  ),
  'material/deep': {
    bad: {
      'shelf/colorants/soot.md': text(
        'title: Soot\nlook: { kind: pigment, colour: "#161514", dose: 8 drops per 100 ml }',
      ),
    },
    good: {
      'shelf/colorants/soot.md': text(
        'title: Soot\nlook: { kind: pigment, colour: "#161514", dose: 8 drops per 100 ml }',
      ),
      'chips/soot.md': text(
        'title: Soot, 2 drops\nplastic: 100 ml supple\nadd: { soot: 2 drops }\nseen: { over-white: "#6f6e6c", over-black: "#1c1b1b" }',
      ),
    },
  },
  'chip/deep': {
    bad: {
      'chips/peat.md': text(
        'title: Peat\nplastic: 100 ml supple\nadd: { peat: 60 drops }\nseen: { over-white: "#1a1712", over-black: "#191611" }',
      ),
    },
    good: {
      'chips/peat.md': text(
        'title: Peat\nplastic: 100 ml supple\nadd: { peat: 15 drops }\nseen: { over-white: "#5f4c35", over-black: "#2e261b" }',
      ),
    },
  },
  'chip/unseen': {
    bad: { 'chips/peat.md': text('title: Peat, a drop\nplastic: 100 ml supple\nadd: { peat: 1 drop }') },
    good: {
      'chips/peat.md': text(
        'title: Peat, a drop\nplastic: 100 ml supple\nadd: { peat: 1 drop }\nseen: { over-white: "#c8b48e" }',
      ),
    },
  },
  'chip/seen-and-log': {
    bad: {
      'chips/peat.md': text(
        'title: Peat, a drop\nplastic: 100 ml supple\nlog:\n  - add: { peat: 1 drop }\nseen: { over-white: "#c8b48e" }',
      ),
    },
    good: {
      'chips/peat.md': text(
        'title: Peat, a drop\nplastic: 100 ml supple\nlog:\n  - { add: { peat: 1 drop }, seen: { over-white: "#c8b48e" } }',
      ),
    },
  },
  'photo/missing': change('colours/smoke.md', photo('smoek.jpg'), photo('smoke.jpg')),
  'photo/unreadable': change('colours/smoke.md', photo('smoke.heic'), photo('smoke.jpg')),
  'photo/unused': change('colours/smoke.md', EXAMPLE_BOOK['colours/smoke.md'], photo('smoke.jpg')),
  'publish/named': {
    bad: {
      'colours/dusk.md': text('title: Dusk\nmold: minnow\npublish: no\nfrom: smoke'),
      'colours/smoke.md': `${EXAMPLE_BOOK['colours/smoke.md']}Darker still: Dusk.\n`,
    },
    good: {
      'colours/dusk.md': text('title: Dusk\nmold: minnow\npublish: no\nfrom: smoke'),
      'colours/smoke.md': `${EXAMPLE_BOOK['colours/smoke.md']}There is a darker one.\n`,
    },
  },
  'publish/word': {
    bad: {
      'colours/dusk.md': text('title: Dusk\nmold: minnow\npublish: no\nfrom: smoke'),
      'colours/smoke.md': `${EXAMPLE_BOOK['colours/smoke.md']}Fish it at dusk.\n`,
    },
    good: {
      'colours/summer-dusk.md': text('title: Summer Dusk\nmold: minnow\npublish: no\nfrom: smoke'),
      'colours/smoke.md': `${EXAMPLE_BOOK['colours/smoke.md']}Fish it at dusk.\n`,
    },
  },
};
