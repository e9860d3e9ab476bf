import { expect } from 'vitest';
import { compileBook } from '../../src/book/compile-book.ts';
import type { Book } from '../../src/book/model.ts';
import { adviceFor, firstAnswers } from '../../src/browser/match/ask.ts';
import { type Work, withSteps } from '../../src/browser/match/work.ts';
import { amountsOf, newWork, withBookTarget, withRecipe } from '../../src/browser/match/work-begun.ts';
import type { Source } from '../../src/recipe/source.ts';
import type { TaughtMatchData } from '../../src/render/pages/match.ts';
import { taughtBook } from './taught-book.ts';

/** The files of a book with three targets. */
export const FILES: readonly Source[] = [
  { path: 'book.md', text: '---\ntitle: Bench\n---\n' },
  { path: 'shelf/plastics/supple.md', text: '---\ntitle: Supple\n---\n' },
  {
    path: 'shelf/colorants/peat.md',
    text: '---\ntitle: Peat\nlook: { kind: dye, colour: "#7a4a24", dose: 20 drops per 120 ml }\n---\n',
  },
  {
    path: 'shelf/colorants/soot.md',
    text: '---\ntitle: Soot\nlook: { kind: pigment, colour: "#3b3937", dose: 10 drops per 100 ml }\n---\n',
  },
  {
    path: 'shelf/powders/ivory.md',
    text: '---\ntitle: Ivory\nbulk: 0.4 g/ml\nlook: { kind: pearl, colour: "#ece6d6", dose: 1 % }\n---\n',
  },
  { path: 'molds/minnow.md', text: '---\ntitle: Minnow\ncavity: 12 ml\nbody: 8 mm\n---\n' },
  {
    path: 'targets/leaf.md',
    text: '---\ntitle: Leaf\nmold: minnow\nover-white: "#a4805a"\nover-black: "#6e5a44"\n---\n',
  },
  {
    path: 'targets/elver.md',
    text: '---\ntitle: Elver\nmold: minnow\nparts:\n  back: { over-white: "#74583a", over-black: "#50422f" }\n  belly: { over-white: "#bcab8c", over-black: "#8c8270" }\n---\n',
  },
  {
    path: 'targets/halves.md',
    text: '---\ntitle: Halves\nmold: minnow\napart: true\nparts:\n  back: { over-white: "#74583a", over-black: "#50422f" }\n  belly: { over-white: "#bcab8c", over-black: "#8c8270" }\n---\n',
  },
];

/** The book, with other files besides. */
export function compiled(...more: readonly Source[]): Book {
  const { book, diagnostics } = compileBook([...FILES, ...more]);
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  return book!;
}

/** What the Match page knows of it. */
export const DATA: TaughtMatchData = taughtBook(compiled());
/** A match begun with a target of the book. */
export const leaf = (): Work => withBookTarget(newWork(DATA), 'leaf', DATA);

/** The match as a person would make it: first recipe, a look, an addition, another look. */
export function matched(): Work {
  const begun = leaf();
  const [answer] = firstAnswers(begun, DATA);
  let work = withRecipe(begun, 0, answer!.recipe.proposals[0]!, DATA);
  work = withSteps(
    work,
    0,
    { do: 'pour', ml: 14 },
    { do: 'see', overWhite: '#b8926a', overBlack: '#5a4a3a', note: 'too light: "weak tea"' },
  );
  const { next } = adviceFor(work, 0, DATA);
  work = withSteps(work, 0, { do: 'add', amounts: amountsOf(next.proposals[0]!.additions, DATA) });
  return withSteps(work, 0, { do: 'pour', ml: 14 }, { do: 'see', overWhite: '#a6825c', overBlack: '#6c5842' });
}
