import type { BenchMaterial } from '../../cup/bench.ts';
import type { HeatsBorne } from '../../cup/heats-borne.ts';
import type { AdditiveUse } from '../../kinds/additive-uses.ts';
import type { Effect } from '../../kinds/effects.ts';
import { MATERIAL_KINDS, type MaterialKind } from '../../kinds/kinds.ts';
import type { OpticalMaterial } from '../../optics/cup-body.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';

/** A material of the shelf as matching needs it: how it colours, how it is measured, and what limits it. */
export interface MatchMaterial extends OpticalMaterial, BenchMaterial {
  readonly id: string;
  readonly title: string;
  readonly kind: MaterialKind;
  /** What an additive is for, if its file says. */
  readonly use?: AdditiveUse;
  /** What it does beside being of a colour: it is proposed only where that is wanted. */
  readonly effect?: Effect;
  /** g/ml of the substance: what it adds to the cup's volume. */
  readonly density: number;
  /** ΔE00 to expect of what is predicted from it. */
  readonly expectedDeltaE: number;
  /** Highest temperature, °C. */
  readonly highest?: number;
  /** How many heats it bears. */
  readonly bears?: HeatsBorne;
  /** Range in which a plastic is poured, °C. */
  readonly working?: { readonly from: number; readonly to: number };
  /** Most that a cup takes, and a typical dose; g per ml of plastic. */
  readonly most?: number;
  readonly typical?: number;
  /** Of a pack of `packGrams`. */
  readonly price?: number;
  readonly packGrams?: number;
  /** g left; absent where it is not counted. */
  readonly stockGrams?: number;
}

/** The shelf by names, and how its materials are seen in plastic. */
export interface SeenShelf {
  readonly shelf: ReadonlyMap<string, MatchMaterial>;
  readonly optics: OpticalModel;
}

/** Cost of grams of a material; undefined where its price is not known. */
export function costOf(material: MatchMaterial, grams: number): number | undefined {
  const { price, packGrams } = material;
  return price === undefined || packGrams === undefined || !(packGrams > 0) ? undefined : (grams / packGrams) * price;
}

/** The shelf by names, in the order of the names, so that nothing hangs on the order in which it was given. */
export function shelfByName(shelf: readonly MatchMaterial[]): ReadonlyMap<string, MatchMaterial> {
  return new Map(
    [...shelf].sort((one, other) => (one.id < other.id ? -1 : 1)).map((material) => [material.id, material]),
  );
}

/** Whether a material is for colouring plastic, and has K and S. */
export function colours({ constants, kind }: MatchMaterial): boolean {
  return constants !== undefined && MATERIAL_KINDS[kind].colours;
}
