import { expect, test } from 'vitest';
import { triesText } from '../../src/words/proposal.ts';

test('triesText(…) says of which bottle a look would tell', () => {
  expect(triesText('Loam')).toBe(
    'You haven’t looked at Loam yet: a look at this pour tells the book how strong it is.',
  );
});
