import type { LearnedShelf } from './learned-shelf.ts';
import type { TaughtLook } from './learning-data.ts';
import { CAMERA_UNKNOWNS, COMMON_UNKNOWNS, type MaterialUnknowns, shelfUnknowns } from './shelf-unknowns.ts';

/**
 * A learned shelf with some of its materials alone, and with the looks at nothing but these: what is believed of them is as it was
 * learned, and nothing tells of the others.
 *
 * @param isWanted which of these looks; all, where it is not given
 */
export function shelfPart(
  shelf: LearnedShelf,
  ids: ReadonlySet<string>,
  isWanted: (look: TaughtLook) => boolean = () => true,
): LearnedShelf {
  const { data, weights } = shelf;
  const isKept = (look: TaughtLook): boolean =>
    isWanted(look) &&
    look.layers.every(({ plastics, contents }) => [...plastics, ...contents].every(([id]) => ids.has(id)));
  const looks = data.looks.filter(isKept);
  const cups = new Set(looks.map(({ cup }) => cup));
  const part = { materials: data.materials.filter(({ id }) => ids.has(id)), looks };
  return {
    ...shelf,
    data: part,
    theta: thetaOf(shelf, part),
    weights: {
      looks: weights.looks.filter((_, index) => isKept(data.looks[index]!)),
      looksAlone: weights.looksAlone.filter((_, index) => isKept(data.looks[index]!)),
      cups: those(weights.cups, cups),
      labels: those(weights.labels, ids),
    },
    constants: those(shelf.constants, ids),
  };
}

/** The unknowns of the whole in the order of a part. */
function thetaOf({ data, theta }: LearnedShelf, part: LearnedShelf['data']): readonly number[] {
  const [whole, fewer] = [shelfUnknowns(data), shelfUnknowns(part)];
  const picked = new Array<number>(fewer.count).fill(0);
  const copy = (from: number, to: number, count: number): void => {
    for (let i = 0; i < count; i++) picked[to + i] = theta[from + i]!;
  };
  for (const { id } of part.materials) {
    const from = whole.materials[whole.placeOf.get(id)!]!;
    const to = fewer.materials[fewer.placeOf.get(id)!]!;
    copy(from.at, to.at, unknownsIn(from));
  }
  copy(whole.common, fewer.common, COMMON_UNKNOWNS.length);
  for (const [camera, to] of fewer.cameras) copy(whole.cameras.get(camera)!, to, CAMERA_UNKNOWNS);
  return picked;
}

function unknownsIn({ kModes, sModes, bottle }: MaterialUnknowns): number {
  return kModes.length + sModes.length + (bottle === undefined ? 0 : 1);
}

function those<T>(all: Readonly<Record<string, T>>, names: ReadonlySet<string>): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(all).filter(([name]) => names.has(name)));
}
