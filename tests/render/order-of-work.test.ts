import { describe, expect, test } from 'vitest';
import type { Cup } from '../../src/book/model/cup.ts';
import type { StepWords } from '../../src/patterns/pattern.ts';
import type { Pattern } from '../../src/patterns/patterns.ts';
import { orderOfWork, type WorkMaterial } from '../../src/render/order-of-work.ts';
import { stepHtml } from '../../src/render/step-html.ts';
import { stepText } from '../../src/words/step-text.ts';
import { pageOf } from './sample-book.ts';

const MATERIALS: Readonly<Record<string, WorkMaterial>> = {
  supple: { title: 'Supple', kind: 'plastic', working: { from: 165, to: 177 } },
  peat: { title: 'Peat', kind: 'colorant', gramsPerDrop: 0.05 },
  pearl: { title: 'Ivory pearl', kind: 'powder' },
  hex: { title: 'Copper hex', kind: 'flake' },
  salt: { title: 'Fine salt', kind: 'additive' },
  guard: { title: 'Heat guard', kind: 'additive', gramsPerDrop: 0.05, highest: 200 },
  scent: { title: 'Kelp scent', kind: 'additive', gramsPerDrop: 0.04, highest: 168 },
  aniseed: { title: 'Aniseed', kind: 'additive', gramsPerDrop: 0.04, highest: 210, use: 'scent' },
};

/** The order of work for cups of these names, each with the same in it. */
function work(pattern: Pattern, names: readonly string[], materials: readonly string[]): readonly StepWords[] {
  const contents = materials.map((material) => ({ material, gramsPerMl: 0.01 }));
  const plastics = [{ material: 'supple', fraction: 1 }];
  const cups = names.map((name) => ({ name, contents, plastics }) as unknown as Cup);
  return orderOfWork({ pattern, cups }, (id) => MATERIALS[id]);
}

describe('orderOfWork(recipe)', () => {
  const solid = (...materials: readonly string[]): readonly string[] =>
    work('solid', ['body'], materials).map(stepText);

  test('is said as one says it', () => {
    const steps = solid('peat', 'pearl', 'hex');
    expect(steps).toContain('Stir in the colorant, then the powder, until no streaks are left.');
    expect(steps).toContain('Add the flake last. It sinks, so stir before every pour.');
  });

  test('puts a liquid additive into the cold plastic, and says of none that it sinks', () => {
    const steps = solid('peat', 'guard');
    expect(steps[1]).toMatch(/^Stir Heat guard into the cold plastic, then heat in short bursts/);
    expect(steps.join(' ')).not.toMatch(/sink|Last/);
  });

  test('keeps for last what is spooned and sinks', () => {
    expect(solid('salt', 'guard', 'hex')).toContain(
      'Add the flake and Fine salt last. They sink, so stir before every pour.',
    );
    expect(solid('salt')).toContain('Add Fine salt last. It sinks, so stir before every pour.');
  });

  test('keeps off the heat what bears less than the plastic is poured at', () => {
    const steps = solid('peat', 'scent', 'hex');
    expect(steps.join(' ')).not.toContain('cold plastic');
    const place = (begin: string): number => steps.findIndex((step) => step.startsWith(begin));
    expect(place('Take it off the heat and stir in Kelp scent.')).toBeGreaterThan(place('Stir in the colorant'));
    expect(place('Add the flake last')).toBeGreaterThan(place('Take it off the heat and stir in'));
  });

  test('keeps a scent off the heat, whatever it bears', () => {
    const steps = solid('peat', 'aniseed');
    expect(steps.join(' ')).not.toContain('cold plastic');
    expect(steps).toContain('Take it off the heat and stir in Aniseed.');
  });

  test('names cups as cups, so that none is poured back', () => {
    const last = (pattern: Pattern, ...names: readonly string[]): string => stepText(work(pattern, names, []).at(-1)!);
    expect(last('layered', 'back', 'middle', 'belly')).toBe(
      'Pour from the back cup first, then from the middle cup, then from the belly cup, each as soon as the layer before it holds its shape.',
    );
    expect(last('layered', 'back', 'belly')).toBe(
      'Pour from the back cup first, then from the belly cup, as soon as the layer before it holds its shape.',
    );
    expect(last('tipped', 'body', 'tip')).toBe(
      'Fill only the end of the mold from the tip cup, let it set, then shoot the body cup.',
    );
    expect(last('striped', 'body', 'stripe')).toBe(
      'Lay a thin line from the stripe cup along the belly of the mold, let it skin over, then fill up from the body cup.',
    );
    expect(last('swirl', 'race', 'foam')).toBe('Shoot the race and foam cups through one nozzle, unmixed.');
    expect(last('laminate', 'back', 'belly')).toBe(
      'Shoot the back and belly cups together, side by side, at the same temperature.',
    );
    expect(last('core', 'shell', 'core')).toBe(
      'Shoot the core cup first, in a core mold or on pins, trim it, and shoot the shell cup around it; or shoot the shell cup, and while its middle is liquid, the core cup into it.',
    );
  });

  test('names of cups stand out, and cannot be taken for markup', () => {
    const step = work('swirl', ['race', '<i>'], []).at(-1)!;
    expect(stepHtml(step).toString()).toBe(
      'Shoot the <b>race</b> and <b>&lt;i&gt;</b> cups through one nozzle, unmixed.',
    );
  });
});

test('a recipe with notes says that they come before the order of work, on its page and on its card', async () => {
  const page = await pageOf('recipe', 'weir-foam');
  expect(page.indexOf('<a href="#notes">the maker’s notes</a>')).toBeLessThan(page.indexOf('<ol class="steps">'));
  expect(await pageOf('recipe-card', 'weir-foam')).toContain('the maker’s notes come first');
  expect(await pageOf('recipe', 'kernel')).not.toContain('the maker’s notes');
  expect(await pageOf('recipe-card', 'kernel')).not.toContain('the maker’s notes');
});
