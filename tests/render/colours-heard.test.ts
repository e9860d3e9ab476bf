import { describe, expect, test } from 'vitest';
import { chips } from '../../src/render/swatch/chip.ts';
import { hexWords } from '../../src/words/colour.ts';
import { allByRole, byRole, documentOf, nameOf } from '../page-dom.ts';
import { DEMO_BOOK } from './demo-book.ts';
import { readPage } from './sample-book.ts';

const page = await readPage('recipe', 'alder-smoke', DEMO_BOOK);

const heard = allByRole(page, 'img').map(nameOf).join('\n');

describe('a recipe page says its colours to who does not see them', () => {
  test('of the bait, part by part, over white and over black', () => {
    expect(heard).toMatch(
      /^Alder Smoke: this side [a-z ]+ over white, [a-z ]+ over black; tail [a-z ]+ over white, [a-z ]+ over black$/m,
    );
    expect(heard).toMatch(/^Alder Smoke: other side [a-z ]+ over white, [a-z ]+ over black; tail /m);
  });

  test('of the card, column by column', () => {
    expect(heard).toMatch(
      /^Alder Smoke as a test chip over white and over black: this side [a-z ]+ over white, [a-z ]+ over black; other side [^;]+; tail [^;]+; then the bare card$/m,
    );
  });

  test('in water, at each depth', () => {
    const { water } = DEMO_BOOK.recipes.find(({ id }) => id === 'alder-smoke')!;
    const told = allByRole(byRole(page, 'table', { name: /^The body at depth/ }), 'img').map(nameOf);
    expect(told).toEqual(water.map(({ hex }) => hexWords(hex)));
  });
});

test('chips(colours, label) adds the colours in words to its label, and nothing where it has none', () => {
  const named = (...made: Parameters<typeof chips>): readonly string[] =>
    allByRole(documentOf(chips(...made)), 'img').map(nameOf);
  expect(named([{ overWhite: '#4a2f1c', overBlack: '#101010' }, { overWhite: '#ffffff' }], 'Both')).toEqual([
    'Both. Left: dark brown over white, black over black. Right: white over white.',
  ]);
  expect(named([{ overWhite: '#4a2f1c' }], 'One')).toEqual(['One. Dark brown over white.']);
  expect(named([{ overWhite: '#4a2f1c' }], '')).toEqual([]);
});
