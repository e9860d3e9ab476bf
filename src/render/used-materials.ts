import type { Cup } from '../book/model/cup.ts';
import type { Material } from '../book/model/shelf.ts';
import { required } from '../values/required.ts';

/** Names of all that cups are made with, in the alphabet's order: what a cut is made with goes in with it. */
export function usedMaterials(
  cups: readonly Pick<Cup, 'plastics' | 'contents'>[],
  materials: ReadonlyMap<string, Pick<Material, 'cuts'>>,
): readonly string[] {
  const used = new Set(
    cups.flatMap(({ plastics, contents }) => [...plastics, ...contents].map(({ material }) => material)),
  );
  for (const id of [...used]) for (const cut of required(materials, id).cuts ?? []) used.add(cut.with);
  return [...used].sort();
}
