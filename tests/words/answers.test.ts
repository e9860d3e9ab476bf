import { describe, expect, test } from 'vitest';
import type { Expectation } from '../../src/matching/belief/expectation.ts';
import type { CutBack } from '../../src/matching/cut-back.ts';
import type { FirstRecipe } from '../../src/matching/first-recipe.ts';
import type { MatchFault } from '../../src/matching/match-fault.ts';
import type { NextAddition } from '../../src/matching/next-addition.ts';
import type { Proposal } from '../../src/matching/proposals/proposal.ts';
import type { RecipeProposal } from '../../src/matching/proposals/recipe-proposal.ts';
import type { Substitution } from '../../src/matching/substitutes/substitution.ts';
import type { Verdict } from '../../src/matching/target/verdict.ts';
import { toAddText } from '../../src/words/amount.ts';
import { cutBackText } from '../../src/words/cut-back.ts';
import { firstRecipeText } from '../../src/words/first-recipe.ts';
import { leftOutLines, leftOutText } from '../../src/words/left-out.ts';
import { matchFaultText } from '../../src/words/match-fault.ts';
import { nextAdditionText } from '../../src/words/next-addition.ts';
import { tooLittleText } from '../../src/words/scale.ts';
import { runsShortText } from '../../src/words/stock.ts';
import { substitutionText } from '../../src/words/substitution.ts';
import { whatWentInText } from '../../src/words/what-went-in.ts';

const ML = { volume: 'ml', temperature: '°C' } as const;
const OUNCES = { volume: 'fl oz' } as const;

const right = { deltaE: 0.5, size: 'right' } as const;
const verdict = (deltaE: number): Verdict => ({
  deltaE,
  within: deltaE <= 2,
  hue: right,
  lightness: { deltaE, size: 'too', towards: 'dark' },
  vividness: right,
});
const colour = { lab: { L: 50, a: 0, b: 0 }, hex: '#777777' };
/** Of what nothing is in doubt. */
const sure = (deltaE: number): Expectation => ({
  expected: deltaE,
  bound90: deltaE,
  likely: deltaE <= 2 ? 1 : 0,
});
const proposal = (deltaE: number, more: Partial<Proposal> = {}): Proposal => ({
  ...sure(deltaE),
  additions: [{ material: 'peat', title: 'Peat', grams: 0.15, text: '3 drops', isNew: false }],
  overWhite: colour,
  left: verdict(deltaE),
  bottles: 1,
  newBottles: 0,
  cost: 0.1,
  unpriced: [],
  volumeMl: 155,
  ...more,
});
const recipe = (deltaE: number, more: Partial<RecipeProposal> = {}): RecipeProposal => ({
  cups: [
    {
      name: 'body',
      plastic: 'supple',
      plasticTitle: 'Supple',
      plasticMl: 120,
      amounts: [
        { material: 'rowan', title: 'Rowan', grams: 2, exactGramsPerMl: 0.02, text: '40 drops', tool: 'drops' },
      ],
      flakes: [],
      alone: { overWhite: colour, overBlack: colour, contrastRatio: 0.5 },
    },
  ],
  sides: [],
  ...sure(deltaE),
  exact: sure(0.2),
  deltaE,
  deltaEUnderA: 1,
  bottles: 1,
  cost: 1,
  unpriced: [],
  ...more,
});

