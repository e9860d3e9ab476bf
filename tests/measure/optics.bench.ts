/**
 * How fast the optics is, as ratios on one machine: a mix of five materials from K and S to CIELAB, against the same
 * calculation in plain objects; CIEDE2000 against culori's. Run by `npm run bench`.
 */
import { differenceCiede2000, modeLab65, useMode } from 'culori/fn';
import { type Lab, labOf } from '../../src/optics/cielab.ts';
import { deltaE00 } from '../../src/optics/delta-e00.ts';
import { layerReflectances, reflectancesInfinite } from '../../src/optics/kubelka-munk.ts';
import { type MixtureConstants, type MixturePart, mixtureConstants } from '../../src/optics/mixture.ts';
import { BAND_COUNT, constantSpectrum, WAVELENGTHS } from '../../src/optics/spectrum.ts';
import { bookWeights } from '../../src/optics/tristimulus.ts';

/** A line of figures, repeatable: no clock or chance in it. */
function wave(seed: number, low: number, high: number): Float64Array {
  return Float64Array.from(
    WAVELENGTHS,
    (wavelength) => low + ((high - low) * (1 + Math.sin(seed + wavelength / (40 + seed)))) / 2,
  );
}

const plastic: MixtureConstants = { absorption: wave(1, 0.001, 0.01), scattering: wave(2, 0.003, 0.01) };
const parts: MixturePart[] = [3, 4, 5, 6, 7].map((seed) => ({
  constants: { absorption: wave(seed, 1, 300), scattering: wave(seed + 9, 1, 100) },
  concentration: 0.001 * seed,
}));

// The same in plain objects: one object a band, as one would write it first.
interface PlainBand {
  wavelength: number;
  K: number;
  S: number;
}
const plainOf = ({ absorption, scattering }: MixturePart['constants']): PlainBand[] =>
  WAVELENGTHS.map((wavelength, band) => ({ wavelength, K: absorption[band]!, S: scattering[band]! }));
const plainPlastic = plainOf(plastic);
const plainParts = parts.map(({ constants, concentration }) => ({ bands: plainOf(constants), concentration }));
const { x, y, z, white } = bookWeights('D65');
const plainWeights = WAVELENGTHS.map((_, band) => ({ x: x[band]!, y: y[band]!, z: z[band]! }));

function plainMix(): PlainBand[] {
  return plainPlastic.map((base, band) => {
    const part = (of: 'K' | 'S'): number =>
      plainParts
        .map(({ bands, concentration }) => concentration * bands[band]![of])
        .reduce((sum, each) => sum + each, 0);
    return { wavelength: base.wavelength, K: base.K + part('K'), S: base.S + part('S') };
  });
}

function plainLab(reflectances: { wavelength: number; R: number }[]): Lab {
  const sum = (of: 'x' | 'y' | 'z'): number =>
    reflectances.map(({ R }, band) => R * plainWeights[band]![of]).reduce((total, each) => total + each, 0);
  const f = (t: number): number => (t > 216 / 24389 ? t ** (1 / 3) : ((24389 / 27) * t + 16) / 116);
  const [fx, fy, fz] = [f(sum('x') / white.X), f(sum('y')), f(sum('z') / white.Z)];
  return { L: 116 * fy! - 16, a: 500 * (fx! - fy!), b: 200 * (fy! - fz!) };
}

function plainLayerLab(thickness: number, Rg: number): Lab {
  return plainLab(
    plainMix().map(({ wavelength, K, S }) => {
      const a = 1 + K / S;
      const b = Math.sqrt(a * a - 1);
      const bcoth = b / Math.tanh(b * S * thickness);
      return { wavelength, R: (1 - Rg * (a - bcoth)) / (a - Rg + bcoth) };
    }),
  );
}

function plainBodyLab(): Lab {
  return plainLab(
    plainMix().map(({ wavelength, K, S }) => {
      const a = 1 + K / S;
      return { wavelength, R: a - Math.sqrt(a * a - 1) };
    }),
  );
}

const mix: MixtureConstants = { absorption: new Float64Array(BAND_COUNT), scattering: new Float64Array(BAND_COUNT) };
const R = new Float64Array(BAND_COUNT);
const backing = constantSpectrum(0.9);

function layerLab(thickness: number): Lab {
  mixtureConstants(plastic, parts, mix);
  return labOf(layerReflectances(mix.absorption, mix.scattering, thickness, backing, R));
}

function bodyLab(): Lab {
  mixtureConstants(plastic, parts, mix);
  return labOf(reflectancesInfinite(mix.absorption, mix.scattering, R));
}

/** Microseconds a call: the fastest of several rounds, which other work on the machine disturbs least. */
function microseconds(work: () => number, calls: number): number {
  let best = Number.POSITIVE_INFINITY;
  let kept = 0;
  for (let round = 0; round < 12; round++) {
    const start = performance.now();
    for (let i = 0; i < calls; i++) kept += work();
    best = Math.min(best, performance.now() - start);
  }
  if (!Number.isFinite(kept)) throw new Error('A benchmark computed something that is no number');
  return (1000 * best) / calls;
}

function report(name: string, ours: number, theirs: number, wanted: number): void {
  const ratio = theirs / ours;
  console.log(
    `${name}: ${ours.toFixed(3)} µs against ${theirs.toFixed(3)} µs, ${ratio.toFixed(1)} times as fast (wanted ${wanted})`,
  );
}

/** Prints the ratios. */
export function main(): void {
  const difference = Math.abs(layerLab(8).L - plainLayerLab(8, 0.9).L) + Math.abs(bodyLab().L - plainBodyLab().L);
  if (difference > 1e-9) throw new Error(`The two forms differ by ${difference} in L`);
  report(
    'body of five materials to Lab, against plain objects',
    microseconds(() => bodyLab().L, 20_000),
    microseconds(() => plainBodyLab().L, 5_000),
    5,
  );
  report(
    'layer of five materials to Lab, against plain objects',
    microseconds(() => layerLab(8).L, 20_000),
    microseconds(() => plainLayerLab(8, 0.9).L, 5_000),
    5,
  );

  useMode(modeLab65);
  const culoriDifference = differenceCiede2000();
  const labs = Array.from({ length: 512 }, (_, i) => ({
    L: 50 + 45 * Math.sin(i),
    a: 60 * Math.sin(2.3 * i),
    b: 60 * Math.cos(1.7 * i),
  }));
  const culoriLabs = labs.map(({ L, a, b }) => ({ mode: 'lab65', l: L, a, b }) as const);
  let i = 0;
  report(
    'CIEDE2000, against culori',
    microseconds(() => deltaE00(labs[i++ & 511]!, labs[(i * 7) & 511]!), 100_000),
    microseconds(() => culoriDifference(culoriLabs[i++ & 511]!, culoriLabs[(i * 7) & 511]!), 100_000),
    1.6,
  );
}

main();
