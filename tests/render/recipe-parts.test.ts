import { describe, expect, test } from 'vitest';
import type { Recipe } from '../../src/book/model/recipe.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { labFromHex } from '../../src/optics/display.ts';
import { html } from '../../src/render/html.ts';
import { paths } from '../../src/render/links.ts';
import { fold } from '../../src/render/recipe/fold.ts';
import { inWater } from '../../src/render/recipe/in-water.ts';
import { lastSeen } from '../../src/render/recipe/last-seen.ts';
import { deltaEText, differenceWords, sentence } from '../../src/render/words.ts';
import { flakesABaitText, seenFlakeText } from '../../src/words/flake.ts';
import { allByRole, byRole, documentOf, nameOf, wordsIn } from '../page-dom.ts';
import { bookOf, contextOf, readPage, SAMPLE_BOOK, SAMPLE_FILES } from './sample-book.ts';

const recipe = SAMPLE_BOOK.recipes.find(({ id }) => id === 'alder-smoke')!;
const page = await readPage('recipe', 'alder-smoke');
/** A part of the page by its heading. */
const part = (name: string): Element => byRole(page, 'region', { name });
const isDrawn = (root: ParentNode, hex: string): boolean => root.querySelector(`[fill="${hex}"]`) !== null;

test('a recipe begins with what is done at the bench: amounts, work, cautions; the rest follows, folded', () => {
  const first = ['#cups', '#work', '.cautions'];
  const rest = [
    '#sure',
    '#story',
    '#notes',
    '#lineage',
    '#light',
    '#chip',
    '#looks',
    '#lights',
    '#water',
    '#costs',
    '#take',
  ];
  const found = [...page.querySelectorAll([...first, ...rest].join())];
  expect(found.map(({ id, className }) => (id ? `#${id}` : `.${className}`))).toEqual([...first, ...rest]);
  for (const each of rest) expect([each, page.querySelector(each)!.closest('details') !== null]).toEqual([each, true]);
  for (const each of first) expect([each, page.querySelector(each)!.closest('details')]).toEqual([each, null]);
});

test('the highest temperature of a recipe stands on a plate, with what sets it', () => {
  const plate = page.querySelector('.heat-plate')!;
  expect(wordsIn(plate.querySelector('strong')!)).toBe('Never above 182 °C');
  expect(wordsIn(plate)).toContain('Never above 182 °C Copper hexagon sets the limit. Pour at 160 to 175 °C.');
});

test('a recipe says in a line what it is: colours, how much it hides, flake, pattern, mold', () => {
  const line = wordsIn(page.querySelector('.one-line')!);
  expect(line).toMatch(/^Brown and dark greyish brown, opaque; .*\b\d+ % Copper hexagon/);
  expect(line).toMatch(new RegExp(`; ${recipe.pattern}; Minnow\\.$`));
});

test('fold(…) says the gist on its lid', () => {
  const folded = documentOf(fold('id', 'Title', 'a < b', html`<p>In it</p>`));
  expect(nameOf(byRole(folded, 'button'))).toBe('Title a < b');
  expect(nameOf(byRole(folded, 'heading'))).toBe('Title');
});

describe('other lights', () => {
  test('are a choice of radio buttons, the first chosen, each with its change in words', () => {
    const choices = allByRole(part('Under other lights'), 'radio');
    expect(choices.map((choice) => choice.getAttribute('value'))).toEqual(recipe.lights.map(({ light }) => light));
    expect(choices.map((choice) => choice.hasAttribute('checked'))).toEqual([true, false, false]);
    for (const [at, { deltaE }] of recipe.lights.entries())
      expect(nameOf(choices[at]!)).toContain(`ΔE ${deltaE.toFixed(1)}`);
  });

  test('tell how far it is from its target under each, and that this is an estimate; the target’s page too', async () => {
    const book = SAMPLE_BOOK.recipes.find(({ match }) => match !== undefined)!;
    const { lights } = book.match!.cups[0]!;
    const words = lights!.views.map(({ name, deltaE }) => `${deltaEText(deltaE)} under a ${name}`);
    for (const each of [await readPage('recipe', book.id), await readPage('target', book.match!.target)]) {
      const text = wordsIn(each);
      for (const told of words) expect(text).toContain(told);
      expect(text).toContain('Only the target’s daylight colour is known');
    }
  });

  test('have a pair of colours each: daylight beside the light', () => {
    for (const { name, body } of recipe.lights) {
      const pair = byRole(page, 'img', { name: new RegExp(`^Two lights\\. Daylight: .*\\. ${sentence(name)}: `) });
      expect([isDrawn(pair, recipe.body.overWhite.hex), isDrawn(pair, body.overWhite.hex)]).toEqual([true, true]);
    }
  });
});

test('flake is told by what of the face shows it, then by its count, beside its dose as well', () => {
  const looks = wordsIn(part('How it looks'));
  const flakes = recipe.cups.flatMap((cup) => cup.flakes);
  expect(flakes).not.toHaveLength(0);
  for (const flake of flakes) {
    expect(looks).toContain(`${sentence(seenFlakeText(flake))}; ${flakesABaitText(flake.perBait)}`);
    const rows = allByRole(part('What goes in'), 'row').filter(
      (row) => row.getAttribute('data-material') === flake.material,
    );
    expect(rows.map(wordsIn).join()).toContain(flakesABaitText(flake.perBait));
  }
  expect(looks).not.toContain('lines of sight');
});

