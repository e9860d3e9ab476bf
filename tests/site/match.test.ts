import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  begin,
  beginPlain,
  describeBrown,
  noteRound,
  PHONE,
  says,
  textOf,
  toTarget,
  typeSide,
  unfoldTyped,
  verdict,
} from './at-the-bench.ts';
import { compiledWith } from './compiled-with.ts';
import { book, connect, visit } from './visit.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

describe('a match on a telephone', () => {
  test('goes from a target to a file that the book takes', async () => {
    const { page, errors, foreign, close } = await visit(browser, 'match/', PHONE);
    await begin(page);
    await expect.poll(() => verdict(page)).toMatch(/too light/);
    await page.getByRole('button', { name: 'I added this' }).first().click();
    await expect.poll(() => verdict(page)).toMatch(/Predicted, not seen/);
    const target = book().targets.find(({ id }) => id === 'rack-claw')!.parts[0]!;
    await noteRound(page, '14', target.overWhite.hex, target.overBlack!.hex);
    await expect.poll(() => verdict(page)).toMatch(/Within tolerance/);
    expect(await page.locator('.match-next').innerText()).toMatch(/^Leave it/);

    await page.getByLabel('Name of the colour').fill('Rack Claw Again');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the recipe' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('rack-claw-again.md');
    const text = await textOf(download);
    expect(text).toBe(await page.locator('[data-file="recipe"]').textContent());
    const { book: whole, diagnostics } = compiledWith({ path: 'colours/rack-claw-again.md', text });
    expect(diagnostics.filter(({ file }) => file.includes('rack-claw-again'))).toEqual([]);
    const recipe = whole!.recipes.find(({ id }) => id === 'rack-claw-again')!;
    expect(recipe.match!.cups[0]!.rounds.at(-1)!.verdict.within).toBe(true);
    expect(errors).toEqual([]);
    expect(foreign).toEqual([]);
    await close();
  });

  test('asks once how a test pour was looked at, and remembers it in the next round, in the file and in a new match', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    const fold = page.locator('[data-how]');
    const answer = async (): Promise<string> => (await fold.locator('summary').innerText()).replaceAll('\u00a0', ' ');
    await beginPlain(page);
    await expect.poll(() => fold.getAttribute('open')).not.toBeNull();
    await page.getByLabel('At', { exact: true }).selectOption('chip');
    await expect.poll(() => page.getByLabel('Thickness of the chip, mm').inputValue()).toBe('3');
    await page.getByLabel('Thickness of the chip, mm').fill('0');
    await page.getByLabel('When').selectOption('next day');
    await expect.poll(() => says(page)).toMatch(/^The thickness is a number/);
    await page.getByLabel('Thickness of the chip, mm').fill('2.5');
    await page.getByLabel('When').selectOption('next day');
    await expect.poll(answer).toBe('How you looked: a chip of 2.5 mm, dry, next day');
    await noteRound(page, '14', '#d9d8cf', '#3a3b3c');
    expect(await fold.getAttribute('open')).toBeNull();
    expect(await answer()).toBe('How you looked: a chip of 2.5 mm, dry, next day');
    const file = (await page.locator('[data-file="recipe"]').textContent())!;
    expect(file).toMatch(/thickness: 2.5 mm\n\s+after: next day/);
    page.once('dialog', (dialog) => void dialog.accept());
    await page.getByRole('button', { name: 'New match' }).click();
    await page.reload();
    await beginPlain(page);
    await expect.poll(answer).toBe('How you looked: a chip of 2.5 mm, dry, next day');
    expect(await fold.getAttribute('open')).toBeNull();
    expect(errors).toEqual([]);
    await close();
  });

  test('asks of two sides that no bait has whether each was looked at alone, and puts flake into one', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await page.getByRole('button', { name: 'Two sides of a finished bait' }).click();
    await unfoldTyped(page);
    for (const [id, hex] of [
      ['side-0-white', '#5b4a2f'],
      ['side-0-black', '#483a26'],
      ['side-1-white', '#cdb98c'],
      ['side-1-black', '#97865f'],
    ])
      await page.locator(`#${id}-digits`).fill(hex!);
    await expect.poll(() => page.locator('#sides-ask').innerText()).toMatch(/the belly lets 9 times as much light/);
    await page.getByRole('button', { name: 'Add flake to the back' }).click();
    await page.getByLabel('Size, as the bag has it').fill('40');
    await page.getByLabel('How much').selectOption('heavy');
    await expect.poll(() => says(page)).toMatch(/^The size of the flake is written with its unit/);
    await page.getByLabel('Size, as the bag has it').fill('.040 in');
    await page.getByLabel('How much').selectOption('few');
    await page.getByRole('button', { name: 'Yes, each alone' }).click();
    await expect
      .poll(() => page.getByRole('button', { name: 'Two halves cut apart' }).getAttribute('aria-pressed'))
      .toBe('true');
    expect(await page.locator('#sides-ask').count()).toBe(0);
    await page.getByRole('button', { name: 'Next: the cup' }).click();
    await page.getByRole('button', { name: 'Start with plain plastic' }).click();
    const target = (await page.locator('[data-file="target"]').textContent())!;
    expect(target).toMatch(/colour: "#1d1c1b"\s+size: 0.040 in\s+coverage: 4 %/);
    expect(target).toContain('apart: true');
    expect(errors).toEqual([]);
    await close();
  });

  test('takes for seen and for poured only what was said, and a round back as a whole', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await begin(page);
    const before = await page.locator('[data-file="recipe"]').textContent();
    const note = page.getByRole('button', { name: 'Log this round' });
    // As much as the last time, until something else is said.
    expect(await page.getByLabel('Poured, ml').inputValue()).toBe('14');
    await page.getByLabel('Poured, ml').fill('');
    await note.click();
    const fault = 'How many millilitres were poured? Write 0 if nothing left the cup.';
    await expect.poll(() => says(page)).toBe(fault);
    // Beside its field, which has the focus and is described by it, until something is typed.
    const poured = page.getByRole('textbox', { name: 'Poured, ml', description: fault });
    expect(await poured.evaluate((field) => field === document.activeElement && field.ariaInvalid)).toBe('true');
    expect(await page.locator('.match-fault').isVisible()).toBe(true);
    await page.getByLabel('Poured, ml').fill('14');
    expect(await page.locator('.match-fault').count()).toBe(0);
    await note.click();
    await expect.poll(() => says(page)).toBe('Say what you saw over white: pick its colour, or untick the box.');
    expect(await page.locator('[data-file="recipe"]').textContent()).toBe(before);
    await noteRound(page, '14', '#b04030', '#804030');
    await page.getByRole('button', { name: 'Undo round 2' }).click();
    await expect.poll(() => says(page)).toBe('Undone: round 2. It is in the form again.');
    expect(await page.locator('[data-file="recipe"]').textContent()).toBe(before);
    await note.click();
    expect((await page.locator('[data-file="recipe"]').textContent())!.match(/pour: 14 ml/g)).toHaveLength(2);
    expect(errors).toEqual([]);
    await close();
  });

  test.each([390, 320])('can be touched with gloves, and nothing runs out of a screen of %i px', async (width) => {
    const { page, close } = await visit(browser, 'match/', { ...PHONE, viewport: { width, height: 844 } });
    await begin(page);
    await page.getByText('The target, the cup and the shelf').click();
    await page.locator('.match-shelf summary').click();
    const found = await page.evaluate(() => {
      const small = [
        ...document.querySelectorAll<HTMLElement>(
          '.match button, .match input:not([type="checkbox"]), .match select, .match summary, .match .check label',
        ),
      ]
        .filter((element) => element.offsetParent !== null)
        .filter((element) => element.getBoundingClientRect().height < 48)
        .map((element) => element.outerHTML.slice(0, 90));
      return { small, wide: document.documentElement.scrollWidth - document.documentElement.clientWidth };
    });
    expect(found.small).toEqual([]);
    expect(found.wide).toBeLessThanOrEqual(0);
    await close();
  });
});