describe('what is left out, short or too little', () => {
  test.each([
    [{ temperature: '°C' }, 'Left out: Ember. Its limit is 160 °C, and the plastic pours at 166 °C.'],
    [{ temperature: '°F' }, 'Left out: Ember. Its limit is 320 °F, and the plastic pours at 330 °F.'],
  ] as const)('leftOutText is in the book’s own scale, %o', (units, text) => {
    const hot = { material: 'ember', why: 'too-hot', highest: 160, pouredAt: 165.6 } as const;
    expect(leftOutText(hot, 'Ember', units)).toBe(text);
  });

  test('leftOutText says why of every kind', () => {
    const why = (each: 'used-up' | 'at-its-most') =>
      leftOutText({ material: 'a', why: each }, 'A', { temperature: '°C' });
    expect(why('used-up')).toBe('Left out: A. There is none left.');
    expect(why('at-its-most')).toBe('Left out: A. The cup already has as much of it as it can take.');
  });

  test('leftOutLines says once why, where several have the same effect', () => {
    const out = [
      { material: 'flood', why: 'effect', effect: 'fluorescent' },
      { material: 'peat', why: 'used-up' },
      { material: 'mallow', why: 'effect', effect: 'fluorescent' },
      { material: 'lamp', why: 'effect', effect: 'glow' },
    ] as const;
    expect(leftOutLines(out, (id) => id.toUpperCase(), { temperature: '°C' })).toEqual([
      'Left out: FLOOD and MALLOW. They are fluorescent, and the colour you want isn’t.',
      'Left out: PEAT. There is none left.',
      'Left out: LAMP. It glows in the dark, and the colour you want doesn’t.',
    ]);
  });

  test('runsShortText says what is left as it is measured, plastic in the book’s unit', () => {
    const short = [
      { material: 'mill-blue', title: 'Mill Blue', left: { amount: 0, unit: 'drop' } },
      { material: 'straw', title: 'Straw', left: { amount: 0.4, unit: 'drop' } },
      { material: 'peat', title: 'Peat', left: { amount: 12.9, unit: 'drop' } },
      { material: 'ivory', title: 'Ivory', left: { amount: 1.25, unit: 'g' } },
      { material: 'supple', title: 'Supple', left: { amount: 118.294, unit: 'ml' } },
    ] as const;
    expect(runsShortText(short, OUNCES)).toBe(
      'Not enough on the shelf: no Mill Blue, less than a drop of Straw, 12 drops of Peat, 1.25 g of Ivory and 4 fl oz of Supple left.',
    );
    expect(runsShortText(short.slice(4), ML)).toBe('Not enough on the shelf: 118 ml of Supple left.');
  });

  test('tooLittleText says by how much the scale may be off', () => {
    const sedge = { title: 'Sedge', grams: 0.02, text: '0.02 g', isLiquid: true };
    expect(tooLittleText({ amounts: [sedge], error: 0.25 })).toBe(
      '0.02 g of Sedge is too little for this scale (25 % error): make a cut of it, one part in ten of softener or clear plastic, and take ten times as much.',
    );
    const cut = { ...sedge, title: 'Soot', hasCut: true as const };
    expect(tooLittleText({ amounts: [cut], error: 0.25 })).toBe(
      '0.02 g of Soot is too little for this scale (25 % error): count drops of its cut instead.',
    );
    expect(tooLittleText({ amounts: [sedge, cut], error: 0.25 })).toMatch(
      /: count drops of a cut, one part in ten of softener or clear plastic, instead\.$/,
    );
    const ivory = { ...sedge, title: 'Ivory', text: '0.01 g', isLiquid: false };
    expect(tooLittleText({ amounts: [sedge, ivory], error: 0.5 })).toBe(
      '0.02 g of Sedge and 0.01 g of Ivory are too little for this scale (up to 50 % error): a finer scale would do, and for what is liquid a cut, one part in ten of softener or clear plastic.',
    );
    expect(tooLittleText({ amounts: [ivory], error: 0.5 })).toBe(
      '0.01 g of Ivory is too little for this scale (50 % error): a finer scale would do.',
    );
  });
});

