import { constants } from 'node:fs';
import { access } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { Refusal } from '../diagnostics/refusal.ts';
import { isClaimed, whileClaimedAndThere } from './claim.ts';
import { ensureFolder, systemCode } from './effects.ts';
import { recoverInside, writeFileByFile } from './file-by-file.ts';
import { MARKER, type Mark, markText } from './mark.ts';
import { checkApart, foldersOf, lookAtPlace, type Place, realFolder } from './place.ts';
import type { SiteFile } from './site-file.ts';
import { isReplaceable, recoverBeside, swapSite } from './swap.ts';
import { withReason } from './with-reason.ts';
import { onThisMachine, type World } from './world.ts';
import { passingName } from './writer.ts';

/** Where a site goes, and which one it is. */
export interface Output {
  /** Absolute, as it was named; it need not be there yet. */
  readonly folder: string;
  /** Folder that the site is made from: neither may lie in the other. */
  readonly sources: string;
  /** Which of several sites it is: another is never put in its place. */
  readonly label: string;
  /** What the sites are called in a sentence, by label. */
  readonly called: Readonly<Record<string, string>>;
  /** It must not come to lie among others' files. */
  readonly alone?: boolean;
  /** Never replace the folder itself: it is being served. */
  readonly served?: boolean;
}

/**
 * Makes a place ready for a site, before the site is made: completes or takes back what killed writers have left there.
 *
 * Refuses a place that a site must not, or cannot, be written to.
 */
export function prepareOutput(output: Output, run: typeof onThisMachine = onThisMachine): Promise<void> {
  return withReason(output.folder, () =>
    run(async (world) => {
      await checkApart(output.sources, output.folder, world.disk);
      const folder = await realFolder(output.folder, world.disk);
      await recoverBeside(folder, world);
      await recoverInside(folder, world);
      await placeFor(output, world);
      await checkWritable(folder, world);
    }),
  );
}

/**
 * Writes a site to its place: as a whole where nothing else is there, else file by file. Nothing that others have put there is changed.
 * When it resolves, all has reached the disk.
 *
 * Refuses, with its reason and cure, what cannot be written; the last site then stays.
 *
 * @param files what others refer to first
 */
export function writeSite(
  files: readonly SiteFile[],
  output: Output,
  run: typeof onThisMachine = onThisMachine,
): Promise<void> {
  return withReason(output.folder, () =>
    run(async (world) => {
      await checkApart(output.sources, output.folder, world.disk);
      const place = await placeFor(output, world);
      const check = (): Promise<Place> => placeFor(output, world);
      const whole = !output.served && isReplaceable(place);
      if (whole && (await swapSite(place.folder, files, output.label, check, world))) return;
      await writeFileByFile(place.folder, files, output.label, check, world);
    }),
  );
}

/**
 * Puts new files in the place of some of a site that is being served; its other files stay as they are. When it resolves, all has
 * reached the disk.
 *
 * Shape: what stood there before, so that it can be put back the same way. A file that the site does not have is passed over.
 */
export async function putIntoSite(
  files: readonly SiteFile[],
  output: Output,
  run: typeof onThisMachine = onThisMachine,
): Promise<readonly SiteFile[]> {
  let before: readonly SiteFile[] = [];
  await withReason(output.folder, () =>
    run(async (world) => {
      const { folder, own } = await placeFor(output, world);
      const known = files.filter(({ path }) => own.has(path));
      if (known.length === 0) return;
      before = await Promise.all(
        known.map(async ({ path }) => ({ path, content: await world.disk.read(join(folder, path)) })),
      );
      await writeFileByFile(folder, known, output.label, () => placeFor(output, world), world, true);
    }),
  );
  return before;
}

/**
 * Makes a folder ready for a program that writes files of a site into it by itself, without a care for what is there: its mark lists
 * them before they come, and their folders are there. `writeSite` must follow.
 *
 * Refuses a folder that holds others' files.
 */
export function reserveFor(
  paths: readonly string[],
  output: Output,
  run: typeof onThisMachine = onThisMachine,
): Promise<void> {
  return withReason(output.folder, () =>
    run(async (world) => {
      const { disk } = world;
      const { folder, others, own, mark } = await placeFor(output, world);
      if (others.length > 0) {
        throw new Refusal(
          `${output.folder} holds other files, such as ${others[0]}, which Eleventy by itself might overwrite. \`npx cupbook build\` leaves them as they are; or name another folder with --output.`,
        );
      }
      await whileClaimedAndThere(folder, world, () =>
        putMark(
          folder,
          { label: output.label, files: [...new Set([...own, ...(mark?.files ?? []), ...paths])] },
          world,
        ),
      );
      for (const path of new Set(paths.flatMap(foldersOf))) await ensureFolder(join(folder, path), disk);
    }),
  );
}

async function putMark(folder: string, mark: Mark, { disk, writer }: World): Promise<void> {
  const aside = join(folder, passingName('', writer, 'tmp'));
  await disk.make(aside, markText(mark));
  await disk.rename(aside, join(folder, MARKER));
}

/** Throws what the system says of a folder that cannot be written to, or of the one in which it would be made. */
async function checkWritable(folder: string, { disk }: World): Promise<void> {
  let there = folder;
  while (!(await disk.look(there)) && dirname(there) !== there) there = dirname(there);
  await access(there, constants.W_OK);
}

/** Times that a place is looked at again because another writer is at work in it, and the pause between, ms. */
const LOOKS = { most: 100, pause: 50 } as const;

async function placeFor(output: Output, world: World): Promise<Place> {
  for (let looks = 1; ; looks += 1) {
    try {
      return await acceptedPlace(output, world);
    } catch (error) {
      // What another writer is about to change is no reason to refuse.
      const passing = systemCode(error) === 'ENOENT' || (error instanceof Refusal && (await isBusy(output, world)));
      if (!passing || looks === LOOKS.most) throw error;
    }
    await world.pause(LOOKS.pause);
  }
}

async function isBusy({ folder }: Output, world: World): Promise<boolean> {
  const real = await realFolder(resolve(folder), world.disk).catch(() => undefined);
  if (real === undefined) return false;
  return ((await world.disk.look(real))?.isDirectory() ?? false) && isClaimed(real, world);
}

async function acceptedPlace({ folder, label, called, alone }: Output, { disk }: World): Promise<Place> {
  const place = await lookAtPlace(resolve(folder), disk);
  const there = place.mark?.label;
  const what = called[label] ?? label;
  if (there !== undefined && there !== label) {
    throw new Refusal(
      `${folder} holds ${called[there] ?? there}, and this would put ${what} in its place. Name another folder with --output.`,
    );
  }
  if (alone && there === undefined && place.others.length > 0) {
    throw new Refusal(
      `${folder} holds other files, and ${what} must not come to lie among what may be published. Name a new folder with --output.`,
    );
  }
  return place;
}