describe('what it takes and what it does not', () => {
  test('a described laminate finds both cups together', async () => {
    const { page, errors, close } = await visit(browser, 'match/');
    await page.getByRole('button', { name: 'Two sides of a finished bait' }).click();
    await typeSide(page, 0, '#8a6a44', '#5d4c36');
    await page.getByLabel('Over white', { exact: true }).nth(1).fill('#b09070');
    await page.locator('#side-1-black-digits').fill('#5d4c36');
    await page.getByRole('button', { name: 'Next: the cup' }).click();
    await page.getByRole('button', { name: 'Find recipes' }).click();
    await page.getByRole('button', { name: 'Use recipe 1' }).first().click();
    expect(await page.locator('[data-cup]').count()).toBe(2);
    expect(await page.locator('[data-file="recipe"]').textContent()).toMatch(
      /pattern: laminate[\s\S]*back:[\s\S]*belly:/,
    );
    await page.getByLabel('Name of the colour').fill('Two Tone');
    expect(await page.locator('[data-file-name]').innerText()).toBe(
      'Put it into the book as colours/two-tone.md, and with it the target that it is for, as targets/two-tone-target.md.',
    );
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the recipe' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('two-tone-target.md');
    expect(await textOf(download)).toMatch(/parts:\n {2}back: \{ over-white: "#8a6a44"[\s\S]*belly: .*"#b09070"/);
    expect(errors).toEqual([]);
    await close();
  });

  test('takes a shot of the finished bait back from both cups, and puts both sides into the form again', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await page.getByRole('button', { name: 'Two sides of a finished bait' }).click();
    await unfoldTyped(page);
    await typeSide(page, 0, '#8a6a44', '#5d4c36');
    await typeSide(page, 1, '#b09070', '#5d4c36');
    await page.getByRole('button', { name: 'Next: the cup' }).click();
    await page.getByRole('button', { name: 'Find recipes' }).click();
    await page.getByRole('button', { name: 'Use recipe 1' }).first().click();
    const before = await page.locator('[data-file="recipe"]').textContent();
    await page.getByRole('button', { name: 'The finished bait' }).click();
    await page.locator('#cup-0-pour').fill('9');
    for (const [at, white, black] of [
      [0, '#7f6040', '#55452f'],
      [1, '#a88868', '#574732'],
    ] as const) {
      await page.getByRole('tab').nth(at).click();
      await page.locator(`#cup-${at}-white-digits`).fill(white);
      await page.locator(`#cup-${at}-black-digits`).fill(black);
    }
    await page.getByRole('button', { name: 'Log this round' }).click();
    await expect.poll(() => says(page)).toBe('The round is logged.');
    expect(await page.locator('[data-file="recipe"]').textContent()).not.toBe(before);
    await page.getByRole('tab', { name: 'Belly' }).click();
    await page.locator('[data-cup="1"] [data-undo]').click();
    await expect.poll(() => says(page)).toBe('Undone: round 1, in both cups. It is in the form again.');
    expect(await page.locator('[data-file="recipe"]').textContent()).toBe(before);
    expect(await page.locator('#cup-0-white-digits').inputValue()).toBe('#7f6040');
    expect(await page.locator('#cup-1-white-digits').inputValue()).toBe('#a88868');
    expect(await page.locator('#cup-0-pour').inputValue()).toBe('9');
    expect(errors).toEqual([]);
    await close();
  });

  test('two cups of plain plastic are told to be begun together, and not to be thrown away', async () => {
    const { page, errors, close } = await visit(browser, 'match/');
    await page.getByRole('button', { name: 'Two sides of a finished bait' }).click();
    await typeSide(page, 0, '#8a6a44', '#5d4c36');
    await typeSide(page, 1, '#b09070', '#5d4c36');
    await page.getByRole('button', { name: 'Next: the cup' }).click();
    await page.getByRole('button', { name: 'Start with plain plastic' }).click();
    const cup = await page.locator('[data-cup="0"]').innerText();
    expect(cup).toContain('The belly is still plain plastic');
    expect(cup).not.toContain('Start over');
    expect(errors).toEqual([]);
    await close();
  });

  test('recipes have headings, and buttons of their own names', async () => {
    const { page, errors, close } = await visit(browser, 'match/');
    for (const [target, last] of [
      ['rack-claw', 'Use recipe 1'],
      ['two-tone-elver', 'Use recipe 2'],
    ] as const) {
      await toTarget(page);
      await page.getByLabel('Or a target of this book').selectOption(target);
      await page.getByRole('button', { name: 'Find recipes' }).click();
      const first = page.locator('[data-first]');
      await first.getByRole('button', { name: last }).first().waitFor();
      const names = await first.locator('[data-use]').allInnerTexts();
      expect(new Set(names).size).toBe(names.length);
      if (target === 'rack-claw') expect(names.slice(0, 2)).toEqual(['Use recipe 1', 'Use recipe 1, weighed']);
      const heads = await first
        .locator('.match-proposals > li')
        .evaluateAll((items) => items.map((item) => item.firstElementChild?.textContent));
      expect(new Set(heads).size).toBe(heads.length);
    }
    await toTarget(page);
    await page.getByLabel('Or a target of this book').selectOption('rack-claw');
    await page.getByRole('button', { name: 'Find recipes' }).click();
    await page.getByRole('button', { name: 'Use recipe 1', exact: true }).click();
    await noteRound(page, '14', '#b84a36', '#8a4a38');
    const taken = await page.locator('[data-take]').evaluateAll((buttons) => buttons.map((each) => each.textContent));
    expect(taken.length).toBeGreaterThan(1);
    expect(new Set(taken).size).toBe(taken.length);
    expect(errors).toEqual([]);
    await close();
  });

  test('what is weighed instead of dropped and spooned is in the log by weight', async () => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await page.getByLabel('Or a target of this book').selectOption('rack-claw');
    await page.getByRole('button', { name: 'Find recipes' }).click();
    const first = page.locator('[data-first] .match-proposals > li').first();
    await first.waitFor();
    const text = await first.innerText();
    expect(text).toMatch(/\d+\u00a0drops/);
    const [, list] = /Or weigh it all: (.*): [^:(]+ \(expect ΔE\u00a0\d\.\d/.exec(text)!;
    const weighed = [...list!.matchAll(/(\d\.\d+\u00a0g) of (\w+)/g)].map(([, grams, name]) => `${name} ${grams}`);
    expect(weighed.length).toBeGreaterThan(1);
    await first.getByRole('button', { name: 'Use recipe 1, weighed' }).click();
    await noteRound(page, '14', '#b84a36', '#8a4a38');
    await page.getByRole('button', { name: 'I weighed it' }).first().click();
    await expect.poll(() => says(page)).toMatch(/^Logged\./);
    const log = await page.locator('.match-log li').allInnerTexts();
    expect(log[0]).toBe(`Added ${weighed.join(', ')}`);
    expect(log[1]).toMatch(/^Round 1: poured 14\sml; saw #b84a36 over white/);
    expect(log[2]).toMatch(/^Added \w+ \d\.\d+\sg/);
    expect(errors).toEqual([]);
    await close();
  });

  test('what is typed and is none of what it should be is said in a sentence, and counts for nothing', async () => {
    const { page, errors, close } = await visit(browser, 'match/');
    const digits = page.getByLabel('Over white, as # and six digits');
    await typeSide(page, 0, '#zzz', '#5d4c36');
    await page.getByRole('button', { name: 'Next: the cup' }).click();
    await expect
      .poll(() => says(page))
      .toBe(
        '“#zzz” isn’t a colour code. Type # and six digits, like #8a6a44; or what an instrument says by daylight as L, a and b, such as 45 12 30.',
      );
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-hex-of'))).toBe('side-0-white');
    await digits.fill('8A6A44');
    for (const [label, text, expected] of [
      ['Thickness, mm', '-3', 'The thickness is a number from 0.1 to 1,000.'],
      ['Close enough (ΔE)', '1e300', 'The tolerance is a number from 0.1 to 100.'],
      ['Cup size, ml', '', 'The size of the cup is a number from 1 to 100,000.'],
    ] as const) {
      if (label === 'Close enough (ΔE)') await page.getByRole('button', { name: 'Next: the cup' }).click();
      const field = page.getByLabel(label);
      const before = await field.inputValue();
      await field.fill(text);
      await field.blur();
      await expect.poll(() => says(page)).toBe(expected);
      await field.fill(before);
      await field.blur();
      await expect.poll(() => says(page)).toBe('');
    }
    await page.getByRole('button', { name: 'Start with plain plastic' }).click();
    await page.getByLabel('Poured, ml').fill('14');
    await page.getByLabel('Seen over white, as # and six digits').fill('zz');
    await page.getByRole('button', { name: 'Log this round' }).click();
    await expect.poll(() => says(page)).toMatch(/^“zz” isn’t a colour code/);
    await page.getByText('I added something else').click();
    for (const [amount, sentence] of [
      ['99999999 g', '“99999999 g” is no amount from 0.1 mg to 1000 kg.'],
      ['200000 g', '“200000 g” is more than a cup can take: write for example 3 drops, 1/8 tsp or 0.25 g.'],
    ] as const) {
      await page.getByLabel('Amount').fill(amount);
      await page.getByRole('button', { name: 'Log the material' }).click();
      await expect.poll(() => says(page)).toBe(sentence);
    }
    expect(await page.locator('.match-log').innerText()).toContain('Plain plastic.');
    expect(errors).toEqual([]);
    await close();
  });

  test.each([
    ['Cup size, ml', '0', 'The size of the cup is a number from 1 to 100,000.'],
    ['Close enough (ΔE)', '', 'The tolerance is a number from 0.1 to 100.'],
    ['Close enough (ΔE)', '9999', 'The tolerance is a number from 0.1 to 100.'],
    ['Thickness, mm', '0', 'The thickness is a number from 0.1 to 1,000.'],
  ])('nothing goes by an old number while %s holds “%s”', async (label, typed, sentence) => {
    const { page, errors, close } = await visit(browser, 'match/', PHONE);
    await describeBrown(page);
    const field = page.getByLabel(label);
    if (!(await field.isVisible())) await toTarget(page);
    const before = await field.inputValue();
    const refused = async (button: string): Promise<void> => {
      await page.getByRole('button', { name: button }).first().click();
      await expect.poll(() => field.evaluate((element) => element === document.activeElement)).toBe(true);
      expect(await says(page)).toBe(sentence);
      expect(await field.getAttribute('aria-invalid')).toBe('true');
    };
    await field.fill(typed);
    if (label === 'Thickness, mm') await refused('Next: the cup');
    else {
      await refused('Find recipes');
      await refused('Start with plain plastic');
    }
    expect(await page.locator('[data-cup]').count()).toBe(0);
    await field.fill(before);
    if (label === 'Thickness, mm') await page.getByRole('button', { name: 'Next: the cup' }).click();
    await page.getByRole('button', { name: 'Find recipes' }).click();
    await page.getByRole('button', { name: 'Use recipe 1' }).first().waitFor();
    // Once a cup is begun the fields are folded away.
    await page.getByRole('button', { name: 'Use recipe 1' }).first().click();
    await page.getByText('The target, the cup and the shelf').click();
    await field.fill(typed);
    await field.blur();
    await page.getByText('The target, the cup and the shelf').click();
    expect(await field.isVisible()).toBe(false);
    await refused('Log this round');
    expect(await page.locator('.match-log ol li').count()).toBe(1);
    expect(errors).toEqual([]);
    await close();
  });

  test.each(['light', 'dark'] as const)('a disabled button looks so, and can be read (%s)', async (colorScheme) => {
    const { page, errors, close } = await visit(browser, 'match/', { ...PHONE, colorScheme });
    await unfoldTyped(page);
    await page.getByRole('button', { name: 'Over white, from a photo' }).click();
    await page.getByRole('button', { name: 'No card? Touch the colour' }).click();
    const look = (name: string): Promise<{ readonly ground: string; readonly edge: string; readonly ink: string }> =>
      page.getByRole('button', { name }).evaluate((button) => {
        const { backgroundColor, borderTopStyle, color } = getComputedStyle(button);
        return { ground: backgroundColor, edge: borderTopStyle, ink: color };
      });
    const off = await look('Use this colour');
    expect(off).toMatchObject({ ground: 'rgba(0, 0, 0, 0)', edge: 'dashed' });
    expect((await look('Another photo')).edge).toBe('solid');
    const behind = await page.evaluate(
      () => getComputedStyle(document.querySelector('.photo-dialog')!).backgroundColor,
    );
    const luminance = (css: string): number => {
      const [red, green, blue] = css.match(/\d+/g)!.map((each) => {
        const part = Number(each) / 255;
        return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
    };
    const [darker, lighter] = [luminance(off.ink), luminance(behind)].sort((one, other) => one - other);
    // WCAG 2.2, 1.4.3 asks this of text that is not disabled.
    expect((lighter! + 0.05) / (darker! + 0.05)).toBeGreaterThan(4.5);
    expect(errors).toEqual([]);
    await close();
  });

  test('a page that draws itself anew closes no fold and takes no field out of the hand', async () => {
    const { page, errors, close } = await visit(browser, 'match/');
    await unfoldTyped(page);
    await page.getByLabel('Thickness, mm').fill('9');
    await beginPlain(page);
    await page.locator('.match-else').waitFor();
    await page.evaluate(() => {
      document.querySelector<HTMLDetailsElement>('.match-else')!.open = true;
      const drawn = document.querySelector<HTMLInputElement>('#cup-0-amount')!;
      drawn.dataset.before = '';
      drawn.focus();
      // A change above draws the cups anew a moment later.
      document.querySelector('#side-0-thickness')!.dispatchEvent(new Event('change', { bubbles: true }));
    });
    await page.keyboard.type('12 dops');
    for (const _ of 'ops') await page.keyboard.press('ArrowLeft');
    await expect.poll(() => page.locator('#cup-0-amount[data-before]').count()).toBe(0);
    await page.keyboard.type('r');
    expect(await page.getByLabel('Amount').inputValue()).toBe('12 drops');
    expect(await page.locator('.match-else').getAttribute('open')).toBe('');
    expect(errors).toEqual([]);
    await close();
  });

  test('there is something to take away once something was done, and the cup comes before what it was begun with', async () => {
    const { page, close } = await visit(browser, 'match/', PHONE);
    const take = page.getByRole('heading', { name: 'Save it' });
    expect(await take.isVisible()).toBe(false);
    await begin(page);
    expect(await take.isVisible()).toBe(true);
    const now = await page.locator('[data-take]').first().boundingBox();
    await page.evaluate(() => window.scrollTo(0, 0));
    const setup = await page.locator('[data-setup]').boundingBox();
    expect(now!.y).toBeLessThan(844);
    expect(setup!.y).toBeGreaterThan(now!.y);
    expect(await page.getByLabel('Or a target of this book').isVisible()).toBe(false);
    expect(await page.locator('.cautions').count()).toBe(1);
    await close();
  });

  test('the shelf can be changed in the middle of a match', async () => {
    const { page, errors, close } = await visit(browser, 'match/');
    await begin(page);
    const before = await page.locator('[data-file="recipe"]').textContent();
    await page.getByText('The target, the cup and the shelf').click();
    await page.locator('.match-shelf summary').click();
    const proposals = page.locator('.match-now .match-proposals').first();
    await page.getByLabel('Straw', { exact: true }).uncheck();
    await expect.poll(() => proposals.innerText()).not.toContain('Straw');
    expect(await page.locator('[data-file="recipe"]').textContent()).toBe(before);
    expect(errors).toEqual([]);
    await close();
  });

  test('more than is in the cup cannot be poured, and nothing is lost', async () => {
    const { page, close } = await visit(browser, 'match/');
    await beginPlain(page);
    await page.getByLabel('Poured, ml').fill('500');
    await page.getByRole('button', { name: 'Log this round' }).click();
    await expect.poll(() => says(page)).toBe('The cup holds 120 ml: you can’t pour more.');
    await page.getByText('I added something else').click();
    await page.getByLabel('Amount').fill('some');
    await page.getByRole('button', { name: 'Log the material' }).click();
    await expect.poll(() => says(page)).toMatch(/“some” is no amount/);
    expect(await page.getByLabel('Poured, ml').inputValue()).toBe('500');
    await close();
  });

  test('what is taken off the shelf is not proposed', async () => {
    const { page, close } = await visit(browser, 'match/');
    await page.getByLabel('Or a target of this book').selectOption('rack-claw');
    await page.locator('.match-shelf summary').click();
    await page.getByLabel('Rowan', { exact: true }).uncheck();
    expect(await page.locator('[data-shelf-count]').innerText()).toMatch(/^(\d+) of (?!\1)/);
    await page.getByRole('button', { name: 'Find recipes' }).click();
    await page.getByRole('button', { name: 'Use recipe 1' }).first().waitFor();
    expect(await page.locator('[data-first]').innerText()).not.toContain('Rowan');
    await close();
  });

  test('works by keyboard: a proposal taken leads to the cup', async () => {
    const { page, close } = await visit(browser, 'match/');
    await page.getByLabel('Or a target of this book').selectOption('tin-ribbon');
    await page.getByRole('button', { name: 'Find recipes' }).focus();
    await page.keyboard.press('Enter');
    const use = page.getByRole('button', { name: 'Use recipe 1' }).first();
    await use.focus();
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('cup-0-head');
    await close();
  });

  test.each(['light', 'dark'] as const)(
    'has nothing that axe objects to in the middle of a match, %s',
    async (colorScheme) => {
      const { page, close } = await visit(browser, 'match/', { ...PHONE, colorScheme, bypassCSP: true });
      await begin(page);
      await page.evaluate(AXE);
      const { violations } = await page.evaluate(
        (): Promise<AxeResults> => (globalThis as unknown as { axe: typeof import('axe-core') }).axe.run(),
      );
      expect(violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 120)}`))).toEqual(
        [],
      );
      await close();
    },
  );
});

test('a target’s page shows every round beside it, and how it came nearer', async () => {
  const { page, close } = await visit(browser, 'targets/two-tone-elver/');
  const eel = book().recipes.find(({ id }) => id === 'eel-bridge')!;
  const rounds = eel.match!.cups.flatMap((cup) => cup.rounds);
  expect(await page.locator('.matched .round').count()).toBe(rounds.length);
  expect(await page.getByRole('img', { name: /ΔE round by round/ }).count()).toBe(eel.match!.cups.length);
  expect(await page.locator('main').innerText()).toMatch(
    /much too see-through \(hides \d+\u00a0%, the target \d+\u00a0%\)/,
  );
  await close();
});

test('a recipe’s page shows its rounds beside the target, and the same chart', async () => {
  for (const id of ['rowan-week', 'tannery-bend', 'eel-bridge']) {
    const { page, close } = await visit(browser, `colours/${id}/`, { viewport: PHONE.viewport });
    const { cups } = book().recipes.find((recipe) => recipe.id === id)!.match!;
    await page.locator('summary', { hasText: 'Story' }).click();
    const section = page.getByRole('region', { name: 'Against its target' });
    expect(await section.getByRole('img', { name: /^Round \d+\. Target: / }).count()).toBe(
      cups.flatMap(({ rounds }) => rounds).length,
    );
    const charts = await section.getByRole('img', { name: /ΔE round by round/ }).all();
    expect(charts.length).toBe(cups.length);
    for (const chart of charts)
      expect(await chart.getAttribute('aria-label')).toMatch(/overall: .*hue: .*lightness: .*vividness: .*opacity: /);
    expect(await section.innerText()).toMatch(/within tolerance/i);
    await close();
  }
});
