import jsQR from 'jsqr';
import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { grown } from '../../src/measuring-card/box.ts';
import {
  type Box,
  CARDS,
  GREY_VALUES,
  type MeasuringCard,
  type Place,
} from '../../src/measuring-card/measuring-card.ts';
import { foundMarks } from '../measuring-card/found-marks.ts';
import { type Painted, type PaintedPage, paintedPages, paintedSvg } from './painted-pdf.ts';
import { book, connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const A4 = { paper: 'a4', width: 210, height: 297 } as const;
const LETTER = { paper: 'letter', width: 215.9, height: 279.4 } as const;
const SHEETS = [
  { ...A4, card: CARDS.small, count: 4 },
  { ...LETTER, card: CARDS.small, count: 4 },
  { ...A4, card: CARDS.large, count: 1 },
  { ...LETTER, card: CARDS.large, count: 1 },
] as const;

/** What is asked of a print, mm: so near everything lies to where a photo takes it to be. */
const NEAR_MM = 0.1;

/** What most printers leave bare along the edge of a paper, mm; from memory. */
const BARE_MM = 6.4;

/** Of the height of a line of text. */
const ROOM = 0.15;

/** Enough for the library to tell marks apart. */
const PX_PER_MM = 5;

/** The sheet as it comes out for a reader whose screen is dark and who prints no backgrounds. */
async function printed(url: string): Promise<readonly PaintedPage[]> {
  const { page, close } = await visit(browser, url, { colorScheme: 'dark' });
  const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: false });
  await close();
  return paintedPages(pdf);
}

/** One card of a sheet: from a place on the card to that on the paper, by the one mark that is its first. No scale: a mm is a mm. */
type OnPaper = (place: Place) => Place;

async function cardsOn(page: PaintedPage, { marks: [first] }: MeasuringCard): Promise<readonly OnPaper[]> {
  const { data, info } = await sharp(Buffer.from(paintedSvg(page, PX_PER_MM)))
    .flatten({ background: '#fff' })
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const corners = squares(page, first!.width).flat();
  return foundMarks({ width: info.width, height: info.height, data })
    .filter(({ id }) => id === first!.id)
    .map((mark) => {
      // The library says which corner is which; where it lies, the drawing says.
      const [leftTop, rightTop] = mark.corners.map(({ x, y }) =>
        nearest(corners, { x: x / PX_PER_MM, y: y / PX_PER_MM }),
      ) as [Place, Place];
      const length = Math.hypot(rightTop.x - leftTop.x, rightTop.y - leftTop.y);
      const [cos, sin] = [(rightTop.x - leftTop.x) / length, (rightTop.y - leftTop.y) / length];
      return ({ x, y }) => {
        const [dx, dy] = [x - first!.x, y - first!.y];
        return { x: leftTop.x + dx * cos - dy * sin, y: leftTop.y + dx * sin + dy * cos };
      };
    });
}

const apart = (one: Place, other: Place): number => Math.hypot(one.x - other.x, one.y - other.y);

function nearest(places: readonly Place[], to: Place): Place {
  return places.reduce((best, place) => (apart(place, to) < apart(best, to) ? place : best));
}

const placesOf = ({ subpaths }: Painted): readonly Place[] => subpaths.flat().map(([x, y]) => ({ x, y }));

const cornersOf = ({ x, y, width, height }: Box): readonly Place[] => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
];

/** Corners of each plain area of a colour. */
function areas(page: PaintedPage, colour: string): readonly (readonly Place[])[] {
  return page.paths
    .filter((path) => path.colour === colour && path.lineMm === undefined && path.subpaths.length === 1)
    .map(placesOf);
}

/** Black squares of a size. */
function squares(page: PaintedPage, side: number): readonly (readonly Place[])[] {
  return areas(page, '#000000').filter((places) => {
    const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
    return [xs, ys].every((each) => Math.abs(Math.max(...each) - Math.min(...each) - side) < 1);
  });
}

/** How far a box is off on paper, mm: of the area that comes nearest, the corner that is farthest off, either way round. */
function offBy(drawn: readonly (readonly Place[])[], box: Box, onPaper: OnPaper): number {
  const asked = cornersOf(box).map(onPaper);
  const off = drawn.map((corners) =>
    Math.max(
      ...asked.map((corner) => apart(corner, nearest(corners, corner))),
      ...corners.map((corner) => apart(corner, nearest(asked, corner))),
    ),
  );
  return Math.min(...off);
}

const greyOf = (step: number): string => `#${GREY_VALUES[step]!.toString(16).padStart(2, '0').repeat(3)}`;

