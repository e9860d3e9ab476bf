import { Belief } from '../../learning/belief.ts';
import { learn } from '../../learning/learn.ts';
import type { LearnedShelf } from '../../learning/learned-shelf.ts';
import type { OpticalConstants } from '../../optics/mixture.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';

/** A shelf as looks have taught it. */
export interface Taught<Material> {
  readonly belief: Belief;
  readonly optics: OpticalModel;
  /** With K and S as learned. */
  readonly shelf: readonly Material[];
}

type Constant = { readonly id: string; readonly constants?: OpticalConstants };

/** Materials as a shelf was learned. */
export function taughtBy<Material extends Constant>(
  learned: LearnedShelf,
  materials: readonly Material[],
  belief: Belief = new Belief(learned),
): Taught<Material> {
  const shelf = materials.map((material) => {
    const constants = learned.constants[material.id];
    return constants && material.constants ? { ...material, constants } : material;
  });
  return { belief, optics: learned.optics, shelf };
}

/** The same, as it was before anything was seen of a cup from a round on. */
export function taughtBefore<Material extends Constant>(
  { data: { materials: taught, looks } }: LearnedShelf,
  materials: readonly Material[],
  cup: string,
  round: number,
): Taught<Material> {
  const before = looks.filter((look) => look.cup !== cup || look.round < round);
  return taughtBy(learn({ materials: taught, looks: before }), materials);
}
