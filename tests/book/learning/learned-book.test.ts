import { describe, expect, test } from 'vitest';
import { beliefOf } from '../../../src/book/learning/eye-of.ts';
import type { Known } from '../../../src/book/model/known.ts';
import type { Book } from '../../../src/book/model.ts';
import { makersBook } from '../../../src/book/publish/makers-book.ts';
import { publishedBook } from '../../../src/book/publish/published-book.ts';
import { deltaE00 } from '../../../src/optics/delta-e00.ts';
import { knownSentence } from '../../../src/words/how-known.ts';
import { bookWith, compileWith, file, recipeOf } from '../sample.ts';

/** A recipe with a log, of which the rounds were seen as these say, or not at all. */
const logged = (first?: string, second?: string, more = ''): string => {
  const seen = (fields?: string): string => (fields === undefined ? '' : `, seen: { ${fields} }`);
  return file(
    `title: Smoke\nmold: minnow\n${more}cups:\n  body:\n    plastic: 100 ml supple\n    log:\n      - { add: { peat: 4 drops }, pour: 12 ml${seen(first)} }\n      - { add: { frost: 0.2 g }, pour: 12 ml${seen(second)} }`,
  );
};
const SEEN_WHITE = { L: 60, a: 14, b: 40 };
const SEEN_BLACK = { L: 34, a: 4, b: 8 };
const labs = 'over-white: { lab: [60, 14, 40] }, over-black: { lab: [34, 4, 8] }';
const EARLIER = 'over-white: { lab: [66, 10, 40] }, over-black: { lab: [20, 2, 4] }';
const seenBook = (files: Readonly<Record<string, string>> = {}): Book =>
  bookWith({ 'colours/smoke.md': logged(EARLIER, labs), ...files });

describe('a cup that was seen', () => {
  const book = seenBook();
  const smoke = recipeOf(book, 'smoke');
  const untold = recipeOf(bookWith({ 'colours/smoke.md': logged() }), 'smoke');

  test('is shown as it was seen and is likely, and as seen', () => {
    const { body, known, cups } = smoke;
    expect(known).toEqual({ how: 'seen' });
    expect(cups[0]!.known).toEqual({ how: 'seen' });
    expect(deltaE00(body.overWhite.lab, SEEN_WHITE)).toBeLessThan(1.5);
    expect(deltaE00(body.overBlack.lab, SEEN_BLACK)).toBeLessThan(1.5);
    // It was worth telling.
    expect(deltaE00(untold.body.overWhite.lab, SEEN_WHITE)).toBeGreaterThan(5);
    expect(cups[0]!.body).toEqual(body);
    expect(cups[0]!.rounds.at(-1)!.look).toEqual(body);
  });

  test('is surer than one that was not', () => {
    expect(smoke.spread.fromMaterials).toBeLessThan(untold.spread.fromMaterials / 2);
    expect(smoke.spread.bound).toBeGreaterThanOrEqual(smoke.spread.fromMeasuring);
  });

  test('has all its views from one belief: thin, between the flakes, and at each round', () => {
    const belief = beliefOf(book.learned);
    const [cup] = smoke.cups;
    const layer = (thicknessMm: number): Parameters<typeof belief.mean>[0]['layers'][number] => ({
      plastics: [['supple', 1]],
      contents: [...cup!.contents].map(({ material, gramsPerMl }) => [material, gramsPerMl] as const),
      thicknessMm,
    });
    for (const [view, thicknessMm] of [
      [smoke.body, 9],
      [smoke.thin, 2],
      [smoke.between.body, 9],
      [smoke.between.thin, 2],
      [cup!.thin, 2],
    ] as const) {
      const { overWhite, overBlack } = belief.mean({ layers: [layer(thicknessMm)], cup: 'smoke/body' });
      expect(deltaE00(view.overWhite.lab, overWhite)).toBeLessThan(0.05);
      expect(deltaE00(view.overBlack.lab, overBlack)).toBeLessThan(0.05);
    }
  });

  test('has its materials learned, with what their files say beside', () => {
    const peat = book.materials.find(({ id }) => id === 'peat')!;
    expect(peat.learnedFrom).toBe(2);
    expect(peat.known).toEqual({ how: 'learned', looks: 2 } satisfies Known);
    expect(peat.constants).toEqual(book.learned.constants.peat);
    expect(peat.label).not.toEqual(peat.constants);
    expect(book.optics).toEqual(book.learned.optics);
  });

  test.each([
    ['is learned from both looks once something more went in', 'add: { peat: 2 drops }', { how: 'learned', looks: 2 }],
    ['is still seen once some was poured', 'pour: 5 ml', { how: 'seen' }],
  ])('%s', (_, step, known) => {
    const text = `${logged(EARLIER, labs).replace(/---\n$/, '')}      - { ${step} }\n---\n`;
    expect(recipeOf(bookWith({ 'colours/smoke.md': text }), 'smoke').known).toEqual(known);
  });
});

