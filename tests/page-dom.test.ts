import { expect, test } from 'vitest';
import { allByRole, byRole, documentOf, nameOf, roleOf, rowsOf, wordsIn } from './page-dom.ts';

const page = documentOf(`
  <h2>Cups &amp; <em>spoons</em></h2>
  <table aria-label="Body">
    <thead><tr><th scope="col">Material</th><th scope="col">Exact</th></tr></thead>
    <tbody><tr><th scope="row">Peat</th><td>1&nbsp;g</td></tr></tbody>
  </table>
  <label for="light">Daylight</label><input type="radio" id="light"><p>Stir, <code>slowly</code>.</p><script>1</script>`);

test('byRole(page, role, name) finds what a reader hears, whatever its markup', () => {
  expect(nameOf(byRole(page, 'heading'))).toBe('Cups & spoons');
  expect(byRole(page, 'radio', { name: 'Daylight' }).id).toBe('light');
  expect(allByRole(byRole(page, 'table', { name: 'Body' }), 'rowheader').map(wordsIn)).toEqual(['Peat']);
  expect(wordsIn(byRole(page, 'row', { name: /^Peat/ }))).toBe('Peat 1 g');
  expect(rowsOf(byRole(page, 'table'))).toEqual([{ Material: 'Peat', Exact: '1 g' }]);
  expect(wordsIn(page)).toMatch(/ Peat 1 g Daylight Stir, slowly\.$/);
  expect([...page.querySelectorAll('p, code')].map(roleOf)).toEqual(['paragraph', 'code']);
});

test('byRole(page, role, name) says what there is where there is not one', () => {
  expect(() => byRole(page, 'heading', { name: 'Molds' })).toThrow(
    '0 of the role heading are called Molds; there are: ["Cups & spoons"]',
  );
  expect(() => byRole(page, 'row')).toThrow(/^2 of the role row are called anything/);
});

test('documentOf(page) reads a whole page too', () => {
  expect(documentOf('<!doctype html><html lang="en"><body><main><h1>Book</h1></main></body></html>').title).toBe('');
  expect(wordsIn(documentOf('<p>One\u00a0two\n three</p>'))).toBe('One two three');
});
