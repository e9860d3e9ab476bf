/**
 * What is not known of a shelf, as a row of numbers (theta) that are standard normal and independent before anything was seen.
 *
 * ln K and ln S of a material are a known spectrum and a sum of such numbers times fixed curves; the bottle, the cards, the light's path and
 * each camera are a few more. The order: materials by id, then what they have in common, then cameras by name.
 *
 * @packageDocumentation
 */
import { type SpreadFlake, spreadFlake } from '../optics/flake.ts';
import { plasticConstants } from '../optics/plastic.ts';
import type { LearningData, TaughtMaterial } from './learning-data.ts';
import { type LogSpectra, priorSpectra } from './prior-spectra.ts';

/** A material, and where its unknowns stand. */
export interface MaterialUnknowns extends LogSpectra {
  readonly id: string;
  /** Place in theta of the first curve of ln K; those of ln S follow, then the bottle. */
  readonly at: number;
  /** Place of ln of its bottle's strength; a plastic and a flake have none. */
  readonly bottle?: number;
  /** Films of it were measured. */
  readonly isMeasured?: true;
  /** What a line of sight meets of it at 1 g/ml, of a flake. */
  readonly flake?: SpreadFlake;
  /** g/ml (of a plastic, a share) against which doses count as alike or unlike. */
  readonly typical: number;
}

/** The unknowns that all cups have in common, in their order. */
export const COMMON_UNKNOWNS = ['white', 'whiteYellowing', 'black', 'crowding', 'pathD', 'pathS0'] as const;

/** Unknowns of one camera: what it is off by along each axis. */
export const CAMERA_UNKNOWNS = 3;

/** See the top of the file. */
export interface ShelfUnknowns {
  /** By id; the last one is the clear plastic of labels, of which nothing is unknown. */
  readonly materials: readonly MaterialUnknowns[];
  /** Place in `materials`. */
  readonly placeOf: ReadonlyMap<string, number>;
  /** Place in `materials` of the plastic that labels are seen in. */
  readonly labelPlastic: number;
  /** Place in theta of the first of `COMMON_UNKNOWNS`. */
  readonly common: number;
  /** Place in theta of the first unknown of each camera. */
  readonly cameras: ReadonlyMap<string, number>;
  readonly count: number;
}

// A share of plastic counts for what a dose of as many times its typical one would: convention of this book.
const TYPICAL_SHARE = 1;

/**
 * The unknowns of a book.
 *
 * Throws: RangeError if two materials have one id, or constants have not 36 bands.
 */
export function shelfUnknowns(data: LearningData): ShelfUnknowns {
  const sorted = [...data.materials].sort((one, other) => byCodeUnits(one.id, other.id));
  const materials: MaterialUnknowns[] = [];
  let at = 0;
  for (const material of sorted) {
    if (materials.at(-1)?.id === material.id) throw new RangeError(`Two materials are called ${material.id}`);
    const unknowns = unknownsOf(material, at);
    materials.push(unknowns);
    at += unknowns.kModes.length + unknowns.sModes.length + (unknowns.bottle === undefined ? 0 : 1);
  }
  const seen = [...data.materials.flatMap(({ labels }) => labels), ...data.looks];
  const cameras = [...new Set(seen.flatMap(({ camera }) => camera ?? []))].sort(byCodeUnits);
  const common = at;
  const afterCommon = common + COMMON_UNKNOWNS.length;
  const labelPlastic = materials.length;
  const placeOf = new Map(materials.map(({ id }, place) => [id, place]));
  materials.push(labelPlasticUnknowns(common));
  return {
    materials,
    placeOf,
    labelPlastic,
    common,
    cameras: new Map(cameras.map((camera, i) => [camera, afterCommon + CAMERA_UNKNOWNS * i])),
    count: afterCommon + CAMERA_UNKNOWNS * cameras.length,
  };
}

/** Order of ids and keys: the same on every machine. */
export function byCodeUnits(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}

function unknownsOf({ id, prior }: TaughtMaterial, at: number): MaterialUnknowns {
  const spectra = priorSpectra(prior);
  if (prior.kind === 'flake') {
    const flake = spreadFlake({ ...prior.flake, reflectance: Float64Array.from(prior.flake.reflectance) }, 1);
    return { id, at, ...spectra, flake };
  }
  if (prior.kind === 'plastic') return { id, at, ...spectra, typical: TYPICAL_SHARE };
  const bottle = at + spectra.kModes.length + spectra.sModes.length;
  return { id, at, ...spectra, bottle, ...(prior.kind === 'known' ? { isMeasured: true } : {}) };
}

function labelPlasticUnknowns(at: number): MaterialUnknowns {
  const { absorption, scattering } = plasticConstants('clear');
  const lnK = absorption.map(Math.log);
  const lnS = scattering.map(Math.log);
  return { id: '', at, lnK, lnS, kModes: [], sModes: [], typical: TYPICAL_SHARE };
}
