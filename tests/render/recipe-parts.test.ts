import { describe, expect, test } from 'vitest';
import type { Recipe } from '../../src/book/model.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { html } from '../../src/render/html.ts';
import { fold } from '../../src/render/recipe/fold.ts';
import { inWater } from '../../src/render/recipe/in-water.ts';
import { lastSeen } from '../../src/render/recipe/last-seen.ts';
import { deltaEText } from '../../src/render/words.ts';
import { pageOf, SAMPLE_BOOK } from './sample-book.ts';

const recipe = SAMPLE_BOOK.recipes.find(({ id }) => id === 'alder-smoke')!;
const page = await pageOf('recipe', 'alder-smoke');
const inOrder = (...parts: readonly string[]): readonly number[] => parts.map((part) => page.indexOf(part));

test('a recipe begins with what is done at the bench: amounts, work, cautions; the rest follows', () => {
  const places = inOrder(
    'id="cups"',
    'id="work"',
    'class="cautions"',
    'id="notes"',
    'id="lineage"',
    'id="costs"',
    'id="looks"',
    'id="lights"',
    'id="water"',
    'id="sure"',
    'id="again"',
    'id="take"',
  );
  expect(places.every((place) => place > 0)).toBe(true);
  expect(places).toEqual([...places].sort((one, other) => one - other));
});

test('fold(…) says the gist on its lid', () => {
  expect(fold('id', 'Title', 'a < b', html`<p>In it</p>`).toString()).toContain(
    '<summary><h2 id="id">Title</h2><span class="gist">a &lt; b</span></summary>',
  );
});

describe('other lights', () => {
  test('are a choice of radio buttons, the first chosen, each with its change in words', () => {
    const choices = [...page.matchAll(/<input type="radio" name="light" value="([^"]+)"( checked)?>/g)];
    expect(choices.map(([, light]) => light)).toEqual(recipe.lights.map(({ light }) => light));
    expect(choices.map(([, , checked]) => checked !== undefined)).toEqual([true, false, false]);
    for (const { deltaE } of recipe.lights) expect(page).toContain(`ΔE ${deltaE.toFixed(1)}`);
  });

  test('tell how far it is from its target under each, and that this is an estimate; the target’s page too', async () => {
    const book = SAMPLE_BOOK.recipes.find(({ match }) => match !== undefined)!;
    const { lights } = book.match!.cups[0]!;
    const words = lights!.views.map(({ name, deltaE }) => `${deltaEText(deltaE)} under a ${name}`);
    for (const text of [await pageOf('recipe', book.id), await pageOf('target', book.match!.target)]) {
      for (const each of words) expect(text).toContain(each);
      expect(text).toContain('known by its colour in daylight alone');
    }
  });

  test('have a pair of colours each: daylight beside the light', () => {
    for (const { name, body } of recipe.lights) {
      const plate = page.slice(page.indexOf(`Daylight on the left, ${name} on the right`)).slice(0, 900);
      expect(plate).toContain(`fill="${recipe.body.overWhite.hex}"`);
      expect(plate).toContain(`fill="${body.overWhite.hex}"`);
    }
  });
});

test('the table of waters has every colour, the light that is left, its source and its limit', () => {
  const table = page.slice(page.indexOf('<table class="water">'));
  for (const { hex, lightLeft } of recipe.water) {
    expect(table).toContain(`fill="${hex}"`);
    if (lightLeft >= 0.1) expect(table).toContain(`${Math.round(lightLeft * 100)} %</td>`);
  }
  expect(table).toContain('Jerlov, Marine Optics, 2nd ed., 1976, table XXVII');
  expect(table).toContain(
    'Stained: reckoned, the clearest water with the humus of the mean of 30 Finnish and Estonian lakes',
  );
  expect(inWater(recipe, { volume: 'fl oz' }).toString()).toContain(
    '<th scope="col">3.3 ft</th><th scope="col">9.8 ft</th><th scope="col">20 ft</th>',
  );
});

test('how sure it is stands in words and as the ends of what it may be', () => {
  const { spread } = recipe;
  const part = page.slice(page.indexOf('id="sure"'), page.indexOf('id="again"'));
  for (const end of spread.ends.flat()) expect(part).toContain(`fill="${end}"`);
  expect(part).toMatch(
    /Half of all batches come out within ΔE [\d.]+ of the colour shown, nine in ten within [\d.]+\./,
  );
  expect(part).toContain('href="../../method/#sure"');
});

describe('how sure', () => {
  test('names the materials that are known by one colour alone, with their pages', () => {
    const sure = page.slice(page.indexOf('id="sure"'), page.indexOf('id="again"'));
    expect(sure).toMatch(
      /By one colour and the kind: (?:<a [^>]*>[^<]*<\/a>, )*<a href="\.\.\/\.\.\/shelf\/peat\/">Peat<\/a>/,
    );
    expect(sure).toMatch(/By the colour of its face, as all flake: .*shelf\/copper-hex-040\/">Copper hexagon<\/a>/);
  });
});

describe('lastSeen', () => {
  const seenFar = (deltaE: number): Recipe => {
    const [cup] = recipe.cups;
    const round = {
      ...cup!,
      number: 1,
      added: [],
      plasticAddedMl: 0,
      pouredMl: 5,
      reheated: false,
      cup: { plastics: { supple: 100 }, materials: {} },
      left: { plastics: { supple: 95 }, materials: {} },
      volumeMl: 100,
      leftMl: 95,
      look: cup!.body,
      seen: [
        { overWhite: { lab: labFromHex('#8f9a4d'), hex: '#8f9a4d', mapped: false }, missedBy: { overWhite: deltaE } },
      ],
    };
    return {
      ...recipe,
      pattern: 'solid',
      cups: [{ ...cup!, rounds: [round] }],
      spread: { ...recipe.spread, bound: 9 },
    };
  };

  test('says at the head of the page how far the last bait was from the computed colour', () => {
    const told = lastSeen(seenFar(19), 2).toString();
    expect(told).toContain('The last bait was seen ΔE 19 from the colour computed here.');
    expect(told).toContain('further than nine in ten');
    expect(told).toContain('#8f9a4d');
    expect(lastSeen(seenFar(6), 2).toString()).toContain('no more than the materials leave open');
  });

  test('shows what was seen beside what is computed as soon as it is beyond the tolerance, and asks why further on', () => {
    const told = lastSeen(seenFar(3), 2).toString();
    expect(told).toContain('#8f9a4d');
    expect(told).toContain('<p>The last bait was seen ΔE 3.0 from the colour computed here.</p>');
    expect(told).toContain('computed on the left, as last seen on the right; seen over white only, above');
    expect(lastSeen(seenFar(4.1), 2).toString()).toContain('no more than the materials leave open');
  });

  test('is silent where they agree', () => {
    expect(lastSeen(seenFar(2), 2).toString()).toBe('');
  });
});
