import Color from 'colorjs.io';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import type { CardPrint } from '../../src/book/model/card-print.ts';
import { publishedBook } from '../../src/book/publish/published-book.ts';
import { labFromLinear, linearFromLab } from '../../src/optics/display.ts';
import { SMALL_BOOK } from '../small-book.ts';

function compiled(card: string): ReturnType<typeof compileBook> {
  const files = { ...SMALL_BOOK, 'book.md': `---\ntitle: A Small Book\n${card}\n---\nOurs.\n` };
  return compileBook(Object.entries(files).map(([path, text]) => ({ path, text })));
}

const printOf = (card: string): CardPrint | undefined => compiled(`measuring-card: ${card}`).book!.measuringCard;

/** What is told of a card, as place, what was found, what was expected and what to do. */
const told = (card: string): readonly string[] =>
  compiled(`measuring-card: ${card}`).diagnostics.map(
    ({ code, start, found, expected, fix }) =>
      `${start.line}:${start.column} ${code}: ${found}, expected ${expected} → ${fix}`,
  );

const GREYS = '["#cccccc", "#a0a0a0", "#787878", "#505050", "#303030"]';

test('a book that says nothing of its card knows nothing of it; one that says its length knows that', () => {
  expect(compiled('').book!.measuringCard).toBeUndefined();
  expect(printOf('{ scale: 79.6 mm }')).toEqual({ scaleMm: 79.6 });
  expect(printOf('{ scale: 3.15 in }')!.scaleMm).toBeCloseTo(80.01, 9);
  expect(printOf('{ paper: "#f0f0ee" }')!.scaleMm).toBe(80);
});

test('linearFromLab(lab) is what another library says, and the way back of labFromLinear', () => {
  for (const [L, a, b] of [
    [94.2, 0.4, -2.6],
    [50, 20, -30],
    [21.4, 0.2, 0.6],
  ] as const) {
    const [r, g, blue] = new Color('lab-d65', [L, a, b]).to('srgb-linear').coords as [number, number, number];
    const ours = linearFromLab({ L, a, b });
    // The two take the white of D65 with other last digits.
    for (const [one, other] of [
      [ours.r, r],
      [ours.g, g],
      [ours.b, blue],
    ] as const)
      expect(Math.abs(one - other)).toBeLessThan(1e-3);
  }
  const part = fc.double({ min: 0, max: 1.2, noNaN: true });
  fc.assert(
    fc.property(part, part, part, (r, g, b) => {
      const back = linearFromLab(labFromLinear({ r, g, b }));
      expect(Math.abs(back.r - r) + Math.abs(back.g - g) + Math.abs(back.b - b)).toBeLessThan(1e-6);
    }),
  );
});

test('a certified card has reflectances in linear light: of hex by the formula of sRGB, of Lab by that of CIELAB', () => {
  const print = printOf(`{ paper: { lab: [95, 0, 0] }, black: "#202020", greys: ${GREYS} }`)!;
  expect(print.paper!.g).toBeCloseTo(((95 + 16) / 116) ** 3, 3);
  expect(print.black!.r).toBeCloseTo(((0x20 / 255 + 0.055) / 1.055) ** 2.4, 4);
  expect(print.greys!.map(({ g }) => g)).toEqual(
    [0xcc, 0xa0, 0x78, 0x50, 0x30].map((value) => expect.closeTo(((value / 255 + 0.055) / 1.055) ** 2.4, 4)),
  );
});

test('what cannot have been printed is told with its cure, and the book goes without it', () => {
  expect(told('{ scale: 60 mm }')).toEqual([
    '3:26 book/measuring-card: 60 mm for the printed 80 mm, expected 70 to 90 mm → measure the printed 80 mm again',
  ]);
  expect(told('{ paper: "#f4f4f4", greys: ["#cccccc", "#a0a0a0"] }')).toEqual([
    '3:37 book/measuring-card: 2 greys, expected 5, the lightest first → measure the upper row from left to right',
  ]);
  expect(told(`{ greys: ${GREYS} }`)[0]).toMatch(/greys without `paper`, expected the bare paper/);
  expect(told('{ paper: "#f4f4f4", greys: ["#cccccc", "#787878", "#a0a0a0", "#505050", "#303030"] }')[0]).toMatch(
    /grey 3 with L 65\.\d after grey 2 with L 50\.\d, expected each darker than the one before → measure the upper row from left to right/,
  );
  expect(told(`{ paper: "#c0c0c0", greys: ${GREYS} }`)[0]).toMatch(/grey 1 with L 82 after paper with L 77\.\d/);
  expect(told(`{ paper: "#f4f4f4", black: "#606060", greys: ${GREYS} }`)[0]).toMatch(
    /black with L 40\.\d, expected at most that of the darkest grey, 19\.\d → measure the black half again/,
  );
  for (const [card, left] of [
    ['{ scale: 60 mm, paper: "#f4f4f4" }', ['paper', 'scaleMm']],
    ['{ paper: "#f4f4f4", black: "#202020", greys: ["#cccccc"] }', ['black', 'paper', 'scaleMm']],
  ] as const) {
    const print = printOf(card)!;
    expect(Object.keys(print).sort()).toEqual(left);
    expect(print.scaleMm).toBe(80);
  }
});

test('a black that is printed as the darkest grey is, is told nothing of', () => {
  expect(told(`{ paper: "#f4f4f4", black: "#313131", greys: ${GREYS} }`)).toEqual([]);
});

test('readers get nothing of the card that the maker has printed', () => {
  const { book } = compiled(`measuring-card: { scale: 79.6 mm, paper: "#f4f4f4", greys: ${GREYS} }`);
  expect(book!.measuringCard).toBeDefined();
  expect(publishedBook(book!)).not.toHaveProperty('measuringCard');
});
