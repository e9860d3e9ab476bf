import { chmodSync, mkdirSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { privateFolder } from '../../src/output/private-folder.ts';
import { userCache } from '../../src/output/user-cache.ts';
import { temporaryFolder } from '../small-book.ts';

test.each([
  ['linux', {}, '/home/mo/.cache/cupbook'],
  ['linux', { XDG_CACHE_HOME: '/fast/cache' }, '/fast/cache/cupbook'],
  // The specification: a relative path is to be taken for none.
  ['linux', { XDG_CACHE_HOME: 'cache' }, '/home/mo/.cache/cupbook'],
  ['darwin', {}, '/home/mo/Library/Caches/cupbook'],
  ['win32', { LOCALAPPDATA: '/local' }, '/local/cupbook'],
  ['win32', {}, '/home/mo/AppData/Local/cupbook'],
] as const)('userCache() on %s with %j is %s', (platform, env, expected) => {
  expect(userCache({ platform, env, home: '/home/mo' })).toBe(expected);
});

test.skipIf(process.platform === 'win32')(
  'privateFolder() makes a folder that its user alone can read, and closes one that others can',
  async () => {
    const folder = join(temporaryFolder(), 'a/b');
    await privateFolder(folder);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    chmodSync(folder, 0o755);
    await privateFolder(folder);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
  },
);

test('privateFolder() refuses a link: whoever made it could lead it elsewhere', async () => {
  const parent = temporaryFolder();
  mkdirSync(join(parent, 'elsewhere'));
  symlinkSync(join(parent, 'elsewhere'), join(parent, 'cache'));
  await expect(privateFolder(join(parent, 'cache'))).rejects.toThrow('Name a folder of your own with --output');
});