describe('amounts', () => {
  test('toAddText has the plastic in the book’s unit', () => {
    const thin = { plastic: 'clear', title: 'Clear', ml: 29.5735 };
    expect(toAddText(proposal(1, { thin }), OUNCES)).toBe('1 fl oz of Clear to let it down, then 3 drops of Peat');
  });

  test('whatWentInText asks for what was proposed, or for anything', () => {
    const move = { deltaE: 7.2, since: 1 };
    expect(whatWentInText({ ...move, proposed: proposal(1) }, ML)).toBe(
      'Nothing is logged since round 1, but the colour has changed: hard to miss (ΔE 7.2), more than two pours of one cup differ. Did you add what was proposed: 3 drops of Peat?',
    );
    expect(whatWentInText(move, ML)).toMatch(/differ\. What went in\?$/);
  });
});

describe('first recipes', () => {
  const answer = (more: Partial<FirstRecipe>): FirstRecipe => ({
    advice: { kind: 'make' },
    proposals: [recipe(0.8)],
    missing: [],
    flakes: [],
    leftOut: [],
    ...more,
  });

  test.each([
    ['a recipe that is right', {}, '40 drops of Rowan in 120 ml of Supple: you won’t see it (ΔE 0.8).'],
    [
      'one that a scale would better',
      { advice: { kind: 'make', nearerBy: 'a-scale' }, proposals: [recipe(3)] },
      '40 drops of Rowan in 120 ml of Supple: easy to see (ΔE 3.0). Drops and spoons get no closer. With a scale: you won’t see it (ΔE 0.2); or make a cut of the strongest colour, one part in ten of softener or clear plastic.',
    ],
    [
      'plastic that is right as it is',
      {
        advice: { kind: 'leave-plain', plasticTitles: ['Supple'], because: 'likely-right', ...sure(0.02) },
        proposals: [],
      },
      'Plain Supple as it is: you won’t see it (ΔE less than 0.1). Add nothing, likely right: 99 %.',
    ],
    [
      'a shelf that does not get there',
      {
        advice: { kind: 'cannot', because: 'shelf' },
        proposals: [recipe(4)],
        missing: [{ kind: 'blue-dye', deltaE: 1 }],
      },
      'Nothing on the shelf gets within tolerance. The best recipe: 40 drops of Rowan in 120 ml of Supple: easy to see (ΔE 4.0). What would help: a blue dye.',
    ],
    [
      'a shelf that gets nearer with a scale',
      { advice: { kind: 'cannot', because: 'shelf' }, proposals: [{ ...recipe(4), weighed: sure(2.5) }] },
      'Nothing on the shelf gets within tolerance. The best recipe: 40 drops of Rowan in 120 ml of Supple: easy to see (ΔE 4.0); weighed, easy to see (ΔE 2.5).',
    ],
    [
      'one that is weighed, since drops and spoons miss',
      { proposals: [recipe(1.4)], byHand: { expected: 3.1, bound90: 4.4, likely: 0.1 } },
      '40 drops of Rowan in 120 ml of Supple: just visible (ΔE 1.4). By drops and spoons the best is further off: easy to see (expect ΔE 3.1, nine in ten within 4.4).',
    ],
    [
      'a shelf of plastic alone',
      { advice: { kind: 'cannot', because: 'nothing-usable' }, proposals: [] },
      'There is no colorant or powder on the shelf that can be used here.',
    ],
  ] as const)('firstRecipeText of %s', (_, more, text) => {
    expect(firstRecipeText(answer(more as Partial<FirstRecipe>), ML)).toBe(text);
  });
});

