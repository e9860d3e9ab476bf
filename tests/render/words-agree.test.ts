import { describe, expect, test } from 'vitest';
import { opacityClass } from '../../src/book/recipes/facets.ts';
import { colourEntry, coloursByHue, lookInHue } from '../../src/render/colour-entry.ts';
import { paths } from '../../src/render/links.ts';
import { opacityName } from '../../src/render/opacity-words.ts';
import { searchRecords } from '../../src/render/search-records.ts';
import { OPACITY_CLASSES } from '../../src/tables/opacity-classes.ts';
import { allByRole, byRole, nameOf, wordsIn } from '../page-dom.ts';
import { DEMO_BOOK } from './demo-book.ts';
import { bookOf, readPage, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

const [HOME, FIND] = [await readPage('home', '', DEMO_BOOK), await readPage('find', '', DEMO_BOOK)];

describe('how much a colour hides', () => {
  test('opacityClass(ratio) has a word for every contrast ratio, from its bound on', () => {
    for (const { word, from } of OPACITY_CLASSES) expect(opacityClass(from).word).toBe(word);
    expect([0, 0.34, 0.59, 0.89, 1].map((ratio) => opacityClass(ratio).word)).toEqual([
      'clear',
      'clear',
      'thin',
      'thick',
      'opaque',
    ]);
  });

  test.each([...DEMO_BOOK.recipes, ...DEMO_BOOK.looks].map((colour) => [colour.id, colour] as const))(
    '%s: its page, the wall and Find say the same word',
    async (id, { body, facets, pattern }) => {
      const { word, said } = opacityClass(body.contrastRatio);
      expect(facets.opacity).toBe(word);
      const looks = byRole(await readPage('recipe', id, DEMO_BOOK), 'region', { name: 'How it looks' });
      const told = allByRole(looks, 'term').find((term) => /^Body\b/.test(wordsIn(term)))!;
      expect(/^[\w-]+/.exec(wordsIn(told.nextElementSibling!))![0].toLowerCase()).toBe(said);
      const record = searchRecords(DEMO_BOOK).find(({ url }) => url === paths.recipe(id))!;
      expect(record.filters.opacity).toEqual([said]);
      expect(record.meta.about).toContain(`${pattern}, ${said}`);
    },
  );

  test('the wall and the list of Find have the word beside every name', async () => {
    for (const { id, pattern, facets } of DEMO_BOOK.recipes) {
      for (const page of [HOME, FIND]) {
        const row = page.querySelector(`a[href$="/${paths.recipe(id)}"]`)!.closest('li')!;
        expect([id, wordsIn(row).includes(`${pattern}, ${opacityName(facets.opacity)}`)]).toEqual([id, true]);
      }
    }
  });
});

test('the wall and Find say what each word under a name means, and the wall what the strip under a bait is', () => {
  const words = new Set(DEMO_BOOK.recipes.flatMap(({ pattern, facets }) => [pattern, opacityName(facets.opacity)]));
  for (const page of [HOME, FIND])
    expect(allByRole(page, 'term').map(wordsIn)).toEqual(expect.arrayContaining([...words]));
  expect(wordsIn(HOME)).toMatch(/the strip the plastic as thick as the bait’s body \(left\) and as its thin part/);
});

describe('the hue that a colour is filed under', () => {
  const marble = DEMO_BOOK.recipes.find(({ id }) => id === 'millrace-marble')!;

  test('is that of each cup where they are seen side by side, not of a mean that no eye sees', () => {
    expect(marble.facets.hueFamilies).toEqual(['green', 'grey']);
    expect(DEMO_BOOK.recipes.find(({ id }) => id === 'lit-wick')!.facets.hueFamilies).toEqual(['black', 'orange']);
    expect(DEMO_BOOK.recipes.find(({ id }) => id === 'alder-smoke')!.facets.hueFamilies).toEqual(['brown']);
  });

  test('has it once on the wall and in the list of Find, under its largest cup’s', () => {
    const groups = coloursByHue(DEMO_BOOK).filter(({ entries }) => entries.some(({ id }) => id === marble.id));
    expect(groups.map(({ hue }) => hue)).toEqual(['green']);
    for (const page of [HOME, FIND])
      expect(page.querySelectorAll(`main a[href$="${paths.recipe(marble.id)}"]`)).toHaveLength(1);
  });

  test('finds it by the hue of either cup, and its page leads to both', async () => {
    const record = searchRecords(DEMO_BOOK).find(({ url }) => url === paths.recipe(marble.id))!;
    expect(record.filters.hue).toEqual(['green', 'grey']);
    const [hues] = allByRole(byRole(await readPage('recipe', marble.id, DEMO_BOOK), 'article'), 'listitem');
    const links = allByRole(hues!, 'link').map((link) => [nameOf(link), link.getAttribute('href')]);
    expect(links).toEqual([
      ['Green', '../../#hue-green'],
      ['Grey', '../../find/?hue=grey'],
    ]);
  });

  test('counts every colour of the wall once', () => {
    const ids = coloursByHue(DEMO_BOOK).flatMap(({ entries }) => entries.map(({ id }) => id));
    expect(ids).toHaveLength(DEMO_BOOK.recipes.length + DEMO_BOOK.looks.length);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('lookInHue(entry, hue) is the cup of that family', () => {
    const entry = colourEntry(DEMO_BOOK, marble.id)!;
    expect(lookInHue(entry, 'grey')).toBe(marble.cups[1]!.body);
    expect(lookInHue(entry, 'green')).toBe(marble.cups[0]!.body);
    expect(lookInHue(colourEntry(DEMO_BOOK, 'alder-smoke')!, 'brown')).toBe(
      DEMO_BOOK.recipes.find(({ id }) => id === 'alder-smoke')!.body,
    );
  });

  test('has the colours of that cup beside its name', () => {
    const green = byRole(FIND, 'heading', { name: 'Green' }).nextElementSibling!;
    const row = green.querySelector(`a[href$="${paths.recipe(marble.id)}"]`)!;
    expect(row.querySelector(`[fill="${marble.cups[0]!.body.overWhite.hex}"]`)).not.toBeNull();
  });

  test('no id stands on the wall twice', () => {
    const ids = [...HOME.querySelectorAll('[id]')].map(({ id }) => id);
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
  });
});

describe('a cup with no colour in it', () => {
  const clear = bookOf({
    ...SAMPLE_FILES,
    'colours/plain.md':
      '---\ntitle: Plain\npattern: solid\nmold: minnow-3\ncups:\n  body:\n    plastic: 100 ml supple\n---\n',
  });

  test('is clear, not white', async () => {
    expect(clear.recipes.find(({ id }) => id === 'plain')!.facets.hueFamilies).toEqual(['clear']);
    expect(
      allByRole(await readPage('recipe', 'plain', clear), 'link', { name: 'Clear, no colour in it' }),
    ).toHaveLength(1);
    expect(SAMPLE_BOOK.recipes.length).toBe(clear.recipes.length - 1);
  });

  test('says so where others say how near they come out', async () => {
    const off = byRole(await readPage('recipe', 'plain', clear), 'region', { name: 'How far off' });
    expect(allByRole(off, 'heading').map(nameOf)).not.toContain('Batch to batch');
    expect(wordsIn(off)).toContain('every batch is as clear as the plastic');
  });
});
