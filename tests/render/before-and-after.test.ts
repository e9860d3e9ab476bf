import { describe, expect, test } from 'vitest';
import { whatTaught } from '../../src/book/learning/what-taught.ts';
import { beforeAndAfter } from '../../src/book/shelf/before-and-after.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { allByRole, byRole, documentOf, nameOf, wordsIn } from '../page-dom.ts';
import { bookOf, MAKERS_BOOK, pageOf, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

const page = async (id: string, book = MAKERS_BOOK): Promise<Document> =>
  documentOf(await pageOf('material', id, book));
const materialOf = (book: typeof MAKERS_BOOK, id: string) => book.materials.find((material) => material.id === id)!;

/** The same book, of which nothing was looked at. */
const unseen = bookOf(
  Object.fromEntries(
    Object.entries(SAMPLE_FILES)
      .filter(([path]) => !path.startsWith('chips/'))
      .map(([path, text]) => [path, text.replace(/^ +seen: \{.*\n/gm, '')]),
  ),
  'mine',
);

describe('a material that was looked at', () => {
  test('stands there as its file says, at its dose, and as the book believes now', async () => {
    const part = byRole(await page('peat'), 'region', { name: 'Before and after the looks' });
    const [pair, said, learned] = allByRole(part, 'img').map(nameOf);
    expect(pair).toMatch(/^Peat, left as its file says, right as the book believes now\. Left: .*over white.*Right: /);
    expect(said).toMatch(/^Peat in rising doses, as its file says\./);
    expect(learned).toMatch(/^Peat in rising doses, as the book believes now\./);
    const words = wordsIn(part);
    expect(words).toContain('20 drops in 100 ml, 3 mm thick.');
    expect(words).toMatch(/The difference between its file and what the book believes: .* \(ΔE [\d.]+\)\./);
    expect(words).toMatch(/4 looks have settled .* of the doubt that its file leaves \(\d+ %\)\./);
  });

  test('has the very colour of its label before, and the last step of its ladder is of what was learned', () => {
    const peat = materialOf(MAKERS_BOOK, 'peat');
    const { said, learned, gramsPerMl, thicknessMm, deltaE, ladders } = beforeAndAfter(peat, MAKERS_BOOK)!;
    expect([gramsPerMl, thicknessMm]).toEqual([peat.typical, 3]);
    expect(deltaE00(said.overWhite.lab, labFromHex('#8a5a2b'))).toBeLessThan(0.01);
    expect(deltaE).toBeCloseTo(
      Math.max(
        deltaE00(said.overWhite.lab, learned.overWhite.lab),
        deltaE00(said.overBlack.lab, learned.overBlack.lab),
      ),
      9,
    );
    expect(ladders.learned).toEqual(peat.ladder);
    expect(ladders.said).not.toEqual(peat.ladder);
  });

  test('names what has taught it, the most first, each with its looks and a link', async () => {
    const list = byRole(await page('peat'), 'region', { name: 'What taught it' });
    const { teachers, looks, share } = whatTaught(MAKERS_BOOK, materialOf(MAKERS_BOOK, 'peat'))!;
    expect(teachers.map(({ kind, id }) => `${kind} ${id}`).toSorted()).toEqual(['chip peat', 'recipe weir-foam']);
    expect(looks).toBe(teachers.reduce((sum, teacher) => sum + teacher.looks, 0));
    expect(share).toBeGreaterThan(0.1);
    expect(share).toBeLessThan(1);
    expect(teachers[0]!.share).toBeGreaterThanOrEqual(teachers[1]!.share);
    const items = allByRole(list, 'listitem');
    expect(items.map(wordsIn).join('\n')).toMatch(/2 looks, \d+ %/);
    const links = items.map((item) => allByRole(item, 'link')[0]!.getAttribute('href'));
    expect(links.toSorted()).toEqual(['#own-chips', '../../colours/weir-foam/']);
  });

  test('says to readers what published looks alone have taught', async () => {
    const black = materialOf(MAKERS_BOOK, 'lamp-black');
    expect(whatTaught(MAKERS_BOOK, black)!.teachers).toMatchObject([{ kind: 'chip', id: 'lamp-black', looks: 1 }]);
    expect(whatTaught(SAMPLE_BOOK, materialOf(SAMPLE_BOOK, 'lamp-black'))).toBeUndefined();
    expect(wordsIn(await page('lamp-black', SAMPLE_BOOK))).not.toMatch(/Zibeline|What taught it/);
  });

  test('says in words how surely it is known', async () => {
    const words = wordsIn(byRole(await page('peat'), 'region', { name: 'How its colour is known' }));
    expect(words).toMatch(/Learned from 4 looks/);
    expect(words).toMatch(/How far off a usual dose may be: .* \(expect ΔE [\d.]+, nine in ten within [\d.]+\)\./);
  });
});

describe('a material that nobody has looked at', () => {
  const headOf = (differs: boolean): string => (differs ? 'Its file, and what the book believes' : 'As its file says');

  test('stands there as its file says, with nothing beside it that looks alike', async () => {
    const document = await page('peat', unseen);
    const { differs } = beforeAndAfter(materialOf(unseen, 'peat'), unseen)!;
    const part = byRole(document, 'region', { name: headOf(differs) });
    expect(allByRole(part, 'img').map(nameOf)[0]).toMatch(/^Peat as its file says\./);
    expect(wordsIn(part)).toContain(
      'There is no look yet at anything with it in, so the shelf and the top of this page show what its file says.',
    );
    expect(wordsIn(document)).not.toContain('What taught it');
  });

  test('is shown in the label’s own colour, and what is believed since beside it where the two differ visibly', () => {
    for (const [id, colour] of [
      ['peat', '#8a5a2b'],
      ['lamp-black', '#202020'],
      ['ivory-pearl', '#e8e0cc'],
    ] as const) {
      const { said, deltaE } = beforeAndAfter(materialOf(unseen, id), unseen)!;
      expect(deltaE00(said.overWhite.lab, labFromHex(colour)), id).toBeLessThan(0.01);
      expect(deltaE, id).toBeLessThan(4);
    }
  });

  test('says why something else stands beside it, and only there', async () => {
    for (const id of ['peat', 'lamp-black', 'ivory-pearl']) {
      const { differs } = beforeAndAfter(materialOf(unseen, id), unseen)!;
      const part = byRole(await page(id, unseen), 'region', { name: headOf(differs) });
      expect(wordsIn(part).includes('The book trusts a label only so far'), id).toBe(differs);
      expect(allByRole(part, 'img').length, id).toBe(differs ? 3 : 1);
    }
  });

  test('has no such part where it is flake, or does not colour', async () => {
    for (const id of ['dust-008', 'salt'])
      expect(wordsIn(await page(id)), id).not.toMatch(/As its file says|Before and after/);
  });
});
