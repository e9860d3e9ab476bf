import { adaptTristimulus } from '../../../src/optics/adaptation.ts';
import { tristimulusFromLab } from '../../../src/optics/cielab.ts';
import { whitePoint } from '../../../src/optics/tristimulus.ts';

export type Triple = readonly [number, number, number];

/** Published matrix from XYZ (D65) to linear sRGB: IEC 61966-2-1. */
const TO_LINEAR: readonly Triple[] = [
  [3.2406, -1.5372, -0.4986],
  [-0.9689, 1.8758, 0.0415],
  [0.0557, -0.204, 1.057],
];

/** What a patch of the chart throws back in linear sRGB by daylight, from its published Lab under D50. */
export function linearOf([L, a, b]: Triple): Triple {
  const { X, Y, Z } = adaptTristimulus(
    tristimulusFromLab({ L, a, b }, whitePoint('D50')),
    whitePoint('D50'),
    whitePoint('D65'),
  );
  return TO_LINEAR.map((row) => row[0] * X + row[1] * Y + row[2] * Z) as unknown as Triple;
}
