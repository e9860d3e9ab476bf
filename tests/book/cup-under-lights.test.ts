import { expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import type { CupLights } from '../../src/book/model/target.ts';
import type { Book } from '../../src/book/model.ts';
import { cupBody } from '../../src/optics/cup-body.ts';
import { USUAL_OPTICS } from '../../src/optics/optical-model.ts';
import { stackReflectances } from '../../src/optics/stack.ts';
import { BESIDE_GLOSS } from '../../src/optics/surface.ts';
import { tristimulus } from '../../src/optics/tristimulus.ts';
import { SMALL_BOOK } from '../small-book.ts';

const FILES = {
  ...SMALL_BOOK,
  'shelf/powders/ivory.md': '---\ntitle: Ivory\nlook: { kind: pearl, colour: "#ece6d6", dose: 1 % }\n---\n',
  'colours/bog-pool.md':
    '---\ntitle: Bog Pool\nmold: minnow-3\nfor: pool\ncups:\n  body:\n    plastic: 100 ml supple\n    add: { peat: 12 drops, ivory: 1/8 tsp }\n---\nDark.\n',
};
const CLUE = 'over-white: "#808080"';

function compiled(target: string, more: Readonly<Record<string, string>> = {}): Book {
  const files = { ...FILES, ...more, 'targets/pool.md': `---\ntitle: The pool\nmold: minnow-3\n${target}\n---\n` };
  const { book, diagnostics } = compileBook(Object.entries(files).map(([path, text]) => ({ path, text })));
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  return book!;
}

const cupOf = (book: Book) => book.recipes[0]!.match!.cups[0]!;
const most = (lights: CupLights | undefined): number => Math.max(...lights!.views.map(({ deltaE }) => deltaE));

/** What the cup itself reflects over both cards, 0..1. */
function ownReflectances(): readonly (readonly number[])[] {
  const book = compiled(CLUE);
  const shelf = new Map(book.materials.map((material) => [material.id, material]));
  const { contents, plastics } = book.recipes[0]!.cups[0]!;
  const body = cupBody({ plastics, contents }, (name) => shelf.get(name)!, USUAL_OPTICS);
  const views = stackReflectances(
    [{ ...body, thickness: 9 }],
    [USUAL_OPTICS.backings.white, USUAL_OPTICS.backings.black],
    BESIDE_GLOSS,
    USUAL_OPTICS.path,
  );
  return views.map((view) => [...view]);
}

const measured = (white: readonly number[], black: readonly number[], gloss = 'excluded'): string =>
  [
    ['over-white', white],
    ['over-black', black],
  ]
    .map(
      ([view, R]) =>
        `${view}: { from: 380, gloss: ${gloss}, reflectance: [${(R as readonly number[]).map((share) => ((share + (gloss === 'included' ? 0.04 : 0)) * 100).toFixed(3)).join(', ')}] }`,
    )
    .join('\n');

const [WHITE, BLACK] = ownReflectances() as [readonly number[], readonly number[]];

/** A change of a reflectance that no eye sees by daylight: what is left of a hill without its part in X, Y and Z. */
function metamericBlack(): readonly number[] {
  const weights = (['X', 'Y', 'Z'] as const).map((axis) =>
    WHITE.map((_, band) => tristimulus(WHITE.map((_, other) => (other === band ? 1 : 0)))[axis]),
  );
  const dot = (one: readonly number[], other: readonly number[]): number =>
    one.reduce((sum, value, band) => sum + value * other[band]!, 0);
  const without = (v: readonly number[], axes: readonly (readonly number[])[]): readonly number[] =>
    axes.reduce(
      (left, axis) => left.map((value, band) => value - (axis[band]! * dot(left, axis)) / dot(axis, axis)),
      v,
    );
  const axes: (readonly number[])[] = [];
  for (const axis of weights) axes.push(without(axis, axes));
  return without(
    WHITE.map((_, band) => Math.exp(-(((band - 20) / 2) ** 2))),
    axes,
  );
}

test('a cup and a target that reflects as it does are alike under every light, gloss or none', () => {
  for (const gloss of ['excluded', 'included']) {
    const { rounds, lights } = cupOf(compiled(measured(WHITE, BLACK, gloss)));
    expect(rounds[0]!.verdict.deltaE).toBeLessThan(0.02);
    expect(lights).toMatchObject({ basis: 'measured', views: [{ light: 'A' }, { light: 'LED-B1' }, { light: 'F11' }] });
    // Colours are kept to a hundredth of Lab: of the cup and of the target, by daylight and under the lamp.
    expect(most(lights)).toBeLessThan(0.03);
  }
});

test('a cup and a target that are alike by day part under a lamp where they reflect otherwise', () => {
  const hidden = metamericBlack();
  const changed = (R: readonly number[], size: number): readonly number[] =>
    R.map((share, band) => share + size * hidden[band]!);
  const { rounds, lights } = cupOf(compiled(measured(changed(WHITE, 0.04), changed(BLACK, 0.01))));
  expect(rounds[0]!.verdict.deltaE).toBeLessThan(0.05);
  expect(most(lights)).toBeGreaterThan(1);
});

test('a target of three numbers is estimated, and says so', () => {
  const { parts } = compiled(measured(WHITE, BLACK)).targets[0]!;
  const { overWhite, overBlack, reflectance } = parts[0]!;
  expect(reflectance!.overWhite).toHaveLength(36);
  const { lights } = cupOf(compiled(`over-white: "${overWhite.hex}"\nover-black: "${overBlack!.hex}"`));
  expect(lights!.basis).toBe('estimated');
  expect(most(lights)).toBeLessThan(5);
});

test('a round that the target cannot judge leaves the lights to the one before', () => {
  const log =
    'log: [{ add: { peat: 12 drops } }, { pour: 10 ml, seen: { over-white: "#8a6a48" } }, { add: { peat: 2 drops } }, { pour: 10 ml, seen: { over-black: "#302418" } }]';
  const { rounds, lights } = cupOf(
    compiled('over-white: "#8a6a48"', {
      'colours/bog-pool.md': `---\ntitle: Bog Pool\nmold: minnow-3\nfor: pool\ncups:\n  body:\n    plastic: 100 ml supple\n    ${log}\n---\nDark.\n`,
    }),
  );
  expect(rounds.map(({ number }) => number)).toEqual([1]);
  for (const { deltaE } of lights!.views) expect(deltaE).toBeLessThan(20);
  expect(Number.isFinite(most(lights))).toBe(true);
});
