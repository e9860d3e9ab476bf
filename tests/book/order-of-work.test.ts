import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CupStep, type CupWork, type OrderOfWork, orderOfWork } from '../../src/book/recipes/order-of-work.ts';
import { inOrderOfCup, type WorkMaterial } from '../../src/book/recipes/work-material.ts';
import { USE_NAMES } from '../../src/kinds/additive-uses.ts';
import { CORE_ORDERS, PATTERN_NAMES, PATTERNS } from '../../src/patterns/patterns.ts';
import { required } from '../../src/values/required.ts';
import { DEMO_BOOK } from '../render/demo-book.ts';

const flake = (acrossMm: number): WorkMaterial => ({ title: 'flake', kind: 'flake', flake: { acrossMm } });
const additive = (fields: Partial<WorkMaterial>): WorkMaterial => ({ title: 'additive', kind: 'additive', ...fields });

const MATERIALS: Readonly<Record<string, WorkMaterial>> = {
  supple: { title: 'Supple', kind: 'plastic', working: { from: 160, to: 175 } },
  lifter: { title: 'Lifter', kind: 'plastic', working: { from: 155, to: 167 }, milky: true },
  plain: { title: 'Plain', kind: 'plastic' },
  peat: { title: 'Peat', kind: 'colorant', gramsPerDrop: 0.05 },
  pearl: { title: 'Ivory pearl', kind: 'powder' },
  glow: { title: 'Glow', kind: 'powder', highest: 160 },
  hex: flake(1.016),
  fine: flake(0.2),
  drop: additive({ gramsPerDrop: 0.05 }),
  tender: additive({ gramsPerDrop: 0.05, highest: 140 }),
  grit: additive({}),
  ...Object.fromEntries(
    USE_NAMES.flatMap((use) => [
      [use, additive({ use, gramsPerDrop: 0.05, highest: 210 })],
      [`dry-${use}`, additive({ use, highest: 140 })],
    ]),
  ),
};
const PLASTICS = ['supple', 'lifter', 'plain'];
const OTHERS = Object.keys(MATERIALS).filter((id) => !PLASTICS.includes(id));

const anyRecipe = fc
  .record({
    pattern: fc.constantFrom(...PATTERN_NAMES),
    order: fc.constantFrom(undefined, ...CORE_ORDERS),
    cups: fc.array(fc.record({ plastics: fc.subarray(PLASTICS, { minLength: 1 }), contents: fc.subarray(OTHERS) }), {
      minLength: 3,
      maxLength: 3,
    }),
  })
  .map(({ pattern, order, cups }) => {
    const { least, most } = PATTERNS[pattern].cups;
    const named = cups.slice(0, Math.min(most, Math.max(least, 3))).map(({ plastics, contents }, index) => ({
      name: `cup-${index}`,
      plastics: plastics.map((material) => ({ material })),
      contents: contents.map((material) => ({ material })),
    }));
    return { pattern, cups: named, ...(order && { order }) };
  });

const work = (recipe: Parameters<typeof orderOfWork>[0]): OrderOfWork => orderOfWork(recipe, (id) => MATERIALS[id]);
const place = ({ steps }: CupWork, done: CupStep['do']): number => steps.findIndex((step) => step.do === done);

/** What a step is done with. */
const named = (step: CupStep): readonly string[] =>
  'materials' in step
    ? step.materials
    : 'liquids' in step
      ? [...step.liquids, ...step.powders]
      : step.do === 'sinks'
        ? [...step.flake, ...step.others]
        : [];

const law = (name: string, holds: (made: OrderOfWork, recipe: Parameters<typeof orderOfWork>[0]) => void): void =>
  void test(name, () => fc.assert(fc.property(anyRecipe, (recipe) => holds(work(recipe), recipe))));

