import type { OpticalConstants } from '../../src/optics/mixture.ts';
import { mixtureConstants } from '../../src/optics/mixture.ts';
import { plasticConstants } from '../../src/optics/plastic.ts';
import { BAND_COUNT, constantSpectrum } from '../../src/optics/spectrum.ts';
import { stackReflectance } from '../../src/optics/stack.ts';
import { IN_AIR } from '../../src/optics/surface.ts';
import { file } from './sample.ts';

/** Clear plastic. */
export const clear = plasticConstants('clear');

/** Two pigments of invented K and S, per mm and g/ml. */
const TRUTH = {
  reed: hump(60, 8, 20, 40),
  clay: hump(25, 22, 10, 90),
} as const satisfies Record<string, OpticalConstants>;

type Pigment = keyof typeof TRUTH;

/** Absorption that peaks at a band, above a floor, and even scattering. */
function hump(height: number, at: number, floor: number, scattering: number): OpticalConstants {
  return {
    absorption: Float64Array.from(
      { length: BAND_COUNT },
      (_, band) => floor + height * Math.exp(-(((band - at) / 6) ** 2)),
    ),
    scattering: constantSpectrum(scattering),
  };
}

/** A film of them in clear plastic. */
export interface Film {
  readonly name: string;
  /** % by mass of the plastic. */
  readonly parts: Partial<Record<Pigment, number>>;
  readonly mm: number;
}

/** g/ml */
export const PLASTIC_DENSITY = 1.05;

/** A body of that content. */
export function body(parts: Film['parts']): ReturnType<typeof mixtureConstants> {
  return mixtureConstants(
    clear,
    Object.entries(parts).map(([name, percent]) => ({
      constants: TRUTH[name as Pigment],
      concentration: (percent / 100) * PLASTIC_DENSITY,
    })),
  );
}

/** The table that an instrument without noise would have given. */
export function table(films: readonly Film[]): string {
  const bands = Array.from({ length: 31 }, (_, i) => i + 2);
  const rows = films.flatMap(({ name, parts, mm }) =>
    [0.88, 0.04].flatMap((backing, black) => {
      const of = (layers: Parameters<typeof stackReflectance>[0]): string => {
        const R = stackReflectance(layers, constantSpectrum(backing), IN_AIR);
        return bands.map((band) => R[band]!.toFixed(5)).join(',');
      };
      const what = Object.entries(parts)
        .map(([id, percent]) => `${id}=${percent} %`)
        .join(';');
      const side = black ? 'black' : 'white';
      return [
        `${name},${what},${mm},bare_${side},${of([])}`,
        `${name},${what},${mm},film_on_${side},${of([{ ...body(parts), thickness: mm }])}`,
      ];
    }),
  );
  return [
    '# unit: ratio',
    `sample,composition,thickness,surface,${bands.map((band) => 380 + 10 * band).join(',')}`,
    ...rows,
  ].join('\n');
}

/** Their files. */
export const MEASURED = {
  'shelf/colorants/reed.md': file('title: Reed\nlook: { kind: measured }'),
  'shelf/colorants/clay.md': file('title: Clay\nlook: { kind: measured }'),
};

/** Films that tell both apart. */
export const FILMS: readonly Film[] = [
  { name: 'r1', parts: { reed: 0.2 }, mm: 1.5 },
  { name: 'r2', parts: { reed: 1 }, mm: 3 },
  { name: 'c1', parts: { clay: 0.2 }, mm: 1.5 },
  { name: 'c2', parts: { clay: 1 }, mm: 3 },
  { name: 'rc', parts: { reed: 0.3, clay: 0.3 }, mm: 2 },
];
