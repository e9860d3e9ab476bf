import type { Belief } from '../../learning/belief.ts';
import type { LearnedShelf } from '../../learning/learned-shelf.ts';
import type { TaughtLook } from '../../learning/learning-data.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';

/** With what a book looks at cups and baits: how light goes, and what its looks have taught of it. */
export class BookEye<Believing extends Pick<Belief, 'mean' | 'of'> = Pick<Belief, 'mean' | 'of'>> {
  readonly optics: OpticalModel;
  readonly belief: Believing;
  private readonly materials: ReadonlySet<string>;
  private readonly byCup = new Map<string, TaughtLook[]>();
  private readonly byMaterial = new Map<string, Set<string>>();

  /** @param belief that of this shelf: see `beliefOf` */
  constructor({ optics, data, weights }: LearnedShelf, belief: Believing) {
    this.optics = optics;
    this.belief = belief;
    this.materials = new Set(data.materials.map(({ id }) => id));
    for (const [index, look] of data.looks.entries()) {
      // What is hardly believed was not seen.
      if (weights.looks[index]! > HALF) listIn(this.byCup, look.cup).push(look);
      const names = look.layers.flatMap(({ plastics, contents }) => [...plastics, ...contents].map(([id]) => id));
      for (const id of new Set(names)) setIn(this.byMaterial, id).add(look.key);
    }
  }

  /** Whether a material does anything to a colour. */
  readonly colours = (material: string): boolean => this.materials.has(material);

  /** Looks at a cup, or a bait, of that name that are believed. */
  looksAt(cup: string): readonly TaughtLook[] {
    return this.byCup.get(cup) ?? [];
  }

  /** Keys of the looks at something with a material in it. */
  looksWith(material: string): ReadonlySet<string> {
    return this.byMaterial.get(material) ?? NONE;
  }
}

const HALF = 0.5;
const NONE: ReadonlySet<string> = new Set();

function listIn(lists: Map<string, TaughtLook[]>, name: string): TaughtLook[] {
  const list = lists.get(name) ?? [];
  lists.set(name, list);
  return list;
}

function setIn(sets: Map<string, Set<string>>, name: string): Set<string> {
  const set = sets.get(name) ?? new Set<string>();
  sets.set(name, set);
  return set;
}