describe('orderOfWork(recipe)', () => {
  law('makes each cup once, and names each of its materials once and no other cup’s', ({ cups }, recipe) => {
    expect(cups.map(({ name }) => name).sort()).toEqual(recipe.cups.map(({ name }) => name));
    for (const cup of cups) {
      const { contents } = recipe.cups.find(({ name }) => name === cup.name)!;
      expect(cup.steps.flatMap(named).sort()).toEqual(contents.map(({ material }) => material).sort());
    }
  });

  law(
    'heats each cup once, and lets its bubbles rise after that and before anything goes in that sinks',
    ({ cups }) => {
      for (const cup of cups) {
        expect(cup.steps.filter((step) => step.do === 'heat')).toHaveLength(1);
        expect(place(cup, 'rest')).toBeGreaterThan(place(cup, 'heat'));
        if (place(cup, 'sinks') >= 0) expect(place(cup, 'sinks')).toBeGreaterThan(place(cup, 'rest'));
      }
    },
  );

  law('stirs a scent in last of all and off the heat, whatever it bears', ({ cups }) => {
    for (const cup of cups) {
      const at = cup.steps.findIndex((step) => named(step).some((id) => MATERIALS[id]?.use === 'scent'));
      if (at >= 0) expect(at).toBe(cup.steps.length - 1);
      if (at >= 0) expect(at).toBeGreaterThan(place(cup, 'rest'));
    }
  });

  law('never puts a dry powder on hot plastic, and flake and salt only after the bubbles', ({ cups }) => {
    for (const { steps } of cups) {
      for (const step of steps) {
        const loose = 'liquids' in step ? step.liquids : named(step);
        expect(loose.filter((id) => MATERIALS[id]?.kind === 'powder')).toEqual([]);
        const sinking = named(step).filter((id) => MATERIALS[id]?.kind === 'flake' || MATERIALS[id]?.use === 'salt');
        if (sinking.length > 0) expect(step.do).toBe('sinks');
      }
    }
  });

  law(
    'makes the cups in the order in which they are poured, or those that sink last where all are shot at once',
    (made, recipe) => {
      const names = made.cups.map(({ name }) => name);
      if (!PATTERNS[recipe.pattern].together) {
        const poured = PATTERNS[recipe.pattern].poured(names.length, recipe.order);
        expect(names).toEqual(poured.map((index) => recipe.cups[index]!.name));
        return;
      }
      const sinks = made.cups.map((cup) => place(cup, 'sinks') >= 0);
      expect(sinks).toEqual([...sinks].sort((one, other) => Number(one) - Number(other)));
    },
  );

  law('dries salt, in whichever cup it is, and nothing else', ({ dried }, recipe) => {
    const salts = recipe.cups.flatMap(({ contents }) => contents.map(({ material }) => material));
    expect([...dried].sort()).toEqual([...new Set(salts.filter((id) => MATERIALS[id]?.use === 'salt'))].sort());
  });

  law('lists amounts in the order in which they go in', ({ cups }, recipe) => {
    for (const cup of cups) {
      const { plastics, contents } = recipe.cups.find(({ name }) => name === cup.name)!;
      const listed = inOrderOfCup(contents, plastics, (id) => MATERIALS[id]!).map(({ material }) => material);
      const steps = listed.map((id) => cup.steps.findIndex((step) => named(step).includes(id)));
      expect(steps).toEqual([...steps].sort((one, other) => one - other));
    }
  });

  const of = (plastic: string, ...contents: readonly string[]): readonly CupStep[] =>
    work({
      pattern: 'solid',
      cups: [{ name: 'body', plastics: [{ material: plastic }], contents: contents.map((material) => ({ material })) }],
    }).cups[0]!.steps;

  test('goes by what an additive is for; by what it bears only where nobody has said', () => {
    expect(of('supple', 'softener', 'drop', 'tender', 'scent')).toEqual([
      { do: 'cold', liquids: ['softener', 'drop'], powders: [], wetWith: 'softener' },
      { do: 'heat', until: 'clear' },
      { do: 'rest' },
      { do: 'last', materials: ['tender', 'scent'] },
    ]);
  });

  test('heats a milky plastic until it runs, and never until it is clear', () => {
    expect(of('lifter')).toEqual([{ do: 'heat', until: 'syrup' }, { do: 'rest' }]);
  });

  test('stirs a powder in late that bears less than the plastic is poured at', () => {
    expect(of('supple', 'pearl', 'glow', 'peat')).toEqual([
      { do: 'cold', liquids: [], powders: ['pearl'] },
      { do: 'heat', until: 'clear' },
      { do: 'stir-in', liquids: ['peat'], powders: ['glow'] },
      { do: 'rest' },
    ]);
  });

  test('says how soon flake and salt are seen to sink, and nothing of the finest flake', () => {
    // Common practice, no source: large flake 30 to 60 s, salt 60 s, .008 in holds.
    const within = (...contents: readonly string[]): unknown =>
      of('supple', ...contents).flatMap((step) => (step.do === 'sinks' ? [step.within] : []))[0];
    expect(within('hex')).toEqual({ from: 30, to: 60 });
    expect(within('salt')).toEqual({ from: 60, to: 60 });
    expect(within('salt', 'hex')).toEqual({ from: 30, to: 60 });
    expect(within('fine')).toBeUndefined();
  });
});

describe('the demo book', () => {
  const materials = new Map(DEMO_BOOK.materials.map((material) => [material.id, material]));
  const cupsOf = (id: string): readonly (readonly [string, readonly CupStep[]])[] => {
    const recipe = DEMO_BOOK.recipes.find((each) => each.id === id)!;
    return orderOfWork(recipe, (material) => required(materials, material)).cups.map(({ name, steps }) => [
      name,
      steps,
    ]);
  };
  const rest: CupStep = { do: 'rest' };
  const heat: CupStep = { do: 'heat', until: 'clear' };

  test('Alder Smoke has its copper in the back and its gold in the belly', () => {
    expect(cupsOf('alder-smoke')).toEqual([
      [
        'back',
        [
          heat,
          { do: 'stir-in', liquids: ['lamp-black', 'peat'], powders: [] },
          rest,
          { do: 'sinks', flake: ['copper-hex-040'], others: [], within: { from: 30, to: 60 } },
        ],
      ],
      [
        'belly',
        [
          { do: 'cold', liquids: [], powders: ['frost-pearl', 'ivory-pearl'] },
          heat,
          { do: 'stir-in', liquids: expect.arrayContaining(['straw', 'peat']), powders: [] },
          rest,
          { do: 'sinks', flake: ['gold-hex-015'], others: [] },
        ],
      ],
    ]);
  });

  test('Millrace Marble has salt in the white cup only, and that is made last', () => {
    const cups = cupsOf('millrace-marble');
    expect(cups.map(([name]) => name)).toEqual(['race', 'foam']);
    const [race, foam] = cups.map(([, steps]) => steps.flatMap(named));
    expect(race).not.toContain('fine-salt');
    expect(foam).toContain('fine-salt');
  });

  test('Duckweed Sunday gets its scent last, though that bears more than the plastic is poured at', () => {
    const [[, steps]] = cupsOf('duckweed-sunday') as [readonly [string, readonly CupStep[]]];
    expect(steps.at(-1)).toEqual({ do: 'last', materials: ['kelp-scent'] });
    expect(steps.find((step) => step.do === 'heat')).toEqual({ do: 'heat', until: 'syrup' });
  });

  test('Haw Stone has its core made first', () => {
    expect(cupsOf('haw-stone').map(([name]) => name)).toEqual(['core', 'shell']);
  });
});
