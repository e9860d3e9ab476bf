import { expect, test } from 'vitest';
import { fillsText, lineText } from '../../src/words/fills.ts';

const minnow = { mold: 'minnow', shotMl: 15, shotsAFill: 4, fills: 4 };
const grub = { mold: 'grub', shotMl: 60, shotsAFill: 0, fills: 0 };
const title = (mold: string): string => ({ minnow: 'Minnow', grub: 'Grub' })[mold] ?? mold;

test('an injector is told by its shots and fills, of several molds each by its name', () => {
  expect(fillsText([minnow], title, false)).toBe('Injector: 4 shots a fill, 4 fills.');
  expect(fillsText([minnow], title, true)).toBe('Injector: 4 shots a fill, 4 fills. Stir at every refill.');
  expect(fillsText([minnow, grub], title, false)).toBe(
    'Injector: Minnow 4 shots a fill, 4 fills; Grub takes more at a shot than it holds.',
  );
});

test('a line says how many are made, where some are thrown away', () => {
  expect(lineText({ mold: 'minnow', baits: 24, shots: 6 }, 'in minnow')).toBe('24 baits in minnow (6 shots)');
  expect(lineText({ mold: 'minnow', baits: 24, made: 26, shots: 7 }, 'of Minnow')).toBe(
    '24 baits of Minnow (26 made, 7 shots)',
  );
});
