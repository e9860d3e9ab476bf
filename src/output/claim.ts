import { utimes } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { Refusal } from '../diagnostics/refusal.ts';
import { ensureFolder, undefinedIfMissing } from './effects.ts';
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

/** A folder that another writer has moved away at this moment. */
export class MovedAway extends Error {}

/**
 * Does something while no other writer does anything in a folder. Each puts up a file of its own name and then looks for others': of
 * two that come at once at least one sees the other, and a dead one's file can be removed without a glance at who else removes it.
 *
 * Refuses where another holds the folder for long. Throws: MovedAway, with nothing done, where the folder is not there.
 */
export async function whileClaimed<T>(folder: string, world: World, act: () => Promise<T>): Promise<T> {
  const mine = join(folder, passingName('', world.writer, 'lock'));
  const until = Date.now() + LONGEST_WAIT;
  while (!(await tryToClaim(folder, mine, world))) {
    await world.disk.remove(mine).catch(undefinedIfMissing);
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
    await world.disk.remove(mine).catch(undefinedIfMissing);
  }
}

/** The same in a folder that is made if it is not there. */
export async function whileClaimedAndThere<T>(folder: string, world: World, act: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries += 1) {
    await ensureFolder(folder, world.disk);
    try {
      return await whileClaimed(folder, world, act);
    } catch (error) {
      if (!(error instanceof MovedAway) || tries === MOST_TRIES) throw error;
    }
  }
}

/** Times that another writer may be quicker. */
const MOST_TRIES = 50;

async function tryToClaim(folder: string, mine: string, world: World): Promise<boolean> {
  try {
    await world.disk.make(mine, '');
    const { others, mineToo } = await workingIn(folder, basename(mine), world);
    // Without mine, the folder was moved away with it, and this is another one in its place.
    return others === 0 && mineToo;
  } catch (error) {
    undefinedIfMissing(error);
    throw new MovedAway(folder);
  }
}

/** Number of other writers that are at work in a folder, and whether this one's claim is there; removes those of dead ones. */
async function workingIn(
  folder: string,
  mine: string,
  world: World,
): Promise<{ readonly others: number; readonly mineToo: boolean }> {
  const names = (await world.disk.list(folder)).map(({ name }) => name);
  let others = 0;
  for (const name of names) {
    const read = name === mine ? undefined : readPassingName(name);
    if (read?.base !== '' || read.ending !== 'lock') continue;
    const path = join(folder, name);
    if (await isGone(read.writer, path, world)) await world.disk.remove(path).catch(undefinedIfMissing);
    else others += 1;
  }
  return { others, mineToo: names.includes(mine) };
}

/** Whether another writer is at work in a folder, or was a moment ago. */
export async function isClaimed(folder: string, world: World): Promise<boolean> {
  try {
    return (await workingIn(folder, passingName('', world.writer, 'lock'), world)).others > 0;
  } catch (error) {
    undefinedIfMissing(error);
    return true;
  }
}
