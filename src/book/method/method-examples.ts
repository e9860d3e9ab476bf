/**
 * Examples of how the colours of a book come about, computed with its own materials: pictures of a page, not data of the book.
 *
 * Units: doses in g per ml of plastic, thickness and depth in mm; K and S per mm at the usual dose; spectra are 36 numbers,
 * 380 to 730 nm.
 *
 * @packageDocumentation
 */

import { MATERIAL_KINDS } from '../../kinds/kinds.ts';
import { appearance } from '../../optics/appearance.ts';
import { deltaE00 } from '../../optics/delta-e00.ts';
import { labFromHex } from '../../optics/display.ts';
import { TIERS } from '../../optics/material-constants.ts';
import { mixtureConstants } from '../../optics/mixture.ts';
import type { OpticalModel } from '../../optics/optical-model.ts';
import { plasticConstants } from '../../optics/plastic.ts';
import type { Body } from '../../optics/stack.ts';
import { lightAtDepth } from '../../optics/water.ts';
import { LADDER_MM } from '../../tables/material-defaults.ts';
import { defined } from '../../values/defined.ts';
import { appearanceOf, keptAppearance } from '../cups/appearances.ts';
import { WATERS_SHOWN } from '../cups/bait-appearances.ts';
import { median } from '../median.ts';
import type { Appearance } from '../model/colours.ts';
import type { Constants, Material } from '../model/shelf.ts';
import type { Book } from '../model.ts';
import { bestOf } from './best-of.ts';
import { type FlakeInDepth, flakeInDepth } from './flake-in-depth.ts';

/** A material that colours, with what the examples need of it. */
export type ColouringMaterial = Material & { readonly constants: Constants; readonly typical: number };

/** K and S of a material alone, at its usual dose. */
export interface PlasticCurve {
  readonly material: Material;
  readonly absorption: readonly number[];
  readonly scattering: readonly number[];
}

/** Two cups mixed, by the model and by averaging what a screen shows of them. */
export interface MixingExample {
  readonly materials: readonly [Material, Material];
  readonly alone: readonly [Appearance, Appearance];
  readonly mixed: Appearance;
  readonly averaged: { readonly overWhite: string; readonly overBlack: string };
  /** ΔE00 between the two, the larger of those over white and over black. */
  readonly deltaE: number;
  /** The median of the same over all pairs that were tried, and how many there were. */
  readonly medianDeltaE: number;
  readonly pairs: number;
}

/** Two cups in layers of half the thickness each, either one in front. */
export interface LayersExample {
  readonly materials: readonly [Material, Material];
  /** Each by itself, as thick as both. */
  readonly alone: readonly [Appearance, Appearance];
  /** The first in front of the second, and the second in front of the first. */
  readonly over: readonly [Appearance, Appearance];
}

export interface MethodExamples {
  readonly absorber?: PlasticCurve;
  readonly scatterer?: PlasticCurve;
  readonly thickness?: {
    readonly material: Material;
    readonly steps: readonly { readonly thicknessMm: number; readonly look: Appearance }[];
  };
  readonly mixing?: MixingExample;
  readonly layers?: LayersExample;
  readonly flake?: FlakeInDepth;
  /** Daylight that is left at a depth, band by band, 0..1. */
  readonly water: readonly { readonly name: string; readonly type: string; readonly light: readonly number[] }[];
  /** Depth of `water`, m. */
  readonly waterDepthM: number;
}

const THICKNESSES = [0.5, 1, 2, 4, 8, 16];
const WATER_DEPTH_M = 3;

// Every pair is tried: 24 materials are 276 pairs, a fifth of a second.
const MOST_TRIED = 24;

// A grey in front of a white shows depth, but no hue that shifts. CIELAB.
const LEAST_CHROMA = 15;

/** Examples from the shelf; those that it has no material for are left out. */
export function methodExamples({ materials, optics }: Pick<Book, 'materials' | 'optics'>): MethodExamples {
  const colouring = materials.filter(isColouring).sort(byTier);
  const colorants = colouring.filter(({ kind }) => kind === 'colorant');
  const known = colorants.filter(({ tier }) => tier !== 'estimated');
  const absorber = bestOf([known, colorants, colouring].find(({ length }) => length > 0) ?? [], chroma);
  // A pearl or a white scatters more than it swallows; which of them are known best is said by the order of the list.
  const pale = colouring.filter(({ constants }) => median(constants.scattering) > median(constants.absorption));
  const scatterer = bestOf(
    pale.filter(({ tier }) => tier === pale[0]?.tier),
    ({ constants, typical }) => median(constants.scattering) * typical,
  );
  const pairs = pairsOf((known.length >= 2 ? known : colorants).slice(0, MOST_TRIED));
  const mixing = mixingExample(pairs, optics);
  const layers = layersExample(
    pairs.filter((pair) => pair.every((material) => chroma(material) >= LEAST_CHROMA)),
    optics,
  );
  const flake = bestOf(
    materials.filter((material) => material.flake !== undefined),
    ({ hex }) => labFromHex(hex).L,
  );
  const inDepth = flake && flakeInDepth(flake, absorber, optics);
  return {
    ...(absorber === undefined ? {} : { absorber: curveOf(absorber), thickness: thicknessExample(absorber, optics) }),
    ...(scatterer === undefined ? {} : { scatterer: curveOf(scatterer) }),
    ...defined({ mixing, layers, flake: inDepth }),
    water: WATERS_SHOWN.map(({ name, type }) => ({ name, type, light: [...lightAtDepth(type, WATER_DEPTH_M)] })),
    waterDepthM: WATER_DEPTH_M,
  };
}

