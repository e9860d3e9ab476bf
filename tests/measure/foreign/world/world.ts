/**
 * One maker's world: what the bottles on the shelf are as products, and what is really in those bottles.
 *
 * Products vary from world to world. A bottle is as strong as the product times a log-normal factor of deviation 0.25; a drop of it, or a
 * level spoonful, is off by a normal 0.10.
 *
 * @packageDocumentation
 */
import type { Substance } from '../physics/pour.ts';
import { absorptionOf, type Feature, scatteringOf } from '../physics/spectra.ts';
import type { Chance } from './chance.ts';
import { OTHER_PRODUCTS, type Product, SHELF_PRODUCTS, usualDose } from './products.ts';

/** A material of a world. */
export interface Bottle {
  readonly product: Product;
  /** Of the product, per mm and g/ml. */
  readonly nominal: Substance;
  /** What is in the bottle is so many times as strong. */
  readonly strength: number;
  /** A drop of it, or a level spoonful, is so many times what it counts for. */
  readonly measure: number;
}

/** A maker's world. */
export interface World {
  readonly plastic: Substance;
  readonly shelf: readonly Bottle[];
  /** Bottles that are not on the shelf. */
  readonly others: readonly Bottle[];
}

const STRENGTH_DEVIATION = 0.25;
const MEASURE_DEVIATION = 0.1;

/** A world by chance. */
export function foreignWorld(chance: Chance): World {
  return {
    plastic: {
      absorption: absorptionOf([
        { kind: 'floor', height: 0.0008 * Math.exp(chance.normal(0.3)) },
        { kind: 'slope', reach: 45, height: 0.004 * Math.exp(chance.normal(0.4)) },
      ]),
      scattering: scatteringOf(0.004 * Math.exp(chance.normal(0.3)), 1),
    },
    shelf: SHELF_PRODUCTS.map((product) => bottleOf(product, chance)),
    others: OTHER_PRODUCTS.map((product) => bottleOf(product, chance)),
  };
}

function bottleOf(product: Product, chance: Chance): Bottle {
  const usual = usualDose(product);
  const perDose = (spectrum: Float64Array): Float64Array => spectrum.map((each) => each / usual);
  const features = product.absorbs.map((feature) => varied(feature, chance));
  const { at550, power } = product.scatters;
  return {
    product,
    nominal: {
      absorption: perDose(absorptionOf(features)),
      scattering: perDose(scatteringOf(at550 * Math.exp(chance.normal(0.3)), power + chance.normal(0.15))),
    },
    strength: Math.exp(chance.normal(STRENGTH_DEVIATION)),
    measure: Math.max(0.5, 1 + chance.normal(MEASURE_DEVIATION)),
  };
}

function varied(feature: Feature, chance: Chance): Feature {
  const height = feature.height * Math.exp(chance.normal(0.25));
  switch (feature.kind) {
    case 'band':
    case 'edge':
      return {
        ...feature,
        height,
        at: feature.at + chance.normal(7),
        width: feature.width * Math.exp(chance.normal(0.12)),
      };
    case 'slope':
      return { ...feature, height, reach: feature.reach * Math.exp(chance.normal(0.12)) };
    case 'floor':
      return { ...feature, height };
  }
}