test('the table of waters has every colour, the light that is left, what is not in it, and a link to its source', async () => {
  const water = byRole(page, 'table', { name: /^The body at depth/ }).closest('section')!;
  for (const { hex, lightLeft } of recipe.water) {
    expect(isDrawn(water, hex)).toBe(true);
    const percent = `${Math.round(lightLeft * 100)} %`;
    if (lightLeft >= 0.1) expect(allByRole(water, 'cell').map(wordsIn)).toContain(percent);
  }
  expect(wordsIn(water)).toContain('Mud and glow are not included.');
  expect(byRole(water, 'link').getAttribute('href')).toBe('../../method/#water');
  const inFeet = { ...SAMPLE_BOOK, settings: { ...SAMPLE_BOOK.settings, volume: 'fl oz' as const } };
  const imperial = documentOf(inWater(await contextOf(inFeet, paths.recipe(recipe.id)), recipe));
  expect(allByRole(imperial, 'columnheader').map(wordsIn)).toEqual(['Water', '3.3 ft', '9.8 ft', '20 ft']);
});

test('how far off it may be stands in three rows, each with two colours that are so far apart', () => {
  const sure = part('How far off');
  const { spread, repeatability, batch, body } = recipe;
  const most = batch.cups.reduce((one, other) => (other.measuringDeltaE > one.measuringDeltaE ? other : one));
  const rows = [
    ['Screen to bait', spread.bound, body.overWhite.hex],
    ['Batch to batch', repeatability.bySpoonAndDrop!, body.overWhite.hex],
    ['Spoons to exact', most.measuringDeltaE, recipe.cups.find(({ name }) => name === most.name)!.body.overWhite.hex],
  ] as const;
  const found = [...sure.querySelectorAll('.apart')];
  expect(found).toHaveLength(rows.length);
  for (const [at, [name, deltaE, hex]] of rows.entries()) {
    expect(nameOf(byRole(found[at]!, 'heading'))).toBe(name);
    expect(wordsIn(found[at]!.querySelector('.apart-size')!)).toBe(
      `${differenceWords(deltaE)}, ΔE ${deltaEText(deltaE)}`,
    );
    const fills = [...found[at]!.querySelectorAll('rect')].map((rect) => rect.getAttribute('fill')!);
    expect(fills[0]).toBe(hex);
    expect(Math.abs(deltaE00(labFromHex(fills[0]!), labFromHex(fills[1]!)) - deltaE)).toBeLessThan(0.2);
  }
  expect(allByRole(sure, 'link').at(-1)!.getAttribute('href')).toBe('../../method/#sure');
});

describe('how sure', () => {
  test('names the materials that nobody has looked at and that are known by one colour alone, with their pages', () => {
    const known = (how: RegExp): readonly (readonly [string, string | null])[] => {
      const item = allByRole(part('How far off'), 'listitem').find((each) => how.test(wordsIn(each)))!;
      return allByRole(item, 'link').map((link) => [nameOf(link), link.getAttribute('href')]);
    };
    expect(known(/^Known by one colour and their kind:/)).toEqual([['Lamp Black', '../../shelf/lamp-black/']]);
    expect(known(/^Known by face colour, like all flake:/)).toContainEqual([
      'Copper hexagon',
      '../../shelf/copper-hex-040/',
    ]);
  });
});

test('the rounds say where a new cup was begun, and what of the one before was poured away', async () => {
  const files = {
    ...SAMPLE_FILES,
    'colours/afresh.md':
      '---\ntitle: Afresh\nmold: minnow-3\ncups:\n  body:\n    plastic: 100 ml supple\n    log:\n      - { add: { peat: 4 drops }, pour: 30.2 ml }\n      - { new-cup: 80 ml supple, add: { peat: 2 drops } }\n---\n',
  };
  const rounds = byRole(await readPage('recipe', 'afresh', bookOf(files)), 'region', { name: 'How it was found' });
  const [first, second] = allByRole(rounds, 'listitem').map((round) => wordsIn(round));
  expect(first).not.toContain('new cup');
  expect(second).toContain('A new cup, started with 80 ml of plastic. The 70 ml left in the last one was poured away.');
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
      heats: 1,
      newHeats: 1,
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

  const told = (deltaE: number): Document => documentOf(lastSeen(seenFar(deltaE), 2));

  test('says at the head of the page how far the last bait was from the computed colour', () => {
    expect(wordsIn(told(19))).toContain(
      'The last test bait came out different from this prediction: plainly another colour, ΔE 19.',
    );
    expect(wordsIn(told(19))).toContain('Nine in ten come closer than that');
    expect(isDrawn(told(19), '#8f9a4d')).toBe(true);
    expect(wordsIn(told(6))).toContain('within what its materials leave open');
  });

  test('shows what was seen beside what is computed as soon as it is beyond the tolerance, and asks why further on', () => {
    const near = told(3);
    expect(isDrawn(near, '#8f9a4d')).toBe(true);
    expect(allByRole(near, 'paragraph').map(wordsIn)).toContain(
      'The last test bait came out different from this prediction: easy to see, ΔE 3.0.',
    );
    const label = /\. Predicted: .* over white.*\. Last seen: [^,]* over white\.$/;
    expect(byRole(near, 'img', { name: label })).toBeDefined();
    expect(wordsIn(told(4.1))).toContain('within what its materials leave open');
  });

  test('is silent where they agree', () => {
    expect(lastSeen(seenFar(2), 2).toString()).toBe('');
  });
});