test('a cup that was never seen is known as the least known that is in it, and from looks at all of that', () => {
  const haze = (contents: string): string =>
    file(`title: Haze\nmold: minnow\ncups:\n  body: { plastic: 100 ml supple, add: { ${contents} } }`);
  const sedge = file('title: Sedge\nlook: { kind: dye, colour: "#5d8a3a", dose: 12 drops per 100 ml }');
  const knownOf = (contents: string): Known =>
    recipeOf(seenBook({ 'colours/haze.md': haze(contents), 'shelf/colorants/sedge.md': sedge }), 'haze').known;
  expect(knownOf('peat: 3 drops')).toEqual({ how: 'learned', looks: 2 });
  expect(knownOf('frost: 0.1 g')).toEqual({ how: 'learned', looks: 1 });
  expect(knownOf('peat: 3 drops, sedge: 1 drop')).toEqual({ how: 'estimated' });
});

test('flake that nobody has looked at leaves its body known as it is, and is told beside it; by itself it is estimated', () => {
  const fleck = file('title: Fleck\nlook: { colour: "#1d1c1b" }\nshape: hexagon\nsize: 0.040 in\nfinish: matte');
  const haze = (contents: string): string =>
    file(`title: Haze\nmold: minnow\ncups:\n  body: { plastic: 100 ml supple, add: { ${contents} } }`);
  const known = (contents: string): Known =>
    recipeOf(seenBook({ 'colours/haze.md': haze(contents), 'shelf/flakes/fleck.md': fleck }), 'haze').known;
  expect(known('peat: 3 drops, fleck: 0.2 g')).toEqual({ how: 'learned', looks: 2, flakeByFace: true });
  expect(known('fleck: 0.2 g')).toEqual({ how: 'estimated' });
  expect(knownSentence(known('peat: 3 drops, fleck: 0.2 g'))).toMatch(
    /^Learned from 2 looks .* Its flake is shown by the colour of its face/,
  );
  expect(knownSentence(known('peat: 3 drops'))).not.toMatch(/flake/);
});

test('a recipe that comes from a seen cup takes over what its likeness allows', () => {
  const child = file('title: Haze\nfrom: smoke\nmold: minnow');
  const [taught, untaught] = [
    seenBook({ 'colours/haze.md': child }),
    bookWith({ 'colours/smoke.md': logged(), 'colours/haze.md': child }),
  ];
  const off = (book: Book): number => deltaE00(recipeOf(book, 'haze').body.overWhite.lab, SEEN_WHITE);
  expect(off(taught)).toBeLessThan(off(untaught) / 2);
  expect(recipeOf(taught, 'haze').known).toEqual({ how: 'learned', looks: 2 });
});

test('a bait of two cups that was seen as a whole is shown so', () => {
  const cups =
    'cups:\n  back: { plastic: 60 ml supple, add: { peat: 12 drops } }\n  belly: { plastic: 60 ml supple, add: { frost: 0.4 g } }';
  const recipe = (seen: string): string => file(`title: Smoke\nmold: minnow\npattern: laminate\n${cups}\n${seen}`);
  const book = bookWith({ 'colours/smoke.md': recipe('seen: { over-white: { lab: [44, 9, 26] } }') });
  const { body, known, cups: compiled } = recipeOf(book, 'smoke');
  expect(known).toEqual({ how: 'seen' });
  expect(compiled.map((cup) => cup.known.how)).toEqual(['learned', 'learned']);
  expect(deltaE00(body.overWhite.lab, { L: 44, a: 9, b: 26 })).toBeLessThan(2);
});

