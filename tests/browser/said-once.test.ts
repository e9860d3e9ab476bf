import { expect, test } from 'vitest';
import { firstAnswers } from '../../src/browser/match/ask.ts';
import { firstView } from '../../src/browser/match/proposal-view.ts';
import { withSides } from '../../src/browser/match/work.ts';
import { newWork } from '../../src/browser/match/work-begun.ts';
import { WHOLE_DEMO_BOOK } from '../render/demo-book.ts';
import { taughtBook } from './taught-book.ts';

test('what is too little to weigh is said once of the recipe that the answer names, and of each other one', () => {
  const data = taughtBook(WHOLE_DEMO_BOOK);
  const side = { name: 'body', overWhite: '#e8dfd0', overBlack: '#8d8673', thicknessMm: 13, flakes: [] };
  const work = withSides({ ...newWork(data), mold: 'bullhead', plastic: 'supple', plasticMl: 60, tolerance: 2 }, [
    side,
  ]);
  const answers = firstAnswers(work, data);
  const { proposals } = answers[0]!.recipe;
  expect(proposals[0]!.tooLittle).toBeDefined();
  expect(proposals[0]!.weighed).toBeUndefined();
  const shown = { data, materials: new Map(data.materials.map((material) => [material.id, material])) };
  const words = firstView(answers, work.sides, shown, { ml: 6, count: 1 } as never).toString();
  const little = proposals.filter(({ tooLittle }) => tooLittle !== undefined).length;
  expect(words.match(/too little for this scale/g)).toHaveLength(little);
});