function isColouring(material: Material): material is ColouringMaterial {
  const { kind, constants, typical } = material;
  return MATERIAL_KINDS[kind].colours && constants !== undefined && typical !== undefined;
}

function byTier(one: Material, other: Material): number {
  return TIERS.indexOf(one.tier) - TIERS.indexOf(other.tier);
}

/** CIELAB chroma of the mark of a material. */
function chroma({ hex }: Material): number {
  const { a, b } = labFromHex(hex);
  return Math.hypot(a, b);
}

function curveOf(material: ColouringMaterial): PlasticCurve {
  const { constants, typical } = material;
  return {
    material,
    absorption: constants.absorption.map((K) => K * typical),
    scattering: constants.scattering.map((S) => S * typical),
  };
}

/** Clear plastic with a part of the usual dose of some materials. */
function bodyOf(materials: readonly ColouringMaterial[], part = 1): Body {
  return mixtureConstants(
    plasticConstants('clear'),
    materials.map(({ constants, typical }) => ({ constants, concentration: typical * part })),
  );
}

function thicknessExample(material: ColouringMaterial, optics: OpticalModel): NonNullable<MethodExamples['thickness']> {
  const body = bodyOf([material]);
  return {
    material,
    steps: THICKNESSES.map((thicknessMm) => ({ thicknessMm, look: appearanceOf(body, thicknessMm, optics) })),
  };
}

type Pair = readonly [ColouringMaterial, ColouringMaterial];

function pairsOf(materials: readonly ColouringMaterial[]): readonly Pair[] {
  return materials.flatMap((one, index) => materials.slice(index + 1).map((other): Pair => [one, other]));
}

/** The pair whose mix is furthest from the mean of its screen colours. */
function mixingExample(pairs: readonly Pair[], optics: OpticalModel): MixingExample | undefined {
  const tried = pairs.map((materials): Omit<MixingExample, 'medianDeltaE' | 'pairs'> => {
    const [first, second] = materials.map((material) => appearanceOf(bodyOf([material]), LADDER_MM, optics)) as [
      Appearance,
      Appearance,
    ];
    const mixed = appearanceOf(bodyOf(materials, 1 / 2), LADDER_MM, optics);
    const averaged = {
      overWhite: meanHex(first.overWhite.hex, second.overWhite.hex),
      overBlack: meanHex(first.overBlack.hex, second.overBlack.hex),
    };
    const deltaE = Math.max(
      deltaE00(mixed.overWhite.lab, labFromHex(averaged.overWhite)),
      deltaE00(mixed.overBlack.lab, labFromHex(averaged.overBlack)),
    );
    return { materials, alone: [first, second], mixed, averaged, deltaE };
  });
  const worst = bestOf(tried, ({ deltaE }) => deltaE);
  if (worst === undefined) return undefined;
  return { ...worst, medianDeltaE: median(tried.map(({ deltaE }) => deltaE)), pairs: tried.length };
}

/** The mean of two screen colours, channel by channel: what this book never does. */
function meanHex(one: string, other: string): string {
  const channel = (hex: string, at: number): number => Number.parseInt(hex.slice(1 + 2 * at, 3 + 2 * at), 16);
  const means = [0, 1, 2].map((at) => Math.round((channel(one, at) + channel(other, at)) / 2));
  return `#${means.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

/** The pair of which each shows the other most plainly through itself. */
function layersExample(pairs: readonly Pair[], optics: OpticalModel): LayersExample | undefined {
  const half = LADDER_MM / 2;
  const tried = pairs.map((materials) => {
    const bodies = materials.map((material) => bodyOf([material])) as [Body, Body];
    const alone = bodies.map((body) => appearanceOf(body, LADDER_MM, optics)) as [Appearance, Appearance];
    const over = [bodies, bodies.toReversed()].map((layers) =>
      keptAppearance(
        appearance(
          layers.map((body) => ({ ...body, thickness: half })),
          { optics },
        ),
      ),
    ) as [Appearance, Appearance];
    const shift = (side: 0 | 1): number => deltaE00(alone[side].overWhite.lab, over[side].overWhite.lab);
    const apart = deltaE00(over[0].overWhite.lab, over[1].overWhite.lab);
    return { materials, alone, over, shows: Math.min(shift(0), shift(1), apart) };
  });
  const best = bestOf(tried, ({ shows }) => shows);
  return best && { materials: best.materials, alone: best.alone, over: best.over };
}
