import { describe, expect, test } from 'vitest';
import { lettingDownFor } from '../../src/book/match/ask-matching.ts';
import { printedCutBack } from '../../src/cli/matching-text.ts';
import { loadBook } from '../../src/shell/load-book.ts';
import { required } from '../../src/values/required.ts';
import { smallBook } from '../small-book.ts';
import { leaveAsFound } from './leave-as-found.ts';
import { runHere } from './run-here.ts';

leaveAsFound();

const FILES = {
  'shelf/powders/ivory.md': '---\ntitle: Ivory\nlook: { kind: pearl, colour: "#ece6d6", dose: 1 % }\n---\n',
  'shelf/colorants/soot.md':
    '---\ntitle: Soot\nlook: { kind: pigment, colour: "#1a1a1a", dose: 10 drops per 100 ml }\n---\n',
  'targets/leaf.md': '---\ntitle: Leaf\nmold: minnow-3\nover-white: "#8a6844"\nover-black: "#6e5a40"\n---\n',
  'targets/elver.md':
    '---\ntitle: Elver\nmold: minnow-3\nparts:\n  back: { over-white: "#584630", over-black: "#40382c" }\n  belly: { over-white: "#a89878", over-black: "#98886c" }\n---\n',
  'targets/halves.md':
    '---\ntitle: Halves\nmold: minnow-3\napart: true\nparts:\n  back: { over-white: "#584630", over-black: "#40382c" }\n  belly: { over-white: "#a89878", over-black: "#98886c" }\n---\n',
  'targets/near.md': '---\ntitle: Near\nmold: minnow-3\nover-white: "#99887a"\nover-black: "#97887a"\n---\n',
  'colours/trial.md':
    '---\ntitle: Trial\nmold: minnow-3\nfor: leaf\ncups:\n  body:\n    plastic: 120 ml supple\n    log:\n      - add: { peat: 4 drops }\n        pour: 14 ml\n---\n',
};

