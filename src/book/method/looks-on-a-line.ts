import type { LookedLayer, TaughtLook } from '../../learning/learning-data.ts';
import type { Book } from '../model.ts';

/** A cup that was looked at by itself, and one of its materials, whose dose is to vary. */
export interface LookLine {
  readonly material: string;
  readonly layer: LookedLayer;
  /** The looks at it with any dose of that material and all else alike, each with its g/ml, the smallest first. */
  readonly seen: readonly { readonly gramsPerMl: number; readonly look: TaughtLook }[];
}

/** As nearly alike as amounts can be told apart that were kept with six digits. */
const ALIKE = 1e-3;

/**
 * All lines of a book, in the order of their first looks: of cups that were looked at by themselves, over white, and are believed.
 */
export function linesOfLooks({ learned, materials }: Pick<Book, 'learned' | 'materials'>): readonly LookLine[] {
  const coloured = new Set(
    materials.flatMap(({ id, constants, flake, kind }) => (constants && !flake && kind !== 'plastic' ? [id] : [])),
  );
  const alone = learned.data.looks.filter(
    ({ layers, streaks, overWhite }, index) =>
      layers.length === 1 && streaks === undefined && overWhite !== undefined && learned.weights.looks[index]! > 1 / 2,
  );
  const lines = new Map<string, LookLine>();
  for (const look of alone) {
    const [layer] = look.layers;
    for (const [material, gramsPerMl] of layer!.contents) {
      if (!coloured.has(material) || !(gramsPerMl > 0)) continue;
      const name = JSON.stringify([
        material,
        layer!.thicknessMm,
        layer!.plastics.map(rounded),
        others(layer!, material).map(rounded),
      ]);
      const before = lines.get(name);
      const seen = [...(before?.seen ?? []), { gramsPerMl, look }];
      lines.set(name, {
        material,
        layer: before?.layer ?? layer!,
        seen: seen.toSorted((one, other) => one.gramsPerMl - other.gramsPerMl),
      });
    }
  }
  return [...lines.values()];
}

/** The contents of a layer but one. */
export function others({ contents }: LookedLayer, material: string): LookedLayer['contents'] {
  return contents.filter(([id]) => id !== material);
}

const rounded = ([id, amount]: readonly [string, number]): readonly [string, number] => [
  id,
  Math.round(Math.log(amount) / ALIKE),
];
