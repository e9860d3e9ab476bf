import { describe, expect, test } from 'vitest';
import type { SpreadAdvice } from '../../src/book/model/recipe.ts';
import type { Assumption } from '../../src/book/model/shelf.ts';
import { assumptionText } from '../../src/words/assumption.ts';
import { cupContrastText } from '../../src/words/cup-contrast.ts';
import { spreadAdviceText } from '../../src/words/repeatability.ts';

test.each<[Assumption, string]>([
  [{ kind: 'typical-plastic', plastic: 'clear' }, 'typical clear plastic assumed, not measured'],
  [{ kind: 'no-colour' }, 'assumed not to change the colour'],
  [{ kind: 'strength' }, 'how strongly it colours is worked out from one colour and its kind'],
  [{ kind: 'film', mm: 0.0254 }, 'a film of 0.001 in (0.025 mm) assumed, not measured'],
  [{ kind: 'density', gramsPerMl: 1.02 }, 'density of 1.02 g/ml assumed'],
  [{ kind: 'bulk', gramsPerMl: 0.55 }, 'a level millilitre is taken to weigh 0.55 g'],
  [{ kind: 'drop', ml: 0.05 }, 'a drop is taken to be 0.05 ml'],
  [{ kind: 'liquid' }, 'taken for a liquid (salt or a powder has `bulk` in its file)'],
  [{ kind: 'salt' }, 'taken for salt, since its pack is given by weight'],
  [{ kind: 'cavity', gramsPerMl: 1.05 }, 'cavity volume worked out from the bait’s weight (plastic 1.05 g/ml)'],
  [{ kind: 'no-sprue' }, 'no plastic counted in the sprues'],
])('assumptionText(%o) is “%s”', (assumed, text) => {
  expect(assumptionText(assumed)).toBe(text);
});

describe('spreadAdviceText', () => {
  const drop = { kind: 'drop', title: 'Soot', deltaE: 3.6 } as const;
  test.each<[SpreadAdvice, string]>([
    [{ ...drop, enoughMl: 240 }, 'One drop more of Soot is easy to see (ΔE 3.6): make at least 240 ml in a cup.'],
    [
      { ...drop, enoughMl: 240, weigh: 'all' },
      'One drop more of Soot is easy to see (ΔE 3.6): make at least 240 ml in a cup, or weigh its whole cup.',
    ],
    [{ ...drop, weigh: 'it' }, 'One drop more of Soot is easy to see (ΔE 3.6): weigh it.'],
    [drop, 'One drop more of Soot is easy to see (ΔE 3.6): a finer scale would fix that.'],
    [
      { kind: 'hands-vary', tolerance: 2, remedy: 'get-a-scale' },
      'Drops and spoons vary by more than the tolerance of ΔE 2: a scale that shows 0.01 g would fix that.',
    ],
  ])('of %o', (advice, text) => {
    expect(spreadAdviceText(advice, { volume: 'ml' })).toBe(text);
  });

  test('is in the book’s unit of volume', () => {
    expect(spreadAdviceText({ ...drop, enoughMl: 236.588 }, { volume: 'fl oz' })).toMatch(/at least 8 fl oz in a cup/);
  });
});

describe('cupContrastText', () => {
  const apart = { deltaE: 28, suits: { swirl: true, laminate: true } };
  test.each([
    [
      'swirl',
      apart,
      'The cups beside each other: plainly another colour (ΔE 28). A swirl of them shows its streaks; in a laminate each side tints the other.',
    ],
    [
      'swirl',
      { deltaE: 3, suits: { swirl: false, laminate: false } },
      'The cups beside each other: easy to see (ΔE 3.0). A swirl of them would hardly show; in a laminate each side keeps its own colour. Give the cups more contrast, or make one more solid.',
    ],
    ['tipped', apart, 'The cups beside each other: plainly another colour (ΔE 28).'],
  ] as const)('of a %s', (pattern, contrast, text) => {
    expect(cupContrastText(pattern, contrast)).toBe(text);
  });
});
