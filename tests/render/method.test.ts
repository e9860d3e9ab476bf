import { describe, expect, test } from 'vitest';
import { bookOf, pageOf, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

const page = await pageOf('method');

/** The sample book without some of its files, as its maker has it: readers are not shown what is in no recipe. */
function without(pattern: RegExp): Promise<string> {
  const files = Object.entries(SAMPLE_FILES).filter(([path]) => !pattern.test(path));
  return pageOf('method', '', bookOf(Object.fromEntries(files), 'mine'));
}

describe('the page that says how colours are computed', () => {
  test('stands in the contents of every page', async () => {
    expect(await pageOf('home')).toContain('href="./method/">Method</a>');
    expect(page).toContain('href="../method/" aria-current="page"');
  });

  test('has every part that it announces', () => {
    const announced = [...page.matchAll(/<li><a href="#([a-z]+)">/g)].map(([, id]) => id);
    expect(announced).toEqual([
      ...['light', 'thickness', 'mixing', 'layers', 'flake', 'known'],
      ...['sure', 'learning', 'lights', 'water', 'limits', 'sources'],
    ]);
    for (const id of announced) expect(page, id).toContain(`<h2 id="${id}">`);
  });

  test('draws from the materials of the book, and names them', () => {
    expect(page).toMatch(/id="absorber-title">Absorption and scattering of (?:Peat|Lamp Black)</);
    expect(page).toContain('id="scatterer-title">Absorption and scattering of Ivory Pearl');
    expect(page).toContain('Of the colours of this book <a href="../colours/');
  });

  test('gives every graph a title and a description', () => {
    const graphs = [...page.matchAll(/<svg class="graph"[^>]*aria-labelledby="([^"]+)"/g)];
    expect(graphs).toHaveLength(7);
    for (const [, ids] of graphs) {
      for (const id of ids!.split(' ')) expect(page).toMatch(new RegExp(`id="${id}">[^<]{5,}<`));
    }
  });

  test('links to the cautions where it speaks of heat', () => {
    expect(page).toContain('<a href="../care/">read the cautions</a> first');
  });

  test('says what each part rests on', () => {
    for (const source of ['Kubelka', 'Duncan', 'Saunderson', 'Cauchy', 'Allen', 'Sharma', 'CIE 015', 'Jerlov', 'Burns'])
      expect(page.slice(page.indexOf('id="sources"'))).toContain(source);
  });

  test('reads for a book that has less: no picture is drawn that has nothing to show', async () => {
    const plain = await without(/shelf\/flakes|colours|targets|lamp-black|ivory-pearl/);
    expect(plain).not.toContain('id="scatterer-title"');
    expect(plain).not.toContain('mean of the screen colours</li>');
    expect(plain).not.toContain('lines of sight have met a flake by then');
    expect(plain).toContain('16 mm</li>');
  });
});

test('the sample book has what the page is tested with', () => {
  expect(SAMPLE_BOOK.materials.filter(({ kind }) => kind === 'colorant').length).toBeGreaterThan(1);
});
