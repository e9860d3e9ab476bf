import { absorptionOf, type Spectrum, spectrumOf } from '../../measure/foreign/physics/spectra.ts';
import { Chance } from '../../measure/foreign/world/chance.ts';
import { acrylicPaints } from './reference-spectra.ts';

let samples: readonly Spectrum[] | undefined;

/** Reflectances of painted cards that makers of cameras might fit to: measured paints and their tints, or invented ones. */
export function paintedSamples(): readonly Spectrum[] {
  samples ??= measured() ?? invented();
  return samples;
}

function measured(): readonly Spectrum[] | undefined {
  const paints = acrylicPaints();
  const white = paints.reduce<(typeof paints)[number] | undefined>(
    (best, each) => (best && best.K[18]! / best.S[18]! < each.K[18]! / each.S[18]! ? best : each),
    undefined,
  );
  if (!white) return undefined;
  return paints.flatMap(({ K, S }) =>
    [1, 0.4, 0.1].map((share) =>
      hiding(
        K.map((each, band) => share * each + (1 - share) * white.K[band]!),
        S.map((each, band) => share * each + (1 - share) * white.S[band]!),
      ),
    ),
  );
}

/** Smooth spectra, for machines without the measured ones. */
function invented(): readonly Spectrum[] {
  const chance = new Chance(24);
  return Array.from({ length: 48 }, () =>
    hiding(
      absorptionOf([
        {
          kind: 'band',
          at: 420 + 260 * chance.uniform(),
          width: 25 + 50 * chance.uniform(),
          height: 4 * chance.uniform(),
        },
        {
          kind: 'edge',
          at: 440 + 180 * chance.uniform(),
          width: 10 + 12 * chance.uniform(),
          height: 4 * chance.uniform() ** 2,
        },
        { kind: 'floor', height: 0.02 + 0.3 * chance.uniform() ** 3 },
      ]),
      spectrumOf(() => 1),
    ),
  );
}

/** A layer that hides all behind it (Kubelka and Munk), and its surface, 0.03 and 0.65 (Saunderson), the gloss left out. */
function hiding(K: Spectrum, S: Spectrum): Spectrum {
  return K.map((absorbed, band) => {
    const ratio = absorbed / S[band]!;
    const inside = 1 / (1 + ratio + Math.sqrt(ratio * (ratio + 2)));
    return (0.97 * 0.35 * inside) / (1 - 0.65 * inside);
  });
}
