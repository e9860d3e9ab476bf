import { filterDeficiencyDeuter, filterDeficiencyProt, filterDeficiencyTrit, parse, wcagContrast } from 'culori';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { spaceText } from './reader-spacing.ts';
import { connect, pagesByKind, type Visit, visit } from './visit.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await connect();
});
afterAll(() => browser.close());

const kinds = pagesByKind().filter(({ urls }) => urls.length > 0);
const samples = kinds.map(({ kind, urls }) => ({ kind, url: urls[0]! }));

/** By how many px the page is wider than its window. A sheet of paper is as wide as it is. */
const tooWide = (page: Page): Promise<number> =>
  page.evaluate(() => {
    for (const paper of document.querySelectorAll('.papers')) paper.remove();
    return document.documentElement.scrollWidth - document.documentElement.clientWidth;
  });

/** Parts with text of which some is cut off. What is for those who don't see it is one px large and meant to be. */
const cutOff = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('body *')]
      .filter((each) => {
        const { overflowX, overflowY } = getComputedStyle(each);
        const hides = [overflowX, overflowY].some((overflow) => overflow === 'hidden' || overflow === 'clip');
        if (!hides || each.clientWidth <= 2 || each.clientHeight <= 2 || !each.innerText?.trim()) return false;
        if (!each.checkVisibility({ visibilityProperty: true }) || each.closest('.papers')) return false;
        return each.scrollHeight > each.clientHeight + 2 || each.scrollWidth > each.clientWidth + 2;
      })
      .map((each) => each.outerHTML.slice(0, 120)),
  );

/** Each pair of text and ground that is seen, as the browser computes them. Where a picture is the ground, nothing is said. */
const textOnGround = (
  page: Page,
): Promise<readonly { readonly text: string; readonly ground: string; readonly px: number }[]> =>
  page.evaluate(() => {
    const pairs = new Map<string, { text: string; ground: string; px: number }>();
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const holder = node.parentElement;
      if (!node.textContent?.trim() || !holder || holder.closest('svg, script, style')) continue;
      if (!holder.checkVisibility({ visibilityProperty: true })) continue;
      if (holder.closest(':disabled, [aria-disabled="true"], [inert]')) continue;
      const { color, fontSize, fontWeight } = getComputedStyle(holder);
      let ground: string | undefined;
      for (let at: Element | null = holder; at; at = at.parentElement) {
        const { backgroundColor, backgroundImage } = getComputedStyle(at);
        if (backgroundImage !== 'none') break;
        if (!/^(?:transparent|rgba\(0, 0, 0, 0\))$/.test(backgroundColor)) {
          ground = backgroundColor;
          break;
        }
      }
      const px = Number.parseFloat(fontSize) * (Number(fontWeight) >= 700 ? 1.3 : 1);
      if (ground !== undefined) pairs.set(`${color} ${ground} ${px >= 24}`, { text: color, ground, px });
    }
    return [...pairs.values()];
  });

/** The edge all round each control that is seen, beside its own ground and what it stands on. A control without one is known by its words. */
const edges = (
  page: Page,
): Promise<
  readonly { readonly what: string; readonly edge: string; readonly own: string; readonly behind: string }[]
> =>
  page.evaluate(() => {
    const groundOf = (from: Element | null): string => {
      for (let at = from; at; at = at.parentElement) {
        const { backgroundColor } = getComputedStyle(at);
        if (!/^(?:transparent|rgba\(0, 0, 0, 0\))$/.test(backgroundColor)) return backgroundColor;
      }
      return 'white';
    };
    const controls = 'button, a.button, select, textarea, input, label:has(input)';
    return [...document.querySelectorAll<HTMLElement>(controls)].flatMap((each) => {
      const { appearance, borderTopColor, ...style } = getComputedStyle(each);
      const sides = [style.borderTopStyle, style.borderRightStyle, style.borderBottomStyle, style.borderLeftStyle];
      const { width } = each.getBoundingClientRect();
      if (sides.includes('none') || width <= 2 || !each.checkVisibility({ visibilityProperty: true })) return [];
      // A box that the browser draws is the browser's.
      if (each.matches(':disabled, [type="checkbox"], [type="radio"]') && appearance === 'auto') return [];
      return [
        {
          what: each.outerHTML.slice(0, 100),
          edge: borderTopColor,
          own: groundOf(each),
          behind: groundOf(each.parentElement),
        },
      ];
    });
  });

