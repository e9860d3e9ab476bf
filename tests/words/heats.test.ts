import { describe, expect, test } from 'vitest';
import type { AdditionHeat } from '../../src/matching/proposals/addition-heat.ts';
import type { Proposal } from '../../src/matching/proposals/proposal.ts';
import { additionHeatSentences, cupHeatsText, roundHeatText } from '../../src/words/heats.ts';

const METAL = { from: 3, to: 4, usual: true } as const;
const SHELF = new Map([
  ['copper', { title: 'Copper', bears: { from: 2, to: 2 } }],
  ['gold', { title: 'Gold', bears: METAL }],
  ['tin', { title: 'Tin', bears: METAL }],
  ['salt', { title: 'Salt' }],
]);
const status = (heats: number, borne: Record<string, number>): string =>
  cupHeatsText({ heats, borne }, (id) => SHELF.get(id));

describe('how often a cup was heated', () => {
  test.each([
    [1, { copper: 1, salt: 1 }, 'first heat'],
    [3, { copper: 3 }, 'third heat; Copper bears two'],
    [3, { copper: 2, gold: 1 }, 'third heat; Copper (its second) bears two'],
    [4, { gold: 4, tin: 4 }, 'fourth heat; Gold and Tin usually bear 3 to 4 (common practice, no source)'],
    [5, { gold: 3, salt: 5 }, 'fifth heat; Gold (its third) usually bears 3 to 4 (common practice, no source)'],
  ])('heat %s of %j: "%s"', (heats, borne, text) => {
    expect(status(heats, borne)).toBe(text);
  });
});

const COPPER = { material: 'copper', title: 'Copper', heats: 3, bears: { from: 2, to: 2 } };
const said = (heat: Partial<AdditionHeat>, more: Partial<Proposal> = {}, temperature: '°C' | '°F' = '°C'): string =>
  additionHeatSentences(
    { additions: [], ...more, heat: { heat: 3, costs: 'no', worn: [], ...heat } } as unknown as Proposal,
    { temperature },
  ).join(' ');
const THIN = { thin: { plastic: 'supple', title: 'Supple', ml: 35 } };
const ADDED = { additions: [{ title: 'Peat', text: '3 drops' }] } as unknown as Partial<Proposal>;

describe('what an addition does to the heat of a cup', () => {
  test('of a hot cup and a few drops there is nothing to say', () => {
    expect(said({})).toBe('');
    expect(additionHeatSentences(undefined, { temperature: '°C' })).toEqual([]);
  });
  test('nobody has said whether it has cooled', () => {
    expect(said({ costs: 'if-cooled', worn: [COPPER] })).toBe(
      'If the cup has cooled, melting it again will be its third heat, one too many: Copper bears two.',
    );
  });
  test('it has been heated too often before', () => {
    expect(said({ costs: 'if-cooled', heat: 5, worn: [{ ...COPPER, heats: 5 }] })).toBe(
      'If the cup has cooled, melting it again will be its fifth heat, too many: Copper bears two.',
    );
  });
  test('it was looked at cold', () => {
    expect(said({ costs: 'cooled', heat: 4 })).toBe(
      'The cup has cooled: melt it again first. That will be its fourth heat.',
    );
    expect(said({ costs: 'cooled' }, { ...THIN, ...ADDED })).toBe(
      'The cup has cooled: put the plastic in cold, cook it all until it runs again, then stir in the rest. That will be its third heat.',
    );
  });
  test('cold plastic makes a hot cup too cold: plastic first, cook, then drops, or hot', () => {
    const falls = { from: 170, to: 140, pours: 160 };
    expect(said({ costs: 'falls', falls }, { ...THIN, ...ADDED }, '°F')).toBe(
      'Added cold, the plastic takes the cup from 338 °F down to about 284 °F, too cold to pour: put it in first, cook the cup until it runs again, then stir in the rest. That will be its third heat. Heat the plastic in a cup of its own and add it hot, and it costs no heat.',
    );
  });
  test('it cools, and can still be poured', () => {
    expect(said({ falls: { from: 172, to: 165, pours: 160 } }, THIN)).toBe(
      'Added cold, the plastic takes the cup from 172 °C down to about 165 °C.',
    );
  });
});

describe('what a round did to the heat of its cup', () => {
  const CELSIUS = { temperature: '°C' } as const;
  test.each([
    [{ heats: 1, newHeats: 1 }, undefined],
    [{ heats: 1, newHeats: 1, heatedTo: 171 }, 'Heated to 171 °C.'],
    [{ heats: 1, newHeats: 0, heldMinutes: 6 }, '6 min above 160 °C.'],
    [{ heats: 3, newHeats: 1, heatedTo: 169, heldMinutes: 0.5 }, 'Third heat, to 169 °C, 30 s above 160 °C.'],
    [{ heats: 6, newHeats: 6, heatedTo: 181 }, 'First to sixth heat, to 181 °C.'],
    [{ heats: 4, newHeats: 2 }, 'Third to fourth heat.'],
  ])('%j: %s', (round, text) => {
    expect(roundHeatText(round, CELSIUS)).toBe(text);
  });
});
