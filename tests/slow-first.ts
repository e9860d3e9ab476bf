import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** What takes longest, below `tests/`: where it is begun last, one processor works on it while the others have nothing left to do. */
const SLOW: readonly string[] = [
  'cli/serve-edits',
  'cli/serve',
  'cli/build',
  'cli/first-pages',
  'hostile/hostile-books',
  'optics/uncertainty',
  'diagnostics/mended',
  'matching/next-addition',
  'matching/first-recipe',
  'book/look-attack/look-attack',
  'book/memory',
  'book/recipe-anew',
  'book/sound-part',
  'book/rowan-week',
  'book/looks',
  'book/seen-as-itself',
  'book/shared-edition',
  'book/odd-amounts',
  'learning/belief-calibration',
  'browser/match',
  'photo/card/read-card',
  'cli/photo',
  'site/photograph',
  'cli/matching',
];

/** Runs the slowest files first, and those of a project one after the other: a worker that goes on with the next file is not started again. */
export class SlowFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ project, moduleId }: TestSpecification): readonly [string, number] => {
      const at = SLOW.findIndex((path) => moduleId.endsWith(`tests/${path}.test.ts`));
      return [project.name, at < 0 ? SLOW.length : at];
    };
    return (await super.sort(files)).sort((one, other) => {
      const [[project, at], [otherProject, otherAt]] = [place(one), place(other)];
      return project.localeCompare(otherProject) || at - otherAt;
    });
  }
}
