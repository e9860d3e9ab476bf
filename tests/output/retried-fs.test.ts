import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { rename, retried, rmdir, type Surroundings, unlink } from '../../src/output/retried-fs.ts';
import { temporaryFolder } from '../small-book.ts';

/** A machine whose pauses take no time. */
function machine(platform: NodeJS.Platform): Surroundings & { readonly pauses: number[] } {
  const pauses: number[] = [];
  return {
    platform,
    pauses,
    pause: async (ms) => {
      pauses.push(ms);
    },
  };
}

const failing = (code: string): Error => Object.assign(new Error(code), { code });

/** Fails some times, then is done. */
function held(code: string, times: number): () => Promise<string> {
  let left = times;
  return async () => {
    if (left-- > 0) throw failing(code);
    return 'done';
  };
}

describe('retried(…)', () => {
  test.each(['EPERM', 'EBUSY', 'EACCES', 'ENOTEMPTY'])('waits longer each time while Windows says %s', async (code) => {
    const windows = machine('win32');
    await expect(retried(held(code, 4), windows)).resolves.toBe('done');
    expect(windows.pauses).toEqual([10, 20, 40, 80]);
  });

  test('gives up after some seconds, with the error of the last try', async () => {
    const windows = machine('win32');
    await expect(retried(held('EBUSY', 1000), windows)).rejects.toThrow('EBUSY');
    const sum = windows.pauses.reduce((total, ms) => total + ms, 0);
    expect([sum > 4000, sum < 10_000]).toEqual([true, true]);
  });

  test.each(['ENOENT', 'ENOSPC', 'EXDEV', 'EROFS'])('does not wait for %s', async (code) => {
    const windows = machine('win32');
    await expect(retried(held(code, 1), windows)).rejects.toThrow(code);
    expect(windows.pauses).toEqual([]);
  });

  test.each(['linux', 'darwin'] as const)(
    'does not wait under %s, where the answer stays the same',
    async (platform) => {
      const other = machine(platform);
      await expect(retried(held('EACCES', 1), other)).rejects.toThrow('EACCES');
      expect(other.pauses).toEqual([]);
    },
  );
});

test('rename, unlink and rmdir do what they say, and tell why not', async () => {
  const folder = temporaryFolder();
  const at = (name: string): string => join(folder, name);
  const windows = machine('win32');
  writeFileSync(at('a'), '');
  await rename(at('a'), at('b'), windows);
  expect([existsSync(at('a')), existsSync(at('b'))]).toEqual([false, true]);
  await unlink(at('b'), windows);
  expect(existsSync(at('b'))).toBe(false);
  await expect(unlink(at('b'), windows)).rejects.toThrow('ENOENT');
  mkdirSync(at('c/d'), { recursive: true });
  await expect(rmdir(at('c'), machine('linux'))).rejects.toThrow('ENOTEMPTY');
  await rmdir(at('c/d'), windows);
  mkdirSync(at('c/e'));
  await rmdir(at('c/e'), windows);
  await rmdir(at('c'), windows);
  expect(existsSync(at('c'))).toBe(false);
  expect(windows.pauses).toEqual([]);
});
