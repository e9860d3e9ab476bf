/**
 * K and S of one material from whatever is known of it, best first: measured films (`fit/`), photographed chips
 * (`from-chips.ts`), one colour and a kind (`from-colour-and-kind.ts`). A maker's error is a fault value, never a throw.
 */
import { EXPECTED_DELTA_E } from '../tables/colouring-kinds.ts';
import type { OpticalFault } from './fault.ts';
import type { MixtureConstants } from './mixture.ts';

/** Best first: measured spectra, photographed chips, one colour and a kind. */
export const TIERS = ['measured', 'photographed', 'estimated'] as const;

/** What constants rest on. */
export type Tier = (typeof TIERS)[number];

/** K and S of a material, and how far to trust them. */
export interface MaterialConstants {
  /** Per mm per g/ml. */
  readonly constants: MixtureConstants;
  readonly tier: Tier;
  /** ΔE00 to expect of what is predicted from them: never less than `residual`. */
  readonly expectedDeltaE: number;
  /** Root mean square ΔE00 between what was given and what the constants say it should have been. */
  readonly residual: number;
}

/** Constants, or what is wrong with the maker's figures. */
export type MaterialResult = MaterialConstants | OpticalFault;

/** Puts a result together. */
export function materialConstants(constants: MixtureConstants, tier: Tier, residual: number): MaterialConstants {
  return { constants, tier, expectedDeltaE: Math.max(EXPECTED_DELTA_E[tier], residual), residual };
}
