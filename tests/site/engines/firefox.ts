import { existsSync } from 'node:fs';
import puppeteer from 'puppeteer-core';
import { countSeen, type Engine, type EngineKind } from './engine.ts';

const PATH = process.env.FIREFOX_PATH ?? '/usr/bin/firefox-esr';

/** Firefox, by WebDriver BiDi. */
export const FIREFOX: EngineKind = {
  name: 'Firefox',
  missing: existsSync(PATH) ? undefined : `there is no ${PATH}; install firefox-esr, or set FIREFOX_PATH`,
  start: async (): Promise<Engine> => {
    const browser = await puppeteer.launch({ browser: 'firefox', executablePath: PATH, headless: true });
    let context = await browser.createBrowserContext();
    let page = await context.newPage();
    const thrown: string[] = [];
    return {
      async open(address) {
        await context.close();
        context = await browser.createBrowserContext();
        page = await context.newPage();
        thrown.length = 0;
        page.on('pageerror', (error) => thrown.push(String(error)));
        await page.goto(address, { waitUntil: 'load' });
      },
      async click(selector) {
        await (await page.waitForSelector(selector, { visible: true, timeout: 60_000 }))!.click();
      },
      async type(selector, text) {
        const field = (await page.waitForSelector(selector, { visible: true, timeout: 60_000 }))!;
        await field.evaluate((each) => (each as HTMLInputElement).select());
        await field.type(text);
        await field.press('Enter');
      },
      text: async (selector) =>
        (await page.waitForSelector(selector))!.evaluate((each) => (each as HTMLElement).innerText),
      seen: (selector) => page.evaluate(countSeen, selector),
      errors: () => thrown,
      close: () => browser.close(),
    };
  },
};
