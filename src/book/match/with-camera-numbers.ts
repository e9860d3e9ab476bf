import { defined } from '../../values/defined.ts';
import type { ColourMemory } from '../colour-memory.ts';
import type { Target } from '../model/target.ts';
import { NOTHING } from '../remembered.ts';
import { reportInto } from '../report.ts';

type Unjoined = Omit<Target, 'recipes'>;

/**
 * Targets whose parts say by which number what has been learned knows their cameras. Of a camera that made none of those looks nothing is
 * known, and it has no number.
 *
 * @param numbers of cameras, by their names: see `learningData`
 */
export function withCameraNumbers(
  targets: ReadonlyMap<string, Unjoined>,
  numbers: ReadonlyMap<string, string>,
  memory: ColourMemory,
): ReadonlyMap<string, Unjoined> {
  return new Map(
    [...targets].map(([id, target]) => {
      const known = target.parts.map(({ camera }) => (camera === undefined ? undefined : numbers.get(camera)));
      if (known.every((number) => number === undefined)) return [id, target];
      const numbered = (): Unjoined => ({
        ...target,
        parts: target.parts.map((part, index) => ({ ...part, ...defined({ cameraNumber: known[index] }) })),
      });
      return [id, memory.targets.of(id, [target, ...known], NOTHING, reportInto([]), numbered)];
    }),
  );
}
