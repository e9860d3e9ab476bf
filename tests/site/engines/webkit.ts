import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createServer } from 'node:net';
import { Builder, By, Capabilities, Key, until, type WebDriver } from 'selenium-webdriver';
import { countSeen, type Engine, type EngineKind } from './engine.ts';

const NEEDED = {
  driver: '/usr/bin/WebKitWebDriver',
  browser: '/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser',
  screen: '/usr/bin/Xvfb',
};
const missing = Object.values(NEEDED).find((path) => !existsSync(path));
const PATIENCE_MS = 60_000;

/** WebKit, by its own driver, on a screen that nobody sees. */
export const WEBKIT: EngineKind = {
  name: 'WebKit',
  missing: missing && `there is no ${missing}; install webkit2gtk-driver and xvfb`,
  start: async (): Promise<Engine> => {
    const port = await freePort();
    // The screen picks a number that is free, and tells it.
    const screen = spawn(NEEDED.screen, ['-displayfd', '3', '-screen', '0', '1400x1000x24'], {
      stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
    });
    const display = await new Promise<string>((resolve, reject) => {
      screen.stdio[3]!.once('data', (data) => resolve(`:${String(data).trim()}`));
      screen.once('error', reject);
    });
    const driver = spawn(NEEDED.driver, [`--port=${port}`], {
      stdio: 'ignore',
      env: { ...process.env, DISPLAY: display, WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1' },
    });
    let session: WebDriver | undefined;
    const page = (): WebDriver => session!;
    const found = async (selector: string) => {
      const element = await page().wait(until.elementLocated(By.css(selector)), PATIENCE_MS);
      return page().wait(until.elementIsVisible(element), PATIENCE_MS);
    };
    return {
      async open(address) {
        await session?.quit();
        session = await begun(port);
        await session.get(address);
      },
      async click(selector) {
        const element = await found(selector);
        await page().executeScript('arguments[0].scrollIntoView({ block: "center" })', element);
        await element.click();
      },
      async type(selector, text) {
        const field = await found(selector);
        await field.clear();
        await field.sendKeys(text, Key.ENTER);
      },
      text: async (selector) => (await found(selector)).getText(),
      seen: (selector) => page().executeScript<number>(`return (${countSeen.toString()})(arguments[0])`, selector),
      errors: () => [],
      async close() {
        await session?.quit();
        driver.kill();
        screen.kill();
      },
    };
  },
};

/** A session of a new profile; the driver takes a moment to listen. */
async function begun(port: number): Promise<WebDriver> {
  const capabilities = new Capabilities({
    browserName: 'MiniBrowser',
    'webkitgtk:browserOptions': { binary: NEEDED.browser, args: ['--automation'] },
  });
  const end = Date.now() + PATIENCE_MS;
  for (;;) {
    try {
      return await new Builder().usingServer(`http://127.0.0.1:${port}`).withCapabilities(capabilities).build();
    } catch (error) {
      if (Date.now() > end) throw error;
      await new Promise((resolve) => setTimeout(resolve, 300));
    }
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() =>
        typeof address === 'object' && address ? resolve(address.port) : reject(new Error('no port')),
      );
    });
  });
}