describe('what to do with a cup', () => {
  const answer = (more: Partial<NextAddition>): NextAddition => ({
    advice: { kind: 'add' },
    now: verdict(6.3),
    proposals: [proposal(1.2)],
    missing: [],
    leftOut: [],
    ...more,
  });

  test.each([
    [
      'one that is right',
      { advice: { kind: 'leave-it', likely: 0.91, because: 'likely-right' }, now: verdict(0.8), proposals: [] },
      'Leave it as it is, likely right: 91 %. Within tolerance, too dark: you won’t see it (ΔE 0.8).',
    ],
    [
      'one that looks tell no more of',
      {
        advice: { kind: 'leave-it', likely: 0.4, because: 'as-near-as-looks-tell', tells: 'target' },
        now: verdict(2.4),
        proposals: [],
      },
      'Leave it as it is: your looks can’t tell what would get closer. Three photos of the target, a certified card in them, or an instrument would tell more. Hue is right, too dark: just visible (ΔE 2.4).',
    ],
    [
      'one that no step helps',
      { advice: { kind: 'leave-it', likely: 0.62, because: 'no-step-helps' }, now: verdict(1.9), proposals: [] },
      'Leave it as it is: nothing you could add is expected to get it closer; likely right: 62 %. Within tolerance, too dark: just visible (ΔE 1.9).',
    ],
    [
      'one of which nothing is certain',
      { proposals: [proposal(1.2, { expected: 2.2, bound90: 4.8, likely: 0.4 })] },
      'Add 3 drops of Peat. What’s left: just visible (expect ΔE 2.2, nine in ten within 4.8).',
    ],
    ['one to add to', {}, 'Add 3 drops of Peat. What’s left: just visible (ΔE 1.2).'],
    [
      'one to be weighed for',
      { advice: { kind: 'add', nearerBy: 'finer-steps' }, proposals: [proposal(3)] },
      'Add 3 drops of Peat. What’s left: easy to see (ΔE 3.0); a cut of the strongest colour, or a finer measure, would get closer.',
    ],
    [
      'one that a new cup is better than',
      { advice: { kind: 'start-over' }, proposals: [proposal(3.8)], startAgain: recipe(2.4) },
      'Start over with a new cup: 40 drops of Rowan in 120 ml of Supple: just visible (ΔE 2.4). Fixing this one takes more than that: add 3 drops of Peat; what’s left: easy to see (ΔE 3.8). Neither is likely within tolerance.',
    ],
    [
      'one that the shelf cannot mend',
      { advice: { kind: 'cannot', because: 'shelf' }, proposals: [] },
      'Nothing on the shelf gets this cup closer than it is: hard to miss (ΔE 6.3).',
    ],
    [
      'one of which the look cannot be',
      { advice: { kind: 'cannot', because: 'look-first' }, proposals: [], doubt: { kind: 'misfit', deltaE: 14 } },
      'Your last look does not fit what is in the cup (ΔE 14 off what all your looks say). Look at a test pour again in daylight, enter the round again, and check the log. Until then leave the cup as it is.',
    ],
    [
      'one that a new cup is better than, where no step helps',
      { advice: { kind: 'start-over' }, proposals: [], startAgain: recipe(1.4) },
      'Start over with a new cup: 40 drops of Rowan in 120 ml of Supple: just visible (ΔE 1.4). Nothing you could add gets this one closer.',
    ],
    [
      'one that all looks together have another figure of, doubts and all',
      { differs: { seen: 5.1, predicted: 2.8 }, expected: 5.4, bound90: 7.4 },
      'Add 3 drops of Peat. What’s left: just visible (ΔE 1.2). Your look: hard to miss (ΔE 5.1). By all your looks together: hard to miss (expect ΔE 5.4, nine in ten within 7.4); the estimates go by that.',
    ],
    [
      'one that is over-full',
      { crowded: { kind: 'over-full', plasticMl: 287, roomMl: 175 }, differs: { seen: 6.3, predicted: 5.5 } },
      'Add 3 drops of Peat. What’s left: just visible (ΔE 1.2). The cup holds 287 ml and should hold no more than 175 ml: hot plastic foams. Your look: hard to miss (ΔE 6.3). By all your looks together: hard to miss (ΔE 5.5); the estimates go by that.',
    ],
  ] as const)('nextAdditionText of %s', (_, more, text) => {
    expect(nextAdditionText(answer(more as Partial<NextAddition>), ML)).toBe(text);
  });

  test.each([
    [
      {
        advice: { kind: 'let-down', by: 'plasticAlone', newCup: 'no-nearer' },
        plasticAlone: proposal(1.2),
        fresh: recipe(1.5),
      },
      'Add 3 drops of Peat. That makes 155 ml. What’s left: just visible (ΔE 1.2). That beats starting over, which would take 120 ml and leave a difference: just visible (ΔE 1.5).',
    ],
    [
      {
        advice: { kind: 'start-over', because: 'takes-less', than: 'plasticAlone' },
        plasticAlone: proposal(1.2),
        fresh: recipe(1.5),
      },
      'Add 3 drops of Peat. That makes 155 ml. What’s left: just visible (ΔE 1.2). A new cup takes less plastic: 40 drops of Rowan in 120 ml of Supple: just visible (ΔE 1.5).',
    ],
    [
      { advice: { kind: 'cannot', because: 'no-room', plasticMl: 287, roomMl: 175 } },
      'There is no room for more plastic: the cup holds 287 ml and should hold no more than 175 ml. Pour all but 88 ml into other cups, log that pour, and ask again.',
    ],
    [
      { advice: { kind: 'add', because: 'not-overshot' } },
      'It doesn’t have too much of anything, so clear plastic won’t help: ask `next` what to add.',
    ],
    [
      { advice: { kind: 'cannot', because: 'plastic-does-not-help' }, fresh: recipe(3) },
      'Clear plastic won’t get this cup closer than it is: hard to miss (ΔE 6.3). A new cup would get closer: 40 drops of Rowan in 120 ml of Supple: easy to see (ΔE 3.0).',
    ],
  ] as const)('cutBackText of %o', (answered, text) => {
    expect(cutBackText({ now: verdict(6.3), ...answered } as CutBack, ML)).toBe(text);
  });
});

