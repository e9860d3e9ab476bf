import { describe, expect, test } from 'vitest';
import { allByRole, byRole, documentOf, nameOf, wordsIn } from '../page-dom.ts';
import { DEMO_BOOK } from './demo-book.ts';
import { bookOf, pageOf, readPage, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

const page = await readPage('method');

/** The sample book without some of its files, as its maker has it: readers are not shown what is in no recipe. */
function without(pattern: RegExp): Promise<Document> {
  const files = Object.entries(SAMPLE_FILES).filter(([path]) => !pattern.test(path));
  return readPage('method', '', bookOf(Object.fromEntries(files), 'mine'));
}

describe('the page that says how colours are computed', () => {
  test('stands in the contents of every page', async () => {
    const link = (from: Document): Element =>
      byRole(byRole(from, 'navigation', { name: /^Parts/ }), 'link', { name: 'Method' });
    expect(link(await readPage('home')).getAttribute('href')).toBe('./method/');
    expect(link(page).getAttribute('aria-current')).toBe('page');
  });

  test('has every part that it announces', () => {
    const announced = allByRole(byRole(page, 'navigation', { name: 'On this page' }), 'link');
    expect(announced.map((link) => link.getAttribute('href'))).toEqual([
      ...['#light', '#thickness', '#mixing', '#layers', '#flake', '#known'],
      ...['#sure', '#learning', '#lights', '#water', '#limits', '#sources'],
    ]);
    for (const link of announced) expect(nameOf(page.querySelector(link.getAttribute('href')!)!)).toBe(nameOf(link));
  });

  test('draws from the materials of the book, and names them', () => {
    const drawn = allByRole(page, 'img').map(nameOf).join('\n');
    expect(drawn).toMatch(/^Absorption and scattering of (?:Peat|Lamp Black)\b/m);
    expect(drawn).toMatch(/^Absorption and scattering of Ivory Pearl\b/m);
    const colours = allByRole(page, 'paragraph').find((each) => wordsIn(each).includes('Of the colours in this book'))!;
    expect(allByRole(colours, 'link')[0]!.getAttribute('href')).toMatch(/^\.\.\/colours\//);
  });

  test('gives every graph a title and a description', () => {
    const graphs = [...page.querySelectorAll('svg.graph')];
    expect(graphs.length).toBe(10);
    for (const graph of graphs) {
      const parts = graph
        .getAttribute('aria-labelledby')!
        .split(' ')
        .map((id) => page.getElementById(id)!);
      expect(parts.map(({ nodeName }) => nodeName.toLowerCase())).toEqual(['title', 'desc']);
      for (const part of parts) expect(part.textContent!.length).toBeGreaterThanOrEqual(5);
    }
  });

  test('explains learning in pictures of the book’s own looks, with words that tell what they show', async () => {
    const part = byRole(page, 'region', { name: 'How the book learns' });
    const drawn = (from: Element): string => allByRole(from, 'img').map(nameOf).join('\n');
    expect(drawn(part)).toMatch(/^Light that (?:Peat|Lamp Black) leaves, by its label and after \d+ looks?\b/m);
    expect(drawn(part)).toMatch(/^A ray in clear plastic and one in cloudy plastic\b/m);
    expect(drawn(part)).toMatch(/what the nearest looks add to the model, over the dose of/m);
    const words = wordsIn(part);
    expect(words).toMatch(
      /Left, clear: light goes down and straight back, 12 mm in all\. Right, .*Ivory Pearl: this ray was turned \d+ times and travelled \d+ mm\./,
    );
    expect(words).toMatch(/The (?:dot is a look|dots are looks), at .* in 100 ml\./);
    // It has too few looks for a chart, and the demo book has not.
    expect(words).not.toContain('How well this book knew its colours');
    const demo = byRole(documentOf(await pageOf('method', '', DEMO_BOOK)), 'region', { name: 'How the book learns' });
    expect(drawn(demo)).toMatch(/^How far off the book would have been, look by look\b/m);
    expect(wordsIn(demo)).toMatch(/medians: ΔE [\d.]+ by the files alone, .* and ΔE [\d.]+ after \d+ looks\./);
  });

  test('draws no look that nobody had', async () => {
    const book = bookOf(
      Object.fromEntries(
        Object.entries(SAMPLE_FILES).map(([path, text]) => [
          path,
          path === 'book.md' ? text.replace('tools:', 'learn: false\ntools:') : text,
        ]),
      ),
    );
    const part = byRole(await readPage('method', '', book), 'region', { name: 'How the book learns' });
    expect(allByRole(part, 'img').map(nameOf)).toHaveLength(1);
  });

  test('links to the cautions where it speaks of heat', () => {
    expect(byRole(page.querySelector('main')!, 'link', { name: 'read the cautions' }).getAttribute('href')).toBe(
      '../care/',
    );
  });

  test('says what each part rests on', () => {
    for (const source of ['Kubelka', 'Duncan', 'Saunderson', 'Cauchy', 'Allen', 'Sharma', 'CIE 015', 'Jerlov', 'Burns'])
      expect(wordsIn(byRole(page, 'region', { name: 'Sources' }))).toContain(source);
  });

  test('reads for a book that has less: no picture is drawn that has nothing to show', async () => {
    const plain = await without(/shelf\/flakes|chips|colours|targets|lamp-black|ivory-pearl/);
    const items = allByRole(plain, 'listitem').map(wordsIn);
    expect(plain.getElementById('scatterer-title')).toBeNull();
    expect(items.join('\n')).not.toMatch(/mean of the screen colours$/m);
    expect(wordsIn(plain)).not.toContain('how much of your view flake has covered by then');
    expect(items).toContain('16 mm');
  });
});

test('the sample book has what the page is tested with', () => {
  expect(SAMPLE_BOOK.materials.filter(({ kind }) => kind === 'colorant').length).toBeGreaterThan(1);
});
