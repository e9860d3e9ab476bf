import { heatOf } from '../../book/recipes/heat-of.ts';
import { heatLimit } from '../../cup/heat-limit.ts';
import type { CupState } from '../../cup/ledger.ts';
import { isHeatProof } from '../../kinds/additive-uses.ts';
import { heatWords } from '../../words/heat.ts';
import { type MatchShown, titleIn } from './shown.ts';

/** How hot a cup may get, what sets that, and at what heat it is poured, in the words of a recipe's page. */
export function cupHeat(cup: CupState, shown: MatchShown): readonly string[] {
  const { data, materials } = shown;
  const [plastics, contents] = [cup.plastics, cup.materials].map((amounts) =>
    Object.keys(amounts).map((material) => ({ material })),
  );
  const heatable = Object.keys(cup.materials).filter((id) => !isHeatProof(materials.get(id)));
  const limits = heatLimit(Object.keys(cup.plastics), heatable, (id) => materials.get(id));
  const heat = heatOf([{ ...limits, plastics: plastics!, contents: contents! }], (id) => materials.get(id));
  return heatWords(heat, data.settings, (id) => titleIn(shown, id));
}