/** Controls that neither their edge nor their own ground tells from what they stand on, by 3:1. Source: WCAG 2.2, success criterion 1.4.11. */
async function weakEdges(page: Page): Promise<readonly string[]> {
  const contrast = (one: string, other: string): number => wcagContrast(parse(one)!, parse(other)!);
  return (await edges(page)).flatMap(({ what, edge, own, behind }) => {
    const most = Math.max(contrast(edge, behind), contrast(own, behind));
    return most < 3 ? [`${edge} on ${behind}: ${most.toFixed(2)} ${what}`] : [];
  });
}

/** Stops of the keyboard of which nothing is seen once they have the focus: something that stays in its place lies on them. Going down, then up. */
const covered = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const stops = [
      ...document.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary, [tabindex="0"]'),
    ].filter((each) => each.checkVisibility({ visibilityProperty: true }) && !each.closest('.papers, [inert]'));
    const isSeen = (stop: HTMLElement): boolean => {
      // What is drawn in place of a box that is too small to see is its label.
      const shown = stop.offsetWidth > 2 ? stop : (stop.closest('label') ?? stop);
      return [...shown.getClientRects()].some(({ left, top, width, height }) =>
        [0.1, 0.5, 0.9].some((across) =>
          [0.1, 0.5, 0.9].some((down) => {
            const hit = document.elementFromPoint(left + across * width, top + down * height);
            return hit !== null && (shown.contains(hit) || hit.closest('label')?.contains(shown) === true);
          }),
        ),
      );
    };
    const lost = new Set<string>();
    for (const stop of [...stops, ...stops.toReversed()]) {
      stop.focus();
      if (document.activeElement === stop && !isSeen(stop)) lost.add(stop.outerHTML.slice(0, 120));
    }
    return [...lost];
  });

/** Parts that move by themselves, or glide to where they go. */
const moving = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('*')]
      .filter((each) => {
        const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(each);
        return animationName !== 'none' || /[1-9]/.test(transitionDuration) || scrollBehavior === 'smooth';
      })
      .map((each) => each.outerHTML.slice(0, 120)),
  );

/** How eyes see that lack one kind of cone: G. Machado, M. Oliveira, L. Fernandes (2009), as culori has it. */
const EYES = [
  ['without the cones for long waves', filterDeficiencyProt(1)],
  ['without the cones for middle waves', filterDeficiencyDeuter(1)],
  ['without the cones for short waves', filterDeficiencyTrit(1)],
] as const;

test.each(kinds)(
  'every page of the kind $kind keeps within a narrow window, and loses no text to wider spacing',
  async ({ urls }) => {
    const found: string[] = [];
    for (const url of urls) {
      const { page, close } = await visit(browser, url, { viewport: { width: 320, height: 844 } });
      const narrow = await tooWide(page);
      if (narrow > 0) found.push(`${url} is ${narrow} px wider than 320`);
      await page.setViewportSize({ width: 390, height: 844 });
      expect(await spaceText(page)).not.toBe('normal');
      const spaced = await tooWide(page);
      if (spaced > 0) found.push(`${url} is ${spaced} px wider than 390, spaced`);
      found.push(...(await cutOff(page)).map((each) => `${url} cuts off ${each}`));
      await close();
    }
    expect(found.slice(0, 8)).toEqual([]);
  },
);

test.each(samples)('on a phone nothing of the kind $kind lies over what has the focus', async ({ url }) => {
  const { page, close } = await visit(browser, url, { viewport: { width: 390, height: 844 } });
  expect((await covered(page)).slice(0, 5)).toEqual([]);
  await close();
});

