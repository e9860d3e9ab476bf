import { required } from '../../../src/values/required.ts';
import { MakersBook } from './book/makers-book.ts';
import { shelfFiles } from './book/shelf-files.ts';
import type { BookResult, Checkpoint } from './book-result.ts';
import type { Condition } from './conditions.ts';
import { putChips } from './maker/asked-chips.ts';
import { CommandCheck } from './maker/command-check.ts';
import { type Bench, course } from './maker/course.ts';
import type { CourseResult } from './maker/course-result.ts';
import { toldFaults } from './maker/told-faults.ts';
import { missed, missedUnseen } from './measures/unseen.ts';
import { Chance } from './world/chance.ts';
import { cameraOf } from './world/eye-noise.ts';
import { foreignWorld } from './world/world.ts';

/** The book is put to the proof after so many recipes. */
const CHECKED_AFTER: readonly number[] = [0, 5, 10, 15, 20, 40];

/** Hidden mixtures by which it is. */
const MIXTURES = 200;

/** Keeps one book through a condition; the same for the same seed, whatever else is run. */
export async function runBook(condition: Condition, seed: number, mixtures: number = MIXTURES): Promise<BookResult> {
  const start = process.cpuUsage();
  // Each has a chance of its own, and so has every match: its target is the same whatever the book proposed in others.
  const world = foreignWorld(new Chance(1000 + seed));
  const book = new MakersBook(shelfFiles(world, condition, new Chance(2000 + seed)));
  const camera = cameraOf(condition.means, condition.deviation, new Chance(4000 + seed));
  const commands = new CommandCheck();
  const benchOf = (number: number): Bench => ({
    world,
    book,
    condition,
    camera,
    chance: new Chance(1000 * (100 + seed) + number),
    commands,
  });
  const bench = benchOf(0);
  const chips = condition.chips === undefined ? undefined : putChips(bench, condition.chips);
  const courses: CourseResult[] = [];
  const checkpoints: Checkpoint[] = [checkpoint(bench, seed, mixtures, courses)];
  for (let number = 1; number <= condition.recipes; number++) {
    courses.push(await course(benchOf(number), number));
    if (CHECKED_AFTER.includes(number)) checkpoints.push(checkpoint(bench, seed, mixtures, courses));
  }
  const { user, system } = process.cpuUsage(start);
  return {
    condition: condition.name,
    seed,
    recipes: condition.recipes,
    ...(chips === undefined ? {} : { chips }),
    checkpoints,
    courses: toldAtLast(bench, courses),
    commandsCompared: bench.commands.compared,
    cpuSeconds: (user + system) / 1e6,
  };
}

function checkpoint(
  { world, book }: Bench,
  seed: number,
  mixtures: number,
  courses: readonly CourseResult[],
): Checkpoint {
  const { recipes } = book.opened().book;
  const seen = courses.flatMap(({ number, shown }) =>
    shown ? [{ recipe: required(recipes, `match-${number}`), truth: shown }] : [],
  );
  return { after: courses.length, unseen: missedUnseen(world, book, seed, mixtures), seen: missed(seen) };
}

/** Courses with what the book tells of their logs in the end. */
function toldAtLast({ book }: Bench, courses: readonly CourseResult[]): readonly CourseResult[] {
  const { diagnostics } = book.opened();
  return courses.map((each) => {
    const told = toldFaults(diagnostics, `colours/match-${each.number}.md`);
    return told.length === 0 ? each : { ...each, toldAtLast: told.map(({ says }) => says) };
  });
}
