import { describe, expect, test } from 'vitest';
import { orderOfWork, type RecipeToMake } from '../../src/book/recipes/order-of-work.ts';
import type { WorkMaterial } from '../../src/book/recipes/work-material.ts';
import type { Pattern } from '../../src/patterns/patterns.ts';
import { workWords } from '../../src/words/order-of-work.ts';
import { shortWorkWords } from '../../src/words/short-order-of-work.ts';
import { stepText } from '../../src/words/step-text.ts';

const MATERIALS: Readonly<Record<string, WorkMaterial>> = {
  supple: { title: 'Supple', kind: 'plastic', working: { from: 165, to: 177 } },
  lifter: { title: 'Lifter', kind: 'plastic', milky: true },
  peat: { title: 'Peat', kind: 'colorant', gramsPerDrop: 0.05 },
  pearl: { title: 'Ivory Pearl', kind: 'powder' },
  hex: { title: 'Copper Hex', kind: 'flake', flake: { acrossMm: 1.016 } },
  salt: { title: 'Fine Salt', kind: 'additive', use: 'salt' },
  guard: { title: 'Heat Guard', kind: 'additive', gramsPerDrop: 0.05, use: 'stabiliser' },
  scent: { title: 'Kelp Scent', kind: 'additive', gramsPerDrop: 0.04, highest: 168, use: 'scent' },
};
const NAMES = { title: (id: string): string => MATERIALS[id]!.title, settings: { temperature: '°C' } } as const;

type Cups = Readonly<Record<string, readonly string[]>>;
type How = Pick<RecipeToMake, 'method' | 'order'>;

const work = (pattern: Pattern, cups: Cups, how: How = {}): ReturnType<typeof orderOfWork> =>
  orderOfWork(
    {
      pattern,
      ...how,
      cups: Object.entries(cups).map(([name, [plastic = 'supple', ...contents]]) => ({
        name,
        plastics: [{ material: plastic }],
        contents: contents.map((material) => ({ material })),
      })),
    },
    (id) => MATERIALS[id],
  );
const long = (pattern: Pattern, cups: Cups, how?: How): ReturnType<typeof workWords> =>
  workWords(work(pattern, cups, how), NAMES);
const short = (pattern: Pattern, cups: Cups, how?: How): readonly string[] =>
  shortWorkWords(work(pattern, cups, how), NAMES).map(stepText);
/** Steps of a solid bait's cup. */
const solid = (...materials: readonly string[]): readonly string[] =>
  long('solid', { body: materials }).cups[0]!.steps.map(stepText);
/** How cups without anything in them get into the mold. */
const filled = (pattern: Pattern, names: readonly string[], how?: How): readonly string[] =>
  long(pattern, Object.fromEntries(names.map((name) => [name, []])), how).filling.map(stepText);

