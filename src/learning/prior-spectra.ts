/**
 * What is believed of ln K and ln S of a material before any look, as a spectrum and curves that a standard normal number each goes with.
 *
 * @packageDocumentation
 */
import { DOUBT_SHAPES } from '../optics/constants-doubt.ts';
import { flakesPerMm } from '../optics/flake.ts';
import { BAND_COUNT, mapSpectrum, requireBands, WAVELENGTHS } from '../optics/spectrum.ts';
import type { ConstantsDoubt } from '../tables/constants-doubt.ts';
import { FLAKE_LOADS } from '../tables/flake-loads.ts';
import { MATERIAL_PRIORS, PLASTIC_SD, SCATTERING_SHAPE_MODES } from '../tables/material-priors.ts';
import { PLASTIC_LOOKS, YELLOWNESS_RANGE } from '../tables/plastics.ts';
import type { Constants, TaughtMaterial } from './learning-data.ts';
import { shapeModes } from './shape-modes.ts';

/** ln K = `lnK` + Σ theta · `kModes`, and so for S. Spectra, of K and S per mm, and per g/ml if it is no plastic. */
export interface LogSpectra {
  readonly lnK: Float64Array;
  readonly lnS: Float64Array;
  readonly kModes: readonly Float64Array[];
  readonly sModes: readonly Float64Array[];
  /** g/ml that a maker usually takes of it. */
  readonly typical: number;
}

/**
 * The belief about a material before any look.
 *
 * Throws: RangeError if constants have not 36 bands.
 */
export function priorSpectra(prior: TaughtMaterial['prior']): LogSpectra {
  switch (prior.kind) {
    case 'flake':
      return { ...NOTHING, typical: usualFlake(prior.flake) };
    case 'plastic':
      return { ...logs(prior.constants), ...PLASTIC_MODES, typical: 1 };
    case 'known':
      return {
        ...logs(prior.constants),
        kModes: doubtModes(prior.doubt, 'absorption'),
        sModes: doubtModes(prior.doubt, 'scattering'),
        typical: coveringDose(prior.constants),
      };
    default: {
      const { absorption, scattering } = MATERIAL_PRIORS[prior.kind];
      const { kModes, sModes } = kindModes(prior.kind);
      const power = mapSpectrum(BLUER, (bluer) => scattering.power * bluer);
      return {
        lnK: new Float64Array(BAND_COUNT).fill(Math.log(absorption.median / prior.typical)),
        lnS: power.map((each) => Math.log(scattering.median / prior.typical) + each),
        kModes,
        sModes,
        typical: prior.typical,
      };
    }
  }
}

/** ln(550 nm/wavelength). */
const BLUER = Float64Array.from(WAVELENGTHS, (wavelength) => Math.log(550 / wavelength));

const flat = (value: number): Float64Array => new Float64Array(BAND_COUNT).fill(value);

const NOTHING: Omit<LogSpectra, 'typical'> = {
  lnK: flat(Number.NEGATIVE_INFINITY),
  lnS: flat(Number.NEGATIVE_INFINITY),
  kModes: [],
  sModes: [],
};

/** How ln K of the usual clear plastic goes with ln of its yellowness. */
const YELLOWING = Float64Array.from(WAVELENGTHS, (wavelength) => {
  const { absorption, yellowness } = PLASTIC_LOOKS.clear;
  const yellow = yellowness * Math.exp((400 - wavelength) / YELLOWNESS_RANGE);
  return yellow / (absorption + yellow);
});

const PLASTIC_MODES: Pick<LogSpectra, 'kModes' | 'sModes'> = {
  kModes: [flat(PLASTIC_SD.absorption), mapSpectrum(YELLOWING, (each) => PLASTIC_SD.yellowing * each)],
  sModes: [flat(PLASTIC_SD.scattering)],
};

type Kind = keyof typeof MATERIAL_PRIORS;

const KIND_MODES = new Map<Kind, Pick<LogSpectra, 'kModes' | 'sModes'>>();

/** The same objects for every material of a kind. */
function kindModes(kind: Kind): Pick<LogSpectra, 'kModes' | 'sModes'> {
  const made = KIND_MODES.get(kind);
  if (made) return made;
  const { absorption, scattering } = MATERIAL_PRIORS[kind];
  const modes = {
    kModes: shapeModes(absorption.levelSd, absorption.shapeSd),
    sModes: [
      flat(scattering.levelSd),
      mapSpectrum(BLUER, (bluer) => scattering.powerSd * bluer),
      ...(scattering.shapeSd === undefined ? [] : shapeModes(0, scattering.shapeSd).slice(0, SCATTERING_SHAPE_MODES)),
    ],
  };
  KIND_MODES.set(kind, modes);
  return modes;
}

function doubtModes(doubt: ConstantsDoubt, quantity: keyof ConstantsDoubt): readonly Float64Array[] {
  return DOUBT_SHAPES.map((shape, index) =>
    Float64Array.from(
      { length: BAND_COUNT },
      (_, band) => doubt[quantity][index]! * shape((2 * band) / (BAND_COUNT - 1) - 1),
    ),
  );
}

// Where a film shows no K or S at all, a millionth of a millionth stands for it: a logarithm has to be of something.
const LEAST = 1e-12;

function logs({ absorption, scattering }: Constants): Pick<LogSpectra, 'lnK' | 'lnS'> {
  requireBands(absorption, 'absorption');
  requireBands(scattering, 'scattering');
  const ln = (values: readonly number[]): Float64Array =>
    Float64Array.from(values, (value) => Math.log(Math.max(LEAST, value)));
  return { lnK: ln(absorption), lnS: ln(scattering) };
}

/** g/ml of a measured material that does as much to light as the typical dose of a pigment does. */
function coveringDose({ absorption, scattering }: Constants): number {
  const { pigment } = MATERIAL_PRIORS;
  let sum = 0;
  for (let band = 0; band < BAND_COUNT; band++) sum += absorption[band]! + scattering[band]!;
  return (pigment.absorption.median + pigment.scattering.median) / Math.max(LEAST, sum / BAND_COUNT);
}

// mm of the bait that an ordinary load of flake is reckoned for.
const BAIT_MM = 6;

/** g/ml of a flake that makes an ordinary load of it. */
function usualFlake(flake: Parameters<typeof flakesPerMm>[1]): number {
  return -Math.log1p(-FLAKE_LOADS.ordinary) / (BAIT_MM * flakesPerMm(1, flake));
}
