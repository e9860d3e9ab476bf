import { cupBody } from '../../optics/cup-body.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { plasticConstants } from '../../optics/plastic.ts';
import { LADDER_MM } from '../../tables/material-defaults.ts';
import { appearanceOf } from '../cups/appearances.ts';
import type { Appearance } from '../model/colours.ts';
import type { LadderStep } from '../model/shelf.ts';
import { doseLabel, type MaterialCore } from './compile-material.ts';

const STEPS = [1 / 4, 1 / 2, 1, 2, 4];
const NO_COLOUR = '#c9c9c9';

/** A material alone in clear plastic, from a quarter of its typical dose to four times that; empty for what does not colour. */
export function doseLadder(material: MaterialCore, optics: OpticalModel): readonly LadderStep[] {
  const { typical } = material;
  if (typical === undefined) return [];
  return STEPS.map((step) => ({
    gramsPerMl: typical * step,
    label: `${doseLabel(material, typical * step)} in 100 ml`,
    look: aloneInClear(material, typical * step, optics),
  }));
}

/** The colour of a material's mark on pages: a flake's own, or that of its typical look. */
export function markColour(material: MaterialCore, optics: OpticalModel): string {
  return material.flake?.colour ?? typicalLook(material, optics)?.overWhite.hex ?? NO_COLOUR;
}

/** A typical dose in clear plastic; a plastic by itself. Undefined of flake and of what does not colour. */
export function typicalLook(material: MaterialCore, optics: OpticalModel): Appearance | undefined {
  const { flake, kind, constants, typical } = material;
  if (flake || !constants) return undefined;
  if (kind === 'plastic') return appearanceOf({ ...constants }, LADDER_MM, optics);
  return typical === undefined ? undefined : aloneInClear(material, typical, optics);
}

/** A dose of a material alone in clear plastic. */
export function aloneInClear(
  material: MaterialCore,
  gramsPerMl: number,
  optics: OpticalModel,
  thicknessMm = LADDER_MM,
): Appearance {
  // No file can have this name, so that it is no material's.
  const clear = '~clear';
  const mix = { plastics: [{ material: clear, fraction: 1 }], contents: [{ material: material.id, gramsPerMl }] };
  const plastic = { constants: plasticConstants('clear') };
  return appearanceOf(
    cupBody(mix, (id) => (id === material.id ? material : plastic), optics),
    thicknessMm,
    optics,
  );
}
