import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { blockHeight, textWidthOf } from '../../src/render/card/block-height.ts';
import { TYPE } from '../../src/render/card/card-type.ts';
import { type CardContent, cardContent } from '../../src/render/card/content.ts';
import { CARD_FORMATS, type CardFormat, fitCard } from '../../src/render/card/fit.ts';
import { letterWidths } from '../../src/render/card/letter-widths.ts';
import { textWidth } from '../../src/render/card/text-lines.ts';
import { cardSides } from '../../src/render/card/view.ts';
import { html } from '../../src/render/html.ts';
import { book, connect, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const FONTS = { text: '400 1000px "Book Text"', bold: '700 1000px "Book Text"', title: '700 1000px "Book Title"' };
const PX_PER_MM = 96 / 25.4;

/** A card with the book’s type loaded. */
const openCard = (): ReturnType<typeof visit> => visit(browser, `colours/${book().recipes[0]!.id}/card/`);

/** Widths of texts in a face, as parts of its size. */
const measured = (page: Page, font: string, texts: readonly string[]): Promise<readonly number[]> =>
  page.evaluate(
    async ([face, all]) => {
      await document.fonts.load(face);
      const canvas = document.createElement('canvas').getContext('2d')!;
      canvas.font = face;
      return all.map((text) => canvas.measureText(text).width / 1000);
    },
    [font, texts] as const,
  );

test('letters of the book’s type are as wide as its table says, and no text of a card is wider than is counted', async () => {
  const { page, close } = await openCard();
  const texts = book().recipes.flatMap((recipe) => {
    const { title, batch, heat, cautions, cups } = cardContent(book(), recipe);
    const rows = cups.flatMap(({ rows, notes }) => [
      ...rows.flatMap(({ measure, name, note = '', weight = '' }) => [measure, name, note, weight]),
      ...notes,
    ]);
    return [title, batch, ...heat, ...cautions, ...rows];
  });
  for (const type of ['text', 'bold', 'title'] as const) {
    const table = [...letterWidths(type)];
    expect(table.length).toBeGreaterThan(190);
    const seen = await measured(
      page,
      FONTS[type],
      table.map(([code]) => String.fromCodePoint(code)),
    );
    for (const [index, [code, width]] of table.entries())
      expect(Math.abs(seen[index]! - width), `U+${code.toString(16)} ${type}`).toBeLessThan(0.0006);
    const wide = await measured(page, FONTS[type], texts);
    const tooWide = texts.filter((text, index) => wide[index]! > textWidth(text, type) + 0.001);
    expect(tooWide).toEqual([]);
  }
  await close();
});

/** What is higher than was counted, or is cut off, or runs into what follows, of the cards on a page; heights in mm. */
const laidOut = (page: Page): Promise<{ readonly blocks: readonly number[][]; readonly faults: readonly string[] }> =>
  page.evaluate((perMm) => {
    const faults: string[] = [];
    const blocks = [...document.querySelectorAll<HTMLElement>('[data-card]')].map((card) => {
      const name = `${card.dataset.card} ${card.querySelector('.card-foot')?.textContent}`;
      const frame = card.getBoundingClientRect();
      const foot = card.querySelector('.card-foot')!.getBoundingClientRect();
      const parts = [...card.querySelectorAll<HTMLElement>('.card-body > :not(.card-notes)')];
      const end = parts.at(-1)?.getBoundingClientRect().bottom ?? 0;
      if (foot.bottom > frame.bottom - 4.5 * perMm) faults.push(`${name}: foot at ${foot.bottom - frame.top} px`);
      if (end > foot.top + 0.5) faults.push(`${name}: ${end - foot.top} px over the foot`);
      if (card.scrollWidth > card.clientWidth + 1) faults.push(`${name}: ${card.scrollWidth} px wide`);
      return parts.map((part) => part.getBoundingClientRect().height / perMm);
    });
    return { blocks, faults };
  }, PX_PER_MM);

/** Sets cards of these contents as they are printed, and compares them with what was counted. */
async function setsAsCounted(page: Page, contents: readonly CardContent[], format: CardFormat): Promise<void> {
  const fitted = contents.map((content) => fitCard(content, format));
  const markup = fitted.flatMap((card) => cardSides(card, html``)).map(String);
  await page.emulateMedia({ media: 'print' });
  await page.evaluate((cards) => {
    document.querySelector('.papers')!.innerHTML = cards;
  }, markup.join(''));
  const { blocks, faults } = await laidOut(page);
  expect(faults).toEqual([]);
  const width = textWidthOf(format.widthMm);
  const counted = fitted.flatMap(({ content, sides }) =>
    sides.map((side) => side.map((block) => [block.kind, blockHeight(block, content, width)] as const)),
  );
  expect(blocks.map(({ length }) => length)).toEqual(counted.map(({ length }) => length));
  for (const [side, heights] of blocks.entries())
    for (const [index, height] of heights.entries()) {
      const [kind, most] = counted[side]![index]!;
      expect(height, `${kind} on side ${side}`).toBeLessThanOrEqual(most + 0.1);
    }
}

test.each(Object.values(CARD_FORMATS))('no part of a $name card is higher than was counted', async (format) => {
  const { page, close } = await openCard();
  await setsAsCounted(
    page,
    book().recipes.map((recipe) => cardContent(book(), recipe)),
    format,
  );
  await close();
});

test('a long recipe with names that break badly goes on over more cards, and none of it is cut off', async () => {
  const { page, close } = await openCard();
  const content = cardContent(book(), book().recipes[0]!);
  const names = [
    'Peat',
    'Quick Waxy Fjord .040 qj fT',
    'Unbreakable'.repeat(8),
    'Ősz és Δ 雨の色 hexagon',
    'A'.repeat(70),
  ];
  const contents = names.flatMap((name, at): readonly CardContent[] => {
    const [cup] = content.cups;
    const rows = Array.from({ length: 12 }, () => ({
      measure: '1\u00a0tsp\u00a0+ 1/2\u00a0tsp\u00a0+ 1\u00a0smidgen',
      weighs: '=\u00a012.01\u00a0g',
      name,
      weight: 'exactly 0.071\u00a0g',
      note: `about 4800 flakes a bait; ${name}`,
      plastic: false,
    }));
    const cups = [0, 1].map((index) => ({ ...cup!, name: `${name} ${index}`, rows: rows.slice(index * 5) }));
    const steps = Array.from({ length: 16 }, () => [`Stir ${name} into the `, { cup: name }, ' cup, slowly.']);
    const long = { ...content, id: `long-${at}`, title: name.slice(0, 40), cups, steps, heat: [...content.heat, name] };
    return [
      long,
      {
        ...long,
        id: `marked-${at}`,
        mark: 'Not published',
        limit: { words: 'No maximum on file: read the data sheets.' },
      },
    ];
  });
  for (const format of Object.values(CARD_FORMATS)) await setsAsCounted(page, contents, format);
  await close();
});

test('a card has one set of sizes whatever its format, and nothing in it is below 8 points', async () => {
  const sizes = new Map<string, readonly string[]>();
  const id = 'eel-bridge';
  for (const path of [`colours/${id}/card/`, `colours/${id}/card-4x6/`, 'cards/a4/', 'cards/letter/']) {
    const { page, close } = await visit(browser, path);
    await page.emulateMedia({ media: 'print' });
    const found = await page.evaluate(() => {
      const all = new Set<number>();
      for (const card of document.querySelectorAll('[data-card]')) {
        const texts = document.createTreeWalker(card, NodeFilter.SHOW_TEXT);
        for (let node = texts.nextNode(); node; node = texts.nextNode())
          if (node.nodeValue?.trim() !== '' && !node.parentElement?.closest('svg'))
            all.add(Number.parseFloat(getComputedStyle(node.parentElement!).fontSize));
      }
      return [...all];
    });
    sizes.set(path, found.map((px) => (px / (96 / 25.4)).toFixed(2)).sort());
    await close();
  }
  const known = [...new Set(Object.values(TYPE).map((mm) => mm.toFixed(2)))].sort();
  for (const [path, found] of sizes) expect({ path, found }).toEqual({ path, found: known });
  for (const mm of Object.values(TYPE)) expect((mm / 25.4) * 72).toBeGreaterThanOrEqual(8);
});
