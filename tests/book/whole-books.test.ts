import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import type { Appearance } from '../../src/book/model/colours.ts';
import type { Book } from '../../src/book/model.ts';
import { total } from '../../src/cup/ledger.ts';
import { formatDiagnostics, summarizeDiagnostics } from '../../src/diagnostics/format-diagnostics.ts';

const FIXTURES = join(import.meta.dirname, '../fixtures');

function sourcesBelow(folder: string): { path: string; text: string }[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({ path: path.slice(folder.length + 1), text: readFileSync(path, 'utf8') }));
}

/** What a person would check of a book: numbers as they are read, not sixteen digits of them. */
function digest(book: Book): unknown {
  const look = ({ overWhite, overBlack, contrastRatio }: Appearance): string =>
    `${overWhite.hex} over white, ${overBlack.hex} over black, contrast ${contrastRatio.toFixed(2)}`;
  return book.recipes.map((recipe) => ({
    recipe: recipe.id,
    pattern: recipe.pattern,
    parent: recipe.parent,
    family: recipe.family,
    body: look(recipe.body),
    thin: look(recipe.thin),
    other: recipe.other && look(recipe.other),
    contrast: recipe.contrast?.suits,
    cups: recipe.cups.map((cup) => ({
      cup: cup.name,
      share: cup.share.toFixed(3),
      gramsIn100Ml: Object.fromEntries(
        cup.contents.map(({ material, gramsPerMl }) => [material, (gramsPerMl * 100).toPrecision(4)]),
      ),
      notesAddUpTo:
        cup.naive &&
        Object.fromEntries(
          cup.naive.contents.map(({ material, gramsPerMl }) => [material, (gramsPerMl * 100).toPrecision(4)]),
        ),
      rounds: cup.rounds.map(
        (round) =>
          `${total(round.cup.plastics).toFixed(1)} ml plastic, ${round.leftMl.toFixed(1)} ml left, ${look(round.look)}`,
      ),
      limit: cup.limit && `${cup.limit.celsius} °C (${cup.limit.material})`,
      tier: cup.tier,
      body: look(cup.body),
    })),
    batch: recipe.batch.cups.map(
      (cup) =>
        `${cup.name}: ${cup.split} × ${cup.volumeMl.toFixed(0)} ml: ${cup.amounts.map(({ text, material }) => `${text} ${material}`).join(', ')}`,
    ),
    changes: recipe.changes.map(
      ({ cup, fromRecipe, fromCup, change }) =>
        `${cup} from ${fromRecipe}/${fromCup}: ${change.words.join(', ') || 'the same'} (ΔE ${change.deltaE.toFixed(1)})`,
    ),
  }));
}

describe.each(readdirSync(FIXTURES))('the book %s', (name) => {
  test('compileBook gives what is expected of it; what it gives otherwise lands beside it for review', () => {
    const sources = sourcesBelow(join(FIXTURES, name, 'recipes'));
    const { book, diagnostics } = compileBook(sources);
    const said = `${formatDiagnostics(diagnostics, new Map(sources.map(({ path, text }) => [path, text])))}\n${summarizeDiagnostics(diagnostics, sources.length)}\n`;
    const outcome = book ? `${JSON.stringify(digest(book), null, 2)}\n` : said;
    const kind = book ? 'json' : 'txt';
    const expected = join(FIXTURES, name, `expected.${kind}`);
    const beside = join(FIXTURES, name, `actual.${kind}`);
    rmSync(beside, { force: true });
    const wanted = existsSync(expected) ? readFileSync(expected, 'utf8') : '';
    if (outcome !== wanted) writeFileSync(beside, outcome);
    expect(outcome).toBe(wanted);
  });
});