describe('substitutes', () => {
  const swap = {
    amounts: [{ material: 'b', title: 'Mill Blue', grams: 0.1, text: '3 drops' }],
    left: verdict(3.9),
    ...sure(3.9),
  };
  const answer = (more: object): Substitution =>
    ({ lost: 'Sedge', swaps: [swap], recipes: [], flakes: [], ...more }) as unknown as Substitution;

  test.each([
    [{ kind: 'swap' }, 'Closest to Sedge here is 3 drops of Mill Blue: easy to see (ΔE 3.9).'],
    [
      { kind: 'leave-out', ...sure(0.6) },
      'Leave Sedge out: without it the cup stays within tolerance, you won’t see it (ΔE 0.6).',
    ],
    [
      { kind: 'cannot', because: 'not-near', nearest: 'swap' },
      'Nothing on the shelf replaces Sedge here within tolerance. The closest is 3 drops of Mill Blue: easy to see (ΔE 3.9).',
    ],
    [{ kind: 'cannot', because: 'another-colour' }, 'Nothing on the shelf can replace Sedge here.'],
    [{ kind: 'cannot', because: 'no-other-flake' }, 'There is no other flake on the shelf.'],
  ])('substitutionText of %o', (advice, text) => {
    expect(substitutionText(answer({ advice }), ML)).toBe(text);
  });
});

test.each<MatchFault>([
  { kind: 'not-on-shelf', material: 'soot' },
  { kind: 'no-amount' },
  { kind: 'empty-cup' },
  { kind: 'no-tolerance' },
  { kind: 'not-seen' },
  { kind: 'no-thickness' },
  { kind: 'no-colour', over: 'white' },
  { kind: 'reversed' },
  { kind: 'no-parts' },
  { kind: 'too-many-parts' },
  { kind: 'no-plastic', plastic: 'none' },
  { kind: 'no-volume' },
  { kind: 'too-full', roomMl: 175 },
  { kind: 'number-of-materials', most: 6 },
  { kind: 'not-in-cup', title: 'Soot' },
  { kind: 'is-plastic', title: 'Supple' },
  { kind: 'not-colouring', title: 'Salt' },
])('matchFaultText($kind) is whole sentences', (fault) => {
  expect(matchFaultText(fault, ML)).toMatch(/^[A-Za-z].*\.$/);
});
