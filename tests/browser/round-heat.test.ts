import { describe, expect, test } from 'vitest';
import { celsiusInField, heatInField } from '../../src/browser/match/heat-field.ts';
import { heatFields, heatWarningsView } from '../../src/browser/match/heat-view.ts';
import { logView } from '../../src/browser/match/log-view.ts';
import { logShelf } from '../../src/browser/match/page-shelf.ts';
import { readWork } from '../../src/browser/match/read-work.ts';
import { roundOf } from '../../src/browser/match/typed-round.ts';
import { type WorkStep, withSteps } from '../../src/browser/match/work.ts';
import { cupNow } from '../../src/browser/match/work-log.ts';
import { recipeFile } from '../../src/browser/match/work-recipe.ts';
import { documentOf, wordsIn } from '../page-dom.ts';
import { DATA, leaf } from './match-book.ts';

const UNITS = { volume: 'ml', temperature: '°C' } as const;
const typed = { pour: '14', note: '' };
const SHOWN = { data: DATA, materials: new Map(DATA.materials.map((material) => [material.id, material])) };
const PEAT = { material: 'peat', dose: '6 drops', grams: 0.3 };
const added: WorkStep = { do: 'add', amounts: [PEAT] };
const round = (heat: object): readonly WorkStep[] => [
  { do: 'heat', ...heat },
  { do: 'pour', ml: 5, also: true },
  { do: 'see', overWhite: '#b8926a', also: true },
];
const logOf = (...steps: readonly WorkStep[]): string =>
  recipeFile(withSteps(withSteps(leaf(), 0, added), 0, ...steps), { made: '2026-03-14', taken: new Set() }).text;

describe('the heat of a round', () => {
  test('roundOf(…) has what was noted, and nothing of what was not', () => {
    expect(roundOf({ ...typed, heat: '171', again: '2', held: '6.5' }, 120, UNITS)).toEqual([
      { do: 'heat', celsius: 171, again: 2, heldMinutes: 6.5 },
      { do: 'pour', ml: 14 },
    ]);
    expect(roundOf({ ...typed, heat: '', again: '0', held: ' ' }, 120, UNITS)).toEqual([{ do: 'pour', ml: 14 }]);
    expect(roundOf({ ...typed, heat: '340' }, 120, { ...UNITS, temperature: '°F' })).toMatchObject([
      { celsius: expect.closeTo(171.11, 2) },
      {},
    ]);
  });

  test.each([
    [{ heat: '340' }, 'heat'],
    [{ heat: 'NaN' }, 'heat'],
    [{ held: '0' }, 'held'],
    [{ held: 'NaN' }, 'held'],
    [{ again: '1.5' }, 'again'],
  ])('roundOf(%j) is a sentence at its field', (more, field) => {
    expect(roundOf({ ...typed, ...more }, 120, UNITS)).toMatchObject({ field, fault: expect.stringMatching(/[.?]$/) });
  });

  test('roundOf(too long at heat) says so in no unit that the book does not have', () => {
    expect(roundOf({ ...typed, held: '0' }, 120, { ...UNITS, temperature: '°F' })).toEqual({
      fault: 'How many minutes it was held hot is a number from 0.1 to 600.',
      field: 'held',
    });
  });

  test('a temperature in a field is the one that was typed', () => {
    for (const unit of ['°C', '°F'] as const)
      for (const text of ['214', '231.5', '340'].slice(0, unit === '°C' ? 2 : 3))
        expect(heatInField(celsiusInField(text, unit) as number, unit)).toBe(text);
  });

  test('is written where it belongs: what went in goes in with the first of the heats', () => {
    const first = logOf(...round({ again: 1, celsius: 168 }));
    expect(first).toMatch(/- add: \{ peat: 6 drops \}\n\s+- reheat: true\n\s+heat: 168 °C\n\s+pour: 5 ml/);
    const second = logOf(...round({}), added, ...round({ again: 2, heldMinutes: 4 }));
    expect(second).toMatch(
      /- reheat: true\n\s+add: \{ peat: 6 drops \}\n\s+- reheat: true\n\s+held: 4 min\n\s+pour: 5 ml/,
    );
  });

  test('is kept and read again, and a match from before it was asked is read as it was', () => {
    const work = withSteps(leaf(), 0, ...round({ again: 2, celsius: 171.5, heldMinutes: 4 }));
    expect(readWork(JSON.stringify(work))).toEqual(work);
    const before = withSteps(leaf(), 0, { do: 'pour', ml: 5 });
    expect(readWork(JSON.stringify(before))).toEqual(before);
    const odd = withSteps(leaf(), 0, { do: 'heat', celsius: 900 } as WorkStep);
    expect(readWork(JSON.stringify(odd))).toHaveProperty('fault');
  });

  test('is one more of a cup that was looked at cold, unless somebody says otherwise', () => {
    const cold = { heats: { heats: 1, borne: {}, cooled: true } };
    const chosen = (draft: object, now: typeof cold): string | null | undefined =>
      documentOf(heatFields('cup-0', draft, now, SHOWN).toString()).querySelector('option[selected]')?.textContent;
    expect(chosen({}, cold)).toBe('once');
    expect(chosen({ again: '0' }, cold)).toBe('no');
    expect(chosen({}, { heats: { ...cold.heats, cooled: false } })).toBe('no');
  });

  test('is asked for by name, and shown in the log and beside the cup', () => {
    const work = withSteps(withSteps(leaf(), 0, added), 0, ...round({ again: 5, celsius: 204, heldMinutes: 25 }));
    const now = cupNow(work, 0, logShelf(DATA));
    const form = documentOf(heatFields('cup-0', { heat: '171' }, now, SHOWN).toString());
    expect(wordsIn(form)).toContain('So far: sixth heat');
    expect([...form.querySelectorAll('label')].map((label) => label.textContent)).toEqual([
      'Reheated for it',
      'Hottest, °C',
      'Minutes above 160 °C',
    ]);
    const warned = wordsIn(documentOf(heatWarningsView(now, SHOWN).toString()));
    expect(warned).toContain('It was heated to 204 °C: above 200 °C vinyl breaks down');
    expect(warned).toContain('25 min above 160 °C in all');
    expect(warned).toMatch(/Heated too often: .*\(their sixth\) usually bear 5 to 7/);
    const log = wordsIn(documentOf(logView(work.cups[0]!.steps, now, SHOWN).toString()));
    expect(log).toContain('heated again 5 times, to 204 °C, 25 min above 160 °C; poured 5 ml');
    expect(log).toContain('Sixth heat;');
  });
});
