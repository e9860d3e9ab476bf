import { colourOf } from '../../optics/appearance.ts';
import { flakeCoverage, flakesPerMm } from '../../optics/flake.ts';
import { mixtureConstants } from '../../optics/mixture.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { plasticConstants } from '../../optics/plastic.ts';
import { stackReflectance } from '../../optics/stack.ts';
import { BESIDE_GLOSS } from '../../optics/surface.ts';
import type { Material } from '../model/shelf.ts';
import { usualFlakeLoad } from '../shelf/flake-usual.ts';

/** A flake seen through ever more coloured plastic. */
export interface FlakeInDepth {
  readonly flake: Material;
  /** What the plastic is coloured with; absent for clear plastic. */
  readonly colorant?: Material;
  readonly steps: readonly {
    /** Plastic in front of the flake, mm. */
    readonly depthMm: number;
    /** Colour of a flake there. */
    readonly hex: string;
    /** Share of the lines of sight that have met a flake by then, 0..1. */
    readonly met: number;
  }[];
}

const DEPTHS = [0, 1, 2, 4, 8];

/** A flake at its usual load, in clear plastic with half the usual dose of a colorant. Undefined for what is no flake. */
export function flakeInDepth(
  material: Material,
  colorant: Material | undefined,
  { path }: Pick<OpticalModel, 'path'>,
): FlakeInDepth | undefined {
  const { flake, gramsPerMl } = material;
  if (flake === undefined) return undefined;
  const parts =
    colorant?.constants === undefined || colorant.typical === undefined
      ? []
      : [{ constants: colorant.constants, concentration: colorant.typical / 2 }];
  const plastic = mixtureConstants(plasticConstants('clear'), parts);
  const typical = material.typical ?? usualFlakeLoad(flake.acrossMm, gramsPerMl);
  const spread = { perMm: flakesPerMm(typical, flake) };
  return {
    flake: material,
    ...(colorant !== undefined && parts.length > 0 ? { colorant } : {}),
    steps: DEPTHS.map((depthMm) => ({
      depthMm,
      hex: colourOf(stackReflectance([{ ...plastic, thickness: depthMm }], flake.reflectance, BESIDE_GLOSS, path)).hex,
      met: flakeCoverage([spread], depthMm),
    })),
  };
}
