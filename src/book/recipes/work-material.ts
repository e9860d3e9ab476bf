import { pouredAt } from '../../cup/heat-limit.ts';
import { inOrderOfWork, stageOf } from '../../kinds/goes-in.ts';
import type { Material } from '../model/shelf.ts';

/** What the order of work asks of a material. */
export type WorkMaterial = Pick<
  Material,
  'title' | 'kind' | 'use' | 'gramsPerDrop' | 'highest' | 'working' | 'milky'
> & { readonly flake?: Pick<NonNullable<Material['flake']>, 'acrossMm'> };

/** What is in a cup, by name. */
export interface CupParts {
  readonly plastics: readonly { readonly material: string }[];
  readonly contents: readonly { readonly material: string }[];
}

/** Amounts of a cup, in the order in which they go in. */
export function inOrderOfCup<T extends { readonly material: string }>(
  amounts: readonly T[],
  plastics: CupParts['plastics'],
  materialOf: (id: string) => WorkMaterial,
): readonly T[] {
  return inOrderOfWork(amounts, materialOf, pouredAt(plastics.map(({ material }) => materialOf(material))));
}

/** Whether something in a cup sinks. */
export function sinksIn({ plastics, contents }: CupParts, materialOf: (id: string) => WorkMaterial): boolean {
  const heat = pouredAt(plastics.map(({ material }) => materialOf(material)));
  return contents.some(({ material }) => stageOf(materialOf(material), heat) === 'sinks');
}