interface Said {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs a command line on a small book with targets, and keeps what it says. */
const cupbook = (...line: readonly string[]): Promise<Said> => cupbookOf({}, ...line);

/** The same, with other files besides. */
async function cupbookOf(files: Readonly<Record<string, string>>, ...line: readonly string[]): Promise<Said> {
  return cupbookIn(await smallBook({ ...FILES, ...files }), ...line);
}

/** The same, on the book in a folder. */
async function cupbookIn(recipes: string, ...line: readonly string[]): Promise<Said> {
  const { code, stdout, stderr } = await runHere([...line, '--recipes', recipes]);
  return { code, out: stdout, err: stderr };
}

const SOD =
  '---\ntitle: Sod\nlook: { kind: dye, colour: "#6c4a2c", dose: 10 drops per 100 ml, thickness: 3 mm }\n---\n';
const SCALE = {
  'book.md': '---\ntitle: A Small Book\ncup: 600 ml\ntools: { spoons: [1/2 tsp], scale: 0.01 g }\n---\n',
};

/** Of spoons as small as any. */
const WEIGHED = '---\ntitle: A Small Book\ncup: 600 ml\ntools: { scale: 0.01 g }\n---\n';

describe('the scale', () => {
  test('match leads with what is weighed where drops and spoons are too coarse', async () => {
    const { out } = await cupbookOf(SCALE, 'match', 'near', '--plastic', '34');
    expect(out).toMatch(/^body: [\d.]+ g of Ivory.*: [a-z’ ]+ \(expect ΔE [\d.]+, nine in ten within [\d.]+\)\./);
    expect(out).not.toMatch(/tsp|drops? of/);
  });

  test('match says what to weigh instead where drops and spoons do as well', async () => {
    const { out } = await cupbookOf(SCALE, 'match', 'near', '--plastic', '240');
    expect(out).toMatch(/\n {2}\d (drops?|× 1\/2 tsp) .*\n/);
    expect(out).toMatch(/\n {2}or weigh it all: [\d.]+ g of .*: .* \(expect ΔE \d/);
    expect(out).toContain('The drops and spoons of a cup are rounded as a set');
  });

  test('a warning stands where there is too little to weigh', async () => {
    const { out } = await cupbookOf(SCALE, 'match', 'near', '--plastic', '6');
    expect(out).toMatch(
      /0\.0[12] g of \w+.* too little for this scale \((up to )?(25|50) % error\): make a cut of (it|them), one part in ten/,
    );
  });

  test('match --json has the weights, which leave no more than the measures', async () => {
    const { out } = await cupbookOf(SCALE, 'match', 'near', '--plastic', '240', '--json');
    const [{ recipe }] = JSON.parse(out);
    for (const { cups, expected, bound90, likely, weighed: byWeight } of recipe.proposals) {
      expect(byWeight.expected).toBeLessThanOrEqual(expected + 0.05);
      expect(expected).toBeLessThan(bound90);
      expect(likely).toBeLessThan(0.85);
      for (const { weighed } of cups[0].amounts) expect(weighed.text).toBe(`${weighed.grams.toFixed(2)} g`);
    }
  });

  test('next says what to weigh instead', async () => {
    const { out } = await cupbookOf({}, 'next', 'trial', '--target', 'near');
    expect(out).not.toMatch(/weigh/);
    const weighed = await cupbookOf({ 'book.md': WEIGHED }, 'next', 'trial', '--target', 'near');
    expect(weighed.out).toMatch(/or weigh it all: [\d.]+ g of .*: .* \(expect ΔE \d/);
  });

  test('next leaves drops and spoons where only the scale comes near', async () => {
    const { out } = await cupbookOf(SCALE, 'next', 'trial');
    expect(out).toMatch(/1\. Add .*0\.\d\d g of Ivory\.\n {3}then: .*\(expect ΔE \d/);
    expect(out).not.toMatch(/or weigh/);
  });

  test('a book without one has no weights', async () => {
    const spoon = { 'book.md': '---\ntitle: A Small Book\ncup: 600 ml\ntools: { spoons: [1/2 tsp] }\n---\n' };
    const { out } = await cupbookOf(spoon, 'match', 'near', '--plastic', '60');
    expect(out).not.toMatch(/weigh it/);
  });
});

describe('the words of an answer', () => {
  test('are explained at its end, stock where it was asked for', async () => {
    const { out } = await cupbook('match', 'leaf', '--in-stock');
    expect(out).toContain('ΔE says how different two colours look');
    expect(out).toMatch(/no `stock` in a file counts as in stock\.\n$/);
    expect((await cupbook('next', 'trial')).out).not.toContain('--in-stock');
  });
});

describe('a book in fluid ounces', () => {
  const ounces = { 'book.md': '---\ntitle: A Small Book\nunits: { volume: fl oz }\ncup: 6.8 fl oz\nfill: 50 %\n---\n' };

  test.each([
    ['match', 'leaf'],
    ['next', 'trial'],
    ['let-down', 'trial'],
    ['let-down', 'strong'],
    ['next', 'strong'],
  ])('%s %s speaks no ml', async (...line) => {
    const strong = FILES['colours/trial.md'].replace('Trial', 'Strong').replace('4 drops', '40 drops');
    const { out } = await cupbookOf({ ...ounces, 'colours/strong.md': strong }, ...line);
    if (line[0] !== 'let-down' || line[1] !== 'trial') expect(out).toMatch(/[\d.]+ fl oz/);
    expect(out).not.toMatch(/\d ml\b/);
  });

  test('let-down and next let a cup down by quarters of a fluid ounce', async () => {
    const strong = FILES['colours/trial.md'].replace('Trial', 'Strong').replace('4 drops', '40 drops');
    const roomy = { 'book.md': ounces['book.md'].replace('6.8', '16'), 'colours/strong.md': strong };
    const said = await Promise.all(['let-down', 'next'].map((name) => cupbookOf(roomy, name, 'strong', '--json')));
    const added = said.flatMap(({ out }) =>
      [...out.matchAll(/"thin": \{[^}]*"ml": ([\d.]+)/g)].map(([, ml]) => Number(ml)),
    );
    expect(added.length).toBeGreaterThan(0);
    for (const ml of added) expect((4 * ml) / 29.5735295625).toBeCloseTo(Math.round((4 * ml) / 29.5735295625), 9);
    expect((await cupbookOf(roomy, 'let-down', 'strong')).out).toMatch(
      /\b(?:\d+(?:\.25|\.5|\.75)?) fl oz of Supple to let it down/,
    );
  });
});

describe('match --plastic', () => {
  const ounces = { 'book.md': '---\ntitle: A Small Book\nunits: { volume: fl oz }\n---\n' };
  const plasticOf = async (files: Readonly<Record<string, string>>, ...options: readonly string[]): Promise<number> => {
    const { out } = await cupbookOf(files, 'match', 'leaf', '--json', '--materials', '1', ...options);
    return JSON.parse(out)[0].recipe.proposals[0].cups[0].plasticMl;
  };

  test.each([
    [{}, [], 120],
    [{}, ['--plastic', '60'], 60],
    [{}, ['--plastic', '4 fl oz'], 118.294],
    [{}, ['--plastic', '1/2 cup'], 118.294],
    [ounces, [], 118.294],
    [ounces, ['--plastic', '4'], 118.294],
    [ounces, ['--plastic', '2.5'], 73.934],
    [ounces, ['--plastic', '120 ml'], 120],
  ])('%j with %j is for %d ml', async (files, options, ml) => {
    expect(await plasticOf(files, ...options)).toBeCloseTo(ml, 3);
  });

  test.each([
    [{}, '4 oz', 'in ml, the book’s unit), not "4 oz": write "4 fl oz".'],
    [{}, '60 mll', 'in ml, the book’s unit), not "60 mll": write "60 ml".'],
    [{}, 'some', 'in ml, the book’s unit), not "some".'],
    [{}, '0', 'in ml, the book’s unit), not "0".'],
    [{}, '1,5', 'in ml, the book’s unit), not "1,5": write "1.5".'],
    [ounces, '30 g', 'in fl oz, the book’s unit), not "30 g".'],
    [ounces, '1e9', 'in fl oz, the book’s unit), not "1e9".'],
    [{}, '2000 l', 'in ml, the book’s unit), not "2000 l": from 0.001 ml to 1000 l.'],
  ])('%j refuses %s', async (files, typed, words) => {
    const { code, err } = await cupbookOf(files, 'match', 'leaf', '--plastic', typed);
    expect([code, err]).toEqual([
      1,
      expect.stringContaining(`--plastic takes a volume such as "120 ml" or "4 fl oz" (a number alone is ${words}`),
    ]);
  });
});

describe('a cup that is fuller than the book fills one', () => {
  const full = {
    'book.md': '---\ntitle: A Small Book\ncup: 200 ml\nfill: 50 %\n---\n',
    'colours/trial.md': FILES['colours/trial.md'].replace('4 drops', '40 drops'),
  };

  test('let-down says with numbers that there is no room', async () => {
    expect((await cupbookOf(full, 'let-down', 'trial')).out).toMatch(
      /no room for more plastic: the cup holds 10\d ml and should hold no more than 100 ml\./,
    );
  });

  test('next says so, and a new cup is no fuller than that', async () => {
    const { out } = await cupbookOf(full, 'next', 'trial');
    expect(out).toMatch(/The cup holds 10\d ml and should hold no more than 100 ml: hot plastic foams\./);
    expect(out).toMatch(/\nA new cup:\n {2}100 ml +Supple/);
    const [, mending = 'none'] = /Fixing this one takes more than that: add (.*?); what’s left/.exec(out) ?? [];
    expect(out).toContain(`\nOr fix this one:\n1. Add ${mending}.\n`);
  });
});

describe('cupbook match', () => {
  test('match TARGET proposes recipes in measured amounts, with the cautions', async () => {
    const { code, out } = await cupbook('match', 'leaf');
    expect(code).toBe(0);
    expect(out).toMatch(/^body: .* of (Ivory|Peat|Soot)/);
    expect(out).toMatch(/ 120 ml +Supple/);
    expect(out).toContain('Hot plastic burns');
    expect(out).toContain('\nBurnt? Don’t pull the plastic off.');
  });

  test('match TARGET --json is the same for other programs', async () => {
    const { out } = await cupbook('match', 'leaf', '--json', '--materials', '2', '--plastic', '150');
    const [answer] = JSON.parse(out);
    expect(answer.part).toBe('body');
    expect(answer.recipe.proposals.length).toBeGreaterThan(0);
    for (const { cups } of answer.recipe.proposals) {
      expect(cups[0].plasticMl).toBe(150);
      expect(cups[0].amounts.length).toBeLessThanOrEqual(2);
    }
  });

  test('match TARGET takes the two sides of a finished bait together, and those that were seen apart each by itself', async () => {
    const both = await cupbook('match', 'elver');
    expect(both.out).toMatch(/^back and belly: /);
    expect(both.out).toContain('poured alone: #');
    expect((await cupbook('match', 'halves')).out).toMatch(/^back: [\s\S]*\nbelly: /);
  });

  test('match for more than a cup is filled to is refused, with how to make as much', async () => {
    const { code, out } = await cupbook('match', 'leaf', '--plastic', '3000');
    expect([code, out]).toEqual([
      1,
      expect.stringMatching(
        /A cup of this book takes 175 ml .*, since hot plastic foams and splashes\. Ask for 175 ml at most, and mix several equal cups\./,
      ),
    ]);
  });

  test('match of no target, and with no number, is a sentence', async () => {
    const unknown = await cupbook('match', 'leav');
    expect([unknown.code, unknown.err]).toEqual([1, 'The book has no target "leav". Did you mean leaf?\n']);
    for (const number of ['few', '0', '9']) {
      const { code, err } = await cupbook('match', 'leaf', '--materials', number);
      expect([code, err]).toEqual([1, `--materials takes a whole number from 1 to 6, not "${number}".\n`]);
    }
  });
});

describe('cupbook next and let-down', () => {
  test('next RECIPE says what is wrong and what to add', async () => {
    const { code, out } = await cupbook('next', 'trial/body');
    expect(code).toBe(0);
    expect(out).toMatch(/^body now: .*too see-through \(hides \d+ %, the target \d+ %\)/);
    expect(out).toMatch(/1\. Add .*Ivory/);
    expect(out).toMatch(/\n {3}then: .* \(expect ΔE [\d.]+, nine in ten within \d/);
  });

  test('next RECIPE --json has the verdict, the proposals and what is to be expected', async () => {
    const { out } = await cupbook('next', 'trial', '--json');
    const [{ cup, next }] = JSON.parse(out);
    expect(cup).toBe('body');
    expect(next.now.deltaE).toBeGreaterThan(2);
    expect(next.proposals[0].expected).toBeLessThan(next.expected - 0.25);
    for (const { expected, bound90, likely } of [next, ...next.proposals]) {
      expect(expected).toBeLessThan(bound90);
      expect(likely).toBeGreaterThanOrEqual(0);
    }
  });

  test('next of a recipe that is for no target, and of a cup that is not there, is a sentence', async () => {
    expect((await cupbook('next', 'bog-pool')).err).toBe(
      'Bog Pool has no target. Write `for: TARGET` in its file, or give --target TARGET.\n',
    );
    expect((await cupbook('next', 'bog-pool', '--target', 'leaf')).code).toBe(0);
    const deeper = await cupbook('next', 'bog-pool/body/again', '--target', 'leaf');
    expect([deeper.code, deeper.err]).toEqual([1, expect.stringContaining('has no cup "body/again".')]);
    expect((await cupbook('next', 'trial/bodi')).err).toContain('Did you mean body?');
    expect((await cupbook('next', 'trial', '--target', 'elver')).err).toContain(
      'No part of Elver (back, belly) is for body.',
    );
  });

  test('next RECIPE/CUP compares one colour with the cup that is named, and asks which where none is', async () => {
    const two = {
      'colours/two.md':
        '---\ntitle: Two\nmold: minnow-3\nfor: leaf\ncups:\n  back: { plastic: 60 ml supple, add: { peat: 4 drops } }\n  belly: { plastic: 60 ml supple }\n---\n',
    };
    const back = await cupbookOf(two, 'next', 'two/back');
    expect([back.code, back.out]).toEqual([0, expect.stringMatching(/^back now: /)]);
    expect((await cupbookOf(two, 'let-down', 'two/belly')).code).toBe(0);
    const either = await cupbookOf(two, 'next', 'two');
    expect(either.code).toBe(1);
    expect(either.err).toMatch(
      /^Leaf is one colour, and Two has the cups back, belly\. .*such as two\/back; or name them in/,
    );
  });

  test('let-down and next lead with the same where both let down and mend, and neither calls the first the best', async () => {
    // Brown, but too much of it and too little red.
    const brown = {
      'book.md': '---\ntitle: A Small Book\ncup: 600 ml\n---\n',
      'shelf/colorants/brick.md':
        '---\ntitle: Brick\nlook: { kind: pigment, colour: "#9a3b26", dose: 10 drops per 100 ml }\n---\n',
      'targets/leaf.md': '---\ntitle: Leaf\nmold: minnow-3\nover-white: "#8a5a3c"\nover-black: "#5c4030"\n---\n',
      'colours/trial.md':
        '---\ntitle: Trial\nmold: minnow-3\nfor: leaf\ncups:\n  body:\n    plastic: 120 ml supple\n    log:\n      - add: { peat: 60 drops }\n        pour: 14 ml\n        seen: { over-white: "#5f4529", over-black: "#594229", checked: true }\n---\n',
    };
    const { out: next } = await cupbookOf(brown, 'next', 'trial');
    const first = /\n1\. (Add .* to let it down, then .*\.)\n/.exec(next)?.[1];
    expect(first).toMatch(/ ml of .* of /);
    expect((await cupbookOf(brown, 'let-down', 'trial')).out).toContain(`something to correct it:\n${first}\n`);
    expect(next).not.toContain('The best fix: Add ');
  });

  test('let-down says so where plastic alone is no help', async () => {
    const black = FILES['colours/trial.md'].replace('peat: 4 drops', 'soot: 6 drops');
    const roomy = { ...FILES, 'book.md': '---\ntitle: A Small Book\ncup: 600 ml\n---\n', 'colours/trial.md': black };
    const { book } = loadBook(await smallBook(roomy));
    const recipe = required(book!.recipes, 'trial');
    const target = required(book!.targets, recipe.target!);
    const { plasticAlone, ...found } = lettingDownFor(book!, recipe, recipe.cups[0]!, target);
    const alone = 'With plastic alone: no closer than it is now.\n\nWith plastic and something to correct it:\n';
    expect(printedCutBack('body', 'Let it down.', found, book!)).toContain(alone);
    expect(printedCutBack('body', 'Let it down.', { ...found, plasticAlone: plasticAlone! }, book!)).not.toContain(
      alone,
    );
  });

  test('let-down RECIPE says that a cup that you can see through needs no plastic', async () => {
    const { code, out } = await cupbook('let-down', 'trial');
    expect(code).toBe(0);
    expect(out).toContain('body now: ');
  });
});

describe('cupbook substitute', () => {
  test('substitute RECIPE MATERIAL lists what can stand for it', async () => {
    const { code, out } = await cupbookOf({ 'shelf/colorants/sod.md': SOD }, 'substitute', 'trial', 'peat');
    expect(code).toBe(0);
    expect(out).toMatch(/^body: Closest to Peat here is \d drops of Sod: .*\(expect ΔE/);
    expect(out).toMatch(/One for one, against the cup with Peat:\n {2}\d drops of Sod; /);
    expect(out).not.toContain('Remixed without it:\n  4 drops of Sod;');
  });

  test('substitute of what nothing comes near says so once, and lists no other colour', async () => {
    const { code, out } = await cupbook('substitute', 'trial', 'peat');
    expect(code).toBe(0);
    expect(out).toMatch(
      /^body: Nothing on the shelf can replace Peat here\. The closest is .*: plainly another colour \(expect ΔE \d+, nine in ten within \d+\)\.\n/,
    );
  });

  test('substitute of the plastic says that it is the plastic', async () => {
    const { code, out } = await cupbook('substitute', 'trial', 'supple');
    expect(code).toBe(1);
    expect(out).toContain('body: Supple is the plastic; `substitute` is for what colours it.');
  });

  test('substitute of what is not in the recipe is a sentence', async () => {
    expect((await cupbook('substitute', 'trial', 'ivory')).err).toBe('Trial has no Ivory in it: peat.\n');
  });
});

describe('a look at a cup', () => {
  const look = (white: string, black: string): string => `{ over-white: ${white}, over-black: ${black} }`;
  const log = (...steps: readonly string[]): string =>
    `---\ntitle: Trial\nmold: minnow-3\nfor: cast\ncups:\n  body:\n    plastic: 120 ml supple\n    log:\n${steps.map((step) => `      - { ${step} }\n`).join('')}---\n`;
  const cast = (seen: string): string => `---\ntitle: Cast\nmold: minnow-3\nparts:\n  body: ${seen}\n---\n`;

  test.each([
    ['no screen shows', look('{ lab: [60, 90, 60] }', '{ lab: [30, 60, 40] }')],
    ['no thing has', look('{ lab: [12.5, -80.25, 110.5] }', '{ lab: [3, 40, -100] }')],
    ['was measured under a lamp', look('{ lab: [70.1, 40.5, 60], light: A }', '{ lab: [40.2, 20, 30], light: A }')],
  ])('next --json of a target seen as itself is ΔE 0, of a colour that %s', async (_, seen) => {
    const files = {
      'targets/cast.md': cast(seen),
      'colours/trial.md': log(`add: { peat: 4 drops }, pour: 14 ml, seen: ${seen}`),
    };
    const { out, code } = await cupbookOf(files, 'next', 'trial', '--json');
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject([{ next: { now: { deltaE: 0, within: true } } }]);
  });

  test('that moved with nothing logged is asked about by next and by let-down', async () => {
    const first = 'add: { peat: 4 drops }, pour: 14 ml, seen: { over-white: "#c8a47c" }';
    const files = {
      'targets/cast.md': cast('{ over-white: "#8a6844" }'),
      'colours/trial.md': log(first, 'pour: 14 ml, seen: { over-white: "#8a6844" }'),
    };
    for (const command of ['next', 'let-down']) {
      const { out, code } = await cupbookOf(files, command, 'trial');
      expect(code).toBe(0);
      expect(out).toMatch(
        /^body now: within tolerance: you won’t see it \(ΔE [^)]*\)\nbody: first heat\nNothing is logged since round 1, but the colour has changed/,
      );
      expect(out).toMatch(/Did you add what was proposed: .*\?\nWrite what went in .* `add: \{\}` there/);
    }
    const told = { ...files, 'colours/trial.md': log(first, 'add: {}, pour: 14 ml, seen: { over-white: "#8a6844" }') };
    expect((await cupbookOf(told, 'next', 'trial')).out).toMatch(
      /\nLeave it as it is: your looks can’t tell what would get closer\. Three photos of the target, a certified card in them, or an instrument would tell more \(in the target’s file, write their mean with doubt 3\.1\)\. Within tolerance/,
    );
  });
});

describe('two sides that no bait has', () => {
  const sides = (rest: string): Readonly<Record<string, string>> => ({
    'targets/glass.md': `---\ntitle: Glass\nmold: minnow-3\n${rest}parts:\n  back: { over-white: "#5b4a2f", over-black: "#483a26" }\n  belly: { over-white: "#cdb98c", over-black: "#97865f" }\n---\n`,
    'colours/pane.md':
      '---\ntitle: Pane\npattern: laminate\nmold: minnow-3\nfor: glass\ncups:\n  back: { plastic: 60 ml supple, add: { soot: 2 drops } }\n  belly: { plastic: 60 ml supple }\n---\n',
  });

  test('are asked about once, first of all, by match, next and check, and the search goes on', async () => {
    const recipes = await smallBook({ ...FILES, ...sides('') });
    const asks =
      /^These two can’t be the sides of one bait: the belly lets 9 times as much light through as the back.*`apart: true`/;
    for (const line of [
      ['match', 'glass'],
      ['next', 'pane'],
    ]) {
      const { code, out } = await cupbookIn(recipes, ...line);
      expect(code).toBe(0);
      expect(out).toMatch(asks);
      expect(out.match(/These two/g)).toHaveLength(1);
      expect(out).toMatch(/Supple/);
      const told = JSON.parse((await cupbookIn(recipes, ...line, '--json')).out);
      expect(told[0].asks).toMatchObject({ more: 'belly', less: 'back', times: 9 });
    }
    const checked = await cupbookIn(recipes, 'check');
    expect(checked.code).toBe(0);
    expect(checked.err + checked.out).toContain('targets/glass.md:4:1 warning target/unlike-sides');
  });

  test.each(['apart: true\n', 'apart: false\n'])('are not asked about where the target says %j', async (rest) => {
    const recipes = await smallBook({ ...FILES, ...sides(rest) });
    for (const line of [['match', 'glass'], ['next', 'pane'], ['check']]) {
      const { out, err } = await cupbookIn(recipes, ...line);
      expect(out + err).not.toMatch(/These two|unlike-sides/);
    }
  });
});
