import { describe, expect, test } from 'vitest';
import { hexWords } from '../../src/book/words/colour-words.ts';
import { chips } from '../../src/render/swatch/chip.ts';
import { DEMO_BOOK } from './demo-book.ts';
import { pageOf } from './sample-book.ts';

const page = await pageOf('recipe', 'alder-smoke', DEMO_BOOK);

describe('a recipe page says its colours to who does not see them', () => {
  test('of the bait, part by part, over white and over black', () => {
    expect(page).toMatch(
      /aria-label="Alder Smoke in Three-inch minnow, over white: back [a-z ]+, belly [a-z ]+, tail [a-z ]+"/,
    );
    expect(page).toMatch(
      /aria-label="Alder Smoke in Three-inch minnow, over black: back [a-z ]+, belly [a-z ]+, tail [a-z ]+"/,
    );
  });

  test('of the card, column by column', () => {
    expect(page).toMatch(
      /aria-label="Alder Smoke as a film over white and over black: this side [a-z ]+ over white, [a-z ]+ over black; other side [^;]+; tail [^;]+; then the bare card"/,
    );
  });

  test('in water, at each depth', () => {
    const { water } = DEMO_BOOK.recipes.find(({ id }) => id === 'alder-smoke')!;
    const table = page.slice(page.indexOf('<table class="water">'));
    for (const { hex } of water) expect(table).toContain(`aria-label="${hexWords(hex)}"`);
  });
});

test('chips(colours, label) adds the colours in words to its label, and nothing where it has none', () => {
  const pair = chips([{ overWhite: '#4a2f1c', overBlack: '#101010' }, { overWhite: '#ffffff' }], 'Both').toString();
  expect(pair).toContain('aria-label="Both. Left: dark brown over white, black over black. Right: white over white."');
  expect(chips([{ overWhite: '#4a2f1c' }], 'One').toString()).toContain('aria-label="One. Dark brown over white."');
  expect(chips([{ overWhite: '#4a2f1c' }], '').toString()).toContain('aria-hidden="true"');
});
