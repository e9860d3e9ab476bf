import { utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { Refusal } from '../diagnostics/refusal.ts';
import { undefinedIfMissing } from './effects.ts';
import type { World } from './world.ts';
import { passingName, readPassingName, type Writer } from './writer.ts';

/** Longest wait for another writer, ms. It holds a folder for the time of some renames. */
const LONGEST_WAIT = 60_000;

/** A writer on another machine shows that it is at work by touching what it holds every so often, ms … */
const TOUCHED_EVERY = 10_000;

/** … and is taken for gone when it has not for so long, ms. */
const GONE_AFTER = 120_000;

/** Whether a writer is gone, by what it holds. */
export async function isGone(writer: Writer, path: string, { disk, stateOf }: World): Promise<boolean> {
  const state = await stateOf(writer);
  if (state !== 'elsewhere') return state === 'gone';
  const stats = await disk.look(path);
  return stats === undefined || Date.now() - stats.mtimeMs > GONE_AFTER;
}

/** Shows that a writer is at work. Returns what ends it. */
export function keepTouched(path: string): () => void {
  const timer = setInterval(() => {
    const now = new Date();
    // Gone, or in the place of another by now: either way there is nothing to show any more.
    utimes(path, now, now).catch(() => undefined);
  }, TOUCHED_EVERY);
  timer.unref();
  return () => clearInterval(timer);
}

/**
 * Does something while no other writer does anything in a folder. Each puts up a file of its own name and then looks for others': of
 * two that come at once at least one sees the other, and a dead one's file can be removed without a glance at who else removes it.
 *
 * Refuses where another holds the folder for long.
 */
export async function whileClaimed<T>(folder: string, world: World, act: () => Promise<T>): Promise<T> {
  const { disk, writer } = world;
  const name = passingName('', writer, 'lock');
  const mine = join(folder, name);
  const until = Date.now() + LONGEST_WAIT;
  for (;;) {
    await disk.make(mine, '');
    const others = await workingIn(folder, name, world);
    if (others.length === 0) break;
    await disk.remove(mine);
    if (Date.now() > until) {
      throw new Refusal(
        `Another build has been writing to ${folder} for a minute. Let it end, or stop it, and do this again.`,
      );
    }
    await world.pause(20 + Math.random() * 80);
  }
  const end = keepTouched(mine);
  try {
    return await act();
  } finally {
    end();
    // With the folder, where that has been moved away.
    await disk.remove(mine).catch(undefinedIfMissing);
  }
}

/** Claims of writers that are at work in a folder; removes those of dead ones. */
async function workingIn(folder: string, mine: string, world: World): Promise<readonly string[]> {
  const working: string[] = [];
  for (const { name } of await world.disk.list(folder)) {
    const read = name === mine ? undefined : readPassingName(name);
    if (read?.base !== '' || read.ending !== 'lock') continue;
    const path = join(folder, name);
    if (await isGone(read.writer, path, world)) await world.disk.remove(path).catch(undefinedIfMissing);
    else working.push(name);
  }
  return working;
}
