import { type CupState, concentrations, total } from '../../cup/ledger.ts';
import type { Mixing } from '../../optics/cup-body.ts';
import type { SpreadFlake } from '../../optics/flake.ts';
import { spreadFlake } from '../../optics/flake.ts';
import type { MixtureConstants } from '../../optics/mixture.ts';
import { crowdingFactor } from '../../optics/optical-model.ts';
import { BAND_COUNT } from '../../optics/spectrum.ts';
import type { MatchMaterial } from '../shelf/match-material.ts';
import type { MixCup } from './mix-problem.ts';

/** A material by its name. Throws where there is none. */
export type MaterialOf = (material: string) => MatchMaterial;

/** A cup as matching sees it, per mm. */
export interface CupBase {
  /** The plastic alone. */
  readonly plastic: MixtureConstants;
  /** With everything that is in it. */
  readonly mix: MixtureConstants & Required<Pick<MixCup, 'load'>>;
  readonly flakes: readonly SpreadFlake[];
}

/**
 * K and S of a cup, and its flake; an empty cup counts as the plastic of which it has any share, or as nothing.
 */
export function baseOfCup(cup: CupState, shelf: MaterialOf, mixing: Mixing): CupBase {
  const plastic = { absorption: new Float64Array(BAND_COUNT), scattering: new Float64Array(BAND_COUNT) };
  const plasticMl = total(cup.plastics);
  for (const name in cup.plastics)
    addConstants(plastic, shelf(name), plasticMl > 0 ? cup.plastics[name]! / plasticMl : 0);
  const mix = { absorption: plastic.absorption.slice(), scattering: plastic.scattering.slice(), load: 0 };
  const contents = concentrations(cup);
  const flakes: SpreadFlake[] = [];
  for (const name of Object.keys(contents).sort()) {
    const material = shelf(name);
    const dose = contents[name]!;
    if (material.flake && dose > 0) flakes.push(spreadFlake(material.flake, dose));
    else if (material.constants) {
      addConstants(mix, material, dose);
      mix.load += dose;
    }
  }
  scale(mix.scattering, crowdingFactor(mixing, mix.load));
  return { plastic, mix, flakes };
}

/** K and S that the parts of a cup add up to: what they are but for what crowding takes from S. */
export function sumsOf({ absorption, scattering, load = 0 }: MixCup, mixing: Mixing): MixtureConstants {
  const sums = { absorption: Float64Array.from(absorption), scattering: Float64Array.from(scattering) };
  scale(sums.scattering, 1 / crowdingFactor(mixing, load));
  return sums;
}

function scale(values: Float64Array, factor: number): void {
  for (let band = 0; band < BAND_COUNT; band++) values[band]! *= factor;
}

function addConstants(sum: MixtureConstants, { constants }: MatchMaterial, factor: number): void {
  if (!constants) return;
  for (let band = 0; band < BAND_COUNT; band++) {
    sum.absorption[band]! += factor * constants.absorption[band]!;
    sum.scattering[band]! += factor * constants.scattering[band]!;
  }
}