describe('workWords(work)', () => {
  test('tells a cup from the cold plastic to the last drop of scent', () => {
    expect(solid('supple', 'peat', 'pearl', 'hex', 'guard', 'scent')).toEqual([
      'Stir Heat Guard into the cold plastic. Wet Ivory Pearl with twice as much of the plastic, to a paste without lumps, and stir it in cold: dry powder on hot plastic leaves pale specks.',
      'Heat it in short bursts, stirring from the bottom, until it turns clear and runs.',
      'Stir in Peat, until no streaks are left.',
      'Take it off the heat, let the bubbles rise, and check the temperature.',
      'Stir in Copper Hex, then Kelp Scent, and pour at once. Within 30 to 60 seconds you see Copper Hex sink: stir before every pour, and at every refill.',
    ]);
    expect(solid('supple', 'hex').at(-1)).toBe(
      'Stir in Copper Hex, and pour at once. Within 30 to 60 seconds you see it sink: stir before every pour, and at every refill.',
    );
    expect(solid('supple', 'scent').at(-1)).toBe('Stir in Kelp Scent last of all, off the heat.');
  });

  test('tells in short of a later cup what is done as with one before it, and in full what is not', () => {
    const stepsOf = (cups: Cups): readonly (readonly string[])[] =>
      long('layered', cups).cups.map(({ steps }) => steps.map(stepText));
    const [first, second] = stepsOf({ back: ['supple', 'peat', 'pearl'], belly: ['supple', 'peat', 'pearl', 'hex'] });
    expect(first).toEqual(solid('supple', 'peat', 'pearl'));
    expect(second!.slice(0, 2)).toEqual([
      'Wet Ivory Pearl to a paste as before, and stir it in cold.',
      'Heat it, stir in Peat, let it rest and check the temperature, as before.',
    ]);
    expect(second![2]).toMatch(/^Just before you pour it, stir in Copper Hex\. /);
    expect(second).toHaveLength(3);
    const [, milky] = stepsOf({ back: ['supple', 'peat'], belly: ['lifter', 'pearl'] });
    expect(milky).toEqual(solid('lifter', 'pearl'));
  });

  test('stirs in what sinks just before the pour, where another cup must be ready first', () => {
    const [back] = long('layered', { back: ['supple', 'hex'], belly: ['supple'] }).cups;
    expect(stepText(back!.steps.at(-1)!)).toMatch(/^Just before you pour it, stir in Copper Hex\. /);
    const scented = long('layered', { back: ['supple', 'hex', 'scent'], belly: ['supple'] }).cups[0]!;
    expect(stepText(scented.steps.at(-1)!)).toMatch(/^Just before you pour it, stir in Copper Hex, then Kelp Scent\. /);
  });

  test('speaks of refills only where an injector is filled', () => {
    const pours = (pattern: Pattern, method: 'injected' | 'poured' | 'dipped'): string =>
      stepText(long(pattern, { back: ['supple', 'hex'], belly: ['supple', 'hex'] }, { method }).cups[0]!.steps.at(-1)!);
    expect(pours('laminate', 'injected')).toMatch(/stir before every pour, and at every refill\.$/);
    expect(pours('laminate', 'poured')).toMatch(/stir before every pour\.$/);
    expect(pours('laminate', 'dipped')).toMatch(/stir before every pour\.$/);
    expect(pours('layered', 'injected')).toMatch(/stir before every pour\.$/);
  });

  test('keeps to nine lines for a bait of one cup, whatever is in it', () => {
    for (const method of ['injected', 'poured', 'dipped'] as const) {
      const { before, cups, filling } = long('solid', { body: Object.keys(MATERIALS) }, { method });
      expect(before.length + cups[0]!.steps.length + filling.length).toBeLessThanOrEqual(9);
    }
  });

  test('says of a milky plastic when it is done, and not that it turns clear', () => {
    const steps = solid('lifter').join(' ');
    expect(steps).toContain('until it runs like syrup and its dull jelly look is gone');
    expect(steps).not.toContain('turns clear and runs');
  });

  test('begins with the jug, once for all cups, in the book’s degrees', () => {
    const { before } = long('laminate', { back: ['supple', 'salt'], belly: ['lifter', 'salt'] });
    expect(before.map(stepText)).toEqual([
      'Shake or roll the jugs of Supple and Lifter until nothing is left on the bottom. Then get out the air you shook in: let them stand for 30 to 60 minutes, or pull a vacuum of 25 to 29 inHg for 5 to 15 minutes in a container no more than 1/3 full.',
      'Dry Fine Salt at 100 to 120 °C for 1 to 2 hours, and keep it warm: damp salt spits, and cold salt cools the cup.',
      'Have the mold warm (35 to 60 °C) and bone dry. Measure everything out before you heat.',
    ]);
    const american = workWords(work('solid', { body: ['supple', 'salt'] }), {
      ...NAMES,
      settings: { temperature: '°F' },
    });
    expect(american.before.map(stepText)[1]).toContain('at 212 to 248 °F for');
  });

  test('says of cups that are shot together how near they are, how soon, and which is finished last', () => {
    expect(long('laminate', { back: ['supple', 'hex'], belly: ['supple'] }).filling.map(stepText)).toEqual([
      'Finish the back cup last, since what is in it sinks. Have both cups within 5 °C of each other, and no more than 60 to 120 seconds off the heat.',
      'Shoot the back and belly cups together, side by side.',
    ]);
    const fahrenheit = { ...NAMES, settings: { temperature: '°F' } } as const;
    const { filling } = workWords(work('swirl', { race: ['supple'], foam: ['supple'] }), fahrenheit);
    expect(stepText(filling[0]!)).toBe(
      'Have both cups within 9 °F of each other, and no more than 60 to 120 seconds off the heat.',
    );
  });

  test('names cups as cups, so that none is poured back', () => {
    expect(filled('layered', ['back', 'middle', 'belly'])).toEqual([
      'Have every cup hot, with its bubbles up, before you begin.',
      'Pour from the back cup first, then from the middle cup, then from the belly cup, each 20 to 60 seconds later.',
      'A layer is ready for the next when its skin dimples. Pour the next at the hot end of its range: what is too cool, or lands on a layer gone cold, peels.',
    ]);
    expect(filled('tipped', ['body', 'tip'])).toEqual([
      'Have both cups hot, with their bubbles up, before you begin: a tip that has set, or gone cold, pulls off.',
      'Fill only the end of the mold from the tip cup, and shoot the body cup hot as soon as the tip has a skin.',
    ]);
    expect(filled('striped', ['body', 'stripe'])).toEqual([
      'Have both cups hot, with their bubbles up, before you begin.',
      'Lay a thin line from the stripe cup along the belly of the mold, let it skin over, then fill up hot from the body cup.',
    ]);
    expect(filled('swirl', ['race', 'foam']).at(-1)).toBe('Shoot the race and foam cups through one nozzle, unmixed.');
  });

  test('tells of a core the one way that the recipe says, and both where it says none', () => {
    const coreFirst =
      'Shoot the stone cup first, in a core mold or on pins. Once it has set, trim it, and shoot the shell cup hot around it.';
    const cups = ['shell', 'stone'];
    expect(filled('core', cups, { order: 'core first' })).toEqual([coreFirst]);
    expect(filled('core', cups, { order: 'shell first' })).toEqual([
      'Shoot the shell cup, and while its middle is liquid, the stone cup into it.',
    ]);
    expect(filled('core', cups)).toEqual([
      `${coreFirst} Or the other way round: shoot the shell cup, and while its middle is liquid, the stone cup into it.`,
    ]);
  });

  test('fills a mold as its method says', () => {
    expect(filled('solid', ['body'], { method: 'injected' })).toEqual([
      'Shoot hot and quick, and hold the pressure for 5 to 15 seconds. The first shots of a cold mold, often two, come out dull or short: back into the cup with them.',
    ]);
    expect(filled('solid', ['body'], { method: 'poured' })).toEqual([
      'Fill the mold slowly, and top it up as it shrinks. Thin ribbons and paddles want the plastic hot, and the pour quick.',
    ]);
    expect(filled('solid', ['body'], { method: 'dipped' })).toEqual([
      'Dip the warm rods, draw them out slowly, and let the coat set. Dip again for a thicker wall.',
    ]);
    // What is poured in by hand has no first shots, whatever else its mold is filled with.
    expect(filled('layered', ['back', 'belly'], { method: 'injected' }).join(' ')).not.toContain('shots');
    expect(filled('laminate', ['back', 'belly'], { method: 'poured' }).at(-1)).toMatch(/^Pour the back and belly cups/);
  });
});