describe.each(SHEETS)('the sheet of the $card.kind card on $paper', ({ card, paper, width, height, count }) => {
  const url = `measuring-card/${card.kind}-${paper}/`;
  let pages: readonly PaintedPage[];
  beforeAll(async () => {
    pages = await printed(url);
  });

  test('leads a phone from the code of every card to the page that measures photos', async () => {
    const [page] = pages as [PaintedPage];
    const perMm = 12;
    const paper = sharp(Buffer.from(paintedSvg(page, perMm))).flatten({ background: '#fff' });
    const cards = await cardsOn(page, card);
    expect(cards).toHaveLength(count);
    for (const onPaper of cards) {
      const corners = cornersOf(grown(card.address, 1.5)).map(onPaper);
      const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
      const [left, top] = [Math.round(Math.min(...xs) * perMm), Math.round(Math.min(...ys) * perMm)];
      const { data, info } = await paper
        .clone()
        .extract({
          left,
          top,
          width: Math.round(Math.max(...xs) * perMm) - left,
          height: Math.round(Math.max(...ys) * perMm) - top,
        })
        .ensureAlpha()
        .raw()
        .toBuffer({ resolveWithObject: true });
      expect(jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data).toBe(`${book().address}photograph/`);
    }
  });

  test('is one page of its paper, and nothing of a card lies where a printer leaves paper bare', async () => {
    expect(pages).toHaveLength(1);
    const [page] = pages as [PaintedPage];
    // Chromium rounds paper to whole pixels of 1/96 inch.
    expect(Math.abs(page.widthMm - width)).toBeLessThan(0.3);
    expect(Math.abs(page.heightMm - height)).toBeLessThan(0.3);
    const cards = await cardsOn(page, card);
    expect(cards).toHaveLength(count);
    const printedParts = [...card.marks, ...card.greys, card.window, card.scale, ...card.words, card.address];
    for (const place of cards.flatMap((onPaper) => printedParts.flatMap(cornersOf).map(onPaper))) {
      expect(Math.min(place.x, place.y, page.widthMm - place.x, page.heightMm - place.y)).toBeGreaterThan(BARE_MM);
    }
  });

  test('has marks, greys and the black half within 0.1 mm of where a photo takes them to be, on each card', async () => {
    const [page] = pages as [PaintedPage];
    const { x, y, width: across, height: down } = card.window;
    const black: Box = { x: card.seamX, y, width: x + across - card.seamX, height: down };
    for (const onPaper of await cardsOn(page, card)) {
      for (const mark of card.marks)
        expect(offBy(squares(page, mark.width), mark, onPaper), `mark ${mark.id}`).toBeLessThan(NEAR_MM);
      for (const grey of card.greys)
        expect(offBy(areas(page, greyOf(grey.step)), grey, onPaper), `${grey.row} ${grey.step}`).toBeLessThan(NEAR_MM);
      expect(offBy(areas(page, '#000000'), black, onPaper)).toBeLessThan(NEAR_MM);
    }
  });

  test('has a scale whose ticks stand a millimetre apart, and whose 80 mm are 80 mm', async () => {
    const [page] = pages as [PaintedPage];
    const scales = page.paths.filter(({ lineMm, subpaths }) => lineMm !== undefined && subpaths.length === 81);
    expect(scales).toHaveLength(count);
    for (const onPaper of await cardsOn(page, card)) {
      const ticks = Array.from({ length: 81 }, (_, mm) => onPaper({ x: card.scale.x + mm, y: card.scale.y }));
      const off = scales.map(({ subpaths }) =>
        Math.max(...subpaths.map(([start], mm) => apart({ x: start![0], y: start![1] }, ticks[mm]!))),
      );
      expect(Math.min(...off)).toBeLessThan(NEAR_MM);
    }
    for (const { subpaths } of scales) {
      const [from, to] = [subpaths[0]![0]!, subpaths[80]![0]!];
      expect(Math.abs(Math.hypot(to[0] - from[0], to[1] - from[1]) - 80)).toBeLessThan(NEAR_MM);
    }
  });

  test('has its words where no paper is read, in the typeface of the book', async () => {
    const { page, close } = await visit(browser, url);
    const texts = await page.locator('#the-card > g text').evaluateAll((all) =>
      all.map((text) => {
        const { x, y, width: across, height: down } = (text as SVGTextElement).getBBox();
        return { x, y, width: across, height: down, says: text.textContent };
      }),
    );
    await close();
    expect(texts.length).toBeGreaterThan(12);
    for (const { says, ...text } of texts) {
      // A line's box has room above and below that no letter here takes.
      const [top, bottom] = [text.y + ROOM * text.height, text.y + (1 - ROOM) * text.height];
      const isWithin = card.words.some(
        ({ x, y, width: across, height: down }) =>
          text.x >= x && text.x + text.width <= x + across && top >= y && bottom <= y + down,
      );
      expect(isWithin, `${says} ${JSON.stringify(text)}`).toBe(true);
    }
  });
});
