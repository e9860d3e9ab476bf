import type { Constants } from './learning-data.ts';
import type { ShelfState } from './shelf-state.ts';

const DIGITS = 6;

/** K and S of each material that colours, as it is in the maker's own bottle: its strength is in them. Rounded to six digits. */
export function learnedConstants({ unknowns, materials }: ShelfState): Readonly<Record<string, Constants>> {
  const constants: Record<string, Constants> = {};
  for (const [id, place] of unknowns.placeOf) {
    if (unknowns.materials[place]!.flake) continue;
    const { K, S, strength } = materials[place]!;
    const rounded = (values: Float64Array): readonly number[] =>
      Array.from(values, (value) => Number((strength * value).toPrecision(DIGITS)));
    constants[id] = { absorption: rounded(K), scattering: rounded(S) };
  }
  return constants;
}
