import { expect, test } from 'vitest';
import { orderOfWork } from '../../src/book/recipes/order-of-work.ts';
import { orderView } from '../../src/render/order-view.ts';
import { pageOf } from './sample-book.ts';

test('names of cups stand out, and cannot be taken for markup', () => {
  const cups = ['race', '<i>'].map((name) => ({ name, plastics: [], contents: [] }));
  const work = orderOfWork({ pattern: 'swirl', cups }, () => undefined);
  const view = orderView(work, { title: (id) => id, settings: { temperature: '°C' } }).toString();
  expect(view).toContain('Shoot the <b>race</b> and <b>&lt;i&gt;</b> cups through one nozzle, unmixed.');
  expect(view).toContain('<li><b>&lt;i&gt;</b><ol');
  expect(view).not.toContain('<i>');
});

test('a recipe with notes says that they come before the order of work, on its page and on its card', async () => {
  const page = await pageOf('recipe', 'weir-foam');
  expect(page.indexOf('<a href="#notes">the maker’s notes</a>')).toBeLessThan(page.indexOf('<ol class="steps">'));
  expect(await pageOf('recipe-card', 'weir-foam')).toContain('the maker’s notes come first');
  expect(await pageOf('recipe', 'kernel')).not.toContain('the maker’s notes');
  expect(await pageOf('recipe-card', 'kernel')).not.toContain('the maker’s notes');
});