describe('shortWorkWords(work)', () => {
  test('tells a card stage by stage what goes into which cup', () => {
    expect(
      short('laminate', { back: ['supple', 'peat', 'hex'], belly: ['supple', 'pearl', 'peat', 'salt', 'scent'] }),
    ).toEqual([
      'Shake the plastic, let it stand; measure out before you heat. Dry Fine Salt, and keep it warm.',
      'Into the cold plastic: the powder, wetted (belly).',
      'Heat in short bursts, stirring well, until it is clear and runs.',
      'Stir in the colorant, until no streaks are left.',
      'Off the heat: bubbles up, check the temperature.',
      'Last: the flake (back), then Fine Salt (belly), then Kelp Scent (belly). Stir before every pour.',
      'Cups within 5 °C, 60 to 120 seconds off the heat.',
      'Shoot the back and belly cups together, side by side.',
    ]);
  });

  test('names no cup where there is but one, and no stage that nothing goes in at', () => {
    expect(short('solid', { body: ['lifter', 'peat'] })).toEqual([
      'Shake the plastic, let it stand; measure out before you heat.',
      'Heat in short bursts, stirring well, until it runs like syrup and its dull jelly look is gone.',
      'Stir in the colorant, until no streaks are left.',
      'Off the heat: bubbles up, check the temperature.',
      'Fill the mold slowly, and top it up as it shrinks.',
    ]);
  });

  test('names the milky cup where not all are', () => {
    expect(short('laminate', { back: ['supple'], belly: ['lifter'] })[1]).toBe(
      'Heat in short bursts, stirring well, until it is clear and runs; belly until it runs like syrup and its dull jelly look is gone.',
    );
  });
});