test('a stop that something lies on is found', async () => {
  const { page, close } = await visit(browser, '', { viewport: { width: 390, height: 844 } });
  await page.evaluate(() => {
    document.querySelector<HTMLElement>('.parts')!.style.height = '70%';
  });
  expect(await covered(page)).not.toEqual([]);
  await close();
});

describe.each(samples)('a page of the kind $kind', ({ url }) => {
  let opened: Visit;
  beforeAll(async () => {
    opened = await visit(browser, url, { viewport: { width: 320, height: 256 } });
  });
  afterAll(() => opened.close());

  // A window of 1280 × 1024 at 400 % has 320 × 256 px.
  test('at 400 % needs no scrolling sideways, and what stays in its place leaves room to read', async () => {
    const { page } = opened;
    const stays = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('body *')]
        .filter((each) => ['fixed', 'sticky'].includes(getComputedStyle(each).position) && each.checkVisibility())
        .map((each) => each.getBoundingClientRect())
        .filter(({ top, bottom }) => bottom > 0 && top < innerHeight)
        .reduce((sum, { height }) => sum + height, 0),
    );
    expect(stays).toBeLessThanOrEqual(0.4 * 256);
    expect(await tooWide(page)).toBeLessThanOrEqual(0);
  });

  test('in forced colours shows its controls, and keeps the colours that are what it is about', async () => {
    const { page } = opened;
    await page.emulateMedia({ forcedColors: 'active' });
    const lost = await page.evaluate(() => [
      ...[...document.querySelectorAll<HTMLElement>('button, input, select, textarea')]
        .filter((each) => each.checkVisibility({ visibilityProperty: true }) && each.getBoundingClientRect().width > 2)
        .filter((each) => {
          const { borderStyle, appearance, outlineStyle } = getComputedStyle(each);
          return borderStyle === 'none' && outlineStyle === 'none' && appearance === 'none';
        })
        .map((each) => `no border: ${each.outerHTML.slice(0, 100)}`),
      ...[...document.querySelectorAll<HTMLElement>('[style*="background"]')]
        .filter((each) => getComputedStyle(each).forcedColorAdjust !== 'none')
        .map((each) => `colour lost: ${each.outerHTML.slice(0, 100)}`),
    ]);
    await page.emulateMedia({ forcedColors: 'none' });
    expect(lost.slice(0, 5)).toEqual([]);
  });

  test.each(['light', 'dark'] as const)('has controls that are known by an edge of 3:1, %s', async (colorScheme) => {
    const { page } = opened;
    await page.emulateMedia({ colorScheme });
    expect((await weakEdges(page)).slice(0, 5)).toEqual([]);
  });

  test('has nothing that moves by itself', async () => {
    expect((await moving(opened.page)).slice(0, 5)).toEqual([]);
  });

  test.each(['light', 'dark'] as const)('is read by eyes that see fewer colours, %s', async (colorScheme) => {
    const { page } = opened;
    await page.emulateMedia({ colorScheme });
    const pairs = await textOnGround(page);
    expect(pairs.length).toBeGreaterThan(1);
    const weak = pairs.flatMap(({ text, ground, px }) =>
      EYES.flatMap(([whose, seen]) => {
        const [ink, paper] = [text, ground].map((colour) => seen(parse(colour)!));
        const contrast = wcagContrast(ink!, paper!);
        return contrast < (px >= 24 ? 3 : 4.5) ? [`${text} on ${ground}, ${whose}: ${contrast.toFixed(2)}`] : [];
      }),
    );
    expect(weak).toEqual([]);
  });
});

test('an edge that is too faint is found', async () => {
  const { page, close } = await visit(browser, 'find/');
  await page.evaluate(() => document.documentElement.style.setProperty('--control', '#b3ada2'));
  expect(await weakEdges(page)).not.toEqual([]);
  await close();
});

test('a red that only some eyes tell from its ground is found', () => {
  const contrasts = EYES.map(([, seen]) => wcagContrast(seen(parse('#c00000')!)!, seen(parse('#1a1a1a')!)!));
  expect(Math.min(...contrasts)).toBeLessThan(2);
});
