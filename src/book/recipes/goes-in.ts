import { LEAST_POURING } from '../../cup/heat-limit.ts';
import { ADDITIVE_USES } from '../../kinds/additive-uses.ts';
import { MATERIAL_KINDS } from '../../kinds/kinds.ts';
import type { Material } from '../model/shelf.ts';

/** What the order of work asks of a material. */
export type WorkMaterial = Pick<
  Material,
  'title' | 'kind' | 'use' | 'gramsPerDrop' | 'highest' | 'working' | 'milky'
> & { readonly flake?: Pick<NonNullable<Material['flake']>, 'acrossMm'> };

/** When a material goes into a cup, the first first. */
const STAGES = ['cold', 'wetted', 'stirred-in', 'sinks', 'off-heat'] as const;

export type Stage = (typeof STAGES)[number];

/** What is in a cup, by name. */
export interface CupParts {
  readonly plastics: readonly { readonly material: string }[];
  readonly contents: readonly { readonly material: string }[];
}

/**
 * When a material goes into a cup of these plastics. What its file does not say the use of goes in cold where it is a liquid, and with what
 * sinks where it is not; what bears less than the plastic is poured at waits until it has melted, or is off the heat.
 */
export function stageOf(material: WorkMaterial, plastics: readonly WorkMaterial[]): Stage {
  const { kind, use, gramsPerDrop, highest = Number.POSITIVE_INFINITY } = material;
  const pouredAt = Math.max(LEAST_POURING, ...plastics.map((plastic) => plastic.working?.to ?? plastic.highest ?? 0));
  const { goesIn } = MATERIAL_KINDS[kind];
  switch (goesIn) {
    case 'first':
    case 'stirred-in':
      return 'stirred-in';
    case 'wetted':
      return highest < pouredAt ? 'stirred-in' : 'wetted';
    case 'sinks':
      return 'sinks';
    case 'by-use': {
      if (use !== undefined) return ADDITIVE_USES[use].goesIn;
      if (gramsPerDrop === undefined) return 'sinks';
      return highest < pouredAt ? 'off-heat' : 'cold';
    }
  }
}

/** What is in a cup, in the order in which it goes in. */
export function inOrderOfWork<T extends { readonly material: string }>(
  amounts: readonly T[],
  plastics: CupParts['plastics'],
  materialOf: (id: string) => WorkMaterial,
): readonly T[] {
  const known = plastics.map(({ material }) => materialOf(material));
  const place = ({ material }: T): number => STAGES.indexOf(stageOf(materialOf(material), known));
  return [...amounts].sort((one, other) => place(one) - place(other));
}

/** Whether something in a cup sinks. */
export function sinksIn({ plastics, contents }: CupParts, materialOf: (id: string) => WorkMaterial): boolean {
  const known = plastics.map(({ material }) => materialOf(material));
  return contents.some(({ material }) => stageOf(materialOf(material), known) === 'sinks');
}
