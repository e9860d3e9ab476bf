import { learn } from '../../learning/learn.ts';
import type { LearnedShelf } from '../../learning/learned-shelf.ts';
import type { LearningData } from '../../learning/learning-data.ts';
import { BOOK_FILE } from '../../recipe/source.ts';
import type { ColourMemory } from '../colour-memory.ts';
import { computedOf } from '../computed.ts';
import { NOTHING } from '../remembered.ts';
import type { Report } from '../report.ts';
import type { MaterialCore } from '../shelf/compile-material.ts';

/** A shelf as looks have taught it. */
export interface TaughtShelf {
  readonly learned: LearnedShelf;
  /** The materials with K and S as learned; what their files say is kept beside. */
  readonly shelf: ReadonlyMap<string, MaterialCore>;
}

/**
 * The shelf as these data teach it; undefined, and reported, where numbers are beyond all computing.
 *
 * The same data give the same value again, so that an edit which changes no look and no label has nothing computed anew.
 *
 * @param name of what is learned, among all that is learned of a book in one compile
 * @param how it is learned; unset: by `learn`
 */
export function learnShelf(
  data: LearningData,
  shelf: ReadonlyMap<string, MaterialCore>,
  memory: ColourMemory,
  report: Report,
  name = BOOK_FILE,
  how: (data: LearningData) => LearnedShelf = learn,
): TaughtShelf | undefined {
  const learned = memory.learned.of(name, [JSON.stringify(data)], NOTHING, report, (telling) =>
    computedOf(BOOK_FILE, telling, () => how(data)),
  );
  if (!learned) return undefined;
  const looks = looksWith(data);
  const taught = [...shelf].map(([id, material]): [string, MaterialCore] => {
    const inputs = [material, JSON.stringify(learned.constants[id]), looks.get(id)];
    return [
      id,
      memory.materials.of(`${name} ${id}`, inputs, NOTHING, report, () => asLearned(material, learned, looks.get(id))),
    ];
  });
  return { learned, shelf: new Map(taught) };
}

function asLearned(material: MaterialCore, { constants }: LearnedShelf, looks: number | undefined): MaterialCore {
  const learned = constants[material.id];
  if (!learned || !material.constants) return material;
  return {
    ...material,
    constants: learned,
    label: material.constants,
    ...(looks === undefined ? {} : { learnedFrom: looks }),
  };
}

/** How many looks there are at something with each material in it; of one without any nothing. */
function looksWith({ looks }: LearningData): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { layers } of looks) {
    const names = layers.flatMap(({ plastics, contents }) => [...plastics, ...contents].map(([id]) => id));
    for (const id of new Set(names)) counts.set(id, (counts.get(id) ?? 0) + 1);
  }
  return counts;
}