describe('learn: false', () => {
  const off = { 'book.md': file('title: Two Cups\nlearn: false') };
  test('leaves the colours as they are without any look', () => {
    const [seen, unseen] = [seenBook(off), bookWith({ ...off, 'colours/smoke.md': logged() })];
    expect(seen.learned).toEqual(unseen.learned);
    expect(recipeOf(seen, 'smoke').body).toEqual(recipeOf(unseen, 'smoke').body);
    expect(recipeOf(seen, 'smoke').known).toEqual({ how: 'estimated' });
    expect(seen.materials.map(({ learnedFrom }) => learnedFrom)).not.toContain(2);
  });
});

describe('what readers get', () => {
  const hidden = (publish: string, isSeen: boolean): Book =>
    bookWith({
      'colours/smoke.md': logged(isSeen ? EARLIER : undefined, isSeen ? labs : undefined, `publish: ${publish}\n`),
      'colours/haze.md': file(
        'title: Haze\nmold: minnow\npublish: full\ncups:\n  body:\n    plastic: 90 ml supple\n    log: [{ add: { peat: 3 drops }, pour: 9 ml, seen: { over-white: "#c0a070" } }]',
      ),
    });

  test.each(['look', 'no'])('of a book with a recipe of which it has %s is as if nobody had seen that', (publish) => {
    const [seen, unseen] = [hidden(publish, true), hidden(publish, false)];
    expect(seen.readers).toBeDefined();
    expect(recipeOf(seen, 'haze').body).not.toEqual(recipeOf(unseen, 'haze').body);
    const text = ({ recipes, ...shared }: Book): unknown => ({ ...shared, recipes });
    expect(text(publishedBook(seen))).toEqual(text(publishedBook(unseen)));
    expect(JSON.stringify(publishedBook(seen))).not.toContain('smoke/body');
  });

  test('is looked at anew, in the same order, but for what they get nothing of', () => {
    const book = hidden('no', true);
    const bodies = ({ recipes }: Book): ReadonlyMap<string, unknown> =>
      new Map(recipes.map(({ id, body }) => [id, body]));
    const [mine, theirs] = [bodies(book), bodies(book.readers!)];
    expect([...theirs.keys()]).toEqual([...mine.keys()]);
    expect(theirs.get('smoke')).toBe(mine.get('smoke'));
    expect(theirs.get('haze')).not.toEqual(mine.get('haze'));
    expect(publishedBook(book).recipes.map(({ id }) => id)).toEqual(['haze']);
  });

  test('of a book with nothing to hide is what the maker has, but for materials that nobody used', () => {
    const book = seenBook({
      'shelf/colorants/sedge.md': file(
        'title: Sedge\nlook: { kind: dye, colour: "#5d8a3a", dose: 12 drops per 100 ml }',
      ),
    });
    expect(book.readers).toBeUndefined();
    const shared = publishedBook(book);
    expect(recipeOf(shared, 'smoke').body).toEqual(recipeOf(book, 'smoke').body);
    expect(shared.learned.data.looks).toEqual(book.learned.data.looks);
    expect(JSON.stringify(shared.learned)).not.toContain('sedge');
    expect(makersBook(book).learned).toEqual(book.learned);
  });

  test('names no camera', () => {
    const book = bookWith({ 'colours/smoke.md': logged(`${EARLIER}, camera: pocket`, `${labs}, camera: tall phone`) });
    expect(JSON.stringify(publishedBook(book))).not.toMatch(/pocket|tall phone/);
    expect(book.learned.data.looks.map(({ camera }) => camera)).toEqual(['1', '2']);
  });
});

test('a recipe that is left out teaches nothing, even where its fault is only found with its colours', () => {
  const wrong = logged(EARLIER, labs, 'seen: { over-white: "#a08050", side: nape }\n');
  const haze = {
    'colours/haze.md': file(
      'title: Haze\nmold: minnow\ncups:\n  body: { plastic: 100 ml supple, add: { peat: 3 drops } }',
    ),
  };
  const { book, complete, diagnostics } = compileWith({ ...haze, 'colours/smoke.md': wrong });
  expect(complete).toBe(false);
  expect(diagnostics.map(({ code }) => code)).toEqual(['seen/unknown-cup']);
  const without = compileWith({ ...haze, 'colours/smoke.md': file('title: Haze too\nmold: minnow\nfrom: haze') });
  expect(book!.learned).toEqual(without.book!.learned);
});
