import { expect, test } from 'vitest';
import { whyNoChromium } from './chromium.ts';

const machine = (
  platform: NodeJS.Platform,
  arch: NodeJS.Architecture,
  path?: string,
): Parameters<typeof whyNoChromium>[0] => ({
  platform,
  arch,
  env: path === undefined ? {} : { CHROMIUM_PATH: path },
});

test('whyNoChromium() says what a machine without a browser for the tests can do', () => {
  expect(whyNoChromium(machine('linux', 'x64'))).toBeUndefined();
  expect(whyNoChromium(machine('darwin', 'arm64', '/Applications/Chromium'))).toBeUndefined();
  expect(whyNoChromium(machine('darwin', 'arm64'))).toMatch(/this is darwin on arm64\. Set CHROMIUM_PATH/);
  expect(whyNoChromium(machine('win32', 'x64'))).toMatch(/this is win32 on x64/);
  expect(whyNoChromium(machine('linux', 'arm64'))).toMatch(/Set CHROMIUM_PATH/);
  expect(whyNoChromium(machine('linux', 'x64', 'none'))).toBe('CHROMIUM_PATH is `none`.');
});
